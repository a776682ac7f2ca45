"""Every family of cage carries its load whole: it rests, its forces balance, ties pull as springs do."""

from __future__ import annotations

from pathlib import Path
from types import SimpleNamespace

import pytest

from hoopwright.strength.balance import centre_of_weight, hoop_centre
from hoopwright.strength.cage.result import CageResult
from hoopwright.strength.cage.solve import Options, solve
from hoopwright.strength.problem import pose
from hoopwright.strength.whole import model, solution

SPECS = Path(__file__).parents[2] / "specs"
DESIGNS = ("ferry-crossing/cage", "mill-pageant/cage", "night-tour/bustle", "platform-two/crinolette")


@pytest.fixture(scope="module", params=DESIGNS)
def solved(request, drawn) -> SimpleNamespace:
    made = drawn((SPECS / f"{request.param}.yaml").read_text(encoding="utf-8"))
    problem = pose(made.spec, made.shape)
    cage = model(problem)
    result = solve(cage, Options(elements=24))
    return SimpleNamespace(name=request.param, problem=problem, cage=cage, result=result, shape=made.shape)


def test_it_stands_and_its_weight_hangs_from_the_waistband(solved) -> None:
    found: CageResult = solved.result
    assert found.status == "solved"
    assert found.error < 1e-6
    lifted = found.weight_n - found.waist_down_n
    held = {"H4"} if any(tie.behind for tie in solved.shape.ties) else set()
    assert abs(lifted) < 1e-4 * found.weight_n or held or found.body_push_n > 0


def test_every_load_is_carried_once(solved) -> None:
    """Weight in the model is that of hoops, casings, joins and the skirt on them, and nothing else."""
    problem = solved.problem
    masses = sum(problem.own) + sum(problem.skirt)
    assert solved.result.weight_n == pytest.approx(masses * 9.80665, rel=0.02)


def test_every_tie_of_the_shape_is_in_the_model_as_long_as_its_ends_are_apart(solved) -> None:
    ties = {tie.id: tie for tie in solved.cage.ties}
    for tie in solved.shape.ties:
        assert tie.id in ties
        if tie.behind is None:
            assert ties[tie.id].length == tie.span
    known = {tie.id for tie in solved.shape.ties}
    assert {tie.id.removesuffix(" right") for tie in solved.cage.ties} == known


def test_open_hoops_are_open_in_the_model(solved) -> None:
    for hoop, part in zip(solved.shape.hoops, solved.cage.hoops, strict=True):
        assert part.closed is hoop.closed
        if not hoop.closed:
            assert (part.start, part.end) == (hoop.start, hoop.end)
            assert part.born == "straight"


def test_a_tied_springs_pull_is_that_of_its_bare_spring_when_little_else_acts(solved) -> None:
    """Ties of half hoops and ovals: the pull of the spring alone, within what load and tapes add."""
    ei = solved.problem.worn.ei_weak
    pulls = {tie.id: tie.tension_n for tie in solved.result.ties}
    bare = [(tie.pull * ei, pulls[tie.id]) for tie in solved.shape.ties if tie.kind in ("cross", "chord")]
    for alone, found in bare[-2:]:
        assert found == pytest.approx(alone, rel=0.6, abs=0.6)


def test_the_centre_of_weight_lies_between_those_of_the_hoops(solved) -> None:
    x, y = centre_of_weight(solved.problem)
    places = [hoop_centre(hoop)[1] for hoop in solved.shape.hoops]
    assert x == pytest.approx(0.0, abs=1e-9)
    assert min(places) <= y <= max(places)


def test_what_the_body_pushes_back_is_told_of_every_family(solved) -> None:
    """Bustles and crinolettes lie on it."""
    told = solution(solved.problem, solved.result).body_push
    assert told == solved.result.body_push_n
    assert (told > 1.0) == solved.name.endswith(("bustle", "crinolette"))
