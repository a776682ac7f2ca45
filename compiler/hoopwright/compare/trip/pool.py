"""Needs of several designs drawn together by material: the same name, the same goods, the same offers."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

from hoopwright.compare.trip.model import Design
from hoopwright.spec.model import Spec

Need = TypeVar("Need")


@dataclass(frozen=True, slots=True)
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
    """What must be alike for goods of one name to be bought together: all but tests and what is on hand."""
    stock, goods = spec.stocks.get(item), spec.goods.get(item)
    if stock is not None and goods is None:
        return (stock.grade.name, stock.section, stock.sold, stock.shop)
    if goods is not None:
        return (goods.kind, goods.width, goods.nap, goods.shrinkage, goods.sold, goods.shop)
    return item


def lettered(design: Design, part: str) -> str:
    """A part's label on the trip: ``B H3``."""
    return f"{design.letter} {part}"
