"""Cutting of lengths: small cases whose best plan is worked out by hand in the comments."""

from __future__ import annotations

import subprocess
import sys
from decimal import Decimal

from hoopwright.supply.cutting import (
    BadOrder,
    CuttingFailure,
    CuttingOrder,
    CuttingPlan,
    CuttingRules,
    NotEnough,
    Pack,
    Piece,
    TooLong,
    cut_lengths,
)

INCH = 0.0254


def pieces(*lengths: float) -> tuple[Piece, ...]:
    return tuple(Piece(f"H{i + 1}", length) for i, length in enumerate(lengths))


def solved(order: CuttingOrder) -> CuttingPlan:
    plan = cut_lengths(order)
    assert isinstance(plan, CuttingPlan)
    return plan


def layout(plan: CuttingPlan) -> list[tuple[float, str, list[str], float]]:
    return [(p.length, p.source, [c.part for c in p.pieces], round(p.left, 6)) for p in plan.packs]


def test_seven_hoops_take_one_coil_besides_the_cupboard() -> None:
    girths = (58.6, 72.3, 84.3, 94.9, 103.9, 110, 110)
    order = CuttingOrder(
        pieces(*((g + 1) * INCH for g in girths)),
        (Pack(600 * INCH, Decimal("19.00")), Pack(1200 * INCH, Decimal("33.00"))),
        (168 * INCH,),
        CuttingRules(kerf=INCH / 16, useful=12 * INCH),
    )
    plan = solved(order)
    # 641 in of hoops: more than 50 ft, less than 50 ft and 14 ft
    assert plan.cost == Decimal("19.00")
    assert plan.proven
    assert plan.lower_bound == plan.objective == Decimal("19.00")
    assert [b.count for b in plan.bought] == [1]
    assert plan.packs[0].source == "on hand"
    assert plan.waste == 0
    # the 14 ft takes as much as it can and still leaves 12 in: 95.9 + 59.6 in, 12 3/8 in left
    assert abs(plan.longest_left - plan.packs[1].left) < 1e-9
    assert abs(plan.packs[1].left - (600 - 641 + 95.9 + 59.6 - 5 / 16) * INCH) < 1e-6


def test_two_short_packs_beat_one_long_pack_when_they_are_cheaper() -> None:
    order = CuttingOrder(pieces(2.0, 2.0, 1.0), (Pack(3.0, Decimal(4)), Pack(5.0, Decimal(9))))
    plan = solved(order)
    assert plan.cost == 8
    assert layout(plan) == [(3.0, "bought", ["H1", "H3"], 0.0), (3.0, "bought", ["H2"], 1.0)]


def test_a_limited_cheap_offer_is_used_up_before_the_dearer_one() -> None:
    offers = (Pack(3.0, Decimal(2), available=1, name="end of roll"), Pack(3.0, Decimal(5), name="roll"))
    plan = solved(CuttingOrder(pieces(2.0, 2.0), offers))
    assert [(b.pack.name, b.count, b.cost) for b in plan.bought] == [
        ("end of roll", 1, Decimal(2)),
        ("roll", 1, Decimal(5)),
    ]


def test_a_piece_that_takes_exactly_what_remains_needs_no_cut() -> None:
    exact = CuttingOrder(pieces(1.0, 0.998), (Pack(2.0, Decimal(1)),), (), CuttingRules(kerf=0.002))
    assert solved(exact).cost == 1
    over = CuttingOrder(pieces(1.0, 0.9981), (Pack(2.0, Decimal(1)),), (), CuttingRules(kerf=0.002))
    assert solved(over).cost == 2


def test_sixteenths_of_an_inch_and_tenths_of_a_millimetre_fit_exactly() -> None:
    four = CuttingOrder(pieces(*[(12 + 3 / 16) * INCH] * 4), (Pack(48.75 * INCH, Decimal(1)),))
    assert solved(four).cost == 1
    metric = CuttingOrder(pieces(*[0.3333] * 3), (Pack(0.9999, Decimal(1)),))
    assert solved(metric).cost == 1


def test_trim_is_taken_once_off_every_length_cut_into() -> None:
    order = CuttingOrder(pieces(1.0, 1.0), (Pack(2.0, Decimal(1)),), (), CuttingRules(trim=0.01))
    plan = solved(order)
    assert plan.cost == 2
    assert [round(p.left, 6) for p in plan.packs] == [0.99, 0.99]


def test_equal_cost_goes_to_less_waste_then_to_the_longest_remainder() -> None:
    # two packs either way; 2.8 + 1.2 and 1.0 + 1.0 leave 0 and 2.0: no waste, one long remainder
    order = CuttingOrder(pieces(2.8, 1.2, 1.0, 1.0), (Pack(4.0, Decimal(3)),), (), CuttingRules(useful=0.5))
    plan = solved(order)
    assert (plan.waste, plan.longest_left, plan.waste_proven) == (0.0, 2.0, True)
    # 2.7 + 1.2 leaves 0.1 (waste), 2.7 + 1.0 leaves 0.3 (waste), 2.7 alone leaves 1.3 beside 3.2: 0.8
    order = CuttingOrder(pieces(2.7, 1.2, 1.0, 1.0), (Pack(4.0, Decimal(3)),), (), CuttingRules(useful=0.5))
    assert layout(solved(order)) == [(4.0, "bought", ["H1"], 1.3), (4.0, "bought", ["H2", "H3", "H4"], 0.8)]


def test_the_longer_pack_is_taken_at_the_same_price() -> None:
    plan = solved(CuttingOrder(pieces(1.0), (Pack(2.0, Decimal(3)), Pack(5.0, Decimal(3)))))
    assert layout(plan) == [(5.0, "bought", ["H1"], 4.0)]


def test_without_a_price_the_length_bought_is_least_and_the_cost_partial() -> None:
    plan = solved(CuttingOrder(pieces(2.0, 1.0), (Pack(3.0), Pack(2.5, Decimal(1)))))
    assert (plan.measure, plan.cost, plan.partial, plan.objective) == ("length", None, True, Decimal(3))
    plan = solved(CuttingOrder(pieces(2.0, 2.0), (Pack(3.0), Pack(2.5, Decimal(1)))))
    assert (plan.measure, plan.cost, plan.partial, plan.objective) == (
        "length",
        Decimal(2),
        False,
        Decimal(5),
    )


def test_nothing_is_bought_when_the_cupboard_is_enough() -> None:
    plan = solved(CuttingOrder(pieces(2.0, 1.0), (Pack(3.0, Decimal(9)),), (2.1, 1.2)))
    assert (plan.cost, plan.bought, plan.proven) == (Decimal(0), (), True)
    assert [p.source for p in plan.packs] == ["on hand", "on hand"]


def test_a_hoop_longer_than_every_pack_is_named_with_the_longest() -> None:
    failure = cut_lengths(CuttingOrder(pieces(2.0, 5.0, 7.0), (Pack(3.0, Decimal(9)),)))
    assert failure == CuttingFailure((TooLong("H3", 7.0, 3.0, 2), TooLong("H2", 5.0, 3.0, 1)))


def test_limited_packs_that_hold_too_little_say_how_much_is_missing() -> None:
    failure = cut_lengths(CuttingOrder(pieces(1.0, 1.0, 1.0), (Pack(2.0, Decimal(1), available=1),)))
    assert isinstance(failure, CuttingFailure)
    (problem,) = failure.problems
    assert isinstance(problem, NotEnough)
    assert abs(problem.missing - 1.0) < 1e-4


def test_bad_values_are_all_reported_at_once() -> None:
    order = CuttingOrder(
        (Piece("H1", -1.0), Piece("H2", 1.0), Piece("H2", 1.0)),
        (Pack(3.0, Decimal(0)), Pack(float("nan"), Decimal(1))),
        (0.0,),
        CuttingRules(kerf=-0.1),
    )
    failure = cut_lengths(order)
    assert isinstance(failure, CuttingFailure)
    assert all(isinstance(p, BadOrder) for p in failure.problems)
    assert [p.what for p in failure.problems if isinstance(p, BadOrder)] == [
        "length of H1",
        "part H2",
        "price of pack of 3 m",
        "length of pack of nan m",
        "length on hand",
        "kerf",
    ]


def test_a_home_case_is_proven_without_the_solver_or_numpy() -> None:
    code = (
        "import sys\nfrom decimal import Decimal\nfrom hoopwright.supply.cutting import *\n"
        "hoops = tuple(Piece(f'H{i}', 1.4 + 0.2 * i) for i in range(9))\n"
        "plan = cut_lengths(CuttingOrder(hoops, (Pack(5.0, Decimal(7)), Pack(15.24, Decimal(19))), (2.3,)))\n"
        "assert plan.proven, plan\n"
        "print(sorted({'numpy', 'highspy', 'scipy'} & set(sys.modules)))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
