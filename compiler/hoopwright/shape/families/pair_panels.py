"""The cloth of side hoops as cut: an outer panel that holds the channels, and an inner one that lies on the hip.

The inner panel follows the side of the body; down the middle of the outer panel it is as far as from the waistband
over the hoops. Where the outer panel's edge is longer than the inner one's it is gathered in.
"""

from __future__ import annotations

from itertools import pairwise
from math import hypot

from hoopwright.shape.model import Panel, Rule, Seam, SideChannel, SidePair
from hoopwright.spec.model import Spec


def gathers(channels: tuple[SideChannel, ...]) -> tuple[float, ...]:
    """What an outer panel's edge is longer than the inner one's above each channel, up to the one before or the
    waistband, m: gathered in there, the channels' ends meet the lines of their ties. Below 0 it is shorter there."""
    rows = [(0.0, channels[0].width, 0.0), *((one.down, one.width, one.inner) for one in channels)]
    return tuple(hypot(b[0] - a[0], (b[1] - a[1]) / 2) - (b[2] - a[2]) for a, b in pairwise(rows))


def side_panels(spec: Spec, pair: SidePair) -> tuple[Panel, ...]:
    """Outer and inner panel, two of each, as cut."""
    edge = pair.channel / 2 + spec.allowances.seam
    return (_outer(spec, pair, edge), _inner(spec, pair, edge))


def _outer(spec: Spec, pair: SidePair, edge: float) -> Panel:
    """The panel with the channels, each a line ruled across it; ``edge`` m of cloth below the lowest."""
    seam, slant, widest = spec.allowances.seam, pair.channels[-1].down, max(one.width for one in pair.channels)
    middle = widest / 2 + seam
    lines = [(edge + slant - one.down, one) for one in pair.channels]
    rows = [(0.0, pair.channels[-1].width), *((y, one.width) for y, one in reversed(lines)),
            (edge + slant + seam, pair.channels[0].width)]
    right = [(middle + width / 2 + seam, y) for y, width in rows]
    left = [(middle - width / 2 - seam, y) for y, width in reversed(rows)]
    high, corner = rows[-1][0], len(rows)
    rules = [Rule(" and ".join(one.hoops), ((middle - one.width / 2, y), (middle + one.width / 2, y)), y)
             for y, one in lines]
    if pair.pocket:
        top = high - seam - spec.build.waistband.width
        rules.append(Rule("pocket slit", ((middle, top - pair.pocket), (middle, top)), top - pair.pocket))
    return Panel(
        "outer panel",
        2,
        pair.material,
        (left[-1], *right, *left[:-1]),
        widest + 2 * seam,
        high,
        "up",
        (Seam((1, corner), "inner panel", seam), Seam((corner, corner + 1), "waistband", seam)),
        tuple(rules),
    )


def _inner(spec: Spec, pair: SidePair, edge: float) -> Panel:
    """The panel on the hip, with a line for every tie."""
    seam = spec.allowances.seam
    wide, deep = pair.front_to_back + 2 * seam, pair.channels[-1].inner + edge + seam
    rows = [(deep - seam - one.inner, one) for one in pair.channels]
    return Panel(
        "inner panel",
        2,
        pair.material,
        ((0.0, 0.0), (wide, 0.0), (wide, deep), (0.0, deep)),
        wide,
        deep,
        "up",
        (Seam((1, 2), "outer panel", seam), Seam((2, 3), "waistband", seam)),
        tuple(Rule(f"ties {' and '.join(one.hoops)}", ((seam, y), (wide - seam, y)), y) for y, one in rows),
    )
