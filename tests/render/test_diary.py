"""The diary of a plan: boxes ticked, fittings in words, and nothing at all when nothing was noted."""

from __future__ import annotations

import json
import re
from pathlib import Path

from hoopwright.compile import compile_spec
from hoopwright.render.machine import plan_json, plan_value
from hoopwright.render.markdown import plan_markdown
from hoopwright.spec.checking.schema import load_schema

SPEC = """\
spec: 1
units: inches
wearer: {stature: 67 in, waist: 28 in, hip: 40 in}
shape: {hem: {girth: 110 in, off_floor: 7 in}, hoops: {count: 5}}
"""
NOTED = """\
progress: {done: [wash, press, cut-H1, cut-H3], cut: {H5: 100 in, H4: 112 in}}
fittings:
  - {on: 2027-03-02, hem_height: 6 1/2 in, notes: "petticoats | on"}
  - {on: 2027-03-09, hem_height: {T4: 7 3/4 in}}
"""


def page(text: str) -> str:
    plan = compile_spec(text.encode(), "cage.yaml").plan
    assert plan is not None
    return plan_markdown(plan)


def test_without_a_record_there_is_no_chapter() -> None:
    text = page(SPEC)
    assert "## So far" not in text
    assert "- [x]" not in text


def test_done_tasks_are_ticked_where_they_stand() -> None:
    text = page(SPEC + NOTED)
    ticked = [line for line in text.splitlines() if line.startswith("- [x]")]
    assert any("`cut-H1`" in line for line in ticked)
    assert any("`cut-H3`" in line for line in ticked)
    assert not any("`cut-H2`" in line for line in ticked)
    assert "- [x] tapes" in ticked  # washed and pressed as a whole


def test_a_fitting_is_told_with_its_marks_from_the_top_down() -> None:
    text = page(SPEC + NOTED)
    _, _, chapter = text.partition("## So far\n")
    chapter, _, _ = chapter.partition("\n## What to buy")
    assert "All round it was 1/2 in too low" in chapter
    assert "petticoats \\| on" in chapter
    hoops = re.findall(r"^\| \*\*(H\d)\*\* \|", chapter.partition("**Marks that move**")[2], re.MULTILINE)
    assert hoops == sorted(hoops)
    assert hoops
    assert "(`try-on-1`, " in chapter
    assert "**H5** 114 in" in chapter


def test_the_chart_counts_from_the_new_zero() -> None:
    def mark(text: str) -> str:
        return next(line for line in page(text).splitlines() if line.startswith("| **H5** |"))

    drawn, taken_up = mark(SPEC), mark(SPEC + "fittings: [{on: 2027-03-02, hem_height: 6 1/2 in}]\n")
    assert drawn != taken_up


def test_the_machine_readable_plan_holds_it_and_keeps_to_its_schema() -> None:
    from jsonschema import Draft202012Validator

    plain, noted = (compile_spec(text.encode(), "cage.yaml").plan for text in (SPEC, SPEC + NOTED))
    assert plain is not None
    assert noted is not None
    assert "diary" not in plan_value(plain)
    value = json.loads(plan_json(noted))
    assert list(Draft202012Validator(load_schema("plan")).iter_errors(value)) == []
    assert value["diary"]["done"] == [task["id"] for task in value["tasks"]
                                      if task["id"] in ("wash", "press", "cut-H1", "cut-H3")]
    assert [one["on"] for one in value["diary"]["fittings"]] == ["2027-03-02", "2027-03-09"]


def test_the_demo_has_one_design_two_bodies_three_stocks_and_a_fitting() -> None:
    from hoopwright.cli.specs import gather

    folder = Path(__file__).parents[2] / "specs" / "mill-fair"
    specs, problems = gather([str(folder / "cast.yaml"), str(folder / "design.yaml")])
    assert problems == []
    results = [spec.compiled() for spec in specs]
    assert all(result.plan is not None for result in results)
    assert {result.spec.wearer.name for result in results if result.spec} == {"first dancer", "second dancer"}
    assert results[-1].spec is not None
    assert len(results[-1].spec.fittings) == 1
