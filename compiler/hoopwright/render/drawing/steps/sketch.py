"""What every step sketch shares: its page, its words, and small drawn things - a tape, a strip, a weight."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.letters import wrap
from hoopwright.render.drawing.marks import SMALL, leader
from hoopwright.render.drawing.sheet import GREY, INK, PAPER, XY, Sheet
from hoopwright.render.figure import Figure
from hoopwright.source.quantity import length_text

WIDTH = 320.0

Sketch = Callable[[Plan, str], Figure]
"""Draws the sketch of one action of a plan; the action's key names the figure."""
Part = TypeVar("Part")


def begin(action: str, height: float) -> Sheet:
    """An empty sketch."""
    return Sheet(f"step-{action}", WIDTH, height)


def finish(sheet: Sheet, title: str, alt: str) -> Figure:
    """The sketch as a figure."""
    return Figure(sheet.name, title, alt, sheet.svg(title, alt))


def say(plan: Plan, metres: float) -> str:
    """A length in the plan's units."""
    return length_text(metres, plan.spec.units)


def tell(sheet: Sheet, at: XY, to: XY, words: str, *, anchor: str = "start") -> None:
    """Words at ``to`` with a leader to the thing at ``at``."""
    shift = {"start": -4.0, "middle": 0.0, "end": 4.0}[anchor]
    drop = -4.0 if anchor != "middle" else (4.0 if to[1] < at[1] else -12.0)
    leader(sheet, [at, (to[0] + shift, to[1] + drop)])
    sheet.text(to[0], to[1], words, size=SMALL, anchor=anchor, halo=True)


def below(sheet: Sheet, y: float, words: str) -> None:
    """A line or two of words across the sketch from the baseline y on; the sketch grows where they need it."""
    for at, line in enumerate(wrap(words, WIDTH - 20, SMALL)):
        sheet.text(10, y + 15 * at, line, size=SMALL)
        sheet.height = max(sheet.height, y + 15 * at + 8)


def weight(sheet: Sheet, x: float, y: float, words: str) -> None:
    """A weight hanging by its ring from (x, y), with words on it."""
    sheet.ellipse((x, y + 4), 3, 4, width=1.2)
    sheet.path(
        [(x - 11, y + 8), (x + 11, y + 8), (x + 17, y + 34), (x - 17, y + 34)],
        closed=True,
        fill="#ddd",
        width=1.2,
    )
    sheet.text(x, y + 27, words, size=SMALL, anchor="middle")


def torn(sheet: Sheet, x: float, y1: float, y2: float) -> None:
    """The broken end of something that goes on: a zigzag from y1 down to y2."""
    step = (y2 - y1) / 4
    sheet.path(
        [(x, y1), (x + 4, y1 + step), (x - 4, y1 + 2 * step), (x + 4, y1 + 3 * step), (x, y2)],
        stroke=GREY,
        width=1.0,
    )


def flat(sheet: Sheet, x1: float, x2: float, y: float, thick: float = 5.0) -> None:
    """A piece of hoop stock seen along its length."""
    sheet.rect(x1, y - thick / 2, x2 - x1, thick, fill="#666", stroke=INK, line=0.8)


def stitches(sheet: Sheet, points: list[XY]) -> None:
    """A line of stitches."""
    sheet.path(points, width=1.4, dash="4 3")


def cloth(sheet: Sheet, x: float, y: float, width: float, height: float) -> None:
    """A piece of cloth seen flat."""
    sheet.rect(x, y, width, height, fill=PAPER, stroke="none")
    sheet.rect(x, y, width, height, fill=sheet.pattern("weave"), line=1.1)


def the(part: Part | None, name: str) -> Part:
    """A part that the plan of this action has, a wheel for example. Raises ValueError in a plan without it."""
    if part is None:
        raise ValueError(f"a task of a {name} in a plan without one")
    return part


def first_part(plan: Plan, action: str) -> str:
    """The first part a task of that action works on, or nothing."""
    return next((part for task in plan.work.tasks if task.action == action for part in task.parts), "")
