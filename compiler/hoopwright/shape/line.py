"""The line: how the girth grows downward, from an anchor to the first hoop of full girth.

With s = (za - z)/(za - zh): cone G = Ga + (Gh - Ga) s; dome G = Ga + (Gh - Ga)(1 - (1 - s)^p)^(1/p), a
superellipse quarter (p = 2 is an ellipse); bell G = Ga + (Gh - Ga) s^p; drum G = Gh; table: the
maker's own rows with a monotone cubic between them.
"""

from __future__ import annotations

from collections.abc import Sequence

from hoopwright.shape.curves.pchip import MonotoneCubic, monotone_cubic
from hoopwright.source.record import record
from hoopwright.spec.model import LineKind, TableRow


@record(frozen=True, slots=True)
class GirthLine:
    """Girth by height. ``top`` (za) and ``top_girth`` (Ga): the anchor; ``full`` (zh) and ``full_girth``
    (Gh): the first hoop of full girth; m."""

    kind: LineKind
    power: float
    top: float
    top_girth: float
    full: float
    full_girth: float
    table: MonotoneCubic | None = None

    def girth(self, height: float) -> float:
        """Girth at a height above the floor, m. Above the anchor it is the anchor's, below ``full`` the full
        girth."""
        if self.table is not None:
            return self.table(-height)
        if self.kind == "drum":
            return self.full_girth
        s = min(max((self.top - height) / (self.top - self.full), 0.0), 1.0)
        return self.top_girth + (self.full_girth - self.top_girth) * self._share(s)

    def _share(self, s: float) -> float:
        share: float = s
        if self.kind == "dome":
            share = (1.0 - (1.0 - s) ** self.power) ** (1.0 / self.power)
        elif self.kind == "bell":
            share = s**self.power
        return share


def table_line(
    rows: Sequence[TableRow], anchor: tuple[float, float], hem: tuple[float, float], bare: bool = False
) -> GirthLine:
    """The line through the maker's rows.

    ``anchor`` and ``hem`` are (height, girth). The hem is added where the last row does not reach it, and the
    anchor where the first row lies below it, unless ``bare`` says that no hoop lies above the first row.
    Rows must fall strictly in height, else ValueError.
    """
    points = [(row.height, row.girth) for row in rows]
    if not bare and points[0][0] < anchor[0]:
        points.insert(0, anchor)
    if points[-1][0] > hem[0]:
        points.append(hem)
    cubic = monotone_cubic([-height for height, _ in points], [girth for _, girth in points])
    return GirthLine("table", 1.0, points[0][0], points[0][1], hem[0], hem[1], cubic)
