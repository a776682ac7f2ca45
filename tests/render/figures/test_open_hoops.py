"""Sketches of hoops that stay open: no lap, no clamp and no round that they do not have."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.steps.join_steps import SKETCHES
from hoopwright.render.markdown import plan_markdown


@pytest.mark.parametrize(("name", "hoop", "words", "never"), [
    ("night-tour/bustle.yaml", "H1", "from end to end. Nothing is sewn yet.", ("lap", "clamp", "round", "joined")),
    ("platform-two/crinolette.yaml", "H12", "round. Nothing is joined yet.", ("from end to end", "tip")),
], ids=["all open", "one closed below"])
def test_what_is_clipped_is_drawn_as_it_is(
    name: str, hoop: str, words: str, never: tuple[str, ...], committed: Callable[[str], Plan]
) -> None:
    plan = committed(name)
    sketch = SKETCHES["clip-hoop"](plan, "clip-hoop")
    said = f"{sketch.svg} {sketch.alt}"
    assert f">{hoop}: " in sketch.svg
    assert words in sketch.svg
    assert not [word for word in never if f">{word}" in said or f" {word} " in said]


def test_a_casing_is_drawn_over_the_tips_of_a_hoop_that_is_never_joined(committed: Callable[[str], Plan]) -> None:
    bustle, crinolette = committed("night-tour/bustle.yaml"), committed("platform-two/crinolette.yaml")
    assert "Drawn over the tips" in SKETCHES["case-hoop"](bustle, "case-hoop").svg
    assert "Before the join" in SKETCHES["case-hoop"](crinolette, "case-hoop").svg
    assert "once a hoop is closed it is too late" not in plan_markdown(bustle)
    assert "once a hoop is closed it is too late" in plan_markdown(crinolette)
