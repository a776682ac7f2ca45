"""Allowances, limits and the workshop: stated values, else defaults that are listed when the build uses"
" them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields
from types import MappingProxyType
from typing import Literal

from hoopwright.library.tools import tool_name
from hoopwright.source.diagnostic import error
from hoopwright.spec.model import Allowances, Build, Chair, Limits, Units, Workshop
from hoopwright.spec.reading.node import Node, Notebook
from hoopwright.spec.reading.workers import read_counts, read_hands, read_rates

PRACTICE = "common practice, no source"
CHAIR = "a usual dining chair; our judgement"
_SHARES = ("braid_take_up", "small_stuff_reserve", "money_reserve")

REASONS: Mapping[str, str] = MappingProxyType({
    "seam": f"3/8 to 5/8 in are usual; {PRACTICE}",
    "waistband_turning": PRACTICE,
    "casing_end": PRACTICE,
    "braid_take_up": "braid shortens when it is pushed over a hoop; measure yours on 1 m; " + PRACTICE,
    "band_join": "strips meet selvage to selvage",
    "band_ease": PRACTICE,
    "kerf": "width of a cut, burr filed off; " + PRACTICE,
    "end_trim": "the end of a length is sound unless you say so",
    "splice_shortest": "a shorter length is all lap and holds no curve; our choice",
    "smallest_offcut": "shorter ends are no use; our choice",
    "tape_top": PRACTICE,
    "tape_hem": PRACTICE,
    "tape_reserve": "trimmed after the fitting; " + PRACTICE,
    "tape_stretch": "a cotton tape stretches about 2 % under a strong pull; our estimate",
    "hoop_tolerance": "our choice",
    "tape_tolerance": "our choice",
    "hem_tolerance": "our choice",
    "small_stuff_reserve": "a tenth more small stuff than the sum says; " + PRACTICE,
    "money_reserve": "a tenth of the money in reserve; " + PRACTICE,
})
"""Why each default allowance is what it is."""


def read_allowances(node: Node, limits: Node, build: Build, priced: bool, notes: Notebook) -> Allowances:
    """Every allowance; the defaults that this build uses are noted as assumed."""
    defaults = Allowances()
    used = _used(build, priced)
    values: dict[str, float] = {}
    for name in (item.name for item in fields(Allowances)):
        stated = _stated(node[name], name)
        if name == "money_reserve" and limits["reserve"]:
            stated = _reserve(node[name], limits["reserve"], notes)
        if stated is None:
            stated = float(getattr(defaults, name))
            if name in used:
                notes.assume(f"allowances.{name}", stated, _dimension(name), REASONS[name])
        values[name] = stated
    return Allowances(**values)


def _stated(node: Node, name: str) -> float | None:
    if name in _SHARES:
        return node.share()
    return node.force() if name == "tape_stretch" else node.length()


def _dimension(name: str) -> str:
    if name in _SHARES:
        return "share"
    return "force" if name == "tape_stretch" else "length"


def _reserve(own: Node, limit: Node, notes: Notebook) -> float | None:
    """The money in reserve, which may be said in one of two places."""
    if own:
        notes.tell(error("keys-clash", limit.path,
                         "`limits.reserve` and `allowances.money_reserve` say the same",
                         "keep one of them", at_key=True, related=((own.path, "said here too"),)))
    return limit.share()


def _used(build: Build, priced: bool) -> frozenset[str]:
    """The allowances that have a part in this build's numbers."""
    names = {"waistband_turning", "kerf", "smallest_offcut", "hoop_tolerance", "hem_tolerance",
             "small_stuff_reserve"}
    if build.tapes is not None:
        names |= {"tape_top", "tape_hem", "tape_reserve", "tape_stretch", "tape_tolerance"}
    cut = (build.panels, build.wheel, build.sides, build.lacing, build.band)
    if any(cut) or build.waistband.material.kind == "cloth":
        names |= {"seam"}
    if build.panels is not None and build.panels.cord is not None:
        names -= {"waistband_turning"}
    if build.sides is not None:
        names |= {"tape_stretch"}
    if build.hooped is None:
        names -= {"kerf"}
    elif build.hooped.splices:
        names |= {"splice_shortest"}
    if build.hooped is not None and build.hooped.casing is not None:
        names |= {"casing_end", "braid_take_up"}
    if build.band is not None:
        names |= {"band_join"} | (set() if build.band.cut_height else {"band_ease"})
    if priced:
        names |= {"money_reserve"}
    return frozenset(names)


def read_limits(node: Node, build: Build, notes: Notebook) -> Limits:
    """The limits; those the maker does not state but that are checked all the same are noted: without hoops
    the load factor alone."""
    usual = Limits()
    budget = node["budget"].money()
    factor = notes.ratio(node["factor"], usual.factor, "room for knocks and wear; our judgement")
    notes = notes if build.hooped is not None else Notebook()
    sag = notes.length(node["sag"], usual.sag, "1/2 in shows under a skirt; our judgement")
    swing = notes.length(node["swing"], usual.swing, "a hem that hangs further from its place shows; our judgement")
    chair = Chair(notes.length(node["chair"]["height"], usual.chair.height, CHAIR),
                  notes.length(node["chair"]["depth"], usual.chair.depth, CHAIR))
    return Limits(
        budget[0] if budget else None, budget[1] if budget else None, node["door"].length(),
        node["weight"].mass(), sag,
        notes.share(node["out_of_round"], usual.out_of_round, "less is not seen under a skirt; our judgement"), factor,
        notes.share(node["stress_worn"], usual.stress_worn, "a margin for long wear; our judgement"),
        notes.share(node["stress_door"], usual.stress_door, "a margin against a set; our judgement"), swing, chair,
        notes.length(node["car"], usual.car, "one place on the back seat; our judgement"),
        notes.length(node["bag"], usual.bag, "a travelling bag; our judgement"))


def read_workshop(node: Node, units: Units, notes: Notebook) -> Workshop:
    """The workshop; tools under their library names, unknown ones left out."""
    tools: tuple[str, ...] | None = None
    if node["tools"]:
        names = (tool_name(item.text() or "") for item in node["tools"].items())
        tools = tuple(dict.fromkeys(name for name in names if name))
    session = node["session"].minutes()
    if session is None:
        session = notes.assume("workshop.session", 120.0, "time", "our choice")
    paper = notes.text(node["paper"], "letter" if units == "inches" else "A4",
                       f"the usual paper where {units} are used")
    order: Literal["built-in", "exact"] = "exact" if node["order"].text() == "exact" else "built-in"
    return Workshop(tools, session, node["helper"].flag() is True, "letter" if paper == "letter" else "A4",
                    read_hands(node["hands"], notes), order, read_rates(node["rates"]),
                    read_counts(node["counts"], notes))
