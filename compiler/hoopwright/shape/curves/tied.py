"""A closed spring drawn by ties into an oval: the line it really takes, and how hard each tie pulls.

The strip cannot stretch and bends evenly, so between two ties it is an elastica; it lies so that the
bending energy is least for the ties' lengths. Ties run square to the long axis, so the ring is the
same on both sides of that axis and half of it is solved: tangents stand square to the axis at both ends. The
half is cut into equal links at angles psi, and the energy sum (d psi)^2/2h is made stationary under the
closing of the ring (v = 0 at the end) and the ties (v = half a tie's length where it is sewn) by Newton's
steps, the multipliers being the ties' pulls over EI. Ties that would have to push hang slack and are left
out. Derived; a single tie across the middle gives the curve of a hoop between two walls.
"""

from __future__ import annotations

import itertools
from math import asin, atan2, cos, hypot, pi, sin

from hoopwright.shape.curves.ellipse import Ellipse, fraction_at, from_girth, point_at
from hoopwright.source.record import record

LINKS = 100
_STEPS = 60


@record(frozen=True, slots=True)
class TiedRing:
    """A ring of girth 2 pi (mean radius 1). ``line``: (along the long axis, across it) from one end of the
    long axis over the half ring to the other; ``pulls``: of each tie over EI, 0 where it hangs slack;
    ``off``: how far the line lies outside (positive) or inside the ellipse at worst."""

    line: tuple[tuple[float, float], ...]
    pulls: tuple[float, ...]
    off: float


def tied_ring(oval: float, places: tuple[float, ...]) -> TiedRing:
    """The ring of an ellipse ``oval`` times as long as across, with ties at ``places`` along its long axis.

    ``places``: from -1 to 1 of half the long axis. Each tie is as long as the ellipse is wide there.
    """
    ellipse = from_girth(2 * pi, oval)
    active = [True] * len(places)
    while True:
        used = tuple(place for place, on in zip(places, active, strict=True) if on)
        angles, forces = _solve(ellipse, used)
        pulls = iter(forces)
        all_pulls = [next(pulls) if on else 0.0 for on in active]
        slack = [k for k, pull in enumerate(all_pulls) if pull < 0]
        if not slack:
            break
        active[min(slack, key=lambda k: all_pulls[k])] = False
    line = _line(angles)
    return TiedRing(line, tuple(all_pulls), _off(line, ellipse))


def share_of_half(ellipse: Ellipse, place: float) -> float:
    """Share of the half ring's length from the long axis's positive end to a place along that axis (-1 to
    1)."""
    fraction = fraction_at(ellipse, asin(abs(place)))
    return 0.5 - 2 * (fraction if place >= 0 else -fraction)


def _solve(ellipse: Ellipse, places: tuple[float, ...]) -> tuple[list[float], list[float]]:
    """Link angles of the half ring, and the pulls of the ties at ``places``."""
    import numpy as np

    step = pi / LINKS
    at = [share_of_half(ellipse, place) for place in places]
    stations = [LINKS * share for share in at]
    wanted = [point_at(ellipse, 0.25 - share / 2)[1] for share in at]
    counts = np.arange(LINKS)
    shares = np.array([np.clip(station - counts, 0.0, 1.0) for station in [LINKS, *stations]])
    goals = np.array([0.0, *wanted])
    psi = np.array(_ellipse_angles(ellipse))
    forces = np.zeros(len(goals))
    bend = (np.diag(np.full(LINKS, 2.0)) - np.diag(np.ones(LINKS - 1), 1) - np.diag(np.ones(LINKS - 1), -1))
    bend[0, 0] = bend[-1, -1] = 3.0
    ends = np.zeros(LINKS)
    ends[0], ends[-1] = 2 * (pi / 2), 2 * (3 * pi / 2)
    size = LINKS + len(goals)
    for _ in range(_STEPS):
        pulled = forces @ shares
        gradient = (bend @ psi - ends) / step + step * pulled * np.cos(psi)
        misses = step * shares @ np.sin(psi) - goals
        matrix = np.zeros((size, size))
        matrix[:LINKS, :LINKS] = bend / step - np.diag(step * pulled * np.sin(psi))
        border = step * shares * np.cos(psi)
        matrix[LINKS:, :LINKS], matrix[:LINKS, LINKS:] = border, border.T
        change = np.linalg.solve(matrix, -np.concatenate([gradient, misses]))
        damp = min(1.0, 0.5 / max(1e-12, float(np.abs(change[:LINKS]).max())))
        psi = psi + damp * change[:LINKS]
        forces = forces + damp * change[LINKS:]
        if float(np.abs(change[:LINKS]).max()) < 1e-11:
            break
    return [float(angle) for angle in psi], [float(force) for force in forces[1:]]


def _ellipse_angles(ellipse: Ellipse) -> list[float]:
    """Directions of the half ellipse's links, from one end of the long axis over to the other."""
    points = [point_at(ellipse, 0.25 - k / LINKS / 2) for k in range(LINKS + 1)]
    return [
        atan2(y1 - y0, x1 - x0) % (2 * pi) for (x0, y0), (x1, y1) in itertools.pairwise(points)
    ]


def _line(angles: list[float]) -> tuple[tuple[float, float], ...]:
    """Points of the half ring, centred on the middle of the long axis."""
    step = pi / LINKS
    points = [(0.0, 0.0)]
    for angle in angles:
        points.append((points[-1][0] + step * cos(angle), points[-1][1] + step * sin(angle)))
    middle = (points[0][0] + points[-1][0]) / 2
    return tuple((x - middle, y) for x, y in points)


def _off(line: tuple[tuple[float, float], ...], ellipse: Ellipse) -> float:
    """The line's greatest distance beyond the ellipse, or inside it (negative), along rays, m."""
    worst = 0.0
    for x, y in line:
        far = hypot(x, y)
        out = far - far / hypot(x / ellipse.a, y / ellipse.b)
        worst = out if abs(out) > abs(worst) else worst
    return worst
