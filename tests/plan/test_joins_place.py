"""Where joins sit: beside tapes, staggered, away from centre front."""

from __future__ import annotations

from itertools import pairwise
from math import pi
from types import SimpleNamespace
from typing import cast

import pytest

from hoopwright.plan.joins import HAND, place_behind, place_joins
from hoopwright.shape.model import Fixing, Hoop, PlanOutline, Shape, Tape


def _shape(tapes: int, hoops: int, arc: float = 2 * pi) -> Shape:
    """A stand-in with equally spaced tapes; only what the rule reads."""
    outline = PlanOutline("round", 1.0, 1.0, 0.0, arc)
    hung = tuple(
        Tape(f"T{i + 1}", 0.0, (i + 0.5) / tapes, 0.0, (0, 0, 0), (), 1.0, "H1") for i in range(tapes)
    )
    rings = tuple(Hoop(f"H{i + 1}", "body", 1.0, 0.1, 3.0, outline, 3.0, 3.0, True, ()) for i in range(hoops))
    return cast(Shape, SimpleNamespace(tapes=hung, hoops=rings))


@pytest.mark.parametrize("tapes", range(4, 13))
def test_no_join_beside_the_two_tapes_at_the_front(tapes: int) -> None:
    places = place_joins(_shape(tapes, 12))
    assert len(places) == 12
    assert {"T1", f"T{tapes}"}.isdisjoint(place.tape for place in places)


@pytest.mark.parametrize("tapes", range(4, 13))
def test_neighbouring_hoops_join_at_different_tapes(tapes: int) -> None:
    places = place_joins(_shape(tapes, 12))
    assert all(above.tape != below.tape for above, below in pairwise(places))


def test_six_tapes_are_taken_in_turn_across_the_back() -> None:
    assert [place.tape for place in place_joins(_shape(6, 6))] == ["T2", "T4", "T3", "T5", "T2", "T4"]


def test_a_tape_at_centre_back_takes_the_join_on_the_left() -> None:
    towards = {place.tape: place.towards for place in place_joins(_shape(5, 6))}
    assert towards == {"T2": "back", "T3": "left", "T4": "back"}


def test_three_tapes_still_place_every_join() -> None:
    assert {place.tape for place in place_joins(_shape(3, 3))} == {"T1", "T2", "T3"}


def test_a_half_hoop_has_no_join() -> None:
    assert place_joins(_shape(6, 4, arc=pi)) == ()


def _untaped(spokes: int) -> Shape:
    """A stand-in for a wheel of so many spokes, or for a petticoat when there are none."""
    outline = PlanOutline("round", 1.0, 1.0, 0.0, 2 * pi)
    fixings = tuple(Fixing(f"S{k + 1}", (k + 0.5) / spokes, (0, 0, 0)) for k in range(spokes))
    rings = tuple(Hoop(f"H{i + 1}", "body", 1.0, 0.1, 3.0, outline, 3.0, 3.0, True, fixings) for i in range(4))
    parts = {"wheel": object(), "petticoat": None} if spokes else {"wheel": None, "petticoat": object()}
    return cast(Shape, SimpleNamespace(tapes=(), hoops=rings, **parts))


@pytest.mark.parametrize(("spokes", "left", "right"), [
    (10, ("S4", "S5"), ("S6", "S7")), (11, ("S5", "S6"), ("S6", "S7")), (8, ("S3", "S4"), ("S5", "S6"))])
def test_rings_join_between_spokes_beside_centre_back(spokes: int, left: tuple[str, str],
                                                      right: tuple[str, str]) -> None:
    places = place_behind(_untaped(spokes), 0.1)
    assert [place.beside for place in places] == [left, right, left, right]
    for place in places:
        assert (place.fraction < 0.5) == (place.side == "left")
        assert place.fraction * spokes == pytest.approx(round(place.fraction * spokes))
    assert places[0].fraction + places[1].fraction == pytest.approx(1.0)


@pytest.mark.parametrize("lap", [0.0254, 0.15])
def test_hoops_in_channels_join_a_hand_or_a_lap_apart_across_the_last_seam(lap: float) -> None:
    places = place_behind(_untaped(0), lap)
    assert [place.side for place in places] == ["left", "right", "left", "right"]
    assert (places[1].fraction - places[0].fraction) * 3.0 == pytest.approx(max(HAND, lap))


def test_hoops_on_tapes_have_no_other_place_for_their_joins() -> None:
    assert place_behind(_shape(6, 4), 0.1) == ()
