"""Pieces that were cut, after the design has changed: kept, recut, made into others, or kept as stock."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from types import SimpleNamespace

from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.library.model import Money, Pack
from hoopwright.shape.draw import draw
from hoopwright.shape.model import Shape
from hoopwright.spec.model import Spec
from hoopwright.supply.mending import mend, mending_findings

INCH = 0.0254


def design(make: SimpleNamespace, **more: object) -> tuple[Spec, Shape]:
    stock = replace(make.strip, sold=(Pack(15.24, Money(Decimal(19), "USD")),))
    spec = make.spec(stock=stock, **more)
    shape, told = draw(spec)
    assert shape is not None, told
    return spec, shape


def cuts(shape: Shape) -> dict[str, float]:
    return {hoop.id: hoop.cut for hoop in shape.hoops}


def test_what_fits_is_kept_and_costs_nothing(make: SimpleNamespace) -> None:
    spec, shape = design(make)
    found = mend(spec, shape, {part: length + 0.2 * INCH for part, length in cuts(shape).items()})
    assert {piece.fate for piece in found.pieces} == {"kept"}
    assert (found.anew, found.cost, found.needed) == ((), Decimal(0), False)


def test_a_hoop_too_long_is_recut(make: SimpleNamespace) -> None:
    spec, shape = design(make)
    found = mend(spec, shape, {**cuts(shape), "H3": shape.hoops[2].cut + INCH})
    assert [(one.part, one.fate, one.serves) for one in found.pieces if one.fate != "kept"] == [
        ("H3", "recut", "H3")]
    assert found.cost == 0


def test_a_hoop_too_short_becomes_a_smaller_one_and_its_own_is_cut_anew(make: SimpleNamespace) -> None:
    spec, shape = design(make)
    own = {"H7": shape.hoops[6].cut - 2 * INCH}
    found = mend(spec, shape, own)
    [piece] = found.pieces
    assert (piece.fate, piece.serves) == ("becomes", "H5")
    assert [one.part for one in found.anew] == ["H7"]
    assert found.cost == Decimal(19)
    [told] = mending_findings(found, spec)
    assert told.code == "cut-no-longer-fits"
    assert "H5" in told.help
    assert told.notes == ("H7 is to be cut anew",)


def test_what_is_cut_anew_is_cut_by_the_same_rules(make: SimpleNamespace) -> None:
    """Ends that are trimmed off and splices that are allowed count as they did at first."""
    spec, shape = design(make)
    own = {"H7": shape.hoops[6].cut - 2 * INCH}
    long = shape.hoops[6].cut
    short = replace(make.strip, sold=(
        Pack(long * 0.8, Money(Decimal(7), "USD")), Pack(long * 1.01, Money(Decimal(9), "USD"))))
    hooped = replace(spec.build.hoops, material=short)

    def price(splices: int, trim: float, sold: int) -> Decimal | None:
        stock = replace(short, sold=short.sold[:sold])
        build = replace(spec.build, hooped=replace(hooped, material=stock, splices=splices))
        rules = replace(spec.allowances, end_trim=trim)
        return mend(replace(spec, build=build, allowances=rules), shape, own).cost

    assert price(0, 0.0, 2) == Decimal(9)
    assert price(0, 0.02 * long, 2) is None
    assert price(0, 0.0, 1) is None
    assert price(1, 0.0, 1) == Decimal(14)


def test_adding_a_hoop_is_not_taken_for_recutting_all(make: SimpleNamespace) -> None:
    """Seven hoops cut, eight wanted: all but one serve again, the one that is missing is cut."""
    _, before = design(make)
    spec, after = design(make, count=8)
    found = mend(spec, after, cuts(before))
    served = {one.serves for one in found.pieces if one.serves}
    assert len(served) == 7
    assert {"H7", "H8"} <= served
    assert not any(one.fate == "spare" for one in found.pieces)


def test_no_piece_becomes_a_part_that_is_cut_already(make: SimpleNamespace) -> None:
    spec, shape = design(make)
    [piece] = mend(spec, shape, {"H7": shape.hoops[6].cut - 2 * INCH}, ("cut-H5", "cut-H6")).pieces
    assert piece.serves == "H4"


def test_a_hoop_that_has_gone_is_offered_as_stock(make: SimpleNamespace) -> None:
    spec, shape = design(make, count=6)
    found = mend(spec, shape, {**cuts(shape), "H7": 20 * INCH})
    assert [(one.part, one.fate) for one in found.pieces if one.fate != "kept"] == [("H7", "spare")]
    [told] = mending_findings(found, spec)
    assert told.path == ("progress", "cut", "H7")
    assert "on_hand" in told.help


def test_a_tape_may_have_lost_its_reserve(make: SimpleNamespace) -> None:
    spec, shape = design(make)
    short = shape.tapes[0].cut - 2.9 * INCH
    assert mend(spec, shape, {"T1": short, "T2": shape.tapes[1].cut + 3 * INCH}).pieces[0].fate == "kept"
    longest = max(shape.tapes, key=lambda tape: tape.cut)
    assert mend(spec, shape, {longest.id: short - INCH}).pieces[0].fate != "kept"


LENGTHS = st.lists(st.floats(0.3, 3.2), min_size=1, max_size=7)


@given(LENGTHS)
@settings(max_examples=40, deadline=None)
def test_each_piece_has_one_fate_and_serves_as_many_parts_as_can_be(make: SimpleNamespace,
                                                                    lengths: list[float]) -> None:
    """Held against every way of giving pieces to parts, by matching of least short pieces first."""
    import networkx as nx

    spec, shape = design(make)
    own = {f"H{k + 1}": length for k, length in enumerate(lengths)}
    found = mend(spec, shape, own)
    assert [one.part for one in found.pieces] == list(own)
    served = [one.serves for one in found.pieces if one.serves]
    assert len(set(served)) == len(served)
    tolerance = spec.allowances.hoop_tolerance
    for one in found.pieces:
        assert not one.serves or one.length >= one.need - tolerance - 1e-5
    graph = nx.Graph()
    parts = [f"part {hoop.id}" for hoop in shape.hoops]
    graph.add_nodes_from(own)
    graph.add_nodes_from(parts)
    graph.add_edges_from((piece, f"part {hoop.id}") for piece, length in own.items() for hoop in shape.hoops
                         if length >= hoop.cut - tolerance - 1e-6)
    most = len(nx.bipartite.maximum_matching(graph, top_nodes=list(own))) // 2
    assert len(served) == most
    missing = {one.part for one in found.anew}
    assert missing == {part for part in own if part not in served}
