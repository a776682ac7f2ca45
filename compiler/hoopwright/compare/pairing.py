"""Which part of one plan is which of the other: by the maker's own name, then by place and order."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache

from hoopwright.plan.model import Plan
from hoopwright.shape.model import Hoop
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Pairs:
    """For each plan, its parts' ids with the slot they share with their pair; a part alone has its own."""

    before: Mapping[str, str]
    after: Mapping[str, str]

    def twin(self, part: str) -> str | None:
        """The id after of a part before, None when it has no pair."""
        slot = self.before.get(part)
        return next((name for name, other in self.after.items() if other == slot), None)


def paired(before: Plan, after: Plan) -> Pairs:
    """Hoops and tapes of two plans paired. The same pairs come out, turned round, from the other side."""
    hoops = _hoops(before, after)
    tapes = _in_order([(tape.id, tape.hem_fraction) for tape in before.shape.tapes],
                      [(tape.id, tape.hem_fraction) for tape in after.shape.tapes])
    first: dict[str, str] = {}
    second: dict[str, str] = {}
    for kind, pairs in (("hoop", hoops), ("tape", tapes)):
        for number, (one, other) in enumerate(pairs):
            first[one] = second[other] = f"{kind} {number:03d}"
    for kind, ids, slots in (("-", _ids(before), first), ("+", _ids(after), second)):
        for name in ids:
            slots.setdefault(name, f"{kind} {name}")
    return Pairs(first, second)


def _ids(plan: Plan) -> list[str]:
    return [hoop.id for hoop in plan.shape.hoops] + [tape.id for tape in plan.shape.tapes]


def _hoops(before: Plan, after: Plan) -> list[tuple[str, str]]:
    """By own name; then the hem hoops, a band's upper hoops; then the rest by height, in order."""
    named = _own_names(before) & _own_names(after)
    pairs = [(hoop.id, hoop.id) for hoop in before.shape.hoops if hoop.id in named]
    left = _rest(before.shape.hoops, {one for one, _ in pairs})
    right = _rest(after.shape.hoops, {other for _, other in pairs})
    for place in ("hem", "band top"):
        mine = [hoop for hoop in left if hoop.place == place]
        theirs = [hoop for hoop in right if hoop.place == place]
        if len(mine) == len(theirs) == 1:
            pairs.append((mine[0].id, theirs[0].id))
            left, right = _rest(left, {mine[0].id}), _rest(right, {theirs[0].id})
    return pairs + _in_order([(hoop.id, -hoop.height) for hoop in left],
                             [(hoop.id, -hoop.height) for hoop in right])


def _own_names(plan: Plan) -> set[str]:
    return {name for name in plan.spec.shape.names if name}


def _rest(hoops: Sequence[Hoop], taken: set[str]) -> list[Hoop]:
    return [hoop for hoop in hoops if hoop.id not in taken]


def _in_order(left: list[tuple[str, float]], right: list[tuple[str, float]]) -> list[tuple[str, str]]:
    """Parts paired in their order such that their places differ least in all; every part of the shorter list
    gets a pair. Of equally good ways the first parts of the longer list are taken."""
    if len(left) > len(right):
        return [(other, one) for one, other in _in_order(right, left)]
    spare = len(right) - len(left)

    @cache
    def best(i: int, skipped: int) -> tuple[float, tuple[int, ...]]:
        if i == len(left):
            return 0.0, ()
        ways = []
        for skip in range(skipped, spare + 1):
            cost, rest = best(i + 1, skip)
            ways.append((round(abs(left[i][1] - right[i + skip][1]) + cost, 9), (skip, *rest)))
        return min(ways)

    skips = best(0, 0)[1]
    return [(left[i][0], right[i + skip][0]) for i, skip in enumerate(skips)]
