"""Large orders, which bounds and trials leave open: silence, work limits, and the same plan everywhere."""

from __future__ import annotations

import os
import subprocess
import sys
from decimal import Decimal
from itertools import product
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.supply.cutting import (
    CuttingOrder,
    CuttingPlan,
    CuttingRules,
    Pack,
    Piece,
    WorkLimits,
    cut_lengths,
)
from hoopwright.supply.cutting.completion import Budget, decide
from hoopwright.supply.cutting.packing import pack_quickly
from hoopwright.supply.cutting.pricing import Prices
from hoopwright.supply.cutting.tidy import Bench, best_packing, score

DATA = Path(__file__).parents[1] / "external" / "data" / "cutting_cpsat.json"
READ = f"""
import json
from decimal import Decimal
from pathlib import Path
from hoopwright.supply.cutting import *
data = next(x for x in json.loads(Path({str(DATA)!r}).read_text()) if x["name"].startswith("28 pieces, tube"))
order = CuttingOrder(
    tuple(Piece(f"P{{i}}", p / 10_000) for i, p in enumerate(data["pieces"])),
    tuple(Pack(p["length"] / 10_000, Decimal(p["cents"]) / 100, p["available"]) for p in data["packs"]),
    tuple(x / 10_000 for x in data["on_hand"]),
    CuttingRules(kerf=data["kerf"] / 10_000, trim=data["trim"] / 10_000),
)
"""
ROOM: dict[str, Any] = {}
exec(READ, ROOM)
ORDER: CuttingOrder = ROOM["order"]


def solved(limits: WorkLimits | None = None) -> CuttingPlan:
    plan = cut_lengths(ORDER, limits)
    assert isinstance(plan, CuttingPlan)
    return plan


def test_the_solver_is_needed_and_prints_nothing(capfd: pytest.CaptureFixture[str]) -> None:
    plan = solved()
    assert (plan.method, plan.proven, plan.gap) == ("columns", True, 0.0)
    assert capfd.readouterr() == ("", "")


def test_past_the_work_limit_the_gap_is_stated_and_the_bound_holds() -> None:
    packs = (Pack(2.0, Decimal("2.63")), Pack(2.5, Decimal("3.22")), Pack(4.0, Decimal("4.32")))
    parts = tuple(Piece(f"P{i}", 0.5 + 0.0151 * (i * i % 97)) for i in range(20))
    order = CuttingOrder(parts, packs, (1.9, 1.1), CuttingRules(kerf=0.0016))
    best, hasty = cut_lengths(order), cut_lengths(order, WorkLimits(nodes=0, columns=0, solver_nodes=0))
    assert isinstance(best, CuttingPlan)
    assert isinstance(hasty, CuttingPlan)
    assert best.proven
    assert not hasty.proven
    assert hasty.lower_bound < best.objective <= hasty.objective
    assert hasty.gap == pytest.approx(float((hasty.objective - hasty.lower_bound) / hasty.objective))


def test_the_plan_does_not_depend_on_hash_seeds() -> None:
    code = f"{READ}\nprint(cut_lengths(order))"
    printed = set()
    for seed in ("1", "2"):
        env = {**os.environ, "PYTHONHASHSEED": seed}
        run = subprocess.run(
            [sys.executable, "-c", code], capture_output=True, text=True, check=True, env=env
        )
        printed.add(run.stdout)
    assert printed == {f"{solved()}\n"}


def test_pricing_finds_the_best_selection_and_all_good_ones() -> None:
    sizes, counts, worths = (7, 5, 3), (2, 2, 4), (7.2, 5.0, 2.8)
    prices = Prices(sizes, counts, worths, 15)
    best = prices.most_valuable(15, 1_000)
    # by hand: 7 + 5 + 3 is worth 15.0, 5 + 5 + 3 only 12.8, 7 + 7 is 14.4
    assert (best.fill, best.worth, best.upper) == ((1, 1, 1), 15.0, 15.0)
    good = prices.all_valuable(15, 14.0, 100, Budget(1_000))
    assert good is not None
    assert sorted(good) == [(1, 1, 1), (2, 0, 0)]


def fits(sizes: tuple[int, ...], bins: tuple[int, ...]) -> bool:
    """Whether sizes fit into bins, by trying everything."""
    if not sizes:
        return True
    return any(
        bins[i] >= sizes[0] and fits(sizes[1:], (*bins[:i], bins[i] - sizes[0], *bins[i + 1 :]))
        for i in range(len(bins))
    )


few_sizes = st.lists(st.integers(1, 12), min_size=1, max_size=7)
few_bins = st.lists(st.integers(3, 20), min_size=1, max_size=3)


@settings(max_examples=300, deadline=None)
@given(few_sizes, few_bins)
def test_exact_decisions_agree_with_trying_everything(pieces: list[int], bins: list[int]) -> None:
    sizes = sorted(set(pieces), reverse=True)
    decision = decide(sizes, [pieces.count(s) for s in sizes], bins, Budget(10**6))
    assert decision.known
    assert (decision.fills is not None) == fits(tuple(sorted(pieces, reverse=True)), tuple(bins))
    quick = pack_quickly(sizes, [pieces.count(s) for s in sizes], bins, 4)
    for fills in (decision.fills, quick):
        if fills is not None:
            assert [sum(f[i] for f in fills) for i in range(len(sizes))] == [pieces.count(s) for s in sizes]
            assert all(
                sum(s * n for s, n in zip(sizes, f, strict=True)) <= b
                for f, b in zip(fills, bins, strict=True)
            )


def test_a_decision_stays_open_when_the_steps_run_out() -> None:
    assert not decide((7, 6, 5), (1, 1, 1), (12, 8), Budget(0)).known


@settings(max_examples=150, deadline=None)
@given(few_sizes.filter(lambda p: len(p) <= 6), few_bins)
def test_the_best_packing_is_the_best_of_all(pieces: list[int], bins: list[int]) -> None:
    sizes = tuple(sorted(set(pieces), reverse=True))
    counts = tuple(pieces.count(s) for s in sizes)
    hand = tuple(i == 0 for i in range(len(bins)))
    bench = Bench(sizes, tuple(bins), tuple(bins), hand, 0, 4)
    scores = []
    for places in product(range(len(bins)), repeat=len(pieces)):
        fills = [[0] * len(sizes) for _ in bins]
        for piece, b in zip(pieces, places, strict=True):
            fills[b][sizes.index(piece)] += 1
        if all(bench.filled(tuple(f)) <= cap for f, cap in zip(fills, bins, strict=True)):
            scores.append(score(bench, [tuple(f) for f in fills]))
    best = best_packing(bench, counts, Budget(10**6))
    assert (best is None) == (not scores)
    if best is not None:
        assert score(bench, best) == min(scores)
