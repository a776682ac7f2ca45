"""Needs of several designs drawn together by material: the same name, the same goods, the same shop."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Sequence
from dataclasses import replace
from typing import Generic, TypeVar

from hoopwright.compare.trip.model import Design
from hoopwright.library.model import Offer
from hoopwright.source.record import record
from hoopwright.spec.model import Spec

Need = TypeVar("Need")


@record(frozen=True, slots=True)
class Pool(Generic[Need]):
    """One material that designs share: its name on the list, and each design's need of it."""

    item: str
    needs: tuple[tuple[Design, Need], ...]


def pools(
    needs: Sequence[tuple[Design, Need]],
    name: Callable[[Need], str],
    same: Callable[[Design, Need], Hashable],
) -> tuple[tuple[Pool[Need], ...], tuple[str, ...]]:
    """Needs by material, in the order they come up, and the names that mean different goods.

    Goods of one name that are not the same in every design are bought apart, under the name and a letter.
    """
    kinds: dict[str, dict[Hashable, list[tuple[Design, Need]]]] = {}
    for design, need in needs:
        kinds.setdefault(name(need), {}).setdefault(same(design, need), []).append((design, need))
    found: list[Pool[Need]] = []
    for item, groups in kinds.items():
        for group in groups.values():
            letters = ", ".join(design.letter for design, _ in group)
            found.append(Pool(item if len(groups) == 1 else f"{item} ({letters})", tuple(group)))
    return tuple(found), tuple(item for item, groups in kinds.items() if len(groups) > 1)


def goods_key(spec: Spec, item: str) -> Hashable:
    """What must be alike for goods of one name to be bought together: what they are and the shop, and whether
    a price is known. Offers may differ: the trip has the choice of all of them."""
    stock, goods = spec.stocks.get(item), spec.goods.get(item)
    if stock is not None and goods is None:
        size = replace(stock.section, text="")
        return (stock.grade.name, size, stock.shop, priced(stock.sold))
    if goods is not None:
        return (goods.kind, goods.width, goods.nap, goods.shrinkage, goods.shop, priced(goods.sold))
    return item


def priced(offers: tuple[Offer, ...]) -> bool:
    """Whether every offer has a price, and there is one."""
    return bool(offers) and all(offer.price is not None for offer in offers)


def every_offer(lists: Iterable[tuple[Offer, ...]]) -> tuple[Offer, ...]:
    """The offers of several specs, each once, in the order they come up."""
    return tuple(dict.fromkeys(offer for offers in lists for offer in offers))


def lettered(design: Design, part: str) -> str:
    """A part's label on the trip: ``B H3``."""
    return f"{design.letter} {part}"
