"""Where the splices of a hoop lie: away from centre front, apart from the join, in the order of its
lengths."""

from __future__ import annotations

from itertools import pairwise
from types import SimpleNamespace
from typing import cast

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.plan.joins import place_joins
from hoopwright.plan.splices import SplicePlace, place_splices
from hoopwright.shape.model import Hoop, PlanOutline, Shape, Tape
from hoopwright.supply.model import CutPack, CutPiece, Cutting

FULL = 6.283185307179586


def shape_of(tapes: int, girth: float, lap: float, *, open_from: float = 0.0) -> Shape:
    """One hoop on equally spaced tapes; ``open_from`` leaves out that share on each side of the front."""
    hung = tuple(
        Tape(f"T{i + 1}", 0.0, (i + 0.5) / tapes, 0.0, (0, 0, 0), (), 1.0, "H1") for i in range(tapes)
    )
    arc = FULL * (1 - 2 * open_from)
    outline = PlanOutline("round", 1.0, 1.0, 0.0, arc)
    cut = girth if open_from else girth + lap
    hoop = Hoop("H1", "body", 1.0, 0.1, girth, outline, cut, 0.0, False, (), open_from, 1 - open_from)
    return cast(Shape, SimpleNamespace(tapes=hung, hoops=(hoop,)))


def cutting_of(lengths: list[float]) -> Cutting:
    """Each length on a pack of its own."""
    pieces = [CutPiece("H1", length, k, len(lengths)) for k, length in enumerate(lengths, 1)]
    return Cutting(tuple(CutPack("strip", 9.0, "bought", (piece,), 0.0, 9.0) for piece in pieces), True, 0.0)


def placed(shape: Shape, lengths: list[float], lap: float) -> tuple[str, tuple[SplicePlace, ...]]:
    joins, splices = place_splices(shape, cutting_of(lengths), place_joins(shape), lap)
    return (joins[0].tape if joins else "", splices)


@settings(deadline=None, max_examples=150)
@given(
    tapes=st.integers(4, 9),
    girth=st.floats(1.2, 3.6),
    lap=st.sampled_from([0.0, 0.0254, 0.1]),
    share=st.floats(0.12, 0.88),
)
def test_one_splice_is_never_at_centre_front(tapes: int, girth: float, lap: float, share: float) -> None:
    cut = girth + 2 * lap
    _, (splice,) = placed(shape_of(tapes, girth, lap), [cut * share, cut * (1 - share)], lap)
    assert 0.1 <= splice.fraction <= 0.9


@settings(deadline=None, max_examples=80)
@given(tapes=st.integers(4, 9), shares=st.lists(st.floats(0.6, 1.6), min_size=3, max_size=4))
def test_several_splices_are_never_at_centre_front(tapes: int, shares: list[float]) -> None:
    lap = 0.0254
    cut = 2.8 + len(shares) * lap
    lengths = [cut * share / sum(shares) for share in shares]
    tape, splices = placed(shape_of(tapes, 2.8, lap), lengths, lap)
    assert all(0.05 <= splice.fraction <= 0.95 for splice in splices)
    usual = tape not in ("T1", f"T{tapes}")
    assert usual or all(0.1 <= splice.fraction <= 0.9 for splice in splices)
    assert {splices[0].first, *(splice.then for splice in splices)} == set(range(1, len(shares) + 1))
    assert all(one.then == two.first for one, two in pairwise(splices))


def test_the_lengths_with_their_laps_make_up_the_girth() -> None:
    lap, girth = 0.025, 2.8
    lengths = [1.0, 0.9, girth + 3 * lap - 1.9]
    _, splices = placed(shape_of(6, girth, lap), lengths, lap)
    last = lengths[splices[-1].then - 1]
    assert splices[0].along == pytest.approx(lengths[splices[0].first - 1] - lap)
    assert splices[-1].along + last - lap == pytest.approx(girth)


def test_a_splice_lies_between_the_tapes_it_names() -> None:
    shape = shape_of(6, 2.8, 0.0)
    _, (splice,) = placed(shape, [1.4, 1.4], 0.0)
    at = {tape.id: tape.hem_fraction for tape in shape.tapes}
    before, after = splice.between
    assert at[before] <= splice.fraction <= at[after]


def test_an_open_hoop_is_measured_from_its_end_at_the_left() -> None:
    shape = shape_of(6, 2.0, 0.02, open_from=0.1)
    tape, (splice,) = placed(shape, [1.2, 0.82], 0.02)
    assert tape == ""
    assert splice.along == pytest.approx(1.19 if splice.first == 1 else 0.81)
    assert splice.fraction == pytest.approx(0.1 + 0.8 * splice.along / 2.0)


def test_a_hoop_in_one_length_keeps_its_join_and_has_no_splice() -> None:
    shape = shape_of(6, 2.8, 0.0254)
    joins = place_joins(shape)
    assert place_splices(shape, cutting_of([2.83]), joins, 0.0254) == (joins, ())
