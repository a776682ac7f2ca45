"""The wished shape: line, hem, top hoop, and how many hoops are placed in what way."""

from __future__ import annotations

import math

from hoopwright.library import body
from hoopwright.source.diagnostic import error
from hoopwright.spec.model import (
    Build,
    GroundPlan,
    Line,
    LineKind,
    PlaceListed,
    ShapeSpec,
    Spacing,
    TableRow,
    Wearer,
)
from hoopwright.spec.reading.corded_shape import read_corded_shape
from hoopwright.spec.reading.ground import read_ground, read_opening
from hoopwright.spec.reading.node import Node, Notebook
from hoopwright.spec.reading.pair import read_pair
from hoopwright.spec.reading.wheel import read_drum

INCH = 0.0254
HAND = 4 * INCH
DEFAULT_SWELL = 1.3
DEFAULT_EXPONENT = 1.6
DEFAULT_RATIO = 1.15
USUAL_DROP = 0.115
"""Drop from hoop to hoop that the number of hoops is chosen for, m: about 4 1/2 in, our choice."""
MOST_BY_DEFAULT = 9
HEM_WITHOUT_STATURE = 6.5 * INCH

_PLACES = ("below_waist", "height", "down_tape")
_LINES: tuple[LineKind, ...] = ("cone", "dome", "bell", "drum", "table")
_SPACINGS: tuple[Spacing, ...] = ("by tape", "level", "widening", "listed", "from hem")


def read_shape(node: Node, wearer: Wearer, build: Build, notes: Notebook) -> ShapeSpec:
    """The wished shape with its defaults; clashing keys are told in ``notes``."""
    if build.cords is not None:
        return read_corded_shape(node, wearer, build, notes)
    if node["length"]:
        notes.tell(error("carrier-clash", node["length"].path, "`length` is that of a corded petticoat",
                         "leave it out: `hem: {off_floor}` says where the lowest hoop hangs", at_key=True))
    plan = read_ground(node["ground_plan"], notes)
    if build.wheel is not None:
        return read_drum(node, build.wheel, notes)
    if plan.pair is not None:
        return read_pair(node, plan, notes)
    line = _line(node["line"], wearer, notes)
    off_floor = node["hem"]["off_floor"].length()
    if off_floor is None:
        off_floor = _hem_off_floor(wearer, notes)
    hoops = node["hoops"]
    listed = tuple(_place(item, notes) for item in hoops["at"].items())
    spacing = _spacing(hoops, bool(listed), notes)
    every = _every(hoops, node["top_hoop"], spacing, notes)
    top = _top_hoop(node["top_hoop"], wearer, listed, spacing == "from hem", notes)
    above = len(listed) + (1 if listed and top is not listed[0] else 0)
    count = hoops["count"].whole()
    if count is None:
        count = _count(wearer, build, top, off_floor, above, every, notes)
    ratio = hoops["ratio"].number()
    if ratio is None:
        ratio = DEFAULT_RATIO
        if spacing == "widening":
            notes.assume("shape.hoops.ratio", ratio, "ratio", "our choice")
    return ShapeSpec(plan, line, top, node["top_hoop"]["girth"].length(), _hem_girth(node, plan, notes),
                     off_floor, count, spacing, ratio, listed,
                     tuple(name.text() or "" for name in hoops["names"].items()),
                     read_opening(node["opening"], notes), every)


def _line(node: Node, wearer: Wearer, notes: Notebook) -> Line:
    kind, power = notes.text(node["kind"], "dome", "the usual line of a round cage"), 1.0
    if kind == "dome":
        power = notes.ratio(node["swell"], DEFAULT_SWELL, "our choice")
    elif kind == "bell":
        power = notes.ratio(node["exponent"], DEFAULT_EXPONENT, "our choice")
    rows = tuple(TableRow(_row_height(row, wearer), row["girth"].length() or 0.0)
                 for row in node["rows"].items())
    return Line(next(known for known in _LINES if known == kind), power, rows)


def _hem_girth(node: Node, plan: GroundPlan, notes: Notebook) -> float:
    """The hem's girth; half hoops may give their reach instead, and then have none unless full hoops hang
    below."""
    girth = node["hem"]["girth"]
    half = plan.half
    if half is not None and half.reach is not None and not half.full:
        if girth:
            notes.tell(error("keys-clash", girth.path,
                             "`girth` and the half hoops' `reach` both say how long the lowest one is",
                             "keep one of them", at_key=True,
                             related=((node["ground_plan"]["reach"].path, "said here too"),)))
        return 0.0
    if half is not None and half.reach is None and (half.full or not node["top_hoop"]["girth"]):
        notes.tell(error("key-missing", node["ground_plan"].path, "nothing says how far the half hoops reach",
                         "add `reach`, or the steels' lengths as `girth` under `top_hoop` and `hem`",
                         at_key=True))
    if half is not None and not girth:
        notes.tell(error("key-missing", node["hem"].path, "`hem` has no `girth`",
                         "add `girth`: girth of the hem hoop", at_key=True))
    return girth.length() or 0.0


def _row_height(row: Node, wearer: Wearer) -> float:
    height = row["height"].length()
    return wearer.side - (row["below_waist"].length() or 0.0) if height is None else height


def _hem_off_floor(wearer: Wearer, notes: Notebook) -> float:
    path = "shape.hem.off_floor"
    if wearer.stature is None:
        return notes.assume(path, HEM_WITHOUT_STATURE, "length",
                            "a hand above the ankle; the hem hoop hangs just above the ankle in common"
                            " practice")
    return notes.assume(path, body.ANKLE_HEIGHT * wearer.stature + HAND, "length",
                        f"ankle height {body.ANKLE_HEIGHT} x stature ({body.SOURCE}) and a hand of 4 in")


def _place(node: Node, notes: Notebook) -> PlaceListed:
    """One stated place; exactly one of the three keys."""
    stated = [key for key in _PLACES if node[key]]
    if not stated:
        notes.tell(error("key-missing", node.path, "this hoop has no place",
                         "write `below_waist`, `height` or `down_tape`"))
    elif len(stated) > 1:
        notes.tell(error("keys-clash", node[stated[1]].path,
                         f"`{stated[0]}` and `{stated[1]}` both say where this hoop lies", "keep one of them",
                         at_key=True, related=((node[stated[0]].path, "said here too"),)))
    first = stated[0] if stated else ""
    return PlaceListed(**{first: node[first].length()} if first else {})


def _spacing(node: Node, listed: bool, notes: Notebook) -> Spacing:
    stated = node["spacing"].text()
    if stated is None:
        stated = notes.assume("shape.hoops.spacing", "listed" if listed else "by tape", "text",
                              "places are listed in `at`" if listed else "equal lengths along the tape")
    elif listed and stated != "listed":
        notes.tell(error("keys-clash", node["spacing"].path,
                         f"`spacing: {stated}` and `at` both place the hoops",
                         "write `spacing: listed`, or leave `at` out",
                         related=((node["at"].path, "places listed"),)))
    elif stated == "listed" and not listed:
        notes.tell(error("key-missing", node.path, "`spacing: listed` wants the places in `at`",
                         "add `at` with one place for each hoop above the hem", at_key=True))
    return next(known for known in _SPACINGS if known == stated)


def _every(node: Node, top: Node, spacing: Spacing, notes: Notebook) -> float:
    """The step of hoops counted from the hem up; 0 for any other spacing."""
    stated = node["every"].length()
    if spacing != "from hem":
        if stated is not None:
            notes.tell(error("keys-clash", node["every"].path,
                             f"`every` counts hoops from the hem, and the spacing is `{spacing}`",
                             "write `spacing: from hem`, or leave `every` out", at_key=True))
        return 0.0
    for key in (*_PLACES, "girth"):
        if top[key]:
            notes.tell(error("keys-clash", top[key].path,
                             f"`spacing: from hem` and `{key}` both place the top hoop",
                             "leave `top_hoop` out: it lies so many steps above the hem", at_key=True,
                             related=((node["spacing"].path, "said here too"),)))
    if stated is None:
        return notes.assume("shape.hoops.every", USUAL_DROP, "length", "about 4 1/2 in; our choice")
    return stated


def _top_hoop(node: Node, wearer: Wearer, listed: tuple[PlaceListed, ...],
              from_hem: bool, notes: Notebook) -> PlaceListed:
    """The top hoop's place: stated, the first of the list, or near the hip."""
    if any(node[key] for key in _PLACES):
        return _place(node, notes)
    if listed:
        return listed[0]
    if from_hem:
        return PlaceListed(below_waist=0.75 * wearer.waist_to_hip)
    return PlaceListed(below_waist=notes.assume(
        "shape.top_hoop.below_waist", 0.75 * wearer.waist_to_hip, "length",
        "three quarters of the way from waist to hip, where a hoop begins to stand off the body; our choice"))


def _count(wearer: Wearer, build: Build, top: PlaceListed, off_floor: float, listed: int,
           every: float, notes: Notebook) -> int:
    """The number of hoops when none is stated."""
    below = 1 if build.band is None else 2
    if listed:
        count = listed + below
        notes.assume("shape.hoops.count", count, "count", "the places listed, and the hem's")
        return count
    full = off_floor + build.hoops.material.section.height / 2 + (build.band.depth if build.band else 0.0)
    drop = top_height(top, wearer, build) - full
    if every:
        count = max(2, math.floor(drop / every + 1e-9) + 1)
        notes.assume("shape.hoops.count", count, "count",
                     "as many steps from the hem as stay below three quarters of the way from waist to hip;"
                     " our choice")
        return count
    gaps = max(1, math.floor(drop / USUAL_DROP + 0.5))
    count = min(MOST_BY_DEFAULT, gaps + below)
    notes.assume("shape.hoops.count", count, "count",
                 "so many that they lie about 4 1/2 in apart; our choice")
    return count


def top_height(place: PlaceListed, wearer: Wearer, build: Build) -> float:
    """Height of a stated place above the floor, m; one down the tape is taken straight down, so too low."""
    if place.height is not None:
        return place.height
    if place.below_waist is not None:
        return wearer.side - place.below_waist
    return wearer.side - build.waistband.width / 2 - (place.down_tape or 0.0)
