"""Wheels and side hoops solved whole: what closed forms still say of them, and what each part of the model does."""

from __future__ import annotations

from dataclasses import replace
from math import dist
from pathlib import Path
from types import SimpleNamespace

import pytest

from hoopwright.strength.assess import assess
from hoopwright.strength.cage.model import CageModel, HoopPoint, TapeModel, TieModel
from hoopwright.strength.cage.solve import Options, solve
from hoopwright.strength.families import frames, pair, wheel
from hoopwright.strength.method import Problem
from hoopwright.strength.model import WheelStrength
from hoopwright.strength.problem import pose

SPECS = Path(__file__).parents[2] / "specs"
QUICK = Options(20, factor=False)


@pytest.fixture(scope="module")
def posed(drawn) -> SimpleNamespace:
    def of(name: str, was: str = "", now: str = "") -> Problem:
        made = drawn((SPECS / name).read_text(encoding="utf-8").replace(was, now))
        return pose(made.spec, made.shape)

    sprung = ("hoops: {material: cane}", "hoops: {material: cane, formed: sprung}")
    return SimpleNamespace(wheel=of("moon-masque/wheel.yaml"), pair=of("pump-room/side-hoops.yaml"),
                           sprung=of("pump-room/side-hoops.yaml", *sprung))


def lies(problem: Problem, cage: CageModel) -> WheelStrength:
    found = wheel.solution(problem, solve(cage, QUICK)).wheel
    assert found is not None
    return found


def test_a_wheel_is_lower_behind_and_all_its_weight_is_held(posed) -> None:
    cage = wheel.model(posed.wheel)
    found, weight = lies(posed.wheel, cage), solve(cage, QUICK).weight_n
    assert found.sinks[4] == max(found.sinks)
    assert found.tilt < posed.wheel.shape.wheel.tilt
    assert found.front + found.back + found.roll == pytest.approx(weight, rel=0.01)


def test_the_roll_only_helps_and_how_soft_it_is_matters_little(posed) -> None:
    """Safe side: a wheel without a roll sinks more, on one ten times as firm less, both within a fifth."""
    cage = wheel.model(posed.wheel)
    bare, firm = replace(cage, rests=()), tuple(replace(rest, stiffness=10 * wheel.ROLL) for rest in cage.rests)
    middle = lies(posed.wheel, cage).sinks[4]
    assert middle < lies(posed.wheel, bare).sinks[4] < 1.2 * middle
    assert 0.8 * middle < lies(posed.wheel, replace(cage, rests=firm)).sinks[4] < middle


def test_bindings_that_hold_turning_too_make_it_stiffer(posed) -> None:
    cage = wheel.model(posed.wheel)
    bound = tuple(replace(join, stiff=isinstance(join.b, HoopPoint)) for join in cage.joins)
    assert lies(posed.wheel, replace(cage, joins=bound)).sinks[4] < lies(posed.wheel, cage).sinks[4]


def test_a_wheel_bound_loosely_everywhere_finds_no_rest_and_says_so(posed) -> None:
    cage = wheel.model(posed.wheel)
    result = solve(replace(cage, joins=tuple(replace(join, stiff=False) for join in cage.joins)), QUICK)
    told = wheel.solution(posed.wheel, result)
    assert told.status != "solved"
    assert told.trouble
    assert {"sinking", "sag", "out-of-round", "buckling", "set-worn"} <= set(told.unassessed)


def test_the_rings_stress_is_that_of_closing_them(posed) -> None:
    """Rim and the ring inside it, nearly round and bent little by the load: within a quarter more than E t/2 over
    the radius; never less than nine tenths of it."""
    whole, known = wheel.solve(posed.wheel), frames.solve_wheel(posed.wheel)
    for ours, theirs in list(zip(whole.hoops, known.hoops, strict=True))[2:]:
        assert 0.9 * theirs.stress < ours.stress < 1.5 * theirs.stress


def test_a_ties_pull_is_that_of_the_elastica(posed) -> None:
    """A sprung steel hung from far above by three lines, so that next to nothing pushes it: its tie holds the bow."""
    problem = posed.sprung
    for hoop, tie in zip(pair.model(problem).hoops, problem.shape.ties, strict=False):
        light = replace(hoop, line_load_n_per_m=0.0, section=replace(hoop.section, mass_per_m=0.002))
        places = ((0.0, hoop.points[0]), (0.25, hoop.points[len(hoop.points) // 2]), (0.5, hoop.points[-1]))
        lines = tuple(TapeModel(f"line {f}", (x, y, z + 2.0), ((hoop.id, f),), 10.0) for f, (x, y, z) in places)
        knot = pair.model(problem).ties[0].b
        tied = TieModel("tie", HoopPoint(hoop.id, 0.0), replace(knot, xyz=(places[0][1][0], 0.0, places[0][1][2])),
                        tie.length / 2, 1e6)
        got = solve(CageModel((light,), lines, ties=(tied,), mirrors=("y",)), Options(48, factor=False))
        assert got.status == "solved", got.notes
        assert got.ties[0].tension_n == pytest.approx(tie.pull * problem.worn.ei_weak, rel=0.02)


def test_side_hoops_sprung_into_their_channels_stand_out_farther_than_cane_bent_wet(posed) -> None:
    wet, sprung = pair.trial(posed.pair), pair.trial(posed.sprung)
    for one, other in zip(wet.sides, sprung.sides, strict=True):
        assert other.reach > one.reach
        assert other.down < one.down
    assert max(tie.tension for tie in sprung.ties) > max(tie.tension for tie in wet.ties)


def test_shorter_ties_make_side_hoops_stand_out_farther_as_the_remedy_says(posed) -> None:
    cage = pair.model(posed.pair)
    short = replace(cage, ties=tuple(replace(tie, length=pair.SHORTER * tie.length) for tie in cage.ties))
    for one, other in zip(pair.solution(posed.pair, solve(cage, QUICK)).sides,
                          pair.solution(posed.pair, solve(short, QUICK)).sides, strict=True):
        assert other.reach > one.reach + 0.01
        assert other.down < one.down
    assert "a tenth shorter" in pair.tied_shorter(posed.pair)


def test_both_sides_are_told_alike_and_drawn_as_mirror_images(posed) -> None:
    found = pair.trial(posed.pair)
    count = len(found.hoops) // 2
    for left, right in zip(found.hoops[:count], found.hoops[count:], strict=True):
        assert replace(left, id=right.id) == right
    lines = {line.id: line for line in found.lines}
    for hoop in posed.pair.shape.hoops:
        drawn = lines[hoop.id].wished
        assert dist(drawn[0][:2], hoop.plan.path[0]) < 1e-9
        assert dist(drawn[-1][:2], hoop.plan.path[-1]) < 1e-9


def test_the_skirt_is_shared_out_whole(posed) -> None:
    from hoopwright.strength.load import layer_shares

    for problem in (posed.wheel, posed.pair):
        for layer in problem.spec.load:
            shares = layer_shares(layer, problem.spec, problem.shape)
            assert sum(shares) == pytest.approx(1.0)
            assert min(shares) >= 0.0
    left = posed.pair.skirt[: len(posed.pair.skirt) // 2]
    assert posed.pair.skirt == (*left, *left)
    assert posed.wheel.skirt[-1] == pytest.approx(sum(layer.mass for layer in posed.wheel.spec.load))


@pytest.mark.parametrize("name", ["moon-masque/wheel.yaml", "pump-room/side-hoops.yaml"])
def test_what_cannot_be_computed_says_why(name: str, drawn) -> None:
    made = drawn((SPECS / name).read_text(encoding="utf-8"))
    found, _ = assess(made.spec, made.shape)
    assert found is not None
    checks = {check.code: check for check in found.checks}
    assert checks["equilibrium"].result == "holds"
    for code in ("buckling", "sag", "out-of-round", "sinking", "set-worn"):
        assert checks[code].value is not None, code
    for check in found.checks:
        if check.result == "not assessed":
            assert check.remedy, check.code
