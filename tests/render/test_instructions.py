"""Every action has its instruction and every instruction its action; every condition has its words."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan
from hoopwright.render.markdown import plan_markdown
from hoopwright.render.templating import FOLDER
from hoopwright.render.views.conditions import PHRASES
from hoopwright.render.views.steps import runs
from hoopwright.work.actions import ACTIONS
from hoopwright.work.conditions import CONDITIONS
from hoopwright.work.model import Session, Task

TEMPLATES = {path.name.removesuffix(".md.j2") for path in (FOLDER / "actions").iterdir()}

ROUND = """\
spec: 1
units: centimetres
wearer: {stature: 165 cm, waist: 70 cm}
shape: {hem: {girth: 270 cm}}
"""


def test_actions_and_templates_agree() -> None:
    assert set(ACTIONS) == TEMPLATES


def test_conditions_and_phrases_agree() -> None:
    assert set(CONDITIONS) == set(PHRASES)


@pytest.mark.parametrize("action", sorted(TEMPLATES))
def test_an_instruction_has_a_heading_and_a_box_to_tick(action: str) -> None:
    text = (FOLDER / "actions" / f"{action}.md.j2").read_text("utf-8")
    heading, _, body = text.partition("\n")
    assert re.fullmatch(r"[A-Z][\w ,:]+", heading)
    assert action.startswith("try-on") or "- [ ]" in body
    assert "\u2014" not in text


def test_every_action_is_printed_as_a_step(plan: Plan) -> None:
    page = plan_markdown(plan)
    for action in sorted(TEMPLATES):
        heading = (FOLDER / "actions" / f"{action}.md.j2").read_text("utf-8").split("\n")[0]
        assert re.search(rf"^#### \d+\. {re.escape(heading)}$", page, re.MULTILINE), action


def test_a_band_without_tapes_and_a_sleeve_without_a_lap_are_worded(plan: Plan) -> None:
    build = plan.spec.build
    sleeve = replace(build.hoops, lap=0.0, join=replace(build.hoops.join, lap=0.0, sleeve=0.0445))
    last = replace(plan.shape.hoops[-1], fixings=())
    page = plan_markdown(
        replace(
            plan,
            spec=replace(plan.spec, build=replace(build, hooped=sleeve)),
            shape=replace(plan.shape, hoops=(*plan.shape.hoops[:-1], last)),
        )
    )
    assert "sleeve 1 3/4 in long" in page
    assert "no tape reaches it" in page
    assert "at the lap" not in page.split("\n# Annex\n")[0]


def _task(id: str, action: str, needs: tuple[str, ...] = (), stop: bool = False) -> Task:
    return Task(id, "sew", action, id, needs, 1, (), (), (), "table", stop=stop)


def test_tasks_of_one_action_are_drawn_together_where_order_allows() -> None:
    tasks = [
        _task("case-H1", "case-hoop"),
        _task("mark-H1", "mark-hoop", ("case-H1",)),
        _task("case-H2", "case-hoop"),
        _task("mark-H2", "mark-hoop", ("case-H2",)),
    ]
    assert [[task.id for task in run] for run in runs(tasks)] == [
        ["case-H1", "case-H2"],
        ["mark-H1", "mark-H2"],
    ]


def test_no_task_is_drawn_before_what_it_waits_for() -> None:
    tasks = [
        _task("case-H1", "case-hoop"),
        _task("sew", "sew-tapes", ("case-H1",)),
        _task("case-H2", "case-hoop", ("sew",)),
    ]
    assert [[task.id for task in run] for run in runs(tasks)] == [["case-H1"], ["sew"], ["case-H2"]]


def test_a_stop_stands_alone() -> None:
    tasks = [_task("a", "try-on-hem-alone", stop=True), _task("b", "try-on-hem-alone", stop=True)]
    assert len(runs(tasks)) == 2


def test_every_task_is_ticked_once_and_in_a_possible_order(plan: Plan) -> None:
    order = [
        task.id
        for session in plan.work.sessions
        for run in runs([one for one in plan.work.tasks if one.id in session.tasks])
        for task in run
    ]
    assert sorted(order) == sorted(task.id for task in plan.work.tasks)
    place = {id: at for at, id in enumerate(order)}
    assert all(place[need] < place[task.id] for task in plan.work.tasks for need in task.needs)


def test_an_action_that_comes_again_is_not_explained_again(plan: Plan) -> None:
    tasks = plan.work.tasks
    cuts = tuple(task for task in tasks if task.action == "cut-hoop")
    sessions = (Session(1, (cuts[0].id,), 5, ""), Session(2, tuple(task.id for task in cuts[1:]), 5, ""))
    page = plan_markdown(replace(plan, work=replace(plan.work, sessions=sessions)))
    assert page.count("Measure twice, cut once") == 1
    assert "As in step 1.\n\n- [ ] **H2**" in page


def test_a_caution_is_printed_in_full_once_and_named_again(plan: Plan) -> None:
    again = tuple(
        replace(task, cautions=("cut-ends",)) if task.action == "case-hoop" else task
        for task in plan.work.tasks
    )
    page = plan_markdown(replace(plan, work=replace(plan.work, tasks=again)))
    steps = page.split("## Steps")[1].split("## Fitting sheet")[0]
    assert steps.count("Tip or tape every cut end at once") == 1
    assert "> **Again take care:** cut ends." in steps


def _page(text: str) -> str:
    plan = compile_spec(text.encode(), "spec.yaml").plan
    assert plan is not None
    return plan_markdown(plan)


def test_a_tape_over_the_body_is_laid_on_it_in_the_step_that_marks_it(bustle_text: str) -> None:
    page = _page(bustle_text)
    step = page.split("Mark the tapes\n")[1].split("\n#### ")[0]
    assert "its marks are already measured along the body" in step
    assert re.findall(r"\*\*(T\d)\*\* [^,\n]*, over the body on its way to (\w+)", step) == [("T1", "H2"), ("T5", "H2")]
    assert "when it is marked, lay it on the wearer" in page.split("## Checks")[1]
    free = _page(ROUND).split("Mark the tapes\n")[1].split("\n#### ")[0]
    assert "over the body" not in free


def test_marks_of_a_cased_hoop_go_on_its_casing_in_the_sense_of_the_picture(plan: Plan) -> None:
    """Measured from centre front by the wearer's left: seen from above that is anticlockwise, whichever way she faces;
    the picture has the front at the bottom, towards whoever reads it."""
    step = plan_markdown(plan).split("Mark where the tapes cross the hoops\n")[1].split("\n#### ")[0]
    assert "front towards you, as in the picture, go anticlockwise: front, wearer's left" in step
    assert "away from you" not in step
    assert "mark the casing" in step
    bare = replace(plan, shape=replace(plan.shape, hoops=tuple(
        replace(hoop, casing=0.0, cased=False) for hoop in plan.shape.hoops)))
    assert "mark the casing" not in plan_markdown(bare)


def test_a_door_with_hardly_any_room_is_not_walked_straight_through() -> None:
    def passed(door: str) -> str:
        page = _page(ROUND + f"limits: {{door: {door}}}\n")
        row = next(line for line in page.splitlines() if line.startswith("| through the door |"))
        return row + page.split("**Doors.**")[1].split("\n")[0]

    wide, just, narrow = passed("95 cm"), passed("87 cm"), passed("80 cm")  # the hem is 85.9 cm across
    assert "walk straight through" in wide
    assert "as it is" in wide
    assert "only just: hold it narrow" in just
    assert "walk straight through" not in just
    assert "press the hoops narrow" in narrow
    assert "is pressed narrow to 80 cm" in narrow


def test_a_hoop_deeper_than_wide_is_not_pressed_in_a_door_that_it_passes() -> None:
    oval = ROUND.replace("hem: {", "ground_plan: {kind: oval, width_over_depth: 0.8}, hem: {")
    page = _page(oval + "limits: {door: 80 cm}\n")  # 76 cm across and 95 cm deep: 85.9 cm as a round
    assert "every hoop passes 80 cm as it is" in page
    assert "walk straight through" in page
