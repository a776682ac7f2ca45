"""A cage is followed as far as the maker's own limit asks, and the plan says what was found there."""

from __future__ import annotations

from dataclasses import replace

import pytest

from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan
from hoopwright.render.markdown import plan_markdown
from hoopwright.shape.draw import draw
from hoopwright.spec.check import Check
from hoopwright.strength import closed, whole
from hoopwright.strength.assess import assess
from hoopwright.strength.mending.remedy import used_by
from hoopwright.strength.method import Problem, Solution
from hoopwright.strength.model import Buckling
from hoopwright.strength.problem import pose

TEXT = """\
spec: 1
units: centimetres
wearer: {stature: 168 cm, waist: 72 cm}
shape: {hem: {girth: 2.8 m}}
build: {hoops: {material: strip}}
load: [{name: skirt, weight: 2 kg}]
limits: {factor: 4}
materials:
  strip: {grade: "spring steel, tempered", section: {kind: flat, width: 10 mm, thickness: 1 mm}}
"""
THIN = TEXT.replace("1 mm}}", "0.55 mm}}").replace("2 kg", "6 kg")
"""Gives way between three times its load, as far as a cage is always followed, and the four asked for."""


def plan(text: str) -> Plan:
    made = compile_spec(text.encode(), "cage.yaml").plan
    assert made is not None
    return made


def buckling(made: Plan) -> Check:
    return next(one for one in made.assessment.checks if one.code == "buckling")


def row(made: Plan) -> str:
    return next(line for line in plan_markdown(made).splitlines() if line.startswith("| buckling |"))


def bears(made: Plan) -> str:
    return next(line for line in plan_markdown(made).splitlines() if line.startswith("| Load it bears before"))


@pytest.mark.parametrize("factor", ["4", "3.3", "20"])
def test_a_sturdy_cage_holds_whatever_factor_is_asked(factor: str) -> None:
    made = plan(TEXT.replace("{factor: 4}", f"{{factor: {factor}}}"))
    assert (made.assessment.verdict, made.assessment.reasons) == ("stands", ())
    assert made.assessment.buckling == Buckling(float(factor), True)
    assert row(made).startswith(f"| buckling | – | {factor} | at least {factor} | **holds** |")
    assert f"at least {factor} |" in bears(made)


def test_a_cage_that_gives_way_before_the_factor_asked_is_told_where() -> None:
    made = plan(THIN)
    value = made.assessment.buckling.value
    assert value is not None
    assert 3.0 < value < 4.0
    assert not made.assessment.buckling.at_least
    assert (made.assessment.verdict, buckling(made).result) == ("stands, but", "fails")
    assert f"| {value:.2f} | at least 4 | **fails** |" in row(made)
    assert "at least" not in bears(made)
    assert "To mend it: hang half as much skirt on it (from 123 % to at most 100 % of what is allowed)" in row(made)


def test_where_no_more_is_asked_no_cage_is_followed_farther() -> None:
    made = plan(TEXT.replace("limits: {factor: 4}\n", ""))
    assert made.assessment.buckling == Buckling(3.0, True)


def test_a_climb_that_the_work_allowed_ends_is_no_failure(monkeypatch: pytest.MonkeyPatch) -> None:
    """Nor does a remedy's trial that was followed no farther say that it helps too little."""
    from hoopwright.strength import answer

    made = plan(TEXT)
    problem = pose(made.spec, made.shape)
    monkeypatch.setattr(answer, "WORK", 0.03e6)
    early = whole.solve(problem)
    assert early.buckling.at_least
    assert early.buckling.value is not None
    assert early.buckling.value < 4.0
    assert "how much more was not followed" in early.unassessed["buckling"]
    assert used_by(problem, early)["buckling"] == 0.0


def lacks_a_little(problem: Problem, solution: Solution) -> Solution:
    return replace(solution, buckling=Buckling(problem.spec.limits.factor / 1.2, at_least=True), weakest="H1")


def test_only_the_closed_forms_bound_is_let_off_a_narrow_miss() -> None:
    """What is told below the factor asked is a miss, unless the method says that it is a bound which lies low."""
    made = plan(TEXT)
    shape = draw(made.spec)[0]
    assert shape is not None
    results = []
    for method in (closed.solve, whole.solve):
        found, _ = assess(made.spec, shape, lambda posed, by=method: lacks_a_little(posed, by(posed)), advice=False)
        assert found is not None
        results.append(next(one.result for one in found.checks if one.code == "buckling"))
    assert results == ["marginal", "fails"]
