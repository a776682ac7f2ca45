"""A shopping trip: never dearer than buying alone, every piece cut once, the cost shared exactly, fairly."""

from __future__ import annotations

import json
from collections import Counter
from decimal import Decimal
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from hoopwright.compare.trip import Trip, plan_trip
from hoopwright.compare.trip.cupboard import counted_once
from hoopwright.compare.trip.machine import trip_json
from hoopwright.compare.trip.money import share_out
from hoopwright.compare.trip.page import trip_markdown
from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan

SCHEMA = json.loads((Path(__file__).parents[2] / "schemas" / "v1" / "trip.schema.json").read_text("utf-8"))
CAGE = """\
spec: 1
title: {title}
units: centimetres
wearer: {{stature: 168 cm, waist: 72 cm}}
shape: {{hem: {{girth: {hem} cm}}, hoops: {{count: {count}}}}}
build: {{hoops: {{material: strip, splices: {splices}}}, hem_band: {{depth: 20 cm, material: calico}}}}
shops: {{wire works: 6.90 EUR, market: 0 EUR}}
materials:
  strip:
    grade: spring steel, tempered
    section: {{kind: flat, width: {width} mm, thickness: 1 mm}}
    sold: [{{length: 5 m, price: 9.00 EUR}}, {{length: 25 m, price: 40.00 EUR}}]
    from: wire works
    on_hand: {hand}
  twill: {{kind: tape, sold: [{{length: 10 m, price: 5.90 EUR}}]}}
  braid: {{kind: braid, from: market, sold: [{{per: 1 m, price: 0.75 EUR}}]}}
  calico:
    kind: cloth
    weight: 140 g/m2
    width: 140 cm
    on_hand: [{{length: 60 cm, width: 50 cm}}]
    sold: [{{per: 1 m, step: 10 cm, price: 7 EUR}}]
  hook and bar:
    kind: fastening
    on_hand: 1
    sold: [{{count: 3, price: 2.10 EUR}}, {{count: 1, price: 1 EUR}}]
  thread: {{kind: consumable, sold: [{{count: 1, price: 2.20 EUR}}]}}
  glue: {{kind: consumable, sold: [{{count: 1, price: 3.20 EUR}}]}}
  end tips: {{kind: consumable, sold: [{{count: 10, price: 1.20 EUR}}]}}
"""
USUAL: dict[str, object] = {"title": "Maid", "hem": 280, "count": 6, "splices": 0, "width": 10, "hand": "[]"}


@cache
def plan_of(text: str) -> Plan:
    result = compile_spec(text.encode(), "cage.yaml")
    assert result.plan is not None, result.diagnostics
    return result.plan


def trip_of(*designs: dict[str, object]) -> Trip:
    plans = [("design", plan_of(CAGE.format(**{**USUAL, **values}))) for values in designs]
    trip, said = plan_trip(plans)
    assert trip is not None, said
    return trip


def holds_for_every_trip(trip: Trip) -> None:
    assert trip.total <= trip.alone
    assert sum((design.pays for design in trip.designs), Decimal(0)) == trip.total
    assert all(design.pays <= design.alone for design in trip.designs)
    cut = Counter(piece.part for pack in trip.packs for piece in pack.pieces if piece.share == 1)
    wanted = [
        f"{d.letter} {part.id}" for d in trip.designs for part in (*d.plan.shape.hoops, *d.plan.shape.tapes)
    ]
    assert all(cut[part] == 1 for part in wanted)
    assert set(cut.values()) == {1}
    for pack in trip.packs:
        assert sum(piece.length for piece in pack.pieces) <= pack.pack + 1e-6
    for item in ("strip", "twill", "braid"):
        bought = sum(pack.pack for pack in trip.packs if pack.material == item and pack.origin == "bought")
        listed = sum(one.line.packs * one.line.pack_length for one in trip.lines if one.line.item == item)
        assert bought == pytest.approx(listed)


def test_two_maids_share_coils_rolls_and_one_delivery() -> None:
    trip = trip_of({"hand": "[2 m]"}, {"hem": 260, "hand": "[2 m]"})
    holds_for_every_trip(trip)
    assert trip.saving > 0
    deliveries = [one.line for one in trip.lines if one.line.kind == "delivery"]
    assert [line.cost for line in deliveries] == [Decimal("6.90")]
    assert any({"A", "B"} <= {piece.part[0] for piece in pack.pieces} for pack in trip.packs)


def test_what_is_on_hand_counts_once_though_both_list_it() -> None:
    trip = trip_of({"hand": "[2 m, 1 m]"}, {"hand": "[2 m]"})
    used = Counter(pack.pack for pack in trip.packs if pack.origin == "on hand")
    assert used[2.0] <= 1
    assert counted_once([[2.0, 1.0], [2.0], [2.0, 2.0]]).everything == (1.0, 2.0, 2.0)


def test_one_design_pays_what_its_own_plan_costs() -> None:
    trip = trip_of({"hand": "[2 m]"})
    assert trip.designs[0].pays == trip.designs[0].plan.supply.cost.total
    assert trip.saving == 0


def test_different_goods_of_one_name_are_bought_apart() -> None:
    trip = trip_of({}, {"width": 12})
    assert trip.apart == ("strip",)
    assert {one.line.item for one in trip.lines if one.line.kind == "strip"} == {"strip (A)", "strip (B)"}
    assert "Bought apart" in trip_markdown(trip)
    shops = [one.line.item for one in trip.lines if one.line.kind == "delivery"]
    assert shops == ["delivery from wire works"]


def test_the_trip_has_the_choice_of_every_offer() -> None:
    text = CAGE.format(**USUAL)
    cheap = text.replace("{count: 1, price: 2.20 EUR}", "{count: 1, price: 1.90 EUR}")
    trip, said = plan_trip([("one", plan_of(text)), ("other", plan_of(cheap))])
    assert trip is not None, said
    holds_for_every_trip(trip)
    assert trip.apart == ()
    assert [one.line.price for one in trip.lines if one.line.item == "thread"] == [Decimal("1.90")]


def test_goods_without_a_price_are_bought_apart_from_priced_ones() -> None:
    text = CAGE.format(**USUAL)
    bare = text.replace(
        "thread: {kind: consumable, sold: [{count: 1, price: 2.20 EUR}]}", "thread: {kind: consumable}"
    )
    trip, said = plan_trip([("one", plan_of(text)), ("other", plan_of(bare))])
    assert trip is not None, said
    assert trip.missing == ("thread (B)",)
    assert "no price yet" in trip_markdown(trip)


def test_prices_in_two_currencies_make_no_trip() -> None:
    one = plan_of(CAGE.format(**USUAL))
    other = plan_of(CAGE.format(**USUAL).replace("EUR", "USD"))
    trip, (found,) = plan_trip([("one", one), ("other", other)])
    assert trip is None
    assert found.code == "trip-currencies"


def test_the_json_is_valid_and_says_what_the_page_says() -> None:
    trip = trip_of({}, {"hem": 240, "count": 5})
    value = json.loads(trip_json(trip))
    Draft202012Validator.check_schema(SCHEMA)
    assert [error.message for error in Draft202012Validator(SCHEMA).iter_errors(value)] == []
    page = trip_markdown(trip)
    assert f"**{value['cost']['total']} EUR**" in page
    for design in value["designs"]:
        assert f"{design['pays']} EUR" in page


@settings(deadline=None, max_examples=12)
@given(
    designs=st.lists(
        st.fixed_dictionaries(
            {
                "hem": st.sampled_from([240, 270, 300]),
                "count": st.integers(4, 7),
                "splices": st.sampled_from([0, 1]),
                "hand": st.sampled_from(["[]", "[2 m]", "[2 m, 3 m]", "[90 cm]"]),
            }
        ),
        min_size=1,
        max_size=3,
    )
)
def test_a_trip_is_never_dearer_than_buying_alone(designs: list[dict[str, object]]) -> None:
    holds_for_every_trip(trip_of(*designs))


@given(
    total=st.integers(0, 100_000),
    alone=st.lists(st.integers(0, 60_000), min_size=1, max_size=6),
)
def test_shares_sum_exactly_and_nobody_pays_more_than_alone(total: int, alone: list[int]) -> None:
    costs = [Decimal(cents) / 100 for cents in alone]
    whole = min(Decimal(total) / 100, sum(costs, Decimal(0)))
    parts = share_out(whole, costs, [1.0] * len(costs))
    assert sum(parts) == whole
    assert all(0 <= part <= cost for part, cost in zip(parts, costs, strict=True))


def test_a_roll_for_both_is_bought_as_sold_and_cut_as_washed() -> None:
    """A roll of 10 m of twill gives 9.70 m once washed, in the list, the cutting, the page and the file."""
    trip = trip_of({}, {"hem": 240, "count": 5})
    rolls = [pack for pack in trip.packs if pack.material == "twill"]
    for roll in rolls:
        assert (roll.pack, roll.washed) == (pytest.approx(10), pytest.approx(9.7))
        assert sum(piece.length for piece in roll.pieces) + roll.left == pytest.approx(9.7)
    page = trip_markdown(trip)
    assert "| **twill**, 10.00 m, to buy, 9.70 m once washed |" in page
    value = json.loads(trip_json(trip))
    assert {pack["washed_mm"] for pack in value["cutting"] if pack["material"] == "twill"} == {9700}
    assert not [pack for pack in value["cutting"] if pack["material"] == "strip" and "washed_mm" in pack]


def test_a_whole_width_on_hand_is_laid_once_though_both_list_it() -> None:
    """Of 140 cm cloth less 3 % a washed piece is 135.8 cm wide; one strip of the two bands lies on it."""
    texts = [CAGE.format(**{**USUAL, "title": title}).replace("{length: 60 cm, width: 50 cm}", "55 cm")
             for title in ("Maid", "Cook")]
    trip, said = plan_trip([("design", plan_of(text)) for text in texts])
    assert trip is not None, said
    there = [layout for layout in trip.layouts if layout.buy == 0]
    assert [round(layout.width, 4) for layout in there] == [1.358]
    assert all(layout.washed == pytest.approx(layout.buy * 0.97) for layout in trip.layouts if layout.buy)


def test_what_nobody_would_have_paid_for_is_shared_by_use() -> None:
    assert share_out(Decimal(3), [Decimal(0), Decimal(0)], [2.0, 1.0]) == (Decimal(2), Decimal(1))
