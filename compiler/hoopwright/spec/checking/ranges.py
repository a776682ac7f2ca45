"""Measures that contradict each other, as far as that shows before anything is drawn.

The shape stage checks all places exactly and uses the same codes; here they are told together with
whatever else is wrong with the spec.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from math import pi

from hoopwright.source.diagnostic import Finding, Path, error, warning
from hoopwright.source.quantity import Units, length_text
from hoopwright.spec.model import Build, ShapeSpec, Wearer
from hoopwright.spec.reading.corded_shape import corded_ranges

_OTHERS = re.compile(r"[TSC][1-9][0-9]*|casing .*|waistband|drawstring|cage")
"""What a plan calls parts that are no hoops, where a hoop of that name would be taken for one of them."""
_HEM = ("shape", "hem", "girth")
_TOP = ("shape", "top_hoop")


def range_findings(wearer: Wearer, shape: ShapeSpec, build: Build, units: Units) -> tuple[Finding, ...]:
    """Every contradiction between measures; where one follows from another, only the first."""
    if build.cords is not None:
        return tuple(corded_ranges(wearer, shape))
    if build.wheel is not None or build.sides is not None:
        return tuple(_names(shape))
    if shape.line.kind == "drum":
        return (error("carrier-clash", ("shape", "line", "kind"), "a drum hangs from a wheel, and there"
                                                                  " is none",
                      "write `carried_by: wheel` and `wheel: {width: 36 in}` under `build`"),)
    return (*_not_yet(shape, build), *_girths(wearer, shape, units), *_names(shape),
            *_top_hoop(wearer, shape, build, units), *_open(shape, build))


def _not_yet(shape: ShapeSpec, build: Build) -> Iterator[Finding]:
    if build.carried_by == "channels" and shape.ground_plan.kind not in ("round", "pair"):
        yield error("not-yet", ("shape", "ground_plan"),
                    "a petticoat with channels is drawn with a round ground plan only",
                    "write `ground_plan: round`, or let tapes carry the hoops")


def _girths(wearer: Wearer, shape: ShapeSpec, units: Units) -> Iterator[Finding]:
    """A line that grows downward ends wider than it begins, and wider than the hips."""
    if shape.ground_plan.half is not None:
        return
    if wearer.waist < shape.hem_girth <= wearer.hip:
        across = length_text(shape.hem_girth, units)
        yield warning("hem-unlikely", _HEM, "the hem hoop is no larger round than the hips",
                      f"a girth goes all round the hoop: if {across} is its width, write `girth:"
                      f" {length_text(shape.hem_girth * pi, units)}`", related=(
                          (("wearer", "hip"), "the hips"),))
    if shape.line.kind == "table":
        return
    top = shape.top_girth
    if shape.hem_girth <= wearer.waist:
        yield error("hem-not-wider", _HEM, "the hem is not wider than the waist",
                    f"a {shape.line.kind} widens from the waist to the hem: check both girths and units",
                    related=((("wearer", "waist"), "the waist"),))
    elif top is not None and shape.hem_girth <= top:
        yield error("hem-not-wider", _HEM, "the hem is not wider than the top hoop",
                    f"a {shape.line.kind} widens from the top hoop to the hem; for any other line write your"
                    " own rows under `line: {kind: table}`", related=(((*_TOP, "girth"), "the top hoop"),))


def _open(shape: ShapeSpec, build: Build) -> Iterator[Finding]:
    """Open hoops have closed ones below them, half hoops have no opening, a hem band joins closed hoops."""
    closed = 1 if build.band is None else 2
    opening, half = shape.opening, shape.ground_plan.half
    if opening is not None and half is not None:
        yield error("opening-with-half-hoops", ("shape", "opening"),
                    "half hoops are open in front already", "leave `opening` out", at_key=True,
                    related=((("shape", "ground_plan"), "half hoops"),))
    elif opening is not None and opening.hoops > shape.count - closed:
        yield error("opening-too-deep", ("shape", "opening", "hoops"),
                    f"{opening.hoops} of {shape.count} hoops are open, which leaves too few closed",
                    f"at most {shape.count - closed} can be open here: the hem hoop, and the hem band's two,"
                    " stay closed")
    if half is not None and build.band is not None and half.full < 2:
        yield error("band-with-half-hoops", ("build", "hem_band"),
                    "a hem band joins two full hoops, and half hoops are open",
                    "leave `hem_band` out, or take two `full` hoops", at_key=True,
                    related=((("shape", "ground_plan"), "half hoops"),))
    if half is not None and half.full > shape.count - 1:
        yield error("opening-too-deep", ("shape", "ground_plan", "full", "count"),
                    f"{half.full} of {shape.count} hoops are full, which leaves no half hoop",
                    "take fewer full hoops, or a round or oval plan")
    if build.lacing is not None and half is None:
        yield error("lacing-without-half-hoops", ("build", "lacing"),
                    "a lacing draws the ends of half hoops together, and there are none",
                    "leave `lacing` out, or take `ground_plan: {kind: half, ...}`", at_key=True)


def _names(shape: ShapeSpec) -> Iterator[Finding]:
    """Own names are as many as the hoops at most, no two hoops share one, and none is a tape's or a spoke's."""
    path: Path = ("shape", "hoops", "names")
    if len(shape.names) > shape.count:
        yield error("names-too-many", path, f"{len(shape.names)} names are given to {shape.count} hoops",
                    "leave out the last names, or raise `count`")
    unnamed = {f"H{index + 1}" for index in range(shape.count)
               if index >= len(shape.names) or not shape.names[index]}
    for index, name in enumerate(shape.names):
        if name and (name in unnamed or name in shape.names[:index]):
            yield error("name-twice", (*path, index), f"two hoops are called `{name}`",
                        "give each hoop a name of its own; hoops without one are H1, H2 ... from the top")
        elif _OTHERS.fullmatch(name):
            yield error("name-twice", (*path, index), f"`{name}` is what the plan calls another part",
                        f"give the hoop another name, such as `{name} hoop`")


def _top_hoop(wearer: Wearer, shape: ShapeSpec, build: Build, units: Units) -> Iterator[Finding]:
    """The top hoop lies between the waistband and the hem; one stated down the tape is left to the shape."""
    place = shape.top_hoop
    if shape.listed or shape.every or place.down_tape is not None:
        return
    key = "below_waist" if place.height is None else "height"
    top = wearer.side - (place.below_waist or 0.0) if place.height is None else place.height
    lowest = shape.hem_off_floor + build.hoops.material.section.height / 2
    if build.band is not None:
        lowest += build.band.depth
        if shape.count == 2:
            return
    if top >= wearer.side - build.waistband.width / 2:
        yield error("top-hoop-above-waistband", (*_TOP, key),
                    "the top hoop is not below the waistband's lower edge",
                    "the first hoop usually hangs 5 to 6 in below the waist",
                    related=((("wearer", "waist_height"), "the waist's height"),))
    elif top <= lowest:
        under = "the hem hoop" if build.band is None else "the hem band's upper hoop"
        yield error("top-hoop-below-hem", (*_TOP, key), f"the top hoop is not above {under}",
                    f"there are {length_text(wearer.side - lowest, units)} from the waist down to {under}: write"
                    " less than that, or check the waist's height and the hem's `off_floor`",
                    related=((("shape", "hem"), "the hem"),))
