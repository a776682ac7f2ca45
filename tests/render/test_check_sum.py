"""Check sums add what is printed, so that a maker who adds the table up gets that number."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

import pytest

from hoopwright.plan.model import Plan
from hoopwright.render.markdown import plan_markdown
from hoopwright.render.views.cutting import check_sum

IN = 0.0254


def _inches(text: str) -> Fraction:
    """``59 5/8`` as a number."""
    return sum((Fraction(part) for part in text.split()), Fraction(0))


def test_the_printed_cuts_add_up_to_the_printed_sum(plan: Plan) -> None:
    page = plan_markdown(plan).split("## Cutting plan")[1].split("###")[0]
    cuts = re.findall(r"^\| \*\*H\d\*\*[^|]*\| ([\d /]+) \|", page, re.MULTILINE)
    total = re.search(r"\*\*seven hoops end to end = (\d+) ft ([\d /]+) in\*\*", page)
    assert len(cuts) == 7
    assert total is not None
    assert sum(map(_inches, cuts)) == 12 * int(total[1]) + _inches(total[2])


@pytest.mark.parametrize(("cut", "printed"), [(10.0 + 3 / 64, "one hoop"), (10.05, "one hoop")])
def test_one_hoop_is_counted_in_words(plan: Plan, cut: float, printed: str) -> None:
    shape = replace(plan.shape, hoops=(replace(plan.shape.hoops[0], cut=cut * IN),))
    assert check_sum(replace(plan, shape=shape)).startswith(printed)


def test_the_sum_is_of_rounded_lengths_and_not_the_rounded_sum(make_plan: Callable[..., Plan]) -> None:
    plan = make_plan()
    cut = (12 + 3 / 64) * IN
    hoops = tuple(replace(hoop, cut=cut) for hoop in plan.shape.hoops)
    plan = replace(plan, shape=replace(plan.shape, hoops=hoops))
    assert plan.shape.total_hoop_length / IN == pytest.approx(84.33, abs=0.01)
    assert check_sum(plan) == "seven hoops end to end = 7 ft"


def test_in_centimetres_too(make_plan: Callable[..., Plan]) -> None:
    page = plan_markdown(make_plan(units="centimetres")).split("## Cutting plan")[1].split("###")[0]
    cuts = re.findall(r"^\| \*\*H\d\*\*[^|]*\| ([\d.]+) \|", page, re.MULTILINE)
    total = re.search(r"seven hoops end to end = ([\d.]+) m\b", page)
    assert total is not None
    assert sum(map(Fraction, cuts)) / 100 == pytest.approx(float(total[1]), abs=0.005)
