"""Of several materials the cheapest that passes is taken, and never silently one that fails."""

from __future__ import annotations

from decimal import Decimal
from functools import cache

import pytest

from hoopwright.compile import Compiled, compile_spec
from hoopwright.source.diagnostic import Severity

SPEC = """\
spec: 1
units: centimetres
wearer: {stature: 168 cm, waist: 72 cm}
shape: {hem: {girth: 2.8 m}, hoops: {count: 5}}
build: {hoops: {material: OFFERED, join: lap soldered, lap: 3 cm}, hem_band: {depth: 20 cm, material: CLOTH}}
load: [{name: skirt, weight: 1.2 kg}]
materials:
  strip:
    grade: spring steel, tempered
    section: {kind: flat, width: 10 mm, thickness: 1 mm}
    sold: [{length: 25 m, price: 44.00 EUR}]
  good strip:
    grade: spring steel, tempered
    section: {kind: flat, width: 10 mm, thickness: 1.1 mm}
    sold: [{length: 25 m, price: 39.00 EUR}]
  cane: {grade: rattan, section: {kind: round, diameter: 2 mm}, sold: [{length: 25 m, price: 12.00 EUR}]}
  unpriced: {grade: "spring steel, tempered", section: {kind: flat, width: 10 mm, thickness: 1 mm}}
  calico: {kind: cloth, weight: 140 g/m2, sold: [{per: 1 m, price: 7.00 EUR}]}
  drill: {kind: cloth, sold: [{per: 1 m, price: 3.00 EUR}]}
"""


@cache
def compiled(offered: str, cloth: str = "calico") -> Compiled:
    return compile_spec(SPEC.replace("OFFERED", offered).replace("CLOTH", cloth).encode(), "cage.yaml")


def chosen(offered: str, cloth: str = "calico") -> tuple[str, ...]:
    plan = compiled(offered, cloth).plan
    assert plan is not None
    (row,) = [row for row in plan.substitutes if row.chosen]
    assert plan.spec.offered == row.offered
    return row.offered


def test_the_cheapest_that_passes_is_taken_whatever_the_order() -> None:
    assert chosen("[strip, good strip]") == ("good strip",)
    assert chosen("[good strip, strip]") == ("good strip",)


def test_a_cheaper_one_that_fails_is_passed_over_and_said_so() -> None:
    assert chosen("[cane, strip]") == ("strip",)
    result = compiled("[cane, strip]")
    (told,) = [one for one in result.diagnostics if one.code == "substitute-chosen"]
    assert told.severity is Severity.NOTE
    assert any(line.startswith("`cane`: fails ") for line in told.notes)
    assert result.plan is not None
    assert not result.plan.failing


def test_when_none_passes_a_warning_names_each() -> None:
    thin = "  thin: {grade: rattan, section: {kind: round, diameter: 1.5 mm}}\n"
    text = SPEC.replace("OFFERED", "[cane, thin]").replace("CLOTH", "calico") + thin
    assert [one.code for one in compile_spec(text.encode(), "cage.yaml").diagnostics] == ["join-unsuited"]
    result = compile_spec(text.replace(", join: lap soldered, lap: 3 cm", "").encode(), "cage.yaml")
    (told,) = [one for one in result.diagnostics if one.code == "substitute-none-passes"]
    assert told.severity is Severity.WARNING
    assert len(told.notes) == 2
    assert result.plan is not None
    assert result.plan.failing


def test_one_without_a_price_comes_after_those_that_have_one() -> None:
    assert chosen("[unpriced, strip]") == ("strip",)


def test_another_material_gets_a_join_that_suits_it() -> None:
    plan = compiled("[strip, cane]").plan
    assert plan is not None
    assert [row.join for row in plan.substitutes] == ["lap soldered", "lap bound"]
    bound = next(trial.spec for trial in compiled("[strip, cane]").trials if trial.spec.offered == ("cane",))
    assert bound.build.hoops.lap == pytest.approx(0.1016)


def test_the_cloth_of_the_band_is_weighed_in_too() -> None:
    assert chosen("[strip]", "[calico, drill]") == ("strip", "drill")
    plan = compiled("[strip]", "[calico, drill]").plan
    assert plan is not None
    costs = {row.offered: row.cost for row in plan.substitutes}
    assert plan.supply.cost.total == min(cost for cost in costs.values() if cost is not None)
    assert plan.spec.build.band is not None
    assert plan.spec.build.band.material.name == "drill"


def test_the_plan_is_the_one_that_its_material_alone_would_give() -> None:
    alone, picked = compiled("strip").plan, compiled("[cane, strip]").plan
    assert alone is not None
    assert picked is not None
    assert picked.supply == alone.supply
    assert picked.assessment == alone.assessment
    assert picked.supply.cost.total > Decimal(0)


def test_an_error_in_one_choice_is_told() -> None:
    found = compile_spec(
        SPEC.replace("OFFERED", "[strip, can]").replace("CLOTH", "calico").encode(), "cage.yaml"
    )
    assert found.plan is None
    assert [one.code for one in found.diagnostics if one.severity is Severity.ERROR] == ["material-unknown"]
