"""The wording of the chapters a maker works from, kept so that a change of it is seen."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest
from syrupy.assertion import SnapshotAssertion

from hoopwright.plan.model import Plan
from hoopwright.render.markdown import plan_markdown

CHAPTERS = ("Cutting plan", "Tape marking chart", "Steps", "Fitting sheet", "Wearing and care")


@pytest.mark.parametrize("units", ["inches", "centimetres"])
@pytest.mark.parametrize("chapter", CHAPTERS)
def test_wording(
    chapter: str, units: str, make_plan: Callable[..., Plan], snapshot: SnapshotAssertion
) -> None:
    page = plan_markdown(make_plan(units=units))
    found = re.search(rf"^## {chapter}\n.*?(?=^##? )", page, re.MULTILINE | re.DOTALL)
    assert found is not None
    assert found[0] == snapshot
