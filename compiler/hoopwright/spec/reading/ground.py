"""The ground plan, the outline from above, and the opening of the upper hoops in front."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from hoopwright.source.diagnostic import error
from hoopwright.spec.model import Graded, GroundPlan, HalfPlan, Opening, PlanKind
from hoopwright.spec.reading.node import Node, Notebook
from hoopwright.spec.reading.pair import read_pair_plan
from hoopwright.spec.reading.tapes import Behind

INCH = 0.0254
DEFAULT_OVAL = 1.2
DEFAULT_SET_BACK = 4 * INCH
ROUND = Graded(1.0, 1.0)
PLACE = "shape.ground_plan"


def read_ground(node: Node, notes: Notebook) -> GroundPlan:
    """The ground plan: a word, or a map with its ``kind``."""
    kind = node.text() or node["kind"].text()
    if kind is None:
        kind = notes.assume(PLACE, "round", "text", "the simplest plan")
    known: PlanKind = next(name for name in READERS if name == kind)
    return READERS[known](node, notes)


def _round(node: Node, notes: Notebook) -> GroundPlan:
    return GroundPlan()


def _oval(node: Node, notes: Notebook) -> GroundPlan:
    return GroundPlan("oval", _ratio(node["width_over_depth"], DEFAULT_OVAL, notes,
                                     "one tie draws a hoop so far into an oval; our choice"))


def _thrown_back(node: Node, notes: Notebook) -> GroundPlan:
    reach = node["reach"]
    if reach:
        if node["set_back"]:
            notes.tell(error("keys-clash", node["set_back"].path,
                             "`set_back` and `reach` both say how far back the hem lies", "keep one of them",
                             at_key=True, related=((reach.path, "said here too"),)))
        front, back = reach["front"].length() or 0.0, reach["back"].length() or 0.0
        oval = _ratio(node["width_over_depth"], 1.0, None, "")
        middle = (back - front) / 2
        return GroundPlan("thrown back", Graded(oval.top, oval.low if node["width_over_depth"] else 0.0),
                          Graded(0.0, middle), (front, back))
    oval = _ratio(node["width_over_depth"], 1.0, notes, "hoops stay round")
    back_set = _graded(node["set_back"])
    if back_set is None:
        back_set = Graded(0.0, notes.assume(f"{PLACE}.set_back", DEFAULT_SET_BACK, "length", "our choice"))
    elif not isinstance(node["set_back"].value, dict):
        back_set = Graded(0.0, back_set.low)
    return GroundPlan("thrown back", oval, back_set)


def _half(node: Node, notes: Notebook) -> GroundPlan:
    chord = _graded(node["chord"]) or Graded(0.0, 0.0)
    full = node["full"]
    half = HalfPlan(chord, _graded(node["reach"]), _graded(node["set_back"]),
                    full["count"].whole() or 0, full["width_over_depth"].number() or 1.0)
    return GroundPlan("half", half=half)


READERS: Mapping[PlanKind, Callable[[Node, Notebook], GroundPlan]] = MappingProxyType({
    "round": _round,
    "oval": _oval,
    "thrown back": _thrown_back,
    "half": _half,
    "pair": read_pair_plan,
})
"""One reader for each kind of ground plan."""


def behind(shape: Node) -> Behind:
    """Whether the hoops go round the back only, and whether full ones hang below them."""
    plan = shape["ground_plan"]
    if (plan.text() or plan["kind"].text()) != "half":
        return "no"
    return "with full hoops" if plan["full"] else "only"


def read_opening(node: Node, notes: Notebook) -> Opening | None:
    """The opening in front of the upper hoops, or None."""
    if not node:
        return None
    straps = node["straps"].flag()
    if straps is None:
        straps = notes.assume("shape.opening.straps", "true", "text",
                              "a spring that is not held across its opening straightens") == "true"
    return Opening(node["hoops"].whole() or 0, _graded(node["gap"]), straps)


def _graded(node: Node) -> Graded | None:
    """A length for all hoops, or one at the top and one at the hem; m."""
    if not node:
        return None
    if isinstance(node.value, dict):
        low = node["hem"].length() or 0.0
        top = node["top"].length()
        return Graded(low if top is None else top, low)
    length = node.length() or 0.0
    return Graded(length, length)


def _ratio(node: Node, usual: float, notes: Notebook | None, reason: str) -> Graded:
    """Width over depth for all hoops, or at the top and at the hem."""
    if isinstance(node.value, dict):
        low = node["hem"].number() or 1.0
        top = node["top"].number()
        return Graded(low if top is None else top, low)
    ratio = node.number()
    if ratio is None:
        ratio = usual if notes is None else notes.assume(f"{PLACE}.width_over_depth", usual, "ratio", reason)
    return Graded(ratio, ratio)
