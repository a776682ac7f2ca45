"""Checks of geometry: each can hold and each can miss."""

import pytest

from hoopwright.shape.draw import draw


def check(spec, code):
    return next(check for check in draw(spec)[0].checks if check.code == code)


@pytest.mark.parametrize(
    ("code", "good", "bad", "result"),
    [
        ("stride", {"hem": 110.0}, {"hem": 58.0}, "fails"),
        ("hem-girth", {"hem": 110.0}, {"hem": 140.0}, "marginal"),
        ("floor", {"off_floor": 1.0}, {"off_floor": 0.9}, "marginal"),
        ("ankle", {"off_floor": 2.7}, {"off_floor": 2.5}, "marginal"),
        ("shelf", {"below": 10.0}, {"below": 3.0}, "marginal"),
        ("step-in", {"below": 6.0}, {"hip": 60.0}, "fails"),
        ("body-contact", {"below": 6.0}, {"hip": 80.0}, "fails"),
    ],
)
def test_holds_and_misses(make, code, good, bad, result):
    held, missed = check(make.spec(**good), code), check(make.spec(**bad), code)
    assert (held.result, held.remedy) == ("holds", "")
    assert missed.result == result
    assert missed.remedy


def test_stride_by_hand(make):
    """Stature 67 in: step 27.47, hem at least 60.4 in."""
    assert check(make.spec(), "stride").limit / make.inch == pytest.approx(60.43, abs=0.01)


@pytest.mark.parametrize("code", ["stride", "hem-girth", "ankle"])
def test_unknown_stature_is_not_assessed(make, code):
    found = check(make.spec(stature=None), code)
    assert found.result == "not assessed"
    assert "state" in found.remedy


def test_tape_on_the_hip_is_worth_a_look_but_no_fault(make):
    found = check(make.spec(below=9.5, hem=70.0, hip=42.0), "body-contact")
    assert (found.part[0], found.result) == ("T", "marginal")
