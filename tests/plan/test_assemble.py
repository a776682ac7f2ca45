"""The plan stage lays results side by side and orders the checks."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

from hoopwright.compile import compile_spec
from hoopwright.plan.assemble import assemble, by_importance
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
    """What the spec stage finds in the load, last in the text, was found before what the shape stage finds in the
    hem."""
    text = """\
spec: 1
units: inches
wearer: {stature: 5 ft 5 in, waist: 28 in, hip: 38 in}
shape: {hem: {girth: 150 in}, hoops: {count: 6}}
build: {hoops: {material: strip}, tapes: {count: 8}}
materials: {strip: {grade: "spring steel, tempered", section: {kind: flat, width: 1 in, thickness: 0.06 in}}}
load: [{name: skirt, weight: 13 kg}]
"""
    plan = compile_spec(text.encode(), "cage.yaml").plan
    assert plan is not None
    order = [found.code for found in plan.findings]
    assert order.index("hem-wide") < order.index("load-unlikely")
    assert list(plan.findings) == sorted(plan.findings, key=lambda found: found.sort_key())
