"""Cloth: cases whose least length is worked out by hand in the comments."""

from __future__ import annotations

from decimal import Decimal

import pytest

from hoopwright.supply.cloth import (
    BadCloth,
    Band,
    Cloth,
    ClothFailure,
    ClothPart,
    ClothPlan,
    ClothShort,
    Gore,
    Panel,
    Remnant,
    TooWide,
    lay_out,
)

INCH = 0.0254
YARD = 0.9144


def calico(width: float, nap: bool = False, shrink_along: float = 0.0, shrink_across: float = 0.0) -> Cloth:
    return Cloth("calico", width * INCH, YARD / 8, Decimal("4.20"), YARD, nap, shrink_along, shrink_across)


def laid(parts: list[ClothPart], cloth: Cloth, remnants: tuple[Remnant, ...] = ()) -> ClothPlan:
    plan = lay_out(parts, cloth, remnants)
    assert isinstance(plan, ClothPlan)
    return plan


@pytest.mark.parametrize("width", [45, 60])
def test_one_yard_is_not_enough_for_a_hem_band_of_130_by_21(width: int) -> None:
    # Two strips give 90 or 120 in, so three crosswise, 3 x 21 = 63 in. Lengthwise two strips lie side by side
    # (2 x 21 = 42 in), 130 / 2 = 65 in each.
    plan = laid([Band("hem band", 130 * INCH, 21 * INCH)], calico(width))
    assert plan.used == pytest.approx(63 * INCH)
    assert plan.used_crosswise == pytest.approx(63 * INCH)
    assert plan.used_lengthwise == pytest.approx(65 * INCH)
    assert plan.buy == pytest.approx(1.75 * YARD)
    assert plan.buy > YARD
    assert plan.cost == Decimal("7.35")
    assert plan.proven
    assert plan.lower_bound == pytest.approx(63 * INCH)
    assert [p.width for p in plan.sheets[0].placements] == pytest.approx(
        [width * INCH, width * INCH, (130 - 2 * width) * INCH]
    )
    assert plan.joins == 2


def test_a_band_with_its_grain_along_is_cut_lengthwise() -> None:
    plan = laid([Band("hem band", 130 * INCH, 21 * INCH, grain="along")], calico(60))
    assert plan.used == pytest.approx(65 * INCH)
    assert plan.used_crosswise is None
    assert plan.bands[0].way == "lengthwise"
    assert plan.joins == 1
    assert plan.proven
    assert all(p.turned for p in plan.sheets[0].placements)


def test_a_flounce_of_220_takes_six_strips_of_44_less_seams() -> None:
    # five strips of 44 less 1 in of seams give 215, six give 258; 6 x 11 1/2 = 69 in
    flounce = Band("flounce", 220 * INCH, 11.5 * INCH, join=INCH, ring=True, grain="across")
    plan = laid([flounce], calico(44))
    assert len(plan.bands[0].strips) == 6
    assert plan.joins == 6
    assert plan.used == pytest.approx(69 * INCH)
    assert plan.proven
    assert sum(plan.bands[0].strips) == pytest.approx(226 * INCH)
    shorter = Band("flounce", 215 * INCH, 11.5 * INCH, join=INCH, ring=True, grain="across")
    assert laid([shorter], calico(44)).used == pytest.approx(57.5 * INCH)


def test_the_last_strip_is_never_shorter_than_allowed() -> None:
    # 92 in on 45: 45 + 45 + 2; with strips of at least 8 in the second gives 6 in to the third
    band = Band("band", 92 * INCH, 5 * INCH, grain="across", shortest=8 * INCH)
    strips = laid([band], calico(45)).bands[0].strips
    assert strips == pytest.approx((45 * INCH, 39 * INCH, 8 * INCH))


def test_a_band_that_must_not_be_joined_goes_lengthwise_when_the_cloth_is_narrow() -> None:
    waistband = Band("waistband", 31 * INCH, 3 * INCH, shortest=31 * INCH)
    assert laid([waistband], calico(45)).used == pytest.approx(3 * INCH)
    assert laid([waistband], calico(30)).used == pytest.approx(31 * INCH)


def test_two_bands_share_the_rest_of_a_strip() -> None:
    # 1.4 and 1.6 widths of 45 in: two full strips, and 18 + 27 in side by side on a third
    bands: list[ClothPart] = [
        Band("a", 63 * INCH, 10 * INCH, grain="across"),
        Band("b", 72 * INCH, 10 * INCH, grain="across"),
    ]
    plan = laid(bands, calico(45))
    assert plan.used == pytest.approx(30 * INCH)
    assert plan.proven


def test_gores_lie_head_to_tail_unless_the_cloth_has_a_nap() -> None:
    # 6 and 14 in wide: head to tail n of them take 14 + 10 (n - 1) in: four in 44; upright 14 n: three in 44
    gores = Gore("gore", 6 * INCH, 14 * INCH, 36 * INCH, count=4)
    plan = laid([gores], calico(44))
    assert plan.used == pytest.approx(36 * INCH)
    assert plan.proven
    assert [p.flipped for p in plan.sheets[0].placements] == [False, True, False, True]
    assert laid([gores], calico(44, nap=True)).used == pytest.approx(72 * INCH)
    assert laid([gores], calico(43)).used == pytest.approx(72 * INCH)


def test_panels_turn_only_when_their_grain_is_free_and_there_is_no_nap() -> None:
    # 20 by 50 in: upright two lie side by side on 45 in; on its side a panel needs 50 in
    assert laid([Panel("p", 50 * INCH, 20 * INCH, "across")], calico(45)).used == pytest.approx(50 * INCH)
    free: list[ClothPart] = [Panel("p", 40 * INCH, 10 * INCH, "either", count=4)]
    assert laid(free, calico(40)).used == pytest.approx(40 * INCH)
    flat: list[ClothPart] = [Panel("q", 40 * INCH, 10 * INCH, "either", count=3)]
    assert laid(flat, calico(40)).used == pytest.approx(30 * INCH)
    assert laid([Panel("p", 20 * INCH, 50 * INCH, "along", count=2)], calico(45)).used == pytest.approx(
        50 * INCH
    )


def test_shrinkage_narrows_the_cloth_and_lengthens_what_is_bought() -> None:
    # 50 in less 10 % is 45 in; 63 in washed are 70 in before a shrinkage of 10 %
    cloth = calico(50, shrink_across=0.1, shrink_along=0.1)
    plan = laid([Band("hem band", 130 * INCH, 21 * INCH, grain="across")], cloth)
    assert plan.used == pytest.approx(63 * INCH)
    assert plan.needed == pytest.approx(70 * INCH)
    assert plan.buy == pytest.approx(2 * YARD)


def test_what_is_bought_is_a_whole_number_of_steps() -> None:
    metric = Cloth("drill", 1.5, step=0.1, price=Decimal("9.90"), per=1.0)
    plan = laid([Panel("p", 1.0, 0.61)], metric)
    assert plan.buy == pytest.approx(0.7)
    assert plan.cost == Decimal("6.93")
    exact = laid([Panel("p", 1.0, 0.7)], metric)
    assert exact.buy == pytest.approx(0.7)


def test_remnants_are_used_first_and_may_be_all_that_is_needed() -> None:
    band = Band("hem band", 130 * INCH, 21 * INCH, grain="across")
    plan = laid([band], calico(45), (Remnant(50 * INCH, 30 * INCH, "scrap"),))
    # 50 in from the remnant leave 80 in: two strips
    assert plan.used == pytest.approx(42 * INCH)
    assert [s.source for s in plan.sheets] == ["on hand", "bought"]
    assert plan.bands[0].strips == pytest.approx((50 * INCH, 45 * INCH, 35 * INCH))
    enough = laid([band], calico(45), (Remnant(65 * INCH, 42 * INCH),))
    assert enough.buy == 0
    assert enough.cost == 0
    assert enough.proven


def test_a_seamed_band_pieced_from_a_remnant_takes_a_join_more() -> None:
    # 100 in and the join of an inch to the 40 in of the remnant leave 61, of which 45 and 17 make 60 and a join
    band = Band("casing", 100 * INCH, 10 * INCH, join=INCH, grain="across")
    plan = laid([band], calico(45), (Remnant(40 * INCH, 12 * INCH, "scrap"),))
    assert plan.bands[0].strips == pytest.approx((40 * INCH, 45 * INCH, 17 * INCH))
    assert (plan.used, plan.joins) == (pytest.approx(20 * INCH), 2)
    # as a ring its ends are joined too: 41 of the remnant's 40 in are still wanted with the last join, 18 in the end
    ring = laid([Band("flounce", 100 * INCH, 10 * INCH, join=INCH, ring=True, grain="across")], calico(45),
                (Remnant(40 * INCH, 12 * INCH, "scrap"),))
    assert ring.bands[0].strips == pytest.approx((40 * INCH, 45 * INCH, 18 * INCH))
    assert ring.joins == 3


def test_two_remnants_serve_the_smaller_first_and_one_too_short_not_at_all() -> None:
    # 61 in are left after the first, 22 after the 40 in of the second and one join more; 6 in are no strip
    band = Band("casing", 100 * INCH, 10 * INCH, join=INCH, grain="across")
    scraps = (Remnant(40 * INCH, 12 * INCH, "b"), Remnant(6 * INCH, 30 * INCH, "c"), Remnant(40 * INCH, 11 * INCH, "a"))
    plan = laid([band], calico(45), scraps)
    assert [sheet.name for sheet in plan.sheets if sheet.source == "on hand"] == ["a", "b"]
    assert plan.bands[0].strips == pytest.approx((40 * INCH, 40 * INCH, 22 * INCH))
    assert plan.used == pytest.approx(10 * INCH)


def test_a_remnant_as_high_as_two_strips_gives_two() -> None:
    band = Band("casing", 100 * INCH, 10 * INCH, join=INCH, grain="across")
    plan = laid([band], calico(45), (Remnant(40 * INCH, 20 * INCH),))
    assert plan.bands[0].strips == pytest.approx((40 * INCH, 40 * INCH, 22 * INCH))
    assert [place.y for place in plan.sheets[0].placements] == pytest.approx([0, 10 * INCH])


def test_lengthwise_strips_of_a_remnant_lie_beside_each_other() -> None:
    # two of 30 in from the remnant, 42 left: with a join each, three strips of 14 2/3 lie on 14 2/3 of the cloth
    band = Band("tie", 100 * INCH, 12 * INCH, join=INCH, grain="along")
    plan = laid([band], calico(40), (Remnant(24 * INCH, 30 * INCH),))
    assert plan.bands[0].strips == pytest.approx((30 * INCH, 30 * INCH, *[44 / 3 * INCH] * 3), abs=2e-4)
    assert [place.x for place in plan.sheets[0].placements] == pytest.approx([0, 12 * INCH])
    assert plan.used == pytest.approx(44 / 3 * INCH, abs=2e-4)


def test_gores_head_to_tail_touch_along_their_sides() -> None:
    # 6 and 14 in wide: each moves on by the mean, 10 in; the second stands on its head
    [sheet] = laid([Gore("gore", 6 * INCH, 14 * INCH, 36 * INCH, count=3)], calico(44)).sheets
    assert [place.x for place in sheet.placements] == pytest.approx([0, 10 * INCH, 20 * INCH])
    first, second = sheet.placements[0].outline, sheet.placements[1].outline
    assert sorted(x / INCH for x, _ in first) == pytest.approx([0, 4, 10, 14])
    assert sorted(x / INCH for x, _ in second) == pytest.approx([10, 14, 20, 24])


def test_a_panel_of_free_grain_too_wide_for_the_cloth_lies_along_it() -> None:
    plan = laid([Panel("p", 50 * INCH, 20 * INCH, "either")], calico(45, nap=True))
    assert (plan.used, plan.sheets[0].placements[0].turned) == (pytest.approx(50 * INCH), True)
    upright = laid([Panel("p", 40 * INCH, 20 * INCH, "either")], calico(45, nap=True))
    assert (upright.used, upright.sheets[0].placements[0].turned) == (pytest.approx(20 * INCH), False)


def test_problems_are_values() -> None:
    short = lay_out([Panel("p", 1.0, 3.0)], Cloth("end of roll", 1.4, most=2.0))
    assert short == ClothFailure((ClothShort("end of roll", 3.0, 2.0),))
    wide = lay_out([Panel("p", 1.5, 3.0), Gore("g", 0.2, 1.6, 1.0)], Cloth("c", 1.4))
    assert isinstance(wide, ClothFailure)
    assert [p.part for p in wide.problems if isinstance(p, TooWide)] == ["p", "g"]
    bad = lay_out([Panel("p", -1.0, 3.0), Panel("p", 1.0, 1.0)], Cloth("c", 0.0, price=Decimal(0)))
    assert isinstance(bad, ClothFailure)
    assert [p.what for p in bad.problems if isinstance(p, BadCloth)] == [
        "width of c",
        "price of c",
        "part p",
        "part p",
    ]
