"""What a cage can take, in words near the wearing sheet and in numbers in the annex; the loaded figure."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan
from hoopwright.render.drawing.loaded import TIMES, draw_loaded, exaggeration, largest, moved
from hoopwright.render.figures import draw_figures
from hoopwright.render.machine import plan_json
from hoopwright.render.markdown import plan_markdown
from hoopwright.render.views.handling import handling_view, push_words
from hoopwright.strength.model import HoopLines

SPEC = """
spec: 1
units: centimetres
wearer: {{stature: 168 cm, waist: 72 cm}}
shape: {{hem: {{girth: 2.8 m}}}}
build: {{hoops: {{material: strip}}}}
limits: {{door: 95 cm}}
load: [{{name: skirt, weight: {load}}}]
materials:
  strip:
    grade: "{grade}"
    section: {{kind: flat, width: 10 mm, thickness: 1 mm}}
    sold: [{{length: 20 m}}]
"""


def made(grade: str = "spring steel, tempered", load: str = "2 kg") -> Plan:
    plan = compile_spec(SPEC.format(grade=grade, load=load).encode(), "cage.yaml").plan
    assert plan is not None
    return plan


@pytest.fixture(scope="module")
def plan() -> Plan:
    return made()


def test_pushes_are_told_by_fingers_and_hands() -> None:
    said = [push_words(force) for force in (1.0, 5.0, 30.0, 80.0, 500.0)]
    assert said == ["hardly at all", "a finger holds it", "one hand holds it", "two hands hold it",
                    "it takes two people to hold"]


def test_the_short_table_names_chair_door_car_and_bag(plan: Plan) -> None:
    rows = handling_view(plan).short
    assert [row[0] for row in rows] == ["on a chair", "through the door", "in a car", "in a bag"]
    assert "45 cm high" in rows[0][1]
    assert rows[1][1:] == ("every hoop passes 95 cm as it is", "nothing is bent", "–")
    assert {row[2] for row in rows} <= {"yes", "nothing is bent", "yes, but with little to spare"}


def test_soft_strip_keeps_its_bends_and_the_page_says_so() -> None:
    soft = made("mild steel")
    page = plan_markdown(soft, draw_figures(soft))
    assert "| on a chair |" in page
    assert "**no**, it keeps a bend" in page
    assert "keeps a curve" in page


def test_the_annex_has_every_situation_and_every_hoop_on_the_chair(plan: Plan) -> None:
    view = handling_view(plan)
    assert len(view.rows) == len(plan.assessment.handling)
    assert [row[0] for row in view.seated] == [hoop.id for hoop in plan.shape.hoops]
    text = plan_json(plan)
    assert '"spring_back"' in text
    assert '"squeezed_mm"' in text


def test_the_loaded_figure_shows_both_views_and_says_its_scale(plan: Plan) -> None:
    figure = draw_loaded(plan)
    assert figure is not None
    assert figure.name in [one.name for one in draw_figures(plan)]
    for words in ("front, as wished", "front, as it hangs", "from her left, as it hangs"):
        assert words in figure.svg
    times = exaggeration(plan.assessment.lines)
    assert ("Drawn to scale" in figure.alt) is (times == 1)
    assert "figures/loaded.svg" in plan_markdown(plan, draw_figures(plan))


def test_small_movements_are_drawn_larger_and_large_ones_as_they_are() -> None:
    wished = tuple((x, 0.0, 1.0) for x in (0.0, 0.3, 0.6))
    still = HoopLines("H1", wished, tuple((x, y, z - 0.002) for x, y, z in wished))
    far = HoopLines("H2", wished, tuple((x, y, z - 0.2) for x, y, z in wished))
    assert exaggeration((still,)) == 20
    assert exaggeration((still, far)) == 1
    assert largest((still, far)) == ("H2", pytest.approx(0.2))
    assert moved(still, 20)[1] == pytest.approx((0.3, 0.0, 0.96))
    assert exaggeration((HoopLines("H1", wished, wished),)) == max(TIMES)


def test_hoops_keep_their_places_between_wished_and_loaded(plan: Plan) -> None:
    """Drawn on the page, the loaded hem lies below the wished one by its movement at the stated scale."""
    lines = plan.assessment.lines
    figure = draw_loaded(plan)
    assert figure is not None
    bigger = draw_loaded(replace(plan, assessment=replace(plan.assessment, lines=tuple(
        replace(one, loaded=tuple((x, y, z - 0.3) for x, y, z in one.wished)) for one in lines))))
    assert bigger is not None
    assert _lowest(bigger.svg) > _lowest(figure.svg)


def _lowest(svg: str) -> float:
    """The largest y of any smooth curve (a hoop)."""
    paths = re.findall(r'<path d="(M[^"]* C[^"]*)"', svg)
    return max(float(y) for path in paths for y in re.findall(r",(-?[\d.]+)", path))


def test_without_a_loaded_shape_there_is_no_figure(plan: Plan) -> None:
    bare = replace(plan, assessment=replace(plan.assessment, lines=()))
    assert draw_loaded(bare) is None
    assert "loaded.svg" not in plan_markdown(bare, draw_figures(bare))
