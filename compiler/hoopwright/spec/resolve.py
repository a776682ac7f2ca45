"""The spec stage as a whole: plain values in, a typed Spec or findings out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from decimal import Decimal
from pathlib import PurePath

from hoopwright.library.goods import GOODS
from hoopwright.library.grades import GRADES
from hoopwright.library.model import Goods, Stock
from hoopwright.source.diagnostic import Finding, failed
from hoopwright.source.read import Document
from hoopwright.spec.checking.plausible import body_findings, stock_findings
from hoopwright.spec.checking.ranges import range_findings
from hoopwright.spec.checking.references import reference_findings
from hoopwright.spec.checking.validate import validate
from hoopwright.spec.document.variants import variant_findings
from hoopwright.spec.model import Build, ShapeSpec, Spec, Units, Wearer
from hoopwright.spec.reading.allowances import read_allowances, read_limits, read_workshop
from hoopwright.spec.reading.building import Cupboard, read_build
from hoopwright.spec.reading.currency import currency_of
from hoopwright.spec.reading.diary import read_fittings, read_progress
from hoopwright.spec.reading.ground import behind
from hoopwright.spec.reading.haberdashery import read_goods
from hoopwright.spec.reading.loads import read_load
from hoopwright.spec.reading.node import Node, Notebook, dotted_paths
from hoopwright.spec.reading.outline import read_shape
from hoopwright.spec.reading.stocks import library_stock, read_stock
from hoopwright.spec.reading.wearer import read_wearer
from hoopwright.spec.substitutes import designs

DEFAULT_SKIRT = 0.0254


def resolve(document: Document) -> tuple[Spec | None, tuple[Finding, ...]]:
    """The typed spec of a document, or None, and everything there is to say about it.

    Findings are errors (no Spec), warnings and notes; each names a key path of the document.
    """
    value = document.value
    found = validate(value)
    if not any(finding.code == "spec-version" for finding in found):
        found = (*found, *reference_findings(value))
        found = (*found, *variant_findings(value, found))
        currency, mixed = currency_of(value)
        found = (*found, *mixed)
    if failed(found):
        return None, found
    told = list(found)
    specs: list[Spec | None] = []
    for design in designs(value):
        notes = Notebook(findings=list(found))
        spec = _assembled(Node(design.value), document.file, currency, notes)
        specs.append(spec and replace(spec, offered=design.offered))
        told.extend(notes.findings)
    others = tuple(spec for spec in specs[1:] if spec is not None)
    first = None if specs[0] is None or failed(told) else replace(specs[0], substitutes=others)
    return first, tuple(dict.fromkeys(told))


def _assembled(node: Node, file: str, currency: str | None, notes: Notebook) -> Spec | None:
    """The Spec, or None when so much is wrong that the rest cannot be read."""
    cupboard = _cupboard(node["materials"], notes)
    wearer = read_wearer(node["wearer"], notes)
    if wearer is not None:
        notes.tell(*body_findings(wearer, node["wearer"]))
    waist = node["wearer"]["waist"].length() or 0.0
    build = read_build(node, waist, cupboard, notes, behind(node["shape"]))
    if wearer is None or build is None or failed(notes.findings):
        return None
    shape = read_shape(node["shape"], wearer, build, notes)
    notes.tell(*range_findings(wearer, shape, build, _units(node)))
    title = _title(node["title"], file, notes)
    return _finished(node, title, currency, cupboard, wearer, build, shape, notes)


def _units(node: Node) -> Units:
    return "inches" if node["units"].text() == "inches" else "centimetres"


def _cupboard(node: Node, notes: Notebook) -> Cupboard:
    """The spec's own materials, checked."""
    cupboard = Cupboard({}, {}, notes)
    for name in node.names():
        if node[name]["kind"]:
            cupboard.goods[name] = read_goods(name, node[name], notes)
        else:
            cupboard.stocks[name] = read_stock(name, node[name])
            notes.tell(*stock_findings(cupboard.stocks[name].stock, node[name]))
    return cupboard


def _title(node: Node, file: str, notes: Notebook) -> str:
    """The stated title, else the file's name in words."""
    stated = node.text()
    if stated:
        return stated
    words = PurePath(file).stem.replace("-", " ").replace("_", " ").strip()
    return notes.assume("title", (words[:1].upper() + words[1:]) or "Cage", "text", "the file's name")


def _finished(node: Node, title: str, currency: str | None, cupboard: Cupboard, wearer: Wearer,
              build: Build, shape: ShapeSpec, notes: Notebook) -> Spec:
    units = _units(node)
    load = read_load(node["load"], wearer, cupboard, notes)
    skirt = node["skirt"]["off_floor"].length()
    if skirt is None:
        skirt = notes.assume("skirt.off_floor", DEFAULT_SKIRT, "length", "clears the floor; our choice")
    allowances = read_allowances(node["allowances"], node["limits"], build, currency is not None, notes)
    limits = read_limits(node["limits"], build, notes)
    workshop = read_workshop(node["workshop"], units, notes)
    stated = {".".join(str(part) for part in path): path for path in dotted_paths(node.value)}
    return Spec(
        title=title, units=units, wearer=wearer, shape=shape, build=build, load=load,
        skirt_off_floor=skirt, stocks=_stocks(cupboard), goods=_goods(cupboard), allowances=allowances,
        limits=limits, workshop=workshop, currency=currency,
        assumed=tuple(sorted(notes.assumed, key=lambda item: item.path)), stated=frozenset(stated),
        paths=stated, shops=_shops(node["shops"]), progress=read_progress(node["progress"], shape, notes),
        fittings=read_fittings(node["fittings"], wearer, shape, build.tapes, notes))


def _shops(node: Node) -> Mapping[str, Decimal]:
    """What a delivery from each shop costs."""
    return {name: said[0] for name in node.names() if (said := node[name].money(zero=True)) is not None}


def _stocks(cupboard: Cupboard) -> Mapping[str, Stock]:
    """Every material for hoops the build can name: the maker's own before the library's."""
    library = {name: library_stock(name).stock for name in GRADES}
    return library | {name: filled.stock for name, filled in cupboard.stocks.items()}


def _goods(cupboard: Cupboard) -> Mapping[str, Goods]:
    """Every article the build can name: the maker's own before the library's."""
    return dict(GOODS) | {name: filled.goods for name, filled in cupboard.goods.items()}
