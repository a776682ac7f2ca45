"""Sketches of the finished part for the main actions, each with this plan's own measures."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.steps import (
    band_steps,
    corded_steps,
    fitting_steps,
    join_steps,
    pair_steps,
    petticoat_steps,
    sewn_steps,
    stock_steps,
    tape_steps,
    tie_steps,
    waist_steps,
    wheel_steps,
    wheel_stops,
)
from hoopwright.render.drawing.steps.sketch import Sketch
from hoopwright.render.figure import Figure

SKETCHES: dict[str, Sketch] = {
    **stock_steps.SKETCHES,
    **tape_steps.SKETCHES,
    **tie_steps.SKETCHES,
    **join_steps.SKETCHES,
    **band_steps.SKETCHES,
    **petticoat_steps.SKETCHES,
    **sewn_steps.SKETCHES,
    **corded_steps.SKETCHES,
    **waist_steps.SKETCHES,
    **wheel_steps.SKETCHES,
    **pair_steps.SKETCHES,
    **fitting_steps.SKETCHES,
}
"""The sketch of each action that has one, by the action's key."""

WITHOUT: dict[str, str] = {
    "wash": "nothing is shaped",
    "press": "nothing is shaped",
    "cut-panels": "the figure of the panel gives its outline and every width",
    "cut-cloth": "the figures of the panel and of the cloth's layout show it",
    "cut-sides": "the figures of both panels give their outlines and every width",
    "cut-cover": "the figure of the cover gives its outline, hole and slit",
    "cut-roll": "the figure of the roll gives its outline",
    "starch-sample": "the sample is drawn where it is sewn and where it is tested",
    "wash-sample": "the sample is drawn where it is sewn and where it is tested",
    "cut-breadths": "the figures of the panels and of the cloth's layout show it",
    "cut-cords": "plain lengths, all alike",
    "sew-breadths": "plain seams; the figure of the panel gives their turnings",
    "sew-hem": "a plain seam round the edge",
    "cut-strips": "plain strips, laid on the figure of the cloth's layout",
    "cut-band": "a plain strip, shown with its folds on the figure of the band",
    "sew-casings": "a plain tube, sewn as the sketch of the case put on shows it",
    "wash-joins": "the join is drawn where it is made",
    "check-joins": "the join is drawn where it is made",
    "sew-label": "the label is printed under wearing and care",
}
"""Why each of the other actions has no sketch."""


def draw_steps(plan: Plan) -> tuple[Figure, ...]:
    """The sketches of the actions that occur in the plan's work, in working order. Wheels and side hoops have
    stops of their own."""
    sketches = dict(SKETCHES)
    if plan.shape.wheel is not None:
        sketches |= wheel_stops.STOPS
    elif plan.shape.sides is not None:
        sketches |= pair_steps.STOPS
    actions = dict.fromkeys(task.action for task in plan.work.tasks)
    return tuple(sketches[action](plan, action) for action in actions if action in sketches)
