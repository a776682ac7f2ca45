"""Splices: cases worked out by hand in the comments."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.supply.cutting import (
    CuttingFailure,
    CuttingOrder,
    CuttingPlan,
    CuttingRules,
    NotEnough,
    Pack,
    Piece,
    SpliceRule,
    TooLong,
    cut_lengths,
)

RULE = SpliceRule(lap=0.1, cost=Decimal("0.50"), minutes=15, most=1, shortest=0.5)


def order(
    lengths: list[float], rule: SpliceRule | None = RULE, on_hand: tuple[float, ...] = ()
) -> CuttingOrder:
    pieces = tuple(Piece(f"H{i + 1}", x) for i, x in enumerate(lengths))
    return CuttingOrder(pieces, (Pack(4.0, Decimal(10)),), on_hand, CuttingRules(splice=rule))


def solved(what: CuttingOrder) -> CuttingPlan:
    plan = cut_lengths(what)
    assert isinstance(plan, CuttingPlan)
    return plan


def test_a_splice_that_saves_a_pack_is_made_and_accounted_for() -> None:
    # three hoops of 2.5 take three packs of 4 whole; two packs hold 8.0 = 3 x 2.5 + 0.1 + 0.4
    plan = solved(order([2.5, 2.5, 2.5]))
    assert plan.cost == 20
    assert plan.splices is not None
    assert (plan.splices.count, plan.splices.parts) == (1, ("H1",))
    assert (plan.splices.saves, plan.splices.cost, plan.splices.minutes) == (10, Decimal("0.50"), 15)
    assert plan.objective == Decimal("20.50")
    assert plan.proven
    shares = [c for p in plan.packs for c in p.pieces if c.shares == 2]
    assert sum(c.length for c in shares) == pytest.approx(2.6)
    assert sorted(c.share for c in shares) == [1, 2]


def test_no_splice_is_made_unless_the_order_allows_it() -> None:
    plan = solved(order([2.5, 2.5, 2.5], rule=None))
    assert (plan.cost, plan.splices) == (30, None)


def test_no_splice_is_made_when_it_saves_no_money() -> None:
    dear = replace(RULE, cost=Decimal("10.00"))
    plan = solved(order([2.5, 2.5, 2.5], rule=dear))
    assert (plan.cost, plan.splices) == (30, None)
    assert plan.proven


def test_a_lap_too_long_for_the_slack_makes_the_splice_useless() -> None:
    long = replace(RULE, lap=0.6)
    assert solved(order([2.5, 2.5, 2.5], rule=long)).splices is None
    exact = replace(RULE, lap=0.5)
    plan = solved(order([2.5, 2.5, 2.5], rule=exact))
    assert plan.splices is not None
    assert sum(p.left for p in plan.packs) == pytest.approx(0.0, abs=1e-6)


def test_a_part_that_must_stay_whole_stays_whole() -> None:
    what = order([2.5, 2.5, 2.5])
    whole = replace(what, pieces=tuple(replace(p, spliceable=p.part == "H3") for p in what.pieces))
    plan = solved(whole)
    assert plan.splices is not None
    assert plan.splices.parts == ("H3",)
    none = replace(what, pieces=tuple(replace(p, spliceable=False) for p in what.pieces))
    assert solved(none).cost == 30


def test_a_hoop_longer_than_every_pack_is_mended_by_a_splice() -> None:
    plan = solved(order([6.0]))
    assert plan.splices is not None
    assert plan.splices.saves is None
    assert (plan.cost, plan.splices.count) == (20, 1)
    # 9 m from packs of 4 m would take two splices
    assert cut_lengths(order([9.0])) == CuttingFailure((TooLong("H1", 9.0, 4.0, 2),))
    twice = solved(order([9.0], rule=replace(RULE, most=2)))
    assert twice.splices is not None
    assert (twice.cost, twice.splices.count) == (30, 2)


def test_offcuts_too_short_alone_are_joined_before_anything_is_bought() -> None:
    plan = solved(order([2.5], on_hand=(1.5, 1.2)))
    assert (plan.cost, plan.bought) == (0, ())
    assert plan.splices is not None
    assert plan.splices.saves == 10


def test_splices_do_not_make_up_for_stock_that_is_not_there() -> None:
    what = replace(order([2.5, 2.5, 2.5]), packs=(Pack(4.0, Decimal(10), available=1),))
    failure = cut_lengths(what)
    assert isinstance(failure, CuttingFailure)
    assert isinstance(failure.problems[0], NotEnough)


def test_a_missing_price_means_no_splice_for_money() -> None:
    what = replace(order([2.5, 2.5, 2.5]), packs=(Pack(4.0),))
    plan = solved(what)
    assert (plan.splices, plan.measure) == (None, "length")


lengths = st.lists(st.integers(8, 38).map(lambda n: n / 10), min_size=1, max_size=5)


@settings(max_examples=40, deadline=None)
@given(lengths, st.lists(st.integers(5, 30).map(lambda n: n / 10), max_size=2), st.integers(5, 30))
def test_more_on_hand_never_costs_more_with_splices(hoops: list[float], hand: list[float], more: int) -> None:
    before = solved(order(hoops, on_hand=tuple(hand)))
    after = solved(order(hoops, on_hand=(*hand, more / 10)))
    assert after.lower_bound <= before.objective
    assert after.objective <= before.objective
