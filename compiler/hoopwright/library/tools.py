"""Tools: names, what they are for, other names for them, and the cautions that go with them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from types import MappingProxyType

from hoopwright.library.model import Stock, Tool

SNIPS_LIMIT = 0.025 * 0.0254
"""Thickest hardened strip that tin snips cut, m: about 0.025 in. Common practice, no source."""
NIPPED = 0.005
"""Thickest cane or tube that cutters part cleanly, m; what is thicker they crush. Common practice, no source."""

_TOOLS = (
    Tool("bolt cutters", "cut hardened strip, wire and rod", ("cutting-hard-strip", "cut-ends"),
         ("bolt cutter", "bolt croppers")),
    Tool("cut-off wheel", "cut hardened strip, wire and rod", ("grinding", "cut-ends"),
         ("rotary tool", "angle grinder", "cut-off disc")),
    Tool("vice", "hold strip to score and snap it", ("cutting-hard-strip",), ("vise", "bench vice",
                                                                              "bench vise")),
    Tool("tin snips", "cut soft or thin strip", ("cut-ends",), ("snips", "tinsnips", "aviation snips")),
    Tool("hacksaw", "cut mild steel, cane and tube", ("cut-ends",), ("fine saw", "junior hacksaw")),
    Tool("side cutters", "cut thin wire, cane and tube", ("cut-ends",),
         ("wire cutters", "secateurs", "nippers")),
    Tool("knife", "cut cane, tube and tape ends", ("cut-ends",), ("craft knife",)),
    Tool("file", "round and smooth cut ends; roughen a lap", (), ("hand file", "files")),
    Tool("grinder", "round cut ends; roughen a lap", ("grinding",), ("bench grinder",)),
    Tool("abrasive paper", "roughen a lap; smooth cane", (), ("sandpaper", "emery paper")),
    Tool("soldering iron", "solder a lap", ("flux-fume", "hot-iron"), ("iron for soldering",)),
    Tool("brazing torch", "braze a lap of mild steel", ("torch",), ("torch", "gas torch")),
    Tool("goggles", "keep splinters and springing ends out of the eyes", (),
         ("safety goggles", "safety glasses", "eye protection")),
    Tool("gloves", "hold springing and sharp stock", (), ("work gloves", "leather gloves")),
    Tool("clamps", "hold a coil, a sample or a lap still", (),
         ("clamp", "spring clamps", "g-clamps")),
    Tool("pliers", "crimp a sleeve; bend wire", ("crimp",), ("combination pliers",)),
    Tool("crimp tool", "crimp a sleeve", ("crimp",), ("crimping tool", "crimper")),
    Tool("drill", "make holes in strip", ("drilling", "holes-weaken"), ("power drill", "drill press")),
    Tool("punch", "make holes in strip", ("holes-weaken",), ("strip punch", "hole punch", "hand punch")),
    Tool("screwdriver", "turn bolts", ()),
    Tool("spanner", "hold nuts", (), ("wrench",)),
    Tool("hammer", "set rivets", ()),
    Tool("rivet tool", "set rivets", (), ("rivet gun", "riveter")),
    Tool("sewing machine", "sew tapes, casings and bands"),
    Tool("needle", "sew by hand", (), ("hand needle", "needles")),
    Tool("scissors", "cut cloth, tape and thread", (), ("shears",)),
    Tool("tape measure", "measure", (), ("measuring tape", "rule", "ruler")),
    Tool("pencil", "mark", (), ("chalk", "marker")),
    Tool("pins", "hold cloth and tape", (), ("clips", "safety pins")),
    Tool("string", "tie a coil and what is bent", (), ("twine",)),
    Tool("sticky tape", "name parts, cover ends, hold a lap", (), ("masking tape", "adhesive tape")),
    Tool("flat iron", "press turnings and bands", (), ("clothes iron",)),
    Tool("plumb line", "level a hem alone"),
    Tool("bath", "soak cane in warm water", (), ("tub", "trough")),
    Tool("pot", "boil starch", ("hot-starch",), ("cooking pot", "saucepan")),
)

TOOLS: Mapping[str, Tool] = MappingProxyType({tool.name: tool for tool in _TOOLS})
"""Every tool by name."""

HOUSEHOLD = ("bath", "needle", "pencil", "pins", "pot", "scissors", "sticky tape", "string", "tape measure")
"""Tools every sewing household has: never asked for, never reported missing."""

PROTECTION = ("gloves", "goggles")
"""What each who works wears: hands do not take turns at it."""

_NAMES = {alias: tool.name for tool in _TOOLS for alias in (tool.name, *tool.aliases)}


def tool_name(text: str) -> str | None:
    """The library's name for a tool under any of its names, or None."""
    return _NAMES.get(" ".join(text.lower().split()))


def tool_names() -> tuple[str, ...]:
    """Every name and alias a spec may use, sorted."""
    return tuple(sorted(_NAMES))


def at_hand(tools: Iterable[str]) -> frozenset[str]:
    """The library names of ``tools``, household tools included; unknown names are kept as they are."""
    return frozenset(tool_name(tool) or tool for tool in tools) | frozenset(HOUSEHOLD)


def lacking(groups: tuple[tuple[str, ...], ...], have: frozenset[str]) -> tuple[tuple[str, ...], ...]:
    """The groups of which no tool is in ``have``."""
    return tuple(group for group in groups if not have.intersection(group))


def beyond_snips(stock: Stock) -> bool:
    """Whether it is hardened, and thicker than :data:`SNIPS_LIMIT` or not flat."""
    return stock.grade.hard and (stock.section.depth > SNIPS_LIMIT or stock.section.kind != "flat")


def cutting_tools(stock: Stock) -> tuple[str, ...]:
    """Tools any one of which cuts ``stock``, the handiest first.

    Bolt cutters crush cane and tube. Hardened stock thicker than :data:`SNIPS_LIMIT` is never cut with tin snips.
    """
    if not stock.grade.metal:
        thick = stock.section.depth > NIPPED
        return ("hacksaw", "side cutters", "knife") if thick else ("side cutters", "knife", "hacksaw")
    if beyond_snips(stock):
        return ("bolt cutters", "cut-off wheel", "vice")
    if stock.section.kind == "flat":
        return ("tin snips", "bolt cutters", "cut-off wheel", "hacksaw")
    return ("bolt cutters", "hacksaw", "cut-off wheel", "side cutters")
