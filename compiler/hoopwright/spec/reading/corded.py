"""Corded petticoats: breadths of cloth, groups of rows of cord, and what belongs to hoops and not to them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import ceil
from types import MappingProxyType
from typing import Literal

from hoopwright.library.model import Droop, Goods
from hoopwright.source.diagnostic import Finding, error
from hoopwright.source.printed import length_text
from hoopwright.source.record import record
from hoopwright.spec.checking.plausible import droop_findings
from hoopwright.spec.checking.references import NONE
from hoopwright.spec.model import CordBuild, CordGroup, CordSample, PanelBuild, Units
from hoopwright.spec.reading.haberdashery import Article
from hoopwright.spec.reading.node import Node, Notebook
from hoopwright.spec.reading.petticoat import PRACTICE, closing
from hoopwright.spec.reading.stocks import read_test

INCH = 0.0254
FIRST_ROW = 1 * INCH
RESERVE = 0.03
SAMPLE_CORDS = 6
SAMPLE_LENGTH: Mapping[Units, float] = MappingProxyType({"inches": 16 * INCH, "centimetres": 0.40})
SEAM = 0.0127
_HOOPS = ("hoops", "tapes", "channels", "hem_band", "ties", "hip_ties", "lacing", "flounce", "wheel",
          "side_hoops")
_SHAPED: Mapping[str, str] = MappingProxyType({
    "line": "its cloth falls straight to the hem",
    "top_hoop": "rows of cord stand in for them",
    "hoops": "rows of cord stand in for them",
    "opening": "the placket lets the wearer in",
})
_GORED = ("gores", "gore", "top")
_FITTED = ("hem_height", "hoop_height", "hoop_girth")


@record(frozen=True, slots=True)
class Corded:
    """The parts of ``build`` that a corded petticoat has."""

    panels: PanelBuild
    cords: CordBuild


def cord_clashes(spec: Node, notes: Notebook) -> None:
    """Tell of everything that belongs to hoops, or to other cloth than straight breadths."""
    build, shape = spec["build"], spec["shape"]
    said = build["carried_by"]
    related = ((said.path, "cords, said here"),)

    def clash(node: Node, what: str, mend: str) -> None:
        notes.tell(error("carrier-clash", node.path, what, mend, at_key=True, related=related))

    for key in _HOOPS:
        if build[key]:
            joined = ", so there is nothing to join" if build[key]["join"] else ""
            clash(build[key], f"`{key}` does not belong to a corded petticoat: rows of cord stand in for hoops"
                              f"{joined}", "leave it out, or let tapes or channels carry hoops")
    for key in _GORED:
        if build["panels"][key]:
            clash(build["panels"][key], f"`{key}` belongs to gores, and a corded petticoat is made of straight"
                                        " breadths", "write `breadths`, gathered at the waist")
    for key, why in _SHAPED.items():
        if shape[key]:
            clash(shape[key], f"`{key}` shapes hoops, and a corded petticoat has none: {why}",
                  "leave it out: `hem`, `length` and `build.cords` say all of its shape")
    plan = shape["ground_plan"]
    if plan and (plan.text() or plan["kind"].text()) != "round":
        clash(plan, "rows of cord make a round petticoat: nothing holds them in another outline",
              "write `ground_plan: round`, or leave it out")
    for fitting in spec["fittings"].items():
        for key in _FITTED:
            if fitting[key]:
                clash(fitting[key], f"`{key}` is measured on hoops, and a corded petticoat has none",
                      "write what was found into `notes`, and change `shape` by it")


def read_corded(spec: Node, article: Article, notes: Notebook) -> Corded | None:
    """Breadths and cords of ``build``; None when nothing says how many cords."""
    build, hem = spec["build"], spec["shape"]["hem"]["girth"].length() or 0.0
    node = build["cords"]
    if not node:
        said = build["carried_by"]
        notes.tell(error("key-missing", said.path, "nothing says how many cords the petticoat has",
                         "add `cords: {groups: [{cords: 12}]}` under `build`", at_key=True))
        return None
    cloth = article(build["panels"]["material"], "calico")
    cords = _cords(node, cloth, article, _units(spec), notes)
    panels = build["panels"]
    cord, placket = closing(panels, article, notes)
    breadths = panels["breadths"].whole()
    if breadths is None:
        seam = spec["allowances"]["seam"].length()
        breadths = _breadths(hem, cloth, cords, SEAM if seam is None else seam, notes)
    return Corded(PanelBuild("breadths", breadths, cloth, hem, placket, cord), cords)


def _units(spec: Node) -> Units:
    return "inches" if spec["units"].text() == "inches" else "centimetres"


def _breadths(hem: float, cloth: Goods, cords: CordBuild, seam: float, notes: Notebook) -> int:
    """As many breadths as the width of the cloth asks for; at least one."""
    room = cloth.washed_width * (1 - cords.shrinkage_round) - 2 * seam
    count = max(1, ceil(hem / room - 1e-9)) if room > 0 else 1
    return int(notes.assume("build.panels.breadths", float(count), "count",
                            "as many as the width of the washed cloth asks for"))


def _cords(node: Node, cloth: Goods, article: Article, units: Units, notes: Notebook) -> CordBuild:
    material = article(node["material"], "piping cord")
    thick = material.width
    stated = node["held"].text()
    held: Literal["sandwich", "tuck"] = "tuck" if stated == "tuck" else "sandwich"
    if stated is None:
        notes.assume("build.cords.held", held, "text", "two layers are the stiffer; our choice")
    facing = None
    if held == "sandwich":
        facing = article(node["facing"], cloth.name)
    elif node["facing"]:
        notes.tell(error("keys-clash", node["facing"].path,
                         "a cord in a tuck lies in a fold of the one layer, and `facing` is a second",
                         "leave `facing` out, or write `held: sandwich`", at_key=True,
                         related=((node["held"].path, "a tuck"),)))
    washed = "the cloth is washed before it is cut; measure the sample, which shows what is left"
    starch = node["starch"].text()
    return CordBuild(
        material, held, _groups(node, thick, units, notes), node["take_up"].length(), facing,
        None if starch == NONE else article(node["starch"], "starch"),
        notes.share(node["shrinkage"], 0.0, washed), notes.share(node["shrinkage_round"], 0.0, washed),
        notes.share(node["reserve"], RESERVE, "its ends, and what drawing it in takes; our choice"),
        _sample(node["sample"], units, notes))


def _groups(node: Node, thick: float, units: Units, notes: Notebook) -> tuple[CordGroup, ...]:
    """The groups from the hem up; cords that would lie in each other are told."""
    first = notes.length(node["first_row"], FIRST_ROW, PRACTICE)
    spacing = node["spacing"].length()
    if spacing is None and not all(item["spacing"] for item in node["groups"].items()):
        spacing = notes.assume("build.cords.spacing", 2 * thick, "length",
                               f"a cord's thickness between cords, for the stitches; {PRACTICE}")
    found = []
    for index, item in enumerate(node["groups"].items()):
        own = item["spacing"].length()
        apart = own if own is not None else spacing or 2 * thick
        gap = item["gap"].length()
        if index == 0 and gap is not None:
            notes.tell(error("keys-clash", item["gap"].path, "below the lowest group there is no other",
                             "write `first_row` under `cords`: from the edge to its lowest cord", at_key=True))
        if index and gap is None:
            gap = notes.assume(f"build.cords.groups.{index}.gap", 3 * apart, "length", "our choice")
        found.append(CordGroup(item["cords"].whole() or 1, apart, first if index == 0 else gap or 0.0))
        notes.tell(*_crowded(node, item, index, found[-1], thick, units))
    return tuple(found)


def _crowded(node: Node, item: Node, index: int, group: CordGroup, thick: float,
             units: Units) -> Iterator[Finding]:
    """Cords whose middles lie closer than a cord is thick, or that reach below the edge."""
    said = f"the cord is {length_text(thick, units)} thick"
    apart = item["spacing"] if item["spacing"] else node["spacing"]
    if apart and group.spacing <= thick and group.cords > 1:
        yield error("cords-too-close", apart.path,
                    f"{said}, and cords whose middles lie no further apart would lie in each other",
                    "write more than the thickness; twice of it leaves room for the stitches")
    if index and item["gap"] and group.gap <= thick:
        yield error("cords-too-close", item["gap"].path,
                    f"{said}, and this gap is from middle to middle", "write more than the thickness")
    if index == 0 and node["first_row"] and group.gap <= thick / 2:
        yield error("cords-too-close", node["first_row"].path,
                    f"{said}, so its lowest row would hang over the finished edge",
                    "write more than half its thickness; about 1 in is usual")


def _sample(node: Node, units: Units, notes: Notebook) -> CordSample:
    """The sample and its tests."""
    cords = notes.count(node["cords"], SAMPLE_CORDS, "six even out the stitching; our choice")
    length = notes.length(node["length"], SAMPLE_LENGTH[units],
                          "three quarters hang over, a quarter lies under the board; our choice")
    tests = tuple(read_test(item) for item in node["bench"].items())
    for test, item in zip(tests, node["bench"].items(), strict=True):
        if isinstance(test, Droop):
            notes.tell(*droop_findings(test, item), *_too_long(test, item, length, node))
    return CordSample(cords, length, tests)


def _too_long(test: Droop, item: Node, length: float, node: Node) -> Iterator[Finding]:
    """A sample that hangs over further than it is long."""
    if node["length"] and test.overhang >= length:
        yield error("bench-impossible", item["overhang"].path, "the sample hangs over by more than its length",
                    "overhang and length are measured along the cords; a hand's breadth lies under the clamp",
                    related=((node["length"].path, "its length"),))
