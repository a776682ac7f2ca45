"""What cannot be built: sizes and places that contradict each other."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise

from hoopwright.source.diagnostic import Finding, Path, error
from hoopwright.spec.model import Build, PlaceListed, ShapeSpec, Wearer
from hoopwright.spec.outline import top_height

INCH = 0.0254
BETWEEN_HOOPS = 0.5 * INCH
"""Least room between two hoops for casing and stitches, m: our rule."""

_HEM = ("shape", "hem", "girth")
_TOP = ("shape", "top_hoop")
_COUNT = ("shape", "hoops", "count")


def range_findings(wearer: Wearer, shape: ShapeSpec, build: Build) -> tuple[Finding, ...]:
    """Every contradiction between measures; where one follows from another, only the first."""
    found = [*_not_yet(shape), *_girths(wearer, shape), *_names(shape), *_rows(shape), *_band(build)]
    heights = list(_heights(wearer, shape, build))
    found += heights
    if not heights:
        found += [*_listed(wearer, shape, build), *_room(wearer, shape, build)]
    return tuple(found)


def _not_yet(shape: ShapeSpec) -> Iterator[Finding]:
    if shape.ground_plan != "round":
        yield error("not-yet", ("shape", "ground_plan"), f"the ground plan `{shape.ground_plan}` is not"
        " built yet",
                    "write `ground_plan: round`; the others come later")
    if shape.line.kind == "drum":
        yield error("not-yet", ("shape", "line", "kind"), "the line `drum` and its wheel are not built yet",
                    "take `cone`, `dome`, `bell` or `table`; the drum comes later")


def _girths(wearer: Wearer, shape: ShapeSpec) -> Iterator[Finding]:
    if shape.line.kind == "table":
        return
    top = shape.top_girth
    if shape.hem_girth <= wearer.waist:
        yield error("hem-smaller-than-waist", _HEM, "the hem is no wider than the waist",
                    f"a {shape.line.kind} grows from the waist to the hem: check both girths and their units",
                    related=((("wearer", "waist"), "the waist"),))
    elif top is not None and top > shape.hem_girth:
        yield error("top-wider-than-hem", (*_TOP, "girth"), "the top hoop is wider than the hem",
                    f"a {shape.line.kind} grows from the top hoop to the hem; your own rows go under"
                    " `line: {kind: table}`", related=((_HEM, "the hem"),))


def _names(shape: ShapeSpec) -> Iterator[Finding]:
    path: Path = ("shape", "hoops", "names")
    if len(shape.names) > shape.count:
        yield error("names-too-many", path, f"{len(shape.names)} names are given to {shape.count} hoops",
                    "leave out the last names, or raise `count`")
    taken = {f"H{index + 1}": index for index in range(shape.count)
             if index >= len(shape.names) or not shape.names[index]}
    for index, name in enumerate(shape.names):
        if name and name in taken:
            yield error("name-twice", (*path, index), f"two hoops are called `{name}`",
                        "give each hoop a name of its own; hoops without one are H1, H2 ... from the top")
        taken[name] = index


def _rows(shape: ShapeSpec) -> Iterator[Finding]:
    for index, (above, below) in enumerate(pairwise(shape.line.rows)):
        if below.height >= above.height:
            yield error("rows-not-ordered", ("shape", "line", "rows", index + 1),
                        "this row is not below the row before it",
                        "write the rows from the top down", related=(
                            (("shape", "line", "rows", index), "the row before"),))


def _band(build: Build) -> Iterator[Finding]:
    if build.tapes.to == "band" and build.band is None:
        yield error("band-missing", ("build", "tapes", "to"), "the tapes end at a hem band, and there is"
        " none",
                    "add `build: {hem_band: {depth: ...}}`, or write `to: hem`")
    if build.band and build.band.depth <= build.hoops.material.section.height:
        yield error("band-too-shallow", ("build", "hem_band", "depth"),
                    "the hem band is no deeper than its hoops are high",
                    "the depth is measured between the centres of the two lowest hoops")


def full_height(shape: ShapeSpec, build: Build) -> float:
    """Height of the lowest hoop that the spacing reaches, m: the band's upper hoop, else the hem hoop."""
    hem = shape.hem_off_floor + build.hoops.material.section.height / 2
    return hem + (build.band.depth if build.band else 0.0)


def _heights(wearer: Wearer, shape: ShapeSpec, build: Build) -> Iterator[Finding]:
    place = _top_path(shape)
    top, full = top_height(shape.top_hoop, wearer, build), full_height(shape, build)
    if build.band and shape.count < 3:
        yield error("hoops-too-few", _COUNT, "a hem band takes two hoops, and none is left above it",
                    "take at least 3 hoops, or leave the hem band out")
    elif top >= wearer.side:
        yield error("top-above-waist", place, "the top hoop lies at the waistline or above it",
                    "the first hoop hangs below the waist, usually 5 to 6 in",
                    related=((("wearer", "waist_height"), "the waist's height"),))
    elif top <= full:
        lower = "the hem band" if build.band else "the hem hoop"
        yield error("top-below-hem", place, f"the top hoop lies no higher than {lower}",
                    "check the waist's height, the hem's `off_floor` and how far the top hoop is below the"
                    " waist",
                    related=((("shape", "hem"), "the hem"),))


def _top_path(shape: ShapeSpec) -> Path:
    if shape.listed:
        return ("shape", "hoops", "at", 0)
    key = next((key for key in ("below_waist", "height", "down_tape")
                if getattr(shape.top_hoop, key) is not None), "below_waist")
    return (*_TOP, key)


def _listed(wearer: Wearer, shape: ShapeSpec, build: Build) -> Iterator[Finding]:
    """The maker's own places: as many as the count wants, and each below the last."""
    if not shape.listed:
        return
    at: Path = ("shape", "hoops", "at")
    wanted = shape.count - (2 if build.band else 1)
    if len(shape.listed) != wanted:
        below = "the hem band's two hoops" if build.band else "the hem hoop"
        yield error("hoop-count-mismatch", at, f"{len(shape.listed)} places are listed, and {wanted} are"
        " wanted",
                    f"`count: {shape.count}` includes {below}, whose place is known",
                    related=((_COUNT, "the count"),))
    for index, (above, below_it) in enumerate(pairwise(shape.listed)):
        if not _is_below(above, below_it, wearer):
            yield error("places-not-ascending", (*at, index + 1), "this hoop does not lie below the one"
            " before it",
                        "list the hoops from the top down", related=(((*at, index), "the hoop before"),))
    last = shape.listed[-1]
    if last.down_tape is None and top_height(last, wearer, build) <= full_height(shape, build):
        yield error("top-below-hem", (*at, len(shape.listed) - 1), "this hoop lies no higher than the hem",
                    "the hem hoop has its place already; list only those above it",
                    related=((("shape", "hem"), "the hem"),))


def _is_below(above: PlaceListed, below: PlaceListed, wearer: Wearer) -> bool:
    """Whether the second place is lower; places that cannot be compared before the shape is known pass."""
    if above.down_tape is not None and below.down_tape is not None:
        return below.down_tape > above.down_tape
    if above.down_tape is not None or below.down_tape is not None:
        return True
    heights = [wearer.side - (place.below_waist or 0.0) if place.height is None else place.height
               for place in (above, below)]
    return heights[1] < heights[0]


def _room(wearer: Wearer, shape: ShapeSpec, build: Build) -> Iterator[Finding]:
    """Whether so many hoops fit between the top hoop and the hem, measured along a straight side."""
    if shape.listed:
        return
    gaps = shape.count - (2 if build.band else 1)
    drop = top_height(shape.top_hoop, wearer, build) - full_height(shape, build)
    flare = (shape.hem_girth - (shape.top_girth or wearer.waist)) / (2 * math.pi)
    least = build.hoops.material.section.height + BETWEEN_HOOPS
    if gaps * least > math.hypot(drop, flare):
        most = int(math.hypot(drop, flare) / least) + (2 if build.band else 1)
        yield error("hoops-do-not-fit", _COUNT, f"{shape.count} hoops do not fit between the top hoop and"
        " the hem",
                    f"at most about {most} fit with room for their casings; period cages had up to 30 light"
                    " ones")
