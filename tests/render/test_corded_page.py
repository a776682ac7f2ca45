"""The plan of a corded petticoat as it is read: rows, sample, figures, JSON; and nothing of hoops."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from hoopwright.cli.files import rendered
from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan
from hoopwright.render.figures import draw_figures
from hoopwright.render.machine import plan_json
from hoopwright.render.markdown import plan_markdown
from hoopwright.spec.document.choice import Choice

SPEC = Path(__file__).parents[2] / "specs" / "quay-market" / "petticoat.yaml"


def plan(variant: str = "") -> Plan:
    made = compile_spec(SPEC.read_bytes(), "petticoat.yaml", choice=Choice(variant))
    assert made.plan is not None, made.diagnostics
    return made.plan


@pytest.fixture(scope="module")
def text() -> str:
    made = plan()
    return plan_markdown(made, draw_figures(made))


def test_the_groups_stand_in_a_table(text: str) -> None:
    assert "| **1** | 16 cords, C1 to C16 | 1/4 in | 3/4 in | 4 1/2 in |" in text
    assert "42 rows end to end = 400 ft 3 3/4 in" in text


def test_the_page_says_how_to_make_the_sample_and_where_to_write_it(text: str) -> None:
    assert "Cord a sample" in text
    assert "take_up: ____ in" in text
    assert "{test: droop, overhang: 12 in, drop: ____ in, turned: ____ in}" in text


def test_nothing_is_said_of_hoops(text: str) -> None:
    page = text.split("# Annex")[0].replace("No hoops", "")
    assert "hoop" not in page.lower().replace("hoopwright", "")


def test_every_figure_is_there_and_named() -> None:
    names = [figure.name for figure in draw_figures(plan())]
    assert names[:4] == ["front", "side", "hem", "rows"]
    assert {"panel-1", "panel-2", "step-sew-sample", "step-test-sample", "step-sew-cords"} <= set(names)


def test_the_machine_readable_plan_carries_the_rows() -> None:
    untested, tested = (json.loads(plan_json(plan(name)))["corded_petticoat"] for name in ("", "sampled"))
    assert [row["id"] for row in untested["rows"]] == [f"C{k}" for k in range(1, 43)]
    assert untested["sample"]["ei_n_m2"] is None
    assert tested["ring"]["factor"] == pytest.approx(
        tested["ring"]["bears_n_per_m"] / tested["ring"]["press_n_per_m"], rel=1e-3)
    assert tested["cut_length_mm"] > untested["cut_length_mm"]


def test_the_label_goes_where_the_drawstring_runs() -> None:
    """There is no waistband to sew it into: neither the step, the card nor the printed label speaks of one."""
    made = rendered(plan(), cards=True)
    for page in ("plan.md", "cards.md", "pass-on.html"):
        said = [line for line in made[page].splitlines() if "sew it inside" in line]
        assert said
        assert all("sew it inside the upper edge" in line for line in said)
