"""Material for hoops: the maker's own figures first, the library's grade behind them."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from hoopwright.library.coils import SOURCE, usual_coil
from hoopwright.library.grades import DEFAULT_SECTIONS, grade_for
from hoopwright.library.model import BenchTest, Droop, Grade, Offer, Pack, Section, Stock, Weigh, Wrap
from hoopwright.spec.reading.filled import FilledStock
from hoopwright.spec.reading.node import Node, Notebook
from hoopwright.spec.reading.offers import read_lengths, read_offers

Form = Literal["strip", "wire", "cane", "tube", "rod"]


def library_stock(name: str) -> FilledStock:
    """A library grade in its usual section, named after the grade. KeyError when unknown."""
    return read_stock(name, Node({"grade": name}, ("materials", name)))


def read_stock(name: str, node: Node) -> FilledStock:
    """Material for hoops: grade, section, tests and offers."""
    grade_name = node["grade"].text() or ""
    notes = Notebook()
    section = _section(node["section"])
    if section is None:
        section = DEFAULT_SECTIONS[grade_name]
        notes.assume(f"{node.dotted}.section", section.text, "text", "the usual section of this grade")
    grade = _grade(grade_for(grade_name, section), node, notes)
    bench = tuple(read_test(item) for item in node["bench"].items())
    sold = _coiled(read_offers(node["sold"]), node, notes)
    stock = Stock(name, grade, section, bench, sold, read_lengths(node["on_hand"]),
                  form=_form(grade, section), shop=node["from"].text() or "")
    return FilledStock(stock, tuple(notes.assumed))


def _coiled(offers: tuple[Offer, ...], node: Node, notes: Notebook) -> tuple[Offer, ...]:
    """Offers with the coil of every pack filled in."""
    def fill(number: int, offer: Offer) -> Offer:
        if not isinstance(offer, Pack) or offer.coil is not None:
            return offer
        path = f"{node.dotted}.sold.{number}.coil"
        return replace(offer, coil=notes.assume(path, usual_coil(offer.length), "length", SOURCE))

    return tuple(fill(number, offer) for number, offer in enumerate(offers))


def _grade(grade: Grade, node: Node, notes: Notebook) -> Grade:
    """The grade with the maker's own figures in place of the library's."""
    source = f"library grade `{grade.name}`: {grade.source}"
    e, limit, density = node["modulus"].stress(), node["elastic_limit"].stress(), node["density"].density()
    if e is None:
        notes.assume(f"{node.dotted}.modulus", grade.e, "stress", source)
    else:
        grade = replace(grade, e=e, g=grade.g * e / grade.e)
    if limit is None:
        notes.assume(f"{node.dotted}.elastic_limit", grade.elastic_limit, "stress", source)
    else:
        grade = replace(grade, elastic_limit=limit)
    if density is None:
        notes.assume(f"{node.dotted}.density", grade.density, "density", source)
    else:
        grade = replace(grade, density=density)
    return grade


def _section(node: Node) -> Section | None:
    if not node:
        return None
    written = {key: str(node[key].value).strip() for key in node.names()}
    size = {key: node[key].length() or 0.0 for key in node.names() if key != "kind"}
    if node["kind"].value == "flat":
        return Section("flat", **size, text=f"{written['width']} x {written['thickness']}")
    if node["kind"].value == "round":
        return Section("round", **size, text=f"{written['diameter']} round")
    return Section("tube", **size, text=f"{written['diameter']} x {written['wall']} tube")


def _form(grade: Grade, section: Section) -> Form:
    if section.kind != "round":
        return "strip" if section.kind == "flat" else "tube"
    if grade.metal:
        return "wire"
    return "cane" if grade.name == "rattan" else "rod"


def read_test(node: Node) -> BenchTest:
    """One test of a sample."""
    if node["test"].value == "droop":
        return Droop(node["overhang"].length() or 0.0, node["hang"].mass() or 0.0,
                     node["drop"].length() or 0.0, node["turned"].length(),
                     node["clamp_angle"].angle() or 0.0)
    if node["test"].value == "wrap":
        return Wrap(node["around"].length() or 0.0, node["result"].value == "springs back",
                    node["keeps"].length())
    return Weigh(node["length"].length() or 0.0, node["weight"].mass() or 0.0)
