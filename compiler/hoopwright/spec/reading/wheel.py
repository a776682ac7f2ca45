"""The wheel of a drum farthingale: rings and spokes at the waist, their roll and cover, and its shape."""

from __future__ import annotations

from collections.abc import Callable
from math import pi

from hoopwright.library.model import Goods
from hoopwright.source.diagnostic import error
from hoopwright.spec.model import GroundPlan, Line, PlaceListed, ShapeSpec, WheelBuild
from hoopwright.spec.reading.node import Node, Notebook

INCH = 0.0254
DEGREE = pi / 180
PRACTICE = "common practice, no source"
Article = Callable[[Node, str, str], Goods]
"""Reads the article a key names, else the usual one: node, dotted path, usual name."""

_SHAPED = ("opening", "top_hoop", "hem", "ground_plan")
_PLACED = ("spacing", "every", "ratio", "at", "count")


def read_wheel(node: Node, waist: float, article: Article, notes: Notebook) -> WheelBuild | None:
    """The wheel, or None when its width is nowhere said. ``waist`` is the waist's girth, m."""
    width = node["width"].length()
    if width is None:
        notes.tell(
            error(
                "key-missing",
                node.path,
                "a wheel has no `width`",
                "add `wheel: {width: 36 in}` under `build`: across its rim",
                at_key=True,
            )
        )
        return None
    roll = node["roll"]
    cover = article(node["cover"]["material"], "build.wheel.cover.material", "drill")

    def length(one: Node, path: str, usual: float, why: str) -> float:
        stated = one.length()
        return notes.assume(f"build.wheel.{path}", usual, "length", why) if stated is None else stated

    def count(key: str, usual: int, why: str) -> int:
        stated = node[key].whole()
        return (
            int(notes.assume(f"build.wheel.{key}", float(usual), "count", why)) if stated is None else stated
        )

    tilt = node["tilt"].angle()
    return WheelBuild(
        width,
        length(node["set_back"], "set_back", 0.1 * width, "a tenth of its width; our choice"),
        notes.assume("build.wheel.tilt", 10 * DEGREE, "angle", "low in front, high behind; our choice")
        if tilt is None
        else tilt,
        length(node["rim_drop"], "rim_drop", 0.0, "a flat wheel"),
        count("rings", 4, "hole, rim and two between; our choice"),
        count("spokes", 8, "one every eighth; our choice"),
        length(roll["thickness"], "roll.thickness", 3 * INCH, f"{PRACTICE}"),
        length(roll["length"], "roll.length", 0.8 * waist, "round the waist, open in front; our choice"),
        article(roll["material"], "build.wheel.roll.material", cover.name),
        cover,
        node["cover"]["slit"].length(),
    )


def read_drum(node: Node, wheel: WheelBuild, notes: Notebook) -> ShapeSpec:
    """The shape of a wheel: its rings stand for the hoops, and what places other hoops clashes with it."""
    for key in _SHAPED:
        if node[key]:
            _clash(node[key], key, notes)
    for key in _PLACED:
        if node["hoops"][key]:
            _clash(node["hoops"][key], key, notes)
    line = node["line"]["kind"]
    if line and line.text() != "drum":
        notes.tell(
            error(
                "carrier-clash",
                line.path,
                f"a wheel makes a drum, and here the line is a {line.text()}",
                "write `line: {kind: drum}`, or let tapes carry the hoops",
            )
        )
    names = tuple(name.text() or "" for name in node["hoops"]["names"].items())
    return ShapeSpec(
        GroundPlan(),
        Line("drum", 1.0),
        PlaceListed(below_waist=0.0),
        None,
        pi * wheel.width,
        0.0,
        wheel.rings,
        "level",
        1.0,
        (),
        names,
    )


def _clash(node: Node, key: str, notes: Notebook) -> None:
    notes.tell(
        error(
            "carrier-clash",
            node.path,
            f"`{key}` places hoops below each other, and a wheel has rings inside each other",
            "leave it out: `build.wheel` says all of its shape",
            at_key=True,
        )
    )
