"""Side hoops from the side: the pocket slit lies where it is cut, above the first channel."""

from __future__ import annotations

from pathlib import Path
from xml.etree import ElementTree

import pytest

from hoopwright.compile import compile_spec
from hoopwright.render.drawing.pair import slit_heights
from hoopwright.render.figures import draw_figures

SPECS = Path(__file__).parents[3] / "specs"
SVG = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize("name", ["pump-room/side-hoops.yaml", "starters/side-hoops-centimetres.yaml"])
def test_the_slit_is_drawn_above_the_first_hoop_as_on_its_panel(name: str) -> None:
    plan = compile_spec((SPECS / name).read_bytes(), name).plan
    assert plan is not None
    pair = plan.shape.sides
    assert pair is not None
    rules = {rule.name: rule for rule in plan.shape.panels[0].rules}
    low, high = (y for _, y in rules["pocket slit"].points)
    channel = rules["L1 and R1"].points[0][1]
    first, edge = pair.channels[0], plan.spec.wearer.side - plan.spec.build.waistband.width / 2
    up, down = slit_heights(plan, pair)
    for height, on_panel in ((up, high), (down, low)):
        share = (height - plan.spec.wearer.side + first.drop) / (edge - plan.spec.wearer.side + first.drop)
        assert share == pytest.approx((on_panel - channel) / first.down)
    side = next(figure for figure in draw_figures(plan) if figure.name == "side")
    lines = list(ElementTree.fromstring(side.svg).iter(f"{SVG}line"))
    slit = max(float(line.get("y2", "")) for line in lines if line.get("stroke-dasharray") == "2 3")
    hoops = [float(line.get("y2", "")) for line in lines if line.get("stroke-width") == "2.6"]
    assert len(hoops) == len(pair.channels)
    assert slit < min(hoops) - 2.0
