"""Side hoops: the cloth they are made of, and what does not go with a hoop at each side."""

from __future__ import annotations

from itertools import pairwise

from hoopwright.source.diagnostic import error
from hoopwright.spec.model import (
    GroundPlan,
    Line,
    PairPlan,
    PlaceListed,
    ShapeSpec,
    SideBuild,
    SideHoop,
)
from hoopwright.spec.reading.haberdashery import Article
from hoopwright.spec.reading.node import Node, Notebook

INCH = 0.0254
_CLASHING = ("opening", "top_hoop", "hem", "line", "hoops")


def is_pair(shape: Node) -> bool:
    """Whether the ground plan is a pair of side hoops."""
    plan = shape["ground_plan"]
    return (plan.text() or plan["kind"].text()) == "pair"


def read_pair_plan(node: Node, notes: Notebook) -> GroundPlan:
    """The ground plan of a pair; its hoops lie below each other."""
    if not node["hoops"]:
        notes.tell(
            error(
                "key-missing",
                node.path,
                "nothing says how the side hoops are shaped",
                "write `ground_plan: {kind: pair, front_to_back: 12 in, hoops: [{drop: 4 in, reach: 4 in}]}`",
            )
        )
    hoops = tuple(
        SideHoop(one["drop"].length() or 0.0, one["reach"].length() or 0.0) for one in node["hoops"].items()
    )
    for index, (above, below) in enumerate(pairwise(hoops), start=1):
        if below.drop <= above.drop:
            notes.tell(
                error(
                    "places-not-ascending",
                    (*node["hoops"].path, index, "drop"),
                    "this hoop is not below the one before it",
                    "list the hoops from the top down, each with a greater `drop`",
                )
            )
    return GroundPlan("pair", pair=PairPlan(node["front_to_back"].length() or 0.0, hoops))


def read_sides(node: Node, waist: float, article: Article, notes: Notebook) -> SideBuild:
    """The cloth of side hoops. ``waist`` is the waist's girth, m."""
    at = node["at"].fraction()
    if at is None:
        at = notes.assume("build.side_hoops.at", 0.25, "ratio", "its middle at the side")
    return SideBuild(
        article(node["material"], "drill"),
        article(node["tie"], "twill"),
        notes.length(node["on_band"], waist / 5, "a fifth of the waist; our choice"),
        at,
        node["pocket_slit"].length(),
        notes.length(node["shorter"], INCH / 2,
                     "a steel is 1/2 in shorter than its channel; common practice, no source"),
    )


def read_pair(node: Node, plan: GroundPlan, notes: Notebook) -> ShapeSpec:
    """The shape of a pair; what shapes hoops that go round the wearer clashes with it."""
    for key in _CLASHING:
        if node[key]:
            notes.tell(
                error(
                    "carrier-clash",
                    node[key].path,
                    f"`{key}` shapes hoops that go round the wearer, and side hoops do not",
                    "leave it out: `ground_plan` says all of their shape",
                    at_key=True,
                )
            )
    pair = plan.pair or PairPlan(0.0, ())
    top = PlaceListed(below_waist=pair.hoops[0].drop if pair.hoops else 0.0)
    return ShapeSpec(plan, Line("cone", 1.0), top, None, 0.0, 0.0, len(pair.hoops), "listed", 1.0)
