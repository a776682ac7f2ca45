"""One way of buying a material for one design or for several, and which of two ways is better."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from decimal import Decimal

from hoopwright.source.record import record
from hoopwright.supply.model import ClothLayout, CutPack, ShoppingLine


@record(frozen=True, slots=True)
class Way:
    """What is bought of one material, how it is cut or laid, and how sure it is that nothing is cheaper."""

    lines: tuple[ShoppingLine, ...] = ()
    packs: tuple[CutPack, ...] = ()
    layouts: tuple[ClothLayout, ...] = ()
    proven: bool = True
    gap: float = 0.0
    splices: int = 0

    @property
    def cost(self) -> Decimal | None:
        """Money for all lines; None when a price is missing."""
        costs = [line.cost for line in self.lines if line.cost is not None]
        return sum(costs, Decimal(0)) if len(costs) == len(self.lines) else None

    @property
    def amount(self) -> float:
        """How much is bought, m or pieces."""
        return sum(line.packs * (line.pack_length or line.pack_count or 1) for line in self.lines)


@record(frozen=True, slots=True)
class Bought:
    """A material of the trip: the way taken, and for each design the way it would go alone."""

    item: str
    letters: tuple[str, ...]
    way: Way
    alone: tuple[Way, ...]
    used: tuple[float, ...]
    together: bool


def better(together: Way | None, alone: Sequence[Way]) -> tuple[Way, bool]:
    """The pooled way, unless it is dearer than all alone put together (or, without prices, buys more)."""
    apart = joined(alone)
    if together is None or _dear(together) > _dear(apart):
        return apart, False
    return together, True


def _dear(way: Way) -> tuple[Decimal, float]:
    return (
        (way.cost or Decimal(0), round(way.amount, 6))
        if way.cost is not None
        else (Decimal(0), round(way.amount, 6))
    )


def joined(ways: Sequence[Way]) -> Way:
    """Ways side by side: equal packs on one line, everything else one after the other."""
    return Way(
        _merged(line for way in ways for line in way.lines),
        tuple(pack for way in ways for pack in way.packs),
        tuple(layout for way in ways for layout in way.layouts),
        len(ways) < 2,
        max((way.gap for way in ways), default=0.0),
        sum(way.splices for way in ways),
    )


def _merged(lines: Iterable[ShoppingLine]) -> tuple[ShoppingLine, ...]:
    found: dict[tuple[str, float, int, Decimal | None], ShoppingLine] = {}
    for line in lines:
        key = (line.item, line.pack_length, line.pack_count, line.price)
        before = found.get(key)
        if before is None:
            found[key] = line
            continue
        costs = (before.cost, line.cost)
        found[key] = replace(
            before,
            packs=before.packs + line.packs,
            cost=None if None in costs else sum((cost for cost in costs if cost is not None), Decimal(0)),
            need=before.need + line.need,
            on_hand=before.on_hand + line.on_hand,
            uses=tuple(dict.fromkeys((*before.uses, *line.uses))),
        )
    return tuple(found.values())
