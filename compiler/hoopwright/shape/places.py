"""Where the hoops are: heights and girths from the top hoop to the hem.

``by tape``: equal lengths along the side profile, measured from hoop to hoop on the line;
``widening``: each such length is ``ratio`` times the one above it; ``level``: equal drops;
``from hem``: so many steps up the side from the hem;
``listed``: as the maker says, a distance ``down_tape`` being added up from hoop to hoop from the
waistband's lower edge at the side.
"""

from __future__ import annotations

from functools import partial
from itertools import pairwise
from math import hypot

from hoopwright.shape import problems
from hoopwright.shape.curves.root import bracketed_root
from hoopwright.shape.curves.steps import Profile, SidePoint, chord_steps, step_down
from hoopwright.shape.ground import Ground, ground_of
from hoopwright.shape.impossible import Impossible
from hoopwright.shape.line import GirthLine, table_line
from hoopwright.shape.waist import Waist
from hoopwright.source.diagnostic import Path
from hoopwright.source.record import record
from hoopwright.spec.model import PlaceListed, Spec


@record(frozen=True, slots=True)
class Places:
    """Hoop heights (centre lines) and girths from the top, m, with the line and the ground plan they lie
    on."""

    heights: tuple[float, ...]
    girths: tuple[float, ...]
    line: GirthLine
    ground: Ground


def hem_heights(spec: Spec) -> tuple[float, float | None]:
    """Heights of the hem hoop's centre line and of the band's upper hoop (None without a band), m."""
    hem = spec.shape.hem_off_floor + spec.build.hoops.material.section.height / 2
    return hem, None if spec.build.band is None else hem + spec.build.band.depth


def place_hoops(spec: Spec, waist: Waist) -> Places:
    """Heights and girths of all hoops. Raises :class:`Impossible`."""
    hem, upper = hem_heights(spec)
    lowest = hem if upper is None else upper
    fixed = 1 if upper is None else 2
    if spec.shape.count < fixed:
        raise Impossible(problems.band_wants_two())
    line, top, ground = _line_and_top(spec, waist, hem, upper)
    if spec.shape.count == fixed:
        above: tuple[float, ...] = ()
    elif spec.shape.spacing == "from hem":
        above = _from_hem(spec, _profile(ground, line), lowest, waist.side_start[0], spec.shape.count - fixed)
    elif spec.shape.spacing == "listed":
        above = _listed(spec, waist, _profile(ground, line), top, lowest)
    else:
        if top <= lowest:
            raise Impossible(problems.top_below_hem(upper is not None))
        first = ground.reach(line.girth(top) if ground.top_girth is None else ground.top_girth, top)
        above = _spaced(spec, _profile(ground, line), (top, first), lowest, spec.shape.count - fixed)
    heights = (*above, hem) if upper is None else (*above, upper, hem)
    if heights[0] >= waist.side_start[0]:
        raise Impossible(problems.top_above_band())
    girths = [line.girth(height) for height in heights]
    girths[-1] = ground.hem_girth
    if ground.top_girth is not None and above:
        girths[0] = ground.top_girth
    return Places(heights, tuple(girths), line, ground)


def _line_and_top(
    spec: Spec, waist: Waist, hem: float, upper: float | None
) -> tuple[GirthLine, float, Ground]:
    """The line, the top hoop's height, and the ground plan between it and the hem."""
    shape, start = spec.shape, waist.side_start
    lowest = hem if upper is None else upper
    ground = ground_of(spec, waist, None, hem)
    at_top = ("shape", "top_hoop")
    if ground.top_girth is None:
        line = _line(spec, ground, (start[0], spec.wearer.waist), hem, upper)
        top = _height_of(shape.top_hoop, waist, start, 0.0, _profile(ground, line), lowest, at_top)
        return line, top, ground_of(spec, waist, top, hem)
    far = ground.reach(ground.top_girth, start[0])
    top = _height_of(shape.top_hoop, waist, start, 0.0, lambda _: far, lowest, at_top)
    if top <= lowest and shape.count > (1 if upper is None else 2):
        raise Impossible(problems.top_below_hem(upper is not None))
    return (
        _line(spec, ground, (top, ground.top_girth), hem, upper), top, ground_of(spec, waist, top, hem)
    )


def _line(
    spec: Spec, ground: Ground, anchor: SidePoint, hem: float, upper: float | None
) -> GirthLine:
    """The line from an anchor (height, girth) to the hoop of full girth."""
    shape = spec.shape
    kind = shape.line.kind
    full = upper if upper is not None and kind in ("dome", "drum") else hem
    if anchor[0] <= full:
        raise Impossible(problems.top_below_hem(upper is not None))
    if kind == "table":
        return _table(spec, ground, anchor, hem)
    widens = kind != "drum" and shape.ground_plan.half is None
    if widens and ground.hem_girth <= anchor[1]:
        raise Impossible(problems.hem_not_wider())
    return GirthLine(kind, shape.line.power, anchor[0], anchor[1], full, ground.hem_girth)


def _table(spec: Spec, ground: Ground, anchor: SidePoint, hem: float) -> GirthLine:
    """The line through the maker's rows: those below a top hoop of stated girth, else all."""
    shape, end = spec.shape, ground.hem_girth
    rows = shape.line.rows
    for index, (above, below) in enumerate(pairwise(rows), start=1):
        if below.height >= above.height:
            raise Impossible(problems.table_not_falling(index))
    if ground.top_girth is not None:
        rows = tuple(row for row in rows if row.height < anchor[0])
        line = table_line(rows, anchor, (hem, end)) if rows else None
    else:
        top = _stated_height(spec)
        bare = top is not None and top <= rows[0].height
        line = table_line(rows, anchor, (hem, end), bare)
    if line is None:
        line = GirthLine("cone", 1.0, anchor[0], anchor[1], hem, end)
    if abs(line.girth(hem) - end) > spec.allowances.hoop_tolerance:
        raise Impossible(problems.table_hem_differs(len(shape.line.rows) - 1))
    return line


def _stated_height(spec: Spec) -> float | None:
    """The top hoop's height where it is stated, not stepped down the tape."""
    shape = spec.shape
    place = shape.listed[0] if shape.spacing == "listed" and shape.listed else shape.top_hoop
    if place.height is not None:
        return place.height
    return None if place.below_waist is None else spec.wearer.side - place.below_waist


def _profile(ground: Ground, line: GirthLine) -> Profile:
    return lambda height: ground.reach(line.girth(height), height)


def _height_of(
    place: PlaceListed, waist: Waist, last: SidePoint, run: float, profile: Profile, lowest: float, path: Path
) -> float:
    """Height of a stated place; ``run`` is the length down the tape already used up at ``last``."""
    if place.height is not None:
        return place.height
    if place.below_waist is not None:
        return waist.side - place.below_waist
    length = (place.down_tape or 0.0) - run
    found = step_down(profile, last, length, lowest) if length > 0 else None
    if found is None:
        raise Impossible(
            problems.down_tape_too_far(path) if length > 0 else problems.out_of_order(_index(path))
        )
    return found


def _index(path: Path) -> int:
    return path[-1] if isinstance(path[-1], int) else 0


def _listed(spec: Spec, waist: Waist, profile: Profile, top: float, lowest: float) -> tuple[float, ...]:
    """Heights of the hoops above the hem (and the band's upper hoop), from the maker's list.

    The list may begin with the top hoop or with the one below it.
    """
    shape = spec.shape
    wanted = shape.count - (1 if spec.build.band is None else 2)
    if len(shape.listed) not in (wanted, wanted - 1):
        raise Impossible(problems.listed_count(len(shape.listed), wanted))
    heights: list[float] = []
    last, run = waist.side_start, 0.0
    if len(shape.listed) == wanted - 1:
        heights.append(top)
        last, run = _advance(last, run, (top, profile(top)))
    for index, place in enumerate(shape.listed):
        height = _height_of(place, waist, last, run, profile, lowest, (*problems.HOOPS, "at", index))
        if height <= lowest:
            raise Impossible(
                problems.top_below_hem(spec.build.band is not None)
                if not heights
                else problems.out_of_order(index)
            )
        if heights and height >= heights[-1]:
            raise Impossible(problems.out_of_order(index))
        heights.append(height)
        last, run = _advance(last, run, (height, profile(height)))
    return tuple(heights)


def _advance(last: SidePoint, run: float, point: SidePoint) -> tuple[SidePoint, float]:
    return point, run + hypot(last[0] - point[0], last[1] - point[1])


def _from_hem(spec: Spec, profile: Profile, lowest: float, most: float, above: int) -> tuple[float, ...]:
    """Heights of the hoops above the lowest one, each one step up the side from the one below it."""
    heights: list[float] = []
    at, step = lowest, spec.shape.every
    for _ in range(above):
        start = (at, profile(at))
        if hypot(most - at, profile(most) - start[1]) <= step:
            raise Impossible(problems.steps_past_waist(spec.shape.count, spec.shape.count - above + len(heights)))
        at = bracketed_root(partial(_past, profile, start, step), at, min(most, at + step))
        heights.append(at)
    return tuple(reversed(heights))


def _past(profile: Profile, start: SidePoint, step: float, height: float) -> float:
    """How much further than a step a height on the profile lies from a point, m."""
    return hypot(height - start[0], profile(height) - start[1]) - step


def _spaced(
    spec: Spec, profile: Profile, start: SidePoint, lowest: float, above: int
) -> tuple[float, ...]:
    """Heights of the hoops above the lowest one by rule: ``above`` of them, the first at ``start``."""
    top = start[0]
    if spec.shape.spacing == "level":
        return tuple(top - (top - lowest) * k / above for k in range(above))
    ratio = spec.shape.ratio if spec.shape.spacing == "widening" else 1.0
    shares = [ratio**k for k in range(above)]
    return (top, *chord_steps(profile, start, (lowest, profile(lowest)), shares))
