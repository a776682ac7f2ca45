"""Ways to cut a band into strips: crosswise, selvage to selvage, or lengthwise, side by side.

A band of length B whose joins take a each needs B + joins x a of strip, with one join less than strips (as
many when it is a ring). Crosswise on a usable width W the fewest strips are the least n with n W - joins(n)
a >= B, each as long as W but the last. Lengthwise with m strips side by side each is (B + joins(m) a) / m
long.
"""

from __future__ import annotations

from hoopwright.source.record import record
from hoopwright.supply.cloth.boxes import Box, strip
from hoopwright.supply.cloth.model import Band, Way
from hoopwright.supply.cutting.stock import up

_MOST_SIDE_BY_SIDE = 24


@record(frozen=True, slots=True)
class Cut:
    """One way to cut a band: the lengths of the strips, in units, and the joins between and around them."""

    way: Way
    strips: tuple[int, ...]
    joins: int

    def boxes(self, band: Band, copy: int, first: int = 0) -> list[Box]:
        """The strips of one copy as they lie on the cloth, numbered from `first`."""
        height = up(band.height)
        if self.way == "crosswise":
            return [strip(band.part, copy, first + i, x, height, False) for i, x in enumerate(self.strips)]
        return [strip(band.part, copy, first + i, height, x, True) for i, x in enumerate(self.strips)]


def joins_of(band: Band, strips: int) -> int:
    """Joins of a band of so many strips."""
    return strips - 1 + int(band.ring)


def needed(band: Band, strips: int) -> int:
    """Units of strip that a band made of `strips` strips takes in all."""
    return up(band.length) + joins_of(band, strips) * up(band.join)


def fewest_strips(band: Band, longest: int) -> int | None:
    """The fewest strips of at most `longest` units each; None when joins eat all a strip gives."""
    count = 1
    while count * longest < needed(band, count):
        count += 1
        if longest <= up(band.join):
            return None
    return count


def crosswise(band: Band, usable: int) -> Cut | None:
    """The band from the fewest strips of the usable width, the last one as short as can be but not under the
    shortest allowed; None when the strips would be too short."""
    count = fewest_strips(band, usable)
    if count is None:
        return None
    strips = [usable] * (count - 1)
    strips.append(needed(band, count) - sum(strips))
    least = up(band.shortest) if count > 1 else 0
    for i in range(count - 2, -1, -1):
        shift = max(0, min(least - strips[-1], strips[i] - least))
        strips[i] -= shift
        strips[-1] += shift
    return Cut("crosswise", tuple(strips), joins_of(band, count)) if strips[-1] >= least else None


def lengthwise(band: Band, usable: int) -> list[Cut]:
    """The band from 1, 2, ... equal strips side by side, as many as the usable width holds."""
    found = []
    side_by_side = usable // max(1, up(band.height))
    for count in range(1, min(side_by_side, _MOST_SIDE_BY_SIDE) + 1):
        each = -(-needed(band, count) // count)
        if count == 1 or each >= up(band.shortest):
            found.append(Cut("lengthwise", (each,) * count, joins_of(band, count)))
    return found


def ways_to_cut(band: Band, usable: int) -> list[Cut]:
    """All ways its grain allows; empty when it does not fit."""
    found: list[Cut] = []
    if band.grain != "along":
        cut = crosswise(band, usable)
        found += [cut] if cut is not None else []
    if band.grain != "across":
        found += lengthwise(band, usable)
    return found
