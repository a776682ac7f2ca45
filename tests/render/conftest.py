"""A plan to render: a real one of a round cage with a hem band, its work replaced by one that has every
action of the vocabulary, and one thing to buy without a price."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan
from hoopwright.spec.model import Units
from hoopwright.work.actions import ACTIONS, Action
from hoopwright.work.model import Condition, Session, Task, Work

SPEC = b"""
spec: 1
title: Harbour play, act two
units: inches
wearer:
  stature: 5 ft 7 in
  waist: 28 in
  hip: 40 in
  waist_to_hip: 8 in
  waist_height: {front: 41 in, side: 41 1/2 in, back: 41 in}
shape:
  line: {kind: dome, swell: 1.3}
  top_hoop: {below_waist: 6 in}
  hem: {girth: 110 in, off_floor: 7 in}
  hoops: {count: 7, spacing: by tape}
build:
  hoops: {material: strip, join: lap soldered, casing: braid}
  tapes: {count: 6, front_gap: 7 in, material: twill}
  waistband: {material: twill, overlap: 2 in, fastening: hook and bar}
  hem_band: {depth: 9 in, material: calico}
load:
  - {name: over-skirt, weight: 1.9 kg}
materials:
  strip:
    grade: spring steel, tempered
    section: {kind: flat, width: 3/8 in, thickness: 0.042 in}
    sold: [{length: 50 ft, price: 19.00 USD}]
    on_hand: [14 ft]
  twill: {kind: tape, width: 1 in, sold: [{length: 10 yd, price: 6.50 USD}]}
  braid: {kind: braid, sold: [{per: 1 yd, price: 0.60 USD}]}
  calico: {kind: cloth, weight: 140 g/m2, width: 45 in, sold: [{per: 1 yd, step: 1/4 yd, price: 4.20 USD}]}
limits: {budget: 85 USD, door: 32 in, weight: 4 lb}
workshop: {tools: [bolt cutters, file, soldering iron, clamps, sewing machine], session: 2 h}
"""
INCH = 0.0254
CONDITIONS = (
    Condition("waist-closed", "waistband", 28 * INCH, 0.25 * INCH, "move the hook"),
    Condition("hem-height-front", "H7", 7 * INCH, 0.25 * INCH, "take it up at the waistband"),
    Condition("hem-height-side", "H7", 7 * INCH, 0.25 * INCH, "take it up at the waistband"),
    Condition("hoop-level", "H4", 24.25 * INCH, 0.25 * INCH, "move its marks"),
    Condition("no-contact", "cage", None, None, "write it down under `fittings`"),
)


def _parts(action: Action, plan: Plan) -> list[tuple[str, ...]]:
    """The parts of every task of an action, as its description says."""
    hoops = [hoop.id for hoop in plan.shape.hoops]
    several = {
        "one hoop": [(id,) for id in hoops],
        "one hoop, band": [("H6", "band"), ("H7", "band")],
        "every hoop": [tuple(hoops)],
        "every cased hoop": [tuple(hoop.id for hoop in plan.shape.hoops if hoop.cased)],
        "every tape": [tuple(tape.id for tape in plan.shape.tapes)],
        "every tape, waistband": [(*(tape.id for tape in plan.shape.tapes), "waistband")],
    }
    return several.get(action.parts, [tuple(action.parts.removeprefix("the goods: ").split(", "))])


def _work(plan: Plan) -> Work:
    """Every action once, or once a hoop, each task waiting for the one before it."""
    tasks: list[Task] = []
    for action in ACTIONS.values():
        for parts in _parts(action, plan):
            stop = action.key.startswith("try-on")
            name = f"{action.key}-{parts[0]}" if action.parts.startswith("one hoop") else action.key
            tasks.append(
                Task(
                    id=name,
                    kind=action.kind,
                    action=action.key,
                    title=action.key.replace("-", " "),
                    needs=(tasks[-1].id,) if tasks else (),
                    minutes=7.5,
                    tools=("bolt cutters",) if action.setup == "metal" else (),
                    parts=parts,
                    cautions=("cut-ends",) if action.key == "cut-hoop" else (),
                    setup=action.setup,
                    session=1 + len(tasks) // 20,
                    wait=480.0 if action.key == "prove-join" else 0.0,
                    stop=stop,
                    conditions=CONDITIONS if stop else (),
                )
            )
    sessions = tuple(
        Session(number, ids, 7.5 * len(ids), "the two hours are over")
        for number in sorted({task.session for task in tasks})
        if (ids := tuple(task.id for task in tasks if task.session == number))
    )
    total = 7.5 * len(tasks)
    return Work(tuple(tasks), sessions, total, total, (), "try-on-body-alone", 300.0, ("cut-ends",))


@pytest.fixture(scope="session")
def made() -> Plan:
    """The plan as compiled."""
    compiled = compile_spec(SPEC, "folder/cage.yaml")
    assert compiled.plan is not None, compiled.diagnostics
    return compiled.plan


@pytest.fixture(scope="session")
def make_plan(made: Plan) -> Callable[..., Plan]:
    """``make_plan(title=..., units=...)``: the plan with every action in its work."""
    work = _work(made)

    def make(title: str = made.spec.title, units: Units = "inches") -> Plan:
        return replace(made, spec=replace(made.spec, title=title, units=units), work=work)

    return make


@pytest.fixture(scope="session")
def plan(make_plan: Callable[..., Plan]) -> Plan:
    """The plan with every action, in inches."""
    return make_plan()
