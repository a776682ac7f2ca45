"""Petticoats whose cloth carries the hoops: panels, channels, flounces, and what does not go with them."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from hoopwright.library.model import Goods
from hoopwright.source.diagnostic import error, warning
from hoopwright.source.quantity import length_text
from hoopwright.source.record import record
from hoopwright.spec.model import Carrier, ChannelBuild, FlounceBuild, PanelBuild
from hoopwright.spec.reading.haberdashery import Article
from hoopwright.spec.reading.node import Node, Notebook

INCH = 0.0254
PRACTICE = "common practice, no source"
GORES = 6
PLACKET = 10 * INCH
OFF_GIRTH = INCH / 2
"""How far gores of the maker's own width may miss the hem's girth in all, m: our judgement."""

OWN: Mapping[str, tuple[Carrier, ...]] = MappingProxyType({
    "tapes": ("tapes",), "hem_band": ("tapes",), "ties": ("tapes",), "lacing": ("tapes",),
    "hip_ties": ("tapes",),
    "channels": ("channels",), "panels": ("channels", "cords"), "flounce": ("channels",),
    "cords": ("cords",),
    "wheel": ("wheel",), "side_hoops": ("channels",),
})
"""The maps of ``build`` that belong to one way of carrying the hoops."""

_HELP: Mapping[str, str] = MappingProxyType({
    "tapes": "write `carried_by: tapes`, or leave this key out",
    "channels": "write `carried_by: channels`, or leave this key out",
    "wheel": "write `carried_by: wheel`, or leave this key out",
    "cords": "write `carried_by: cords`, or leave this key out",
})


@record(frozen=True, slots=True)
class Petticoat:
    """The parts of ``build`` that a petticoat with channels has."""

    channels: ChannelBuild
    panels: PanelBuild
    flounces: tuple[FlounceBuild, ...]


def clashes(node: Node, shape: Node, carrier: Carrier, notes: Notebook) -> None:
    """Tell of maps that belong to another carrier than the one named."""
    said = node["carried_by"]
    for key, carriers in OWN.items():
        if node[key] and carrier not in carriers:
            what = f"`{key}` belongs to hoops carried by {carriers[0]}, and here {carrier} carry them"
            if key == "cords":
                what = f"`{key}` belongs to a corded petticoat, and here {carrier} carry hoops"
            notes.tell(error("carrier-clash", node[key].path, what, _HELP[carriers[0]], at_key=True,
                             related=((said.path, "said here"),) if said else ()))
    if carrier != "channels":
        return
    _cloth_clashes(node, shape, notes)
    casing = node["hoops"]["casing"]
    if casing.text() not in (None, "none"):
        notes.tell(error("carrier-clash", casing.path, "a hoop in a channel wears no casing of its own",
                         "leave `casing` out: the channel is the casing"))
    if shape["opening"]:
        notes.tell(error("carrier-clash", shape["opening"].path,
                         "the cloth of a petticoat goes all round, so its hoops cannot be open in front",
                         "leave `opening` out; the placket lets the wearer in", at_key=True))


def _cloth_clashes(node: Node, shape: Node, notes: Notebook) -> None:
    """Tell of the cloth of a petticoat beside side hoops, and of that of side hoops beside a petticoat."""
    plan = shape["ground_plan"]
    pair = (plan.text() or plan["kind"].text()) == "pair"
    for key in ("channels", "panels", "flounce") if pair else ("side_hoops",):
        if node[key]:
            here = "side hoops" if pair else "a petticoat"
            notes.tell(error("carrier-clash", node[key].path, f"`{key}` does not belong to {here}",
                             "leave it out, or change `ground_plan`", at_key=True,
                             related=((plan.path, "said here"),) if plan else ()))


def read_petticoat(node: Node, wearer: Node, hem: float, article: Article, notes: Notebook) -> Petticoat:
    """Panels, channels and flounces of ``build``; ``hem`` is the hem's girth, m."""
    panels = _panels(node["panels"], wearer, hem, article, notes)
    channels = _channels(node["channels"], panels, article, notes)
    return Petticoat(channels, panels, _flounces(node["flounce"], article, notes))


def _panels(node: Node, wearer: Node, hem: float, article: Article, notes: Notebook) -> PanelBuild:
    material = article(node["material"], "calico")
    straight = bool(node["breadths"])
    if straight and node["gores"]:
        notes.tell(error("keys-clash", node["breadths"].path,
                         "`gores` and `breadths` both say what the petticoat is made of", "keep one of them",
                         at_key=True, related=((node["gores"].path, "said here too"),)))
    count = node["breadths" if straight else "gores"].whole()
    if count is None:
        count = GORES
        notes.assume("build.panels.gores", count, "count", f"6 are usual; {PRACTICE}")
    cord, placket = closing(node, article, notes)
    top = _top(node, wearer, hem, straight, cord is not None, notes)
    return PanelBuild("breadths" if straight else "gores", count, material, top, placket, cord,
                      _gore(node["gore"], count, hem, notes))


def closing(node: Node, article: Article, notes: Notebook) -> tuple[Goods | None, float]:
    """What closes the waist: the drawstring, None for a waistband; and the placket's length, m."""
    said = notes.text(node["waist"], "waistband", "it sits best")
    cord = article(node["cord"], "lacing cord") if said == "drawstring" else None
    if cord is not None:
        return cord, node["placket"].length() or 0.0
    return None, notes.length(node["placket"], PLACKET, f"the hips pass through; {PRACTICE}")


def _top(node: Node, wearer: Node, hem: float, straight: bool, drawn: bool, notes: Notebook) -> float:
    """Girth of the upper edge: stated; the hem's for breadths; else the waist's, or the hips' for a
    drawstring, which must pass over them."""
    stated = node["top"].length()
    if stated is not None:
        if stated > hem:
            notes.tell(error("petticoat-top-too-wide", node["top"].path,
                             "the petticoat's upper edge is wider than its hem",
                             "gores widen downward: check both girths and their units",
                             related=((("shape", "hem", "girth"), "the hem's girth"),)))
        return stated
    if straight:
        return hem
    waist = wearer["waist"].length() or 0.0
    if not drawn:
        return notes.assume("build.panels.top", waist, "length", "the waist's girth: nothing to gather")
    hip = wearer["hip"].length()
    wide = waist * 4 / 3 if hip is None else hip
    return notes.assume("build.panels.top", min(wide, hem), "length",
                        "as wide as the hips, so that it goes on over them; our choice")


def _both(length: float) -> str:
    """A length in both units: a spec may be written in either."""
    return f"{length_text(length, 'inches')} or {length_text(length, 'centimetres')}"


def _gore(node: Node, count: int, hem: float, notes: Notebook) -> tuple[float, float] | None:
    """The maker's own finished widths of a gore; they must make the hem's girth."""
    if not node:
        return None
    top, low = node["top"].length() or 0.0, node["hem"].length() or 0.0
    if abs(count * low - hem) > OFF_GIRTH:
        notes.tell(error("gores-miss-girth", node["hem"].path,
                         f"{count} gores of this width do not make the hem's girth",
                         f"{count} gores for this girth are {_both(hem / count)} wide at the hem, seams not counted:"
                         " write that, or change the number of gores or the girth",
                         related=((("shape", "hem", "girth"), "the hem's girth"),)))
    return top, low


def _channels(node: Node, panels: PanelBuild, article: Article, notes: Notebook) -> ChannelBuild:
    if panels.kind == "gores":
        kind = notes.text(node["kind"], "applied casing", "tucks pucker gores")
    else:
        kind = notes.text(node["kind"], "tuck", "breadths are easily tucked")
    tucked = kind == "tuck"
    if tucked and panels.kind == "gores":
        notes.tell(warning("tucks-on-gores", node["kind"].path,
                           "a tuck folds the wide part of a gore on to a narrower one, and puckers",
                           "take `kind: applied casing`, or `breadths` instead of gores"))
    material = None if tucked else article(node["material"], panels.material.name)
    gap = notes.length(node["feed_gap"], 2 * INCH, f"a hoop's tipped end goes in through it; {PRACTICE}")
    turning = node["turning"].length() or 0.0
    if not tucked:
        turning = notes.length(node["turning"], INCH / 4, "Oregon 4-H 320-36: first turn 1/4 in")
    return ChannelBuild("tuck" if tucked else "applied casing", material, gap, turning)


def _flounces(node: Node, article: Article, notes: Notebook) -> tuple[FlounceBuild, ...]:
    """The flounces, from the hem up; rows of one depth, each just covering the head of the one below."""
    if not node:
        return ()
    material = article(node["material"], "calico")
    fullness = notes.ratio(node["fullness"], 2.0, f"gathered double; {PRACTICE}")
    depth, rows = node["depth"].length() or 0.0, node["rows"].whole() or 1
    return tuple(FlounceBuild(material, depth, fullness, row * depth, node["cut_height"].length())
                 for row in range(rows))
