"""The petticoat whose cloth carries the hoops: its panels, its channels up from the hem, its flounces.

The cloth runs straight from the waist to the first hoop and from hoop to hoop, as a round of the mean waist's
girth would; lengths down it are slants of cones. A gore is a piece of a cone's mantle, as wide as the
girth over the number of gores, seams added: its lines across are arcs about the cone's tip. Between top and
hem its sides are straight; where a hoop stands out beyond that, the gore widens to the hoop.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate, pairwise
from math import atan2, hypot, inf, pi, sqrt

from hoopwright.shape.families import problems
from hoopwright.shape.impossible import Impossible
from hoopwright.shape.lengths import CORD_ENDS
from hoopwright.shape.lengths import channel as channel_width
from hoopwright.shape.model import XY, Channel, Flounce, Panel, Petticoat, Rule, Seam
from hoopwright.shape.tapes import Level
from hoopwright.shape.waist import Waist
from hoopwright.source.quantity import length_text
from hoopwright.source.record import record
from hoopwright.spec.model import ChannelBuild, PanelBuild, Spec

_STRAIGHT = 1e-7
_POINTS = 8


@record(frozen=True, slots=True)
class _Line:
    """A line across the cloth: distance ``down`` from the waist's line, girth of the cloth, m."""

    down: float
    girth: float


def petticoat_of(spec: Spec, waist: Waist, levels: Sequence[Level]) -> tuple[Petticoat, Panel]:
    """The petticoat and its panel. Raises :class:`Impossible`."""
    panels, channels = spec.build.panels, spec.build.channels
    if panels is None or channels is None:
        raise ValueError("a petticoat has panels and channels")
    girths = [level.outline.length for level in levels]
    lines = _lines(spec, panels, waist, [level.height for level in levels], girths)
    slant = lines[-1].down
    flat = channel_width(spec.build.hoops.material.section)
    edge = flat / 2
    strips = _channels(spec, channels, levels, lines[1:], flat)
    whole = _cone(lines)
    drawn = panels.cord is not None
    cloth = Petticoat(
        panels.kind, panels.count, panels.material.name, slant,
        atan2(girths[-1] - spec.wearer.waist, 2 * pi * (waist.side_start[0] - levels[-1].height)),
        lines[0].girth, lines[-1].girth, edge, head(spec, drawn), sum(one.takes for one in strips),
        _rise(whole, lines[-1].girth / panels.count), panels.placket, channels.feed_gap,
        lines[0].girth + CORD_ENDS if drawn else 0.0, panels.cord.name if panels.cord else "", strips,
        channels.material.name if channels.material else "", _flounces(spec, lines, edge),
    )
    return cloth, _panel(spec, cloth, lines)


def _lines(spec: Spec, panels: PanelBuild, waist: Waist, heights: Sequence[float],
           girths: Sequence[float]) -> list[_Line]:
    """The waist's line and each hoop's, from the top: distance down the cloth and the cloth's girth."""
    stations = [(waist.side_start[0], spec.wearer.waist / (2 * pi)),
                *((z, girth / (2 * pi)) for z, girth in zip(heights, girths, strict=True))]
    runs = [hypot(a[0] - b[0], a[1] - b[1]) for a, b in pairwise(stations)]
    downs = [0.0, *accumulate(runs)]
    own = panels.gore
    top, low = (panels.top, girths[-1]) if own is None else (own[0] * panels.count, own[1] * panels.count)
    straight = [top + (low - top) * down / downs[-1] for down in downs]
    wanted = [0.0, *girths[:-1], 0.0]
    return [_Line(down, max(even, girth)) for down, even, girth in zip(downs, straight, wanted, strict=True)]


def head(spec: Spec, drawn: bool) -> float:
    """What a panel needs above the waist's line at the side: to be levelled where the waist is higher, and to
    be sewn in, or turned over a drawstring."""
    wearer, seam = spec.wearer, spec.allowances.seam
    higher = max(wearer.waist_heights) - wearer.side
    return higher + (seam + spec.build.waistband.width if drawn else seam)


def _channels(spec: Spec, build: ChannelBuild, levels: Sequence[Level], lines: Sequence[_Line],
              flat: float) -> tuple[Channel, ...]:
    """The channel of every hoop, from the top."""
    goods, turning, height = build.material, build.turning, 0.0
    if goods is not None:
        height = flat + 2 * turning if goods.kind == "cloth" else goods.width
        if height < flat:
            raise Impossible(problems.casing_narrow(length_text(height, spec.units),
                                                    length_text(flat, spec.units)))
    bottom = lines[-1].down + flat / 2
    return tuple(
        Channel(level.id, bottom - line.down, flat, 2 * flat if goods is None else 0.0, line.girth,
                0.0 if goods is None else line.girth + 2 * spec.allowances.seam, height)
        for level, line in zip(levels, lines, strict=True)
    )


def _flounces(spec: Spec, lines: Sequence[_Line], edge: float) -> tuple[Flounce, ...]:
    """The flounces from the hem up; each is as long as its fullness times the girth at its lower edge."""
    found, slant = [], lines[-1].down
    for at, build in enumerate(spec.build.flounces, start=1):
        if build.above_hem + build.depth > slant:
            raise Impossible(problems.flounces_too_long(slant, spec.units))
        girth = _girth(lines, slant - build.above_hem)
        height = build.cut_height or build.depth + 2 * spec.allowances.seam
        found.append(Flounce(f"flounce {at}", build.above_hem + build.depth + edge, girth, build.depth,
                             girth * build.fullness, height, build.material.name))
    return tuple(found)


def _girth(lines: Sequence[_Line], down: float) -> float:
    """Girth of the cloth at a distance down it, m."""
    for above, below in pairwise(lines):
        if down <= below.down:
            share = (down - above.down) / (below.down - above.down)
            return above.girth + (below.girth - above.girth) * share
    return lines[-1].girth


def _cone(lines: Sequence[_Line]) -> float:
    """From the tip of the cone through the lowest two lines down to the hem's line, m; inf where it does not
    widen."""
    above, below = lines[-2:]
    wider = below.girth - above.girth
    return inf if wider < _STRAIGHT else below.girth * (below.down - above.down) / wider


def _rise(radius: float, width: float) -> float:
    """How much an arc of that radius rises from the middle of a panel to its seams, m."""
    return 0.0 if radius == inf else radius - sqrt(max(radius**2 - width**2 / 4, 0.0))


def _panel(spec: Spec, cloth: Petticoat, lines: Sequence[_Line]) -> Panel:
    """One gore or breadth, as cut: corners from the lower left up its right side and down its left."""
    seam, count = spec.allowances.seam, cloth.count
    tucks = [0.0, *accumulate(channel.takes for channel in reversed(cloth.channels))]
    low = seam + cloth.edge
    levels = [(low + (cloth.slant - line.down) + (tucks[k] if k < len(lines) - 1 else tucks[-1]),
               line.girth / count + 2 * seam) for k, line in enumerate(reversed(lines))]
    levels = _straightened(levels)
    levels = [(0.0, _beyond(levels[1], levels[0], 0.0)), *levels]
    levels.append((levels[-1][0] + cloth.head, _beyond(levels[-2], levels[-1], levels[-1][0] + cloth.head)))
    sides = [levels[0], *levels[2:-2], levels[-1]] if len(levels) > 4 else [levels[0], levels[-1]]
    wide = max(width for _, width in sides)
    middle = wide / 2
    outline = (*((middle - w / 2, y) for y, w in sides[:1]), *((middle + w / 2, y) for y, w in sides),
               *((middle - w / 2, y) for y, w in reversed(sides[1:])))
    right = len(sides)
    part = "gore" if cloth.kind == "gores" else "breadth"
    return Panel(
        part, count, cloth.material, tuple(outline), wide, sides[-1][0], "up",
        (Seam((1, right), f"next {part}", seam), Seam((right + 1, 0), f"next {part}", seam),
         Seam((right, right + 1), "drawstring edge" if cloth.drawstring else "waistband", cloth.head)),
        tuple(_rule(cloth, lines, k, middle, low, tucks) for k in range(len(cloth.channels))),
    )


def _straightened(levels: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """(height, width) from the hem up without those that lie on the straight side between their
    neighbours."""
    kept = levels[:1]
    for k in range(1, len(levels) - 1):
        if abs(_beyond(kept[-1], levels[-1], levels[k][0]) - levels[k][1]) > _STRAIGHT:
            kept.append(levels[k])
    return [*kept, levels[-1]]


def _beyond(a: tuple[float, float], b: tuple[float, float], y: float) -> float:
    """Width at a height on the straight line through two levels."""
    return a[1] + (b[1] - a[1]) * (y - a[0]) / (b[0] - a[0])


def _rule(cloth: Petticoat, lines: Sequence[_Line], k: int, middle: float, low: float,
          tucks: Sequence[float]) -> Rule:
    """A channel's middle line on the flat panel, from seam to seam: an arc about the cone's tip; on a panel
    to be tucked, the fold of the tuck."""
    channel, line = cloth.channels[k], lines[k + 1]
    radius = _cone(lines[: k + 2])
    half = line.girth / cloth.count / 2
    below = tucks[len(cloth.channels) - 1 - k]
    fold = 0.75 * channel.takes  # the stitches lie half a width above its middle, the fold a width above them
    at = low - cloth.edge + channel.up + below + fold
    points: list[XY] = []
    for step in range(_POINTS + 1):
        x = half * (2 * step / _POINTS - 1)
        points.append((middle + x, at + _rise(radius, 2 * abs(x))))
    return Rule(channel.hoop, tuple(points), at)
