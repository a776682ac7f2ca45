"""A plain figure to hang the cage on: an outline of ordinary proportions, stretched to this wearer.

The proportions (share of stature upward, share of stature sideways) are our own drawing. Heights are
stretched so that waist and crown lie where this wearer has them, breadths so that waist and hip do.
"""

from __future__ import annotations

from itertools import pairwise

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.sheet import XY
from hoopwright.shape.curves.ellipse import from_girth
from hoopwright.source.record import record

WAIST = 0.63
HIP = 0.511

_FRONT = ((1.000, 0.000), (0.994, 0.019), (0.972, 0.038), (0.942, 0.044), (0.912, 0.040), (0.888, 0.027),
          (0.868, 0.026), (0.846, 0.032), (0.832, 0.062), (0.818, 0.096), (0.795, 0.112), (0.760, 0.102),
          (0.720, 0.092), (0.680, 0.078), (WAIST, 0.070), (0.590, 0.084), (0.550, 0.096), (HIP, 0.102),
          (0.460, 0.098), (0.370, 0.080), (0.290, 0.061), (0.205, 0.064), (0.120, 0.046), (0.045, 0.038),
          (0.022, 0.048), (0.004, 0.062), (0.000, 0.054), (0.000, 0.018), (0.045, 0.014), (0.120, 0.014),
          (0.205, 0.010), (0.280, 0.016), (0.380, 0.012), (0.452, 0.003))
_ARM = ((0.806, 0.088), (0.797, 0.112), (0.760, 0.126), (0.700, 0.142), (0.640, 0.163), (0.560, 0.188),
        (0.500, 0.210), (0.460, 0.226), (0.425, 0.228), (0.430, 0.212), (0.470, 0.200), (0.500, 0.190),
        (0.560, 0.164), (0.640, 0.136), (0.700, 0.118), (0.745, 0.098))
_SIDE = ((1.000, 0.002), (0.988, 0.036), (0.962, 0.056), (0.942, 0.056), (0.922, 0.068), (0.914, 0.058),
         (0.896, 0.060), (0.879, 0.050), (0.872, 0.026), (0.850, 0.023), (0.822, 0.036), (0.780, 0.060),
         (0.735, 0.080), (0.712, 0.078), (0.685, 0.060), (WAIST, 0.050), (0.590, 0.060), (0.550, 0.064),
         (HIP, 0.062), (0.460, 0.064), (0.380, 0.058), (0.290, 0.042), (0.260, 0.040), (0.200, 0.030),
         (0.120, 0.020), (0.055, 0.026), (0.030, 0.056), (0.014, 0.096), (0.000, 0.098), (0.000, -0.042),
         (0.020, -0.046), (0.055, -0.032), (0.120, -0.042), (0.205, -0.062), (0.280, -0.046), (0.380, -0.070),
         (0.450, -0.086), (HIP, -0.100), (0.550, -0.090), (0.590, -0.066), (WAIST, -0.050), (0.690, -0.060),
         (0.760, -0.082), (0.800, -0.078), (0.840, -0.046), (0.878, -0.036), (0.905, -0.044), (0.945, -0.062),
         (0.975, -0.050), (0.996, -0.022))


@record(frozen=True, slots=True)
class Figure:
    """The wearer's measures that the outline follows, m."""

    stature: float
    waist_height: float
    waist: tuple[float, float]
    hip: tuple[float, float]

    def height(self, share: float) -> float:
        """Height above the floor of a point of the outline, m."""
        if share <= WAIST:
            return share / WAIST * self.waist_height
        return self.waist_height + (share - WAIST) / (1 - WAIST) * (self.stature - self.waist_height)

    def stretch(self, share: float, axis: int) -> float:
        """How much wider (axis 0) or deeper (axis 1) this wearer is than the drawing at that height."""
        drawn = ((0.140, 0.204), (0.100, 0.162))[axis]
        waist = self.waist[axis] / (drawn[0] * self.stature)
        hip = self.hip[axis] / (drawn[1] * self.stature)
        rows = ((0.0, 1.0), (0.10, 1.0), (0.38, (1 + hip) / 2), (HIP, hip), (WAIST, waist),
                (0.72, (1 + waist) / 2), (0.80, 1 + (waist - 1) / 3), (0.868, 1.0), (1.0, 1.0))
        for (low, a), (high, b) in pairwise(rows):
            if share <= high:
                return a + (b - a) * (share - low) / (high - low)
        return 1.0

    def outline(self, points: tuple[tuple[float, float], ...], axis: int) -> list[XY]:
        """(sideways, height) in metres of a drawn outline."""
        return [(side * self.stretch(share, axis) * self.stature, self.height(share))
                for share, side in points]


def figure_of(plan: Plan) -> Figure:
    """This wearer's figure; an unknown stature is taken from the waist's height, for the drawing only."""
    wearer = plan.spec.wearer
    stature = wearer.stature or wearer.side / WAIST
    hip = max(plan.spec.wearer.hip_rows, key=lambda row: row.girth, default=None)
    hip_oval = oval(hip.girth, hip.oval) if hip else oval(wearer.hip, 1.5)
    waist_oval = oval(wearer.waist, wearer.waist_oval)
    return Figure(max(stature, wearer.side * 1.3), wearer.side, waist_oval, hip_oval)


def oval(girth: float, ratio: float) -> tuple[float, float]:
    """Width and depth of an ellipse from its girth and its width over depth, m."""
    ellipse = from_girth(girth, ratio)
    return 2 * ellipse.a, 2 * ellipse.b


def front_outlines(figure: Figure) -> list[list[XY]]:
    """Closed outlines seen from the front, (to the wearer's left, up) in metres: arms, then the body."""
    half, arm = figure.outline(_FRONT, 0), figure.outline(_ARM, 0)
    return [arm, [(-x, z) for x, z in arm], half + [(-x, z) for x, z in reversed(half[1:])]]


def side_outlines(figure: Figure) -> list[list[XY]]:
    """The closed outline seen from the wearer's left, (forward, up) in metres."""
    return [figure.outline(_SIDE, 1)]
