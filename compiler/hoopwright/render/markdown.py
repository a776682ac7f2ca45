"""``plan.md``: the plan a maker prints.

Views turn a plan into printed words; templates lay them out; everything a maker wrote is escaped on the
way (:mod:`hoopwright.render.escape`). Figures are referred to as ``figures/<name>.svg``.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from hoopwright.plan.model import Plan
from hoopwright.render.escape import Md, code_text
from hoopwright.render.figure import Figure
from hoopwright.render.templating import environment
from hoopwright.render.views.after import fitting_view, wearing_view, worn
from hoopwright.render.views.annex import annex_view
from hoopwright.render.views.buying import buying_view
from hoopwright.render.views.chart import chart_view
from hoopwright.render.views.corded import corded_view
from hoopwright.render.views.cutting import cutting_view
from hoopwright.render.views.diary import diary_view
from hoopwright.render.views.facts import band_facts, bench_rows, facts, waist_places
from hoopwright.render.views.glance import glance_view
from hoopwright.render.views.graph import graph_view
from hoopwright.render.views.handling import handling_view
from hoopwright.render.views.order import order_view
from hoopwright.render.views.pair import sides_view
from hoopwright.render.views.parts import hoop_views, tape_views
from hoopwright.render.views.petticoat import petticoat_view
from hoopwright.render.views.steps import Sitting, Step, sittings
from hoopwright.render.views.ties import lacing_view, tie_views
from hoopwright.render.views.wheel import wheel_view
from hoopwright.source.record import record

if TYPE_CHECKING:
    from jinja2 import Environment

PLACED = ("front", "side", "hem", "ties", "coils", "band", "tapes", "loaded", "rows", "spokes", "steels",
          "strips")
"""Figures that have a place of their own in the text; steps, gauges, panels and cloths find theirs by name."""


@record(frozen=True, slots=True)
class Instruction:
    """What a step tells the maker: a heading and the Markdown under it."""

    heading: str
    body: Md


def plan_markdown(plan: Plan, figures: tuple[Figure, ...] = ()) -> str:
    """The text of ``plan.md``. ``figures`` are those that will lie in ``figures/`` beside it."""
    by_name = {figure.name: figure for figure in figures}
    values = page_values(plan, by_name)
    env = environment()
    texts = _instructions(env, values["sittings"], values)
    steps = {step.action for sitting in values["sittings"] for step in sitting.steps}
    text = env.get_template("plan.md.j2").render(
        values,
        texts=texts,
        graph=graph_view(plan, {number: said.heading for number, said in texts.items()}),
        gauges=[figure for figure in figures if figure.name.startswith("gauge-")],
        more_figures=[figure for figure in figures if not _placed(figure.name, steps)],
    )
    return tidy(text)


def page_values(plan: Plan, figures: Mapping[str, Figure]) -> dict[str, Any]:
    """Everything the templates read."""
    shared, hoops, tapes = facts(plan), hoop_views(plan), tape_views(plan)
    cut = cutting_view(plan, hoops, tapes)
    pieces = tuple(piece for cloth in cut.cloth for piece in cloth.pieces if piece.startswith("band: "))
    wearing = wearing_view(plan, shared)
    petticoat, corded = petticoat_view(plan), corded_view(plan)
    return {
        "title": plan.spec.title,
        "f": shared,
        "hoops": hoops,
        "tapes": tapes,
        "cut": cut,
        "band": band_facts(plan, pieces),
        "bench": bench_rows(plan),
        "waist_places": waist_places(plan),
        "chart": chart_view(plan, tapes),
        "ties": tie_views(plan),
        "lacing": lacing_view(plan),
        "petticoat": petticoat,
        "corded": corded,
        "cloth": petticoat or corded,
        "wheel": wheel_view(plan),
        "sides": sides_view(plan),
        "panel_figures": [figure for name, figure in figures.items() if name.startswith("panel-")],
        "cloth_figures": [figure for name, figure in figures.items() if name.startswith("cloth-")],
        "glance": glance_view(plan, shared),
        "diary": diary_view(plan),
        "buying": buying_view(plan),
        "sittings": sittings(plan, hoops, figures),
        "fitting": fitting_view(shared, tapes),
        "wearing": wearing,
        "handling": handling_view(plan),
        "cautions": wearing.cautions,
        "annex": annex_view(plan, worn(plan)),
        "order": order_view(plan),
        "figures": {name: figures.get(name) for name in PLACED},
    }


def _instructions(env: Environment, found: tuple[Sitting, ...],
                  values: dict[str, Any]) -> dict[int, Instruction]:
    """The instruction of every step by number: its template's first line is the heading.

    When an action comes up again, its explanation is not repeated, only its check boxes.
    """
    texts: dict[int, Instruction] = {}
    explained: dict[str, int] = {}
    for step in (step for sitting in found for step in sitting.steps):
        said = env.get_template(f"actions/{step.action}.md.j2").render(values, step=step)
        heading, _, body = said.partition("\n")
        boxes = body.find("- [ ]")
        before = explained.setdefault(step.action, step.number)
        if before != step.number and boxes >= 0:
            body = f"As in step {before}.\n\n{body[boxes:]}"
        texts[step.number] = Instruction(heading.strip(), Md(ticked(body, step).strip("\n")))
    return texts


def ticked(body: str, step: Step) -> str:
    """The boxes of what is done, ticked: all of them when the whole step is, else those of its done tasks."""
    if not step.done:
        return body
    whole = len(step.done) == len(step.ids)
    refs = tuple(code_text(id) for id in step.done)
    return "\n".join(
        line.replace("- [ ]", "- [x]", 1) if whole or any(ref in line for ref in refs) else line
        for line in body.split("\n"))


def _placed(name: str, actions: set[str]) -> bool:
    many = name.startswith(("gauge-", "panel-", "cloth-"))
    return name in PLACED or many or name.removeprefix("step-") in actions


def tidy(text: str) -> str:
    """One blank line at most between blocks, none at the ends, no blanks at line ends."""
    lines = "\n".join(line.rstrip() for line in text.split("\n"))
    return re.sub(r"\n{3,}", "\n\n", lines).strip("\n") + "\n"
