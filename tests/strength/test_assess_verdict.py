"""The verdict: when it stands, stands but, or falls, and that its reasons are clauses."""

import pytest

from hoopwright.spec.check import Check
from hoopwright.strength.checks import SORTS
from hoopwright.strength.verdict import CLAUSES, verdict


def check(code, result, value=1.0, limit=1.0, part="H3"):
    return Check(code, part, value, limit, "ratio", "at most", result, "do something", "source", "says")


def test_all_that_holds_stands():
    assert verdict([check(code, "holds") for code in SORTS]) == ("stands", ())


def test_what_is_near_a_limit_is_a_but():
    word, reasons = verdict([check("sag", "marginal")])
    assert (word, reasons) == ("stands, but", ("H3 only just keeps level between what holds it",))


def test_what_fails_comes_first():
    unknown = check("buckling", "not assessed", None)
    _, reasons = verdict([check("sag", "marginal"), check("weight", "fails"), unknown])
    assert reasons == ("the cage alone is too heavy", "H3 only just keeps level between what holds it",
                       "how much it can carry before it gives way is not known")


@pytest.mark.parametrize(
    ("found", "expected"),
    [
        (check("buckling", "fails", 0.9, 2.5), "will not stand"),
        (check("buckling", "fails", 1.4, 2.5), "stands, but"),
        (check("sag", "fails", 0.06, 0.0127), "will not stand"),
        (check("sag", "fails", 0.02, 0.0127), "stands, but"),
        (check("out-of-round", "fails", 0.13, 0.03), "will not stand"),
        (check("door", "fails", 2.0, 1.0), "stands, but"),
        (check("equilibrium", "fails", 0.0, 1.0), "will not stand"),
    ],
)
def test_falling_is_said_only_of_what_cannot_be_worn(found, expected):
    assert verdict([found])[0] == expected


def test_every_check_of_mechanics_has_its_clauses():
    assert set(SORTS) <= set(CLAUSES)
    for code in CLAUSES:
        for result in ("fails", "marginal"):
            (reason,) = verdict([check(code, result)])[1]
            assert ";" not in reason
            assert "{" not in reason
