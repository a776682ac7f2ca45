"""Sketches of the finished part for the main actions, each with this plan's own measures."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.steps import (
    band_steps,
    fitting_steps,
    join_steps,
    petticoat_steps,
    stock_steps,
    tape_steps,
    waist_steps,
)
from hoopwright.render.drawing.steps.frame import Sketch
from hoopwright.render.figure import Figure

SKETCHES: dict[str, Sketch] = {
    **stock_steps.SKETCHES,
    **tape_steps.SKETCHES,
    **join_steps.SKETCHES,
    **band_steps.SKETCHES,
    **petticoat_steps.SKETCHES,
    **waist_steps.SKETCHES,
    **fitting_steps.SKETCHES,
}
"""The sketch of each action that has one, by the action's key."""


def draw_steps(plan: Plan) -> tuple[Figure, ...]:
    """The sketches of the actions that occur in the plan's work, in working order.

    Those that show a cage with a hem are left out where there is none.
    """
    actions = dict.fromkeys(task.action for task in plan.work.tasks)
    if plan.shape.wheel is not None or plan.shape.sides is not None:
        actions = {action: None for action in actions if action not in fitting_steps.SKETCHES}
    return tuple(SKETCHES[action](plan, action) for action in actions if action in SKETCHES)
