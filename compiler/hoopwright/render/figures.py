"""Every figure of a plan, in the order in which it is read."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.band import draw_band, draw_cloths
from hoopwright.render.drawing.coils import draw_coils
from hoopwright.render.drawing.corded import corded_figures
from hoopwright.render.drawing.elevation import draw_front, draw_side
from hoopwright.render.drawing.gauge import draw_gauges
from hoopwright.render.drawing.hem import draw_hem
from hoopwright.render.drawing.loaded import draw_loaded
from hoopwright.render.drawing.pair import pair_figures
from hoopwright.render.drawing.panels import draw_panels
from hoopwright.render.drawing.steps import draw_steps
from hoopwright.render.drawing.strips import draw_strips, strips_to_cut
from hoopwright.render.drawing.tapes import draw_tapes_chart
from hoopwright.render.drawing.ties import draw_ties
from hoopwright.render.drawing.wheel import wheel_figures
from hoopwright.render.figure import Figure


def draw_figures(plan: Plan) -> tuple[Figure, ...]:
    """All figures of ``plan``: the same plan gives the same bytes."""
    shape = plan.shape
    if shape.wheel is not None:
        figures = list(wheel_figures(plan, shape.wheel))
    elif shape.corded is not None:
        figures = list(corded_figures(plan, shape.corded))
    elif shape.sides is not None:
        figures = list(pair_figures(plan, shape.sides))
    else:
        figures = [draw_front(plan), draw_side(plan), draw_hem(plan)]
    if plan.shape.tapes:
        figures.append(draw_tapes_chart(plan))
    if plan.shape.ties and plan.shape.sides is None:
        figures.append(draw_ties(plan))
    figures.extend(draw_panels(plan))
    if shape.petticoat is not None and strips_to_cut(plan, shape.petticoat):
        figures.append(draw_strips(plan, shape.petticoat))
    if plan.supply.cutting.packs and shape.corded is None:
        figures.append(draw_coils(plan))
    if plan.shape.band is not None:
        figures.append(draw_band(plan, plan.shape.band))
    figures.extend(draw_cloths(plan))
    loaded = draw_loaded(plan)
    if loaded is not None:
        figures.append(loaded)
    figures.extend(draw_steps(plan))
    if plan.shape.tapes:
        figures.extend(draw_gauges(plan))
    return tuple(figures)
