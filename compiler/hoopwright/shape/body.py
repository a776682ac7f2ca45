"""The body as a stack of ovals, level rows from the waist to the hips, centred under the waist."""

from __future__ import annotations

from collections.abc import Sequence
from math import pi

from hoopwright.shape.curves.ellipse import Ellipse, from_girth, reach
from hoopwright.shape.model import BodyRow, Contact
from hoopwright.shape.outline import Outline
from hoopwright.source.record import record
from hoopwright.spec.model import Spec

_DIRECTIONS = 72


@record(frozen=True, slots=True)
class Body:
    """Rows from the top. Nothing is known below the last, so nothing stands in the way there."""

    rows: tuple[BodyRow, ...]

    def outline(self, height: float) -> Ellipse | None:
        """The body's oval at a height; None where no row reaches. Width and depth are even between rows."""
        for above, below in zip(self.rows, self.rows[1:], strict=False):
            if below.height <= height <= above.height:
                share = (above.height - height) / (above.height - below.height)
                return Ellipse(
                    (above.width + (below.width - above.width) * share) / 2,
                    (above.depth + (below.depth - above.depth) * share) / 2,
                )
        return None

    @property
    def lowest(self) -> Ellipse:
        """The oval of the last row, which stands for the legs below it too."""
        row = self.rows[-1]
        return Ellipse(row.width / 2, row.depth / 2)


def body_of(spec: Spec) -> Body:
    """The body from the spec's hip rows, measured down from the waistline at the side."""
    rows = sorted(spec.wearer.hip_rows, key=lambda row: row.below_waist)
    ovals = [(spec.wearer.side - row.below_waist, from_girth(row.girth, row.oval)) for row in rows]
    return Body(tuple(BodyRow(height, 2 * oval.a, 2 * oval.b) for height, oval in ovals))


def hoop_contacts(body: Body, hoops: Sequence[tuple[str, float, Outline]]) -> tuple[Contact, ...]:
    """Hoops (id, height, outline) that the body stands beyond somewhere round, and by how much."""
    found = []
    for name, height, outline in hoops:
        oval = body.outline(height)
        if oval is None:
            continue
        turns = [2 * pi * k / _DIRECTIONS for k in range(_DIRECTIONS)]
        met = [(turn, outline.reach(turn)) for turn in turns]
        by = max(reach(oval, turn) - far for turn, far in met if far is not None)
        if by > 0.0:
            found.append(Contact(name, height, by))
    return tuple(found)
