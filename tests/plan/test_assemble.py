"""The plan stage lays results side by side and orders the checks."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

from hoopwright.plan.assemble import assemble, by_importance
from hoopwright.source.diagnostic import Diagnostic, Severity, Span
from hoopwright.spec.check import Check, Result
from hoopwright.supply.model import Cutting


def _check(code: str, result: Result) -> Check:
    return Check(code, "cage", 1.0, 2.0, "ratio", "at most", result, "", "ours", "it is well")


def _assemble(**given: Any) -> Any:
    stages = {
        "assessment": SimpleNamespace(checks=(_check("sag", "holds"), _check("buckling", "fails"))),
        "shape": SimpleNamespace(
            checks=(_check("stride", "fails"),), tapes=(), hoops=(), wheel=None, petticoat=None, sides=None
        ),
        "supply": SimpleNamespace(
            checks=(_check("budget", "marginal"),), cutting=Cutting((), True, 0.0)
        ),
    } | given
    return assemble(
        "some/where/cage.yaml",
        SimpleNamespace(
            build=SimpleNamespace(hooped=None, wheel=None, sides=None, panels=None),
            shape=SimpleNamespace(ground_plan=SimpleNamespace(half=None)),
        ),
        stages["shape"],
        stages["assessment"],
        stages["supply"],
        SimpleNamespace(),
        stages.get("found", ()),
    )


def test_what_fails_comes_first_and_strength_before_shape() -> None:
    plan = _assemble()
    assert [check.code for check in plan.checks] == ["buckling", "stride", "budget", "sag"]
    assert [check.code for check in plan.failing] == ["buckling", "stride"]


def test_order_within_a_result_is_kept() -> None:
    checks = [
        _check("b", "holds"),
        _check("a", "holds"),
        _check("c", "not assessed"),
        _check("d", "marginal"),
    ]
    assert [check.code for check in by_importance(checks)] == ["d", "c", "b", "a"]


def test_folders_are_dropped_from_the_source() -> None:
    assert _assemble().source == "cage.yaml"


def test_findings_stand_in_the_order_of_the_text() -> None:
    late = Diagnostic("a", Severity.NOTE, "m", "c.yaml", Span("c.yaml", 9, 1, 9, 2))
    early = Diagnostic("b", Severity.NOTE, "m", "c.yaml", Span("c.yaml", 2, 1, 2, 2))
    assert _assemble(found=[late, early]).findings == (early, late)
