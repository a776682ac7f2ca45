"""A solve that ends where the work allowed ends says what was found by then, and never more or less than that."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from hoopwright.strength import whole
from hoopwright.strength.cage.model import CageModel
from hoopwright.strength.cage.result import CageResult, Factor
from hoopwright.strength.cage.solve import Options, solve
from hoopwright.strength.cage.sparse import Pattern, cost
from hoopwright.strength.families import pair, wheel
from hoopwright.strength.problem import pose

SPECS = Path(__file__).parents[2] / "specs"
ROUND, WHEEL = "starters/round-cage-centimetres.yaml", "starters/wheel-farthingale-inches.yaml"
SIDES = "starters/side-hoops-centimetres.yaml"


@pytest.fixture
def costs(monkeypatch: pytest.MonkeyPatch) -> list[int]:
    """What each factoring costs, as they come."""
    found: list[int] = []
    plain = Pattern.factor

    def counting(self, *given):
        found.append(cost(self.n))
        return plain(self, *given)

    monkeypatch.setattr(Pattern, "factor", counting)
    return found


def ended_early(cage: CageModel, elements: int, after: int, costs: tuple[int, ...]) -> CageResult:
    """Solved with work for so many factorings and not one more."""
    return solve(cage, Options(elements=elements, work=sum(costs[:after]) + 1))


def test_a_cage_found_at_rest_stays_found_when_the_work_ends_with_its_factor(drawn, costs) -> None:
    made = drawn((SPECS / ROUND).read_text(encoding="utf-8"))
    cage = whole.model(pose(made.spec, made.shape))
    assert solve(cage, Options(elements=24)).factor == Factor(3.0, True, "cap", None)
    early = ended_early(cage, 24, len(costs) - 1, tuple(costs))
    assert early.status == "solved"
    assert early.factor == Factor(1.0, True, "spent", None)


def test_a_factor_that_was_not_followed_to_its_end_is_a_lower_bound(drawn, costs) -> None:
    """Between the last step that held and the first that failed nothing is known yet."""
    made = drawn((SPECS / WHEEL).read_text(encoding="utf-8"))
    cage = wheel.model(pose(made.spec, made.shape))
    cage = replace(cage, hoops=tuple(replace(one, line_load_n_per_m=2 * one.line_load_n_per_m) for one in cage.hoops))
    found, cost = solve(cage, Options(elements=12)), tuple(costs)
    assert found.factor is not None
    assert not found.factor.at_least
    for after in range(0, len(cost), 9):
        early = ended_early(cage, 12, after, cost)
        if early.factor is not None:
            assert (early.factor.at_least, early.factor.limit) == (True, "spent"), after
            assert early.factor.value <= found.factor.value


@pytest.mark.parametrize(("name", "family"), [(WHEEL, wheel), (SIDES, pair)])
def test_wheel_and_side_hoops_leave_open_what_was_not_followed(name, family, drawn) -> None:
    """As a cage does: a load not followed is no failure."""
    made = drawn((SPECS / name).read_text(encoding="utf-8"))
    problem = pose(made.spec, made.shape)
    found = solve(family.model(problem), Options(elements=12, factor=False))
    for value, open_ in ((1.0, True), (made.spec.limits.factor, False)):
        told = family.solution(problem, replace(found, factor=Factor(value, True, "spent", None)))
        assert ("buckling" in told.unassessed) is open_


def test_what_stands_by_symmetry_alone_has_no_load_to_raise(drawn) -> None:
    """Where no lighter load is borne either, nothing is said of buckling: least of all that it holds."""
    made = drawn((SPECS / ROUND).read_text(encoding="utf-8"))
    problem = pose(made.spec, made.shape)
    found = solve(whole.model(problem), Options(elements=12, factor=False))
    told = whole.solution(problem, replace(found, status="stands only by symmetry"))
    assert "buckling" in told.unassessed
    assert "symmetry" in told.unassessed["buckling"]


def test_a_step_with_many_unknowns_is_counted_nearly_as_dear_as_it_was_measured() -> None:
    """6 ms with 1,512 unknowns (seven hoops), 22 to 29 ms with 6,480 (thirty)."""
    assert 3 < cost(6480) / cost(1512) < 5
