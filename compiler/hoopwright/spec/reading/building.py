"""How the cage is built: hoops and their join, tapes, waistband, hem band."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import pi
from typing import Literal

from hoopwright.library.joins import JOINS, suits
from hoopwright.library.model import Goods, Join, Stock
from hoopwright.library.tools import at_hand, lacking
from hoopwright.source.diagnostic import error
from hoopwright.spec.checking.nearest import listed
from hoopwright.spec.checking.references import NONE
from hoopwright.spec.model import (
    BandBuild,
    Build,
    Carrier,
    HipTieBuild,
    HoopBuild,
    LacingBuild,
    TapeBuild,
    TieBuild,
    WaistbandBuild,
)
from hoopwright.spec.reading.corded import cord_clashes, read_corded
from hoopwright.spec.reading.filled import FilledGoods, FilledStock
from hoopwright.spec.reading.haberdashery import library_goods
from hoopwright.spec.reading.node import Node, Notebook
from hoopwright.spec.reading.pair import is_pair, read_sides
from hoopwright.spec.reading.petticoat import clashes, read_petticoat
from hoopwright.spec.reading.stocks import library_stock
from hoopwright.spec.reading.tapes import Behind, read_tapes
from hoopwright.spec.reading.wheel import read_wheel

INCH = 0.0254
CORD = 0.004
"""Thickness of a drawstring as its turned edge is made for, m: our figure."""
DEFAULT_GRADE = "spring steel, tempered"
CARRIERS: tuple[Carrier, ...] = ("tapes", "channels", "cords", "wheel")
THICKEST_IN_BRAID = 0.015
"""Hoops higher than this go without a casing unless the maker names one, m: our rule."""


@dataclass(slots=True)
class Cupboard:
    """The spec's own materials and, behind them, the library's; what is taken is noted once."""

    stocks: dict[str, FilledStock]
    goods: dict[str, FilledGoods]
    notes: Notebook

    def stock(self, name: str) -> Stock:
        """Material for hoops by name."""
        if name not in self.stocks:
            self.stocks[name] = library_stock(name)
        self._list(self.stocks[name])
        return self.stocks[name].stock

    def article(self, name: str) -> Goods:
        """An article by name."""
        if name not in self.goods:
            self.goods[name] = library_goods(name)
        self._list(self.goods[name])
        return self.goods[name].goods

    def named(self, node: Node, usual: str) -> Goods:
        """The article a key names, else the usual one, by name."""
        return self.article(self.notes.text(node, usual, "the usual choice; common practice, no source"))

    def _list(self, filled: FilledStock | FilledGoods) -> None:
        for item in filled.assumed:
            if item not in self.notes.assumed:
                self.notes.assumed.append(item)


def read_build(spec: Node, waist: float, cupboard: Cupboard, notes: Notebook,
               behind: Behind = "no") -> Build | None:
    """The build, or None when the material for the hoops, or the cords, are left open. ``behind``: whether
    the hoops go round the back only."""
    node = spec["build"]
    carrier = _carrier(node["carried_by"])
    if carrier == "cords":
        return _with_cords(spec, cupboard, notes)
    hoops = _hoops(node["hoops"], spec["workshop"]["tools"], cupboard, notes, carrier == "channels")
    if hoops is None:
        return None
    clashes(node, spec["shape"], carrier, notes)
    band = _band(node["hem_band"], cupboard, notes)
    tapes = None
    if carrier == "tapes":
        material = cupboard.named(node["tapes"]["material"], "twill")
        tapes = read_tapes(node["tapes"], waist, material, notes, behind)
    ties = _ties(node["ties"], tapes, cupboard)
    lacing = _lacing(node["lacing"], cupboard, notes)
    waistband = _waistband(node["waistband"], cupboard, notes)
    hips = _hip_ties(node["hip_ties"], tapes, cupboard, notes)
    build = Build(carrier, hoops, tapes, waistband, band, ties, lacing, hips)
    if carrier == "wheel" or is_pair(spec["shape"]):
        return _with_frame(build, spec, cupboard, notes)
    return _with_petticoat(build, spec, cupboard, notes) if carrier == "channels" else build


def _with_frame(build: Build, spec: Node, cupboard: Cupboard, notes: Notebook) -> Build | None:
    """The build with the wheel at the waist, or with the cloth of side hoops; None without a wheel's
    width."""
    waist, node = spec["wearer"]["waist"].length() or 0.0, spec["build"]
    for fitting in spec["fittings"].items():
        for key in ("hem_height", "hoop_height", "hoop_girth"):
            if fitting[key]:
                notes.tell(error("carrier-clash", fitting[key].path,
                                 f"`{key}` is measured on hoops that hang below the waist, and a wheel or side hoops"
                                 " have none", "write what was found into `notes`, and change `build` or"
                                 " `ground_plan` by it", at_key=True))
    if build.carried_by == "wheel":
        wheel = read_wheel(node["wheel"], waist, cupboard.named, notes)
        return None if wheel is None else replace(build, wheel=wheel)
    if build.carried_by != "channels":
        said = node["carried_by"]
        notes.tell(error("carrier-clash", said.path if said else node.path,
                         "the channels of their own cloth carry side hoops",
                         "write `carried_by: channels` under `build`", at_key=not said,
                         related=((spec["shape"]["ground_plan"].path, "side hoops"),)))
        return None
    return replace(build, sides=read_sides(node["side_hoops"], waist, cupboard.named, notes))


def _with_petticoat(build: Build, spec: Node, cupboard: Cupboard, notes: Notebook) -> Build:
    """The build with the petticoat whose channels carry the hoops."""
    hem = spec["shape"]["hem"]["girth"].length() or 0.0
    own = read_petticoat(spec["build"], spec["wearer"], hem, cupboard.named, notes)
    waistband = _drawn(build.waistband, own.panels.cord)
    return replace(build, waistband=waistband, channels=own.channels, panels=own.panels, flounces=own.flounces)


def _drawn(waistband: WaistbandBuild, cord: Goods | None) -> WaistbandBuild:
    """The waistband, or the turned edge that a drawstring runs in."""
    if cord is None:
        return waistband
    return replace(waistband, material=cord, width=pi * CORD / 2 + CORD, overlap=0.0)


def _with_cords(spec: Node, cupboard: Cupboard, notes: Notebook) -> Build | None:
    """The build of a corded petticoat, which has no hoops; None when nothing says how many cords."""
    cord_clashes(spec, notes)
    own = read_corded(spec, cupboard.named, notes)
    if own is None:
        return None
    band = _waistband(spec["build"]["waistband"], cupboard, notes)
    return Build("cords", None, None, _drawn(band, own.panels.cord), None, panels=own.panels, cords=own.cords)


def _carrier(node: Node) -> Carrier:
    """What carries the hoops; tapes when nothing is said."""
    stated = node.text() or "tapes"
    return next(known for known in CARRIERS if known == stated)


def _hip_ties(node: Node, tapes: TapeBuild | None, cupboard: Cupboard, notes: Notebook) -> HipTieBuild | None:
    """Tapes behind the hips, or None."""
    if not node:
        return None
    name = node["material"].text()
    material = cupboard.article(name or (tapes.material.name if tapes is not None else "twill"))
    return HipTieBuild(material, notes.count(node["count"], 1, "one holds most cages; our choice"))


def _lacing(node: Node, cupboard: Cupboard, notes: Notebook) -> LacingBuild | None:
    """The lacing inside half hoops, or None."""
    if not node:
        return None
    material = cupboard.named(node["material"], "drill")
    cord = cupboard.named(node["cord"], "lacing cord")
    gap = notes.length(node["gap"], 2 * INCH, "room to draw it closer; our choice")
    spacing = notes.length(node["spacing"], 1 * INCH, "eyelets 1 in apart; common practice, no source")
    return LacingBuild(material, cord, gap, spacing)


def _ties(node: Node, tapes: TapeBuild | None, cupboard: Cupboard) -> TieBuild | None:
    """Ties across the hoops: of a tape the maker names, else of the tapes' own."""
    name = node["material"].text()
    material = cupboard.article(name) if name else tapes.material if tapes is not None else None
    own = node["lengths"]
    lengths = tuple((hoop, own[hoop].length() or 0.0) for hoop in own.names())
    return None if material is None else TieBuild(material, node["count"].whole() or 0, lengths)


def _hoops(node: Node, tools: Node, cupboard: Cupboard, notes: Notebook,
           in_channels: bool = False) -> HoopBuild | None:
    name = node["material"].text() or _only_stock(node, cupboard, notes)
    if name is None:
        return None
    stock = cupboard.stock(name)
    join = _join(node["join"], tools, stock, notes)
    for use in join.consumes:
        cupboard.article(use.goods)
    lap = notes.length(node["lap"], join.lap, f"the usual lap of a join `{join.name}`; {join.source}")
    casing = None if in_channels else _casing(node["casing"], stock, cupboard, notes)
    return HoopBuild(stock, join, lap, casing, node["splices"].whole() or 0, _formed(node["formed"]))


def _formed(node: Node) -> Literal["sprung", "pre-formed"] | None:
    text = node.text()
    return "pre-formed" if text == "pre-formed" else "sprung" if text == "sprung" else None


def _only_stock(node: Node, cupboard: Cupboard, notes: Notebook) -> str | None:
    """The material when none is named: the only one there is, or the library's spring steel."""
    own = list(cupboard.stocks)
    if len(own) > 1:
        notes.tell(error("key-missing", node.path, "several materials could be the hoops'",
                         f"add `build: {{hoops: {{material: ...}}}}` and name {listed(own)}"))
        return None
    path = "build.hoops.material"
    if own:
        return notes.assume(path, own[0], "text", "the only material for hoops in the spec")
    return notes.assume(path, DEFAULT_GRADE, "text",
                        "no material for hoops is named; the usual spring steel strip")


def _join(node: Node, tools: Node, stock: Stock, notes: Notebook) -> Join:
    have = at_hand(tool.text() or "" for tool in tools.items()) if tools else None
    fitting = [join for join in JOINS.values() if suits(join, stock.section, stock.grade.metal)]
    doable = [join for join in fitting if have is None or not lacking(join.tools, have)]
    name = node.text()
    if name is None:
        soldered = JOINS["lap soldered"]
        chosen = soldered if have is not None and soldered in doable else JOINS["lap bound"]
        why = "the workshop has the tools for it" if chosen is soldered else "it wants no special tools"
        notes.assume("build.hoops.join", chosen.name, "text", why)
        return chosen
    join = JOINS[name]
    if join not in fitting:
        notes.tell(error("join-unsuited", node.path,
                         f"the join `{name}` does not hold {_said(stock)}",
                         f"joins that suit it: {listed(one.name for one in fitting)}"))
    elif have is not None and join not in doable:
        groups = (" or ".join(f"`{tool}`" for tool in group) for group in lacking(join.tools, have))
        missing = " and ".join(groups)
        notes.tell(error("tool-missing", node.path,
                         f"the join `{name}` wants {missing}, and the workshop has none",
                         f"joins that do with the tools at hand: {listed(one.name for one in doable)}",
                         related=((tools.path, "the tools at hand"),)))
    return join


def _said(stock: Stock) -> str:
    shape = {"flat": "flat strip", "round": "round stock", "tube": "tube"}[stock.section.kind]
    return f"{shape} of {stock.grade.name}"


def _casing(node: Node, stock: Stock, cupboard: Cupboard, notes: Notebook) -> Goods | None:
    if stock.section.height > THICKEST_IN_BRAID:
        name = notes.text(node, NONE, "too thick for braid")
    else:
        name = notes.text(node, "braid", "hoops are cased; common practice, no source")
    return None if name == NONE else cupboard.article(name)


def _waistband(node: Node, cupboard: Cupboard, notes: Notebook) -> WaistbandBuild:
    material = cupboard.named(node["material"], "twill")
    if material.kind == "tape":
        width = notes.length(node["width"], material.width, "the tape's width")
    else:
        width = notes.length(node["width"], INCH, "common practice, no source")
    overlap = notes.length(node["overlap"], 1.5 * INCH, "1 to 2 in are usual; common practice, no source")
    ease = notes.length(node["ease"], 0.0, "the waist is measured over what is worn")
    fastening = cupboard.named(node["fastening"], "hook and bar")
    return WaistbandBuild(material, width, overlap, ease, fastening)


def _band(node: Node, cupboard: Cupboard, notes: Notebook) -> BandBuild | None:
    if not node:
        return None
    material = cupboard.named(node["material"], "calico")
    grain = node["grain"].value
    if grain is None:
        grain = notes.assume("build.hem_band.grain", "either", "text", "whichever way takes less cloth")
    return BandBuild(material, node["depth"].length() or 0.0,
                     "along" if grain == "along" else "across" if grain == "across" else "either",
                     node["cut_height"].length())
