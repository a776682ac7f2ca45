"""What is on hand for several designs: counted once, and used up as designs are bought one after the
other."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field


@dataclass(slots=True)
class Cupboard:
    """The lengths (or pieces of cloth as (width, length), or a count) of one material that are left."""

    left: Counter[object] = field(default_factory=Counter)

    def own(self, listed: Iterable[object]) -> tuple[object, ...]:
        """What of the things ``listed`` is still there."""
        found: list[object] = []
        there = Counter(self.left)
        for one in listed:
            if there[one] > 0:
                there[one] -= 1
                found.append(one)
        return tuple(found)

    def take(self, used: Iterable[object]) -> None:
        """Take things out; what is not there is passed over."""
        for one in used:
            if self.left[one] > 0:
                self.left[one] -= 1

    @property
    def everything(self) -> tuple[object, ...]:
        """All that is left, in order."""
        return tuple(sorted(self.left.elements(), key=repr))


def counted_once(lists: Sequence[Iterable[object]]) -> Cupboard:
    """One cupboard for several lists: of each thing as many as the list with most of it."""
    left: Counter[object] = Counter()
    for listed in lists:
        left |= Counter(listed)
    return Cupboard(left)
