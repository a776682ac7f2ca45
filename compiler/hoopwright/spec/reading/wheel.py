"""The wheel of a drum farthingale: rings and spokes at the waist, their roll and cover, and its shape."""

from __future__ import annotations

from math import pi

from hoopwright.source.diagnostic import error
from hoopwright.spec.model import GroundPlan, Line, PlaceListed, ShapeSpec, WheelBuild
from hoopwright.spec.reading.haberdashery import Article
from hoopwright.spec.reading.node import Node, Notebook

INCH = 0.0254
DEGREE = pi / 180
PRACTICE = "common practice, no source"
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
    cover = article(node["cover"]["material"], "drill")
    tilt = node["tilt"].angle()
    return WheelBuild(
        width,
        notes.length(node["set_back"], 0.1 * width, "a tenth of its width; our choice"),
        notes.assume("build.wheel.tilt", 10 * DEGREE, "angle", "low in front, high behind; our choice")
        if tilt is None
        else tilt,
        notes.length(node["rim_drop"], 0.0, "a flat wheel"),
        notes.count(node["rings"], 4, "hole, rim and two between; our choice"),
        notes.count(node["spokes"], 8, "one every eighth; our choice"),
        notes.length(roll["thickness"], 3 * INCH, PRACTICE),
        notes.length(roll["length"], 0.8 * waist, "round the waist, open in front; our choice"),
        article(roll["material"], cover.name),
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
