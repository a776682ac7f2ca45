"""Providing the worked example: cut list, shopping list, sums, and what on-hand stock saves."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from decimal import Decimal
from types import SimpleNamespace

import pytest

from hoopwright.supply.model import Supply
from hoopwright.supply.provide import provide

FOOT = 0.3048
Drawn = Callable[[str], SimpleNamespace]


def supply_of(drawn: Drawn, text: str) -> Supply:
    cage = drawn(text)
    supply, said = provide(cage.spec, cage.shape)
    assert supply is not None, said
    return supply


@pytest.fixture(scope="module")
def harbour(drawn: Drawn, harbour_text: str) -> Supply:
    return supply_of(drawn, harbour_text)


def test_one_fifty_foot_coil_and_the_fourteen_feet_on_hand_give_all_hoops(harbour: Supply) -> None:
    packs = [pack for pack in harbour.cutting.packs if pack.material == "strip"]
    assert [(round(pack.pack / FOOT), pack.origin) for pack in packs] == [(14, "on hand"), (50, "bought")]
    assert all(pack.pieces for pack in packs)
    line = next(line for line in harbour.shopping if line.item == "strip")
    assert (line.packs, line.cost) == (1, Decimal("19.00"))
    assert harbour.cutting.proven
    assert harbour.cutting.gap == 0


def test_every_piece_is_cut_exactly_once_and_no_pack_is_overfull(drawn: Drawn, harbour_text: str) -> None:
    cage = drawn(harbour_text)
    supply, _ = provide(cage.spec, cage.shape)
    assert supply is not None
    cut = Counter(piece.part for pack in supply.cutting.packs for piece in pack.pieces)
    cased = {f"casing {hoop.id}" for hoop in cage.shape.hoops if hoop.cased}
    wanted = (
        {hoop.id for hoop in cage.shape.hoops}
        | {tape.id for tape in cage.shape.tapes}
        | {"waistband"}
        | cased
    )
    assert cut == Counter(wanted)
    kerf = cage.spec.allowances.kerf
    for pack in supply.cutting.packs:
        lost = kerf if pack.material == "strip" else 0.0
        used = sum(piece.length for piece in pack.pieces)
        assert used + lost * (len(pack.pieces) - 1) <= pack.washed + 1e-9
        assert used + lost * len(pack.pieces) + pack.left == pytest.approx(pack.washed, abs=kerf + 1e-9)


def test_tapes_and_waistband_come_off_one_roll(harbour: Supply) -> None:
    rolls = [pack for pack in harbour.cutting.packs if pack.material == "twill"]
    assert len(rolls) == 1
    assert len(rolls[0].pieces) == 7


def test_total_is_the_sum_of_the_list_and_the_budget_is_judged_with_the_reserve(harbour: Supply) -> None:
    cost = harbour.cost
    assert cost.total == sum((line.cost for line in harbour.shopping if line.cost is not None), Decimal(0))
    # 19.00 strip + 6.50 tape + 13 x 0.60 braid + 7 x 1.05 calico + 2.10 hooks + 7.40 solder
    assert cost.total == Decimal("50.15")
    assert cost.reserve == Decimal("5.02")
    check = harbour.checks[0]
    assert (check.code, check.value, check.limit) == ("budget", pytest.approx(55.17), 85.0)
    assert check.result == "holds"


def test_thread_has_no_price_so_the_cost_is_partial_and_a_note_names_it(
    drawn: Drawn, harbour_text: str
) -> None:
    cage = drawn(harbour_text)
    supply, said = provide(cage.spec, cage.shape)
    assert supply is not None
    assert supply.cost.partial
    assert supply.cost.missing == ("thread",)
    assert [(note.code, note.path) for note in said] == [("price-missing", ("limits", "budget"))]
    assert "`thread`" in said[0].message


def test_small_stuff_is_counted_with_a_tenth_more_and_rounded_up(harbour: Supply) -> None:
    needs = {line.item: line.need for line in harbour.shopping}
    assert needs["hook and bar"] == 3  # 2 x 1.1
    assert needs["solder and flux"] == 1  # 7 joins and a proof, x 1.1, one pack for 40


def test_tools_that_are_missing_are_listed_apart(harbour: Supply) -> None:
    assert [need.choices for need in harbour.tools_missing] == [
        ("flat iron",), ("goggles",), ("gloves",), ("plumb line",)]


def test_a_sprung_lap_is_held_by_clamps_and_not_by_pins(drawn: Drawn, harbour_text: str) -> None:
    text = harbour_text.replace("join: lap soldered", "join: lap bound").replace("clamps, sewing", "sewing")
    choices = [need.choices for need in supply_of(drawn, text).tools_missing]
    assert ("clamps",) in choices
    assert ("clamps", "vice") not in choices


def test_without_a_workshop_no_tool_is_missing(drawn: Drawn, harbour_text: str) -> None:
    text = "\n".join(line for line in harbour_text.splitlines() if not line.startswith("workshop"))
    assert supply_of(drawn, text).tools_missing == ()


def test_an_offcut_on_hand_saves_the_longer_coil(drawn: Drawn, harbour_text: str, harbour: Supply) -> None:
    without = supply_of(drawn, harbour_text.replace("on_hand: [14 ft]", "on_hand: []"))
    line = next(line for line in without.shopping if line.item == "strip")
    assert (line.pack_length / FOOT, line.cost) == (pytest.approx(100), Decimal("33.00"))
    assert without.cost.total - harbour.cost.total == Decimal("14.00")


@pytest.mark.parametrize("hand", ["[]", "[5 ft]", "[14 ft]", "[14 ft, 9 ft 4 in]", "[60 ft]"])
def test_more_on_hand_never_costs_more(drawn: Drawn, harbour_text: str, hand: str) -> None:
    def total(on_hand: str) -> Decimal:
        return supply_of(drawn, harbour_text.replace("on_hand: [14 ft]", f"on_hand: {on_hand}")).cost.total

    more = hand.replace("]", ", 10 ft]") if hand != "[]" else "[10 ft]"
    assert total(more) <= total(hand)


def test_the_order_of_offers_does_not_matter(drawn: Drawn, harbour_text: str, harbour: Supply) -> None:
    turned = harbour_text.replace(
        "[{length: 50 ft, price: 19.00 USD}, {length: 100 ft, price: 33.00 USD}]",
        "[{length: 100 ft, price: 33.00 USD}, {length: 50 ft, price: 19.00 USD}]",
    )
    assert turned != harbour_text
    assert supply_of(drawn, turned) == harbour
