"""Cutting of lengths: what must hold for every order (Hypothesis)."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from decimal import Decimal
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.supply.cutting import (
    CuttingFailure,
    CuttingOrder,
    CuttingPlan,
    CuttingRules,
    Pack,
    Piece,
    SpliceRule,
    cut_lengths,
)

SLOW = settings(max_examples=60, deadline=None)
tenths = st.integers(3, 40).map(lambda n: n / 10)
PRICES = st.integers(50, 900).map(lambda n: Decimal(n) / 100)
packs = st.builds(Pack, st.integers(10, 60).map(lambda n: n / 10), PRICES, st.none() | st.integers(0, 4))
rules = st.builds(CuttingRules, kerf=st.sampled_from([0.0, 0.0016, 0.05]), trim=st.sampled_from([0.0, 0.02]))
splices = st.builds(
    SpliceRule, st.sampled_from([0.0254, 0.1]), PRICES.map(lambda p: p / 10), most=st.integers(1, 2)
)


def orders(spliced: bool = False) -> st.SearchStrategy[CuttingOrder]:
    most = 6 if spliced else 11

    def build(
        lengths: list[float],
        offers: list[Pack],
        hand: list[float],
        rule: CuttingRules,
        splice: SpliceRule | None,
    ) -> CuttingOrder:
        parts = tuple(Piece(f"P{i}", x) for i, x in enumerate(lengths))
        return CuttingOrder(parts, tuple(offers), tuple(hand), replace(rule, splice=splice))

    return st.builds(
        build,
        st.lists(tenths, min_size=1, max_size=most),
        st.lists(packs, min_size=1, max_size=3),
        st.lists(tenths, max_size=3),
        rules,
        splices if spliced else st.none(),
    )


def money_spent(plan: CuttingPlan) -> Decimal:
    assert plan.cost is not None
    return plan.cost + (plan.splices.cost if plan.splices else Decimal(0))


def assert_sound(order: CuttingOrder, plan: CuttingPlan) -> None:
    rules = order.rules
    whole: Counter[tuple[str, float]] = Counter()
    shared: dict[str, list[float]] = {}
    for pack in plan.packs:
        for cut in pack.pieces:
            if cut.shares == 1:
                whole[cut.part, cut.length] += 1
            else:
                shared.setdefault(cut.part, []).append(cut.length)
        total = sum(c.length for c in pack.pieces)
        cuts = rules.kerf * (len(pack.pieces) - 1)
        assert total + cuts <= pack.length - rules.trim + 1e-9
        assert pack.left >= 0
        assert pack.left == pytest.approx(
            max(0, pack.length - rules.trim - total - cuts - rules.kerf), abs=1e-6
        )
    for piece in order.pieces:
        if piece.part in shared:
            assert rules.splice is not None
            parts = shared[piece.part]
            assert len(parts) - 1 <= rules.splice.most
            assert sum(parts) == pytest.approx(piece.length + (len(parts) - 1) * rules.splice.lap)
            assert min(parts) >= rules.splice.shortest - 1e-6
        else:
            assert whole.pop((piece.part, piece.length)) == 1
    assert not whole
    hand = Counter(p.length for p in plan.packs if p.source == "on hand")
    assert not hand - Counter(order.on_hand)
    for bought in plan.bought:
        assert bought.count == sum(1 for p in plan.packs if p.offer == bought.pack)
        offered = [p.available for p in order.packs if p == bought.pack]
        assert None in offered or bought.count <= sum(n for n in offered if n is not None)
    assert money_spent(plan) == plan.objective >= plan.lower_bound


@SLOW
@given(orders())
def test_every_piece_is_cut_once_and_no_pack_is_overfull(order: CuttingOrder) -> None:
    plan = cut_lengths(order)
    if isinstance(plan, CuttingPlan):
        assert_sound(order, plan)
        assert plan.proven


@SLOW
@given(orders(spliced=True))
def test_spliced_plans_are_sound_and_never_dearer(order: CuttingOrder) -> None:
    plan = cut_lengths(order)
    bare = cut_lengths(replace(order, rules=replace(order.rules, splice=None)))
    if isinstance(plan, CuttingPlan):
        assert_sound(order, plan)
    if isinstance(bare, CuttingPlan):
        assert isinstance(plan, CuttingPlan)
        if plan.splices:
            assert plan.objective < bare.objective
            assert plan.splices.saves == money_spent(bare) - (plan.cost or 0)
        else:
            assert plan.packs == bare.packs


@SLOW
@given(orders(), tenths)
def test_more_on_hand_never_costs_more(order: CuttingOrder, more: float) -> None:
    plan = cut_lengths(order)
    richer = cut_lengths(replace(order, on_hand=(*order.on_hand, more)))
    if isinstance(plan, CuttingPlan):
        assert isinstance(richer, CuttingPlan)
        assert money_spent(richer) <= money_spent(plan)


@SLOW
@given(orders(), st.integers(0, 2), st.integers(1, 49))
def test_cheaper_packs_never_cost_more(order: CuttingOrder, which: int, cents: int) -> None:
    plan = cut_lengths(order)
    offers = list(order.packs)
    offer = offers[which % len(offers)]
    assert offer.price is not None
    offers[which % len(offers)] = replace(offer, price=offer.price - Decimal(cents) / 100)
    cheaper = cut_lengths(replace(order, packs=tuple(offers)))
    if isinstance(plan, CuttingPlan):
        assert isinstance(cheaper, CuttingPlan)
        assert money_spent(cheaper) <= money_spent(plan)


@SLOW
@given(orders(), st.randoms(use_true_random=False))
def test_the_order_of_pieces_and_packs_does_not_matter(order: CuttingOrder, random: Random) -> None:
    parts, offers, hand = list(order.pieces), list(order.packs), list(order.on_hand)
    random.shuffle(parts)
    random.shuffle(offers)
    random.shuffle(hand)
    shuffled = CuttingOrder(tuple(parts), tuple(offers), tuple(hand), order.rules)
    assert cut_lengths(shuffled) == cut_lengths(order)


@SLOW
@given(orders())
def test_a_failure_is_real(order: CuttingOrder) -> None:
    """With one unlimited pack longer than every piece nothing can fail."""
    failure = cut_lengths(order)
    long = Pack(max(p.length for p in order.pieces) + 1, Decimal(1))
    mended = cut_lengths(replace(order, packs=(*order.packs, long)))
    assert isinstance(mended, CuttingPlan)
    if isinstance(failure, CuttingFailure):
        assert any(p.offer == long for p in mended.packs)
