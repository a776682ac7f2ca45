"""Splices in the shopping and cutting of a whole design: only when allowed, only when the list gets
cheaper."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from types import SimpleNamespace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.supply.model import Supply
from hoopwright.supply.provide import provide

Drawn = Callable[[str], SimpleNamespace]

CAGE = """
spec: 1
units: centimetres
wearer: {{stature: 168 cm, waist: 72 cm}}
shape: {{hem: {{girth: {hem} cm}}, hoops: {{count: {count}}}}}
build: {{hoops: {{material: strip, join: {join}, casing: none, splices: {splices}}}}}
allowances: {{end_trim: {trim} mm}}
materials:
  strip:
    grade: spring steel, tempered
    section: {{kind: flat, width: 10 mm, thickness: 1 mm}}
    sold: [{{length: {pack} cm, price: 9.00 EUR}}]
    on_hand: {hand}
  twill: {{kind: tape, sold: [{{per: 1 m, price: 0.70 EUR}}]}}
  solder and flux: {{kind: consumable, sold: [{{count: 1, price: {solder} EUR}}]}}
"""
USUAL: dict[str, object] = {
    "hem": 280, "count": 6, "join": "lap soldered", "splices": 0, "trim": 0, "pack": 440, "hand": "[]",
    "solder": "0.40",
}  # fmt: skip


def supply_of(drawn: Drawn, **values: object) -> tuple[SimpleNamespace, Supply]:
    cage = drawn(CAGE.format(**{**USUAL, **values}))
    supply, said = provide(cage.spec, cage.shape)
    assert supply is not None, said
    return cage, supply


def test_splices_save_a_coil_and_the_report_adds_up(drawn: Drawn) -> None:
    _, whole = supply_of(drawn)
    cage, spliced = supply_of(drawn, splices=1)
    told = spliced.cutting.splicing
    assert whole.cutting.splicing is None
    assert told is not None
    assert told.saves == Decimal("9.00")
    assert whole.cost.total - spliced.cost.total == told.saves - told.cost
    for part in told.parts:
        pieces = [piece for pack in spliced.cutting.packs for piece in pack.pieces if piece.part == part]
        assert sorted(piece.share for piece in pieces) == list(range(1, pieces[0].shares + 1))
        lap = cage.spec.build.hoops.lap
        whole_cut = cage.shape.hoop(part).cut + lap * (len(pieces) - 1)
        assert sum(piece.length for piece in pieces) == pytest.approx(whole_cut, abs=1e-6)


def test_no_splice_when_nothing_is_saved(drawn: Drawn) -> None:
    _, supply = supply_of(drawn, splices=1, pack=5000)
    assert supply.cutting.splicing is None


def test_no_splice_when_what_the_joins_use_up_costs_more_than_is_saved(drawn: Drawn) -> None:
    """A splice with rivets wants two more, and here they cost more than the coil that is saved."""
    text = CAGE.format(**{**USUAL, "splices": 1, "join": "lap riveted", "pack": 450})
    dear = text + "  rivets: {kind: consumable, sold: [{count: 1, price: 4.60 EUR}]}\n"
    cheap = text + "  rivets: {kind: consumable, sold: [{count: 1, price: 0.05 EUR}]}\n"
    found = []
    for spec in (dear, cheap):
        cage = drawn(spec)
        supply, _ = provide(cage.spec, cage.shape)
        assert supply is not None
        found.append(supply.cutting.splicing)
    assert found[0] is None
    assert found[1] is not None
    assert found[1].cost > 0


def test_a_hoop_longer_than_every_pack_needs_its_splice(drawn: Drawn) -> None:
    cage = drawn(CAGE.format(**{**USUAL, "pack": 200}))
    supply, said = provide(cage.spec, cage.shape)
    assert supply is None
    assert said[0].code == "pack-too-short"
    assert "`splices: 1` under `build.hoops`" in said[0].help
    _, supply = supply_of(drawn, pack=200, splices=1)
    assert supply.cutting.splicing is not None
    assert supply.cutting.splicing.saves is None


def test_the_end_trim_is_taken_off_every_length(drawn: Drawn) -> None:
    _, supply = supply_of(drawn, trim=40, hand="[320 cm]")
    strip = [pack for pack in supply.cutting.packs if pack.material == "strip"]
    assert any(pack.origin == "on hand" for pack in strip)
    for pack in strip:
        used = sum(piece.length for piece in pack.pieces)
        assert used + pack.left <= pack.pack - 0.04 + 1e-6


@settings(deadline=None, max_examples=40)
@given(
    hem=st.integers(220, 320),
    count=st.integers(4, 7),
    pack=st.integers(150, 700),
    hand=st.lists(st.integers(40, 300), max_size=2),
    most=st.integers(1, 2),
)
def test_splices_never_cost_more_and_nothing_is_lost(
    drawn: Drawn, hem: int, count: int, pack: int, hand: list[int], most: int
) -> None:
    shelf = "[" + ", ".join(f"{length} cm" for length in hand) + "]"
    values: dict[str, object] = {"hem": hem, "count": count, "pack": pack, "hand": shelf}
    cage = drawn(CAGE.format(**{**USUAL, **values, "splices": most}))
    supply, _ = provide(cage.spec, cage.shape)
    plain = drawn(CAGE.format(**{**USUAL, **values}))
    without, _ = provide(plain.spec, plain.shape)
    if supply is None:
        assert without is None
        return
    assert without is None or supply.cost.total <= without.cost.total
    cuts: dict[str, list[float]] = {}
    for one in supply.cutting.packs:
        if one.material == "strip":
            kerf = cage.spec.allowances.kerf
            used = sum(piece.length for piece in one.pieces) + kerf * max(0, len(one.pieces) - 1)
            assert used <= one.pack + 1e-6
            for piece in one.pieces:
                cuts.setdefault(piece.part, []).append(piece.length)
    for hoop in cage.shape.hoops:
        extra = cage.spec.build.hoops.lap * (len(cuts[hoop.id]) - 1)
        assert len(cuts[hoop.id]) <= most + 1
        assert sum(cuts[hoop.id]) == pytest.approx(hoop.cut + extra, abs=1e-5)
