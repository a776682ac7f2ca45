"""The whole job of a cage: every part made once, in an order that can be worked, with tools and cautions."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from types import SimpleNamespace

import pytest

from hoopwright.library.cautions import CAUTIONS
from hoopwright.library.tools import TOOLS
from hoopwright.supply.provide import provide
from hoopwright.work.actions import ACTIONS
from hoopwright.work.arrange import arrange
from hoopwright.work.conditions import CONDITIONS
from hoopwright.work.model import Task, Work

Drawn = Callable[[str], SimpleNamespace]
Worked = Callable[[str], tuple[SimpleNamespace, Work]]

VARIANTS = {
    "as it stands": (),
    "crimped": (
        ("join: lap soldered, casing: braid", "join: sleeve crimped, casing: braid"),
        ("clamps, sewing", "clamps, pliers, sewing"),
    ),
    "tape casings": (("casing: braid", "casing: twill"),),
    "bare": ((", casing: braid", ", casing: none"),),
    "tapes to the band": (("material: twill}\n  waistband", "material: twill, to: band}\n  waistband"),),
    "no band": (("  hem_band: {depth: 9 in, material: calico}\n", ""),),
    "by hand, with a helper": ((", sewing machine]", "]"), ("helper: false", "helper: true")),
    "short evenings": (("session: 2 h", "session: 45 min"),),
    "names of her own": (
        ("count: 7, spacing: by tape", "count: 7, spacing: by tape, names: [Top Steel, Top-Steel, H3]"),
    ),
}


def changed(text: str, name: str) -> str:
    for old, new in VARIANTS[name]:
        assert old in text
        text = text.replace(old, new)
    return text


@pytest.fixture(params=sorted(VARIANTS))
def job(request: pytest.FixtureRequest, worked: Worked, harbour_text: str) -> tuple[SimpleNamespace, Work]:
    return worked(changed(harbour_text, request.param))


def doing(work: Work, action: str, part: str) -> Task:
    """The one task of an action that makes a part."""
    (found,) = [task for task in work.tasks if task.action == action and part in task.parts]
    return found


def before(work: Work, task: Task) -> set[str]:
    named = {one.id: one for one in work.tasks}
    found: set[str] = set()
    left = list(task.needs)
    while left:
        name = left.pop()
        if name not in found:
            found.add(name)
            left.extend(named[name].needs)
    return found


def test_every_task_comes_after_its_needs(job: tuple[SimpleNamespace, Work]) -> None:
    _, work = job
    done: set[str] = set()
    for task in work.tasks:
        assert set(task.needs) <= done
        done.add(task.id)


def test_every_part_is_made_exactly_once(job: tuple[SimpleNamespace, Work]) -> None:
    cage, work = job
    made = Counter(
        (task.action.removesuffix("-shielded"), part) for task in work.tasks for part in task.parts
    )
    cased = {hoop.id for hoop in cage.shape.hoops if hoop.casing > 0}
    for hoop in cage.shape.hoops:
        assert made["cut-hoop", hoop.id] == made["join-hoop", hoop.id] == 1
        assert made["clip-hoop", hoop.id] + made["clamp-ends", hoop.id] == 1
        assert made["sew-hoop", hoop.id] == made["mark-hoop", hoop.id] == (1 if hoop.fixings else 0)
        assert made["cut-casings", hoop.id] == made["case-hoop", hoop.id] == (1 if hoop.id in cased else 0)
    for tape in cage.shape.tapes:
        assert all(
            made[action, tape.id] == 1 for action in ("mark-tapes", "cut-tapes", "sew-tapes", "trim-tapes")
        )
    assert all(
        made[action, "waistband"] == 1 for action in ("cut-waistband", "make-waistband", "sew-fastening")
    )
    band = 0 if cage.shape.band is None else 1
    assert made["cut-band", "band"] == made["sew-channels", "band"] == made["close-band", "band"] == band


def test_casings_and_channels_are_on_before_the_join(job: tuple[SimpleNamespace, Work]) -> None:
    cage, work = job
    for hoop in cage.shape.hoops:
        (join,) = [
            task for task in work.tasks if task.action.startswith("join-hoop") and hoop.id in task.parts
        ]
        earlier = before(work, join)
        if hoop.casing > 0:
            assert doing(work, "case-hoop", hoop.id).id in earlier
        if cage.shape.band is not None and hoop.id in (cage.shape.band.upper, cage.shape.band.lower):
            assert doing(work, "thread-channel", hoop.id).id in earlier
        assert {"try-on-1", "prove-join"} <= earlier
        assert "test-stock" in before(work, doing(work, "cut-hoop", hoop.id))


def test_nothing_is_sewn_before_the_joins_are_checked_nor_the_hem_before_it_is_level(
    job: tuple[SimpleNamespace, Work],
) -> None:
    cage, work = job
    for task in work.tasks:
        if task.action == "sew-hoop":
            assert before(work, task) & {"wash-joins", "check-joins"}
            place = cage.shape.hoop(task.parts[0]).place
            assert ("try-on-2" in before(work, task)) == (place in ("hem", "band top"))
    assert "try-on-2" in before(work, doing(work, "trim-tapes", "T1"))
    assert work.tasks[-1].id == "hang-up"


def test_actions_tools_cautions_and_conditions_are_all_known(job: tuple[SimpleNamespace, Work]) -> None:
    _, work = job
    for task in work.tasks:
        assert task.kind == ACTIONS[task.action].kind
        assert set(task.tools) <= set(TOOLS)
        assert set(task.cautions) <= set(CAUTIONS)
        assert {condition.key for condition in task.conditions} <= set(CONDITIONS)
        assert task.minutes > 0
    assert set(work.cautions) >= {key for task in work.tasks for key in task.cautions} | {"no-approval"}


def test_every_stop_has_two_measured_conditions_and_others_wait_for_it(
    job: tuple[SimpleNamespace, Work],
) -> None:
    cage, work = job
    stops = [task for task in work.tasks if task.stop]
    assert [task.id for task in stops] == ["try-on-1", "try-on-2", "try-on-3"]
    for stop in stops:
        measured = [condition for condition in stop.conditions if condition.value is not None]
        assert len(measured) >= 2
        assert all(condition.tolerance is not None and condition.mend for condition in measured)
        assert all(
            bool(CONDITIONS[condition.key].value) == (condition.value is not None)
            for condition in stop.conditions
        )
        assert any(stop.id in task.needs for task in work.tasks)
        assert stop.action.endswith("helped" if cage.spec.workshop.helper else "alone")


def test_the_sums_of_minutes_agree(job: tuple[SimpleNamespace, Work]) -> None:
    _, work = job
    assert (
        work.minutes
        == sum(task.minutes for task in work.tasks)
        == sum(session.minutes for session in work.sessions)
    )
    lengths = {task.id: task.minutes for task in work.tasks}
    assert work.critical_minutes == sum(lengths[name] for name in work.critical)
    assert work.critical_minutes <= work.minutes
    first = [task.id for task in work.tasks].index("try-on-1")
    assert work.minutes_to_first_fitting == sum(task.minutes for task in work.tasks[:first])


def test_ids_are_readable_and_stable(harbour: tuple[SimpleNamespace, Work]) -> None:
    ids = {task.id for task in harbour[1].tasks}
    assert {
        "mark-tapes",
        "cut-H1",
        "cut-H7",
        "case-H1",
        "thread-H6",
        "clip-H1",
        "join-H1",
        "sew-H1",
        "try-on-1",
    } <= ids


def test_her_own_names_stay_apart_in_ids(worked: Worked, harbour_text: str) -> None:
    _, work = worked(changed(harbour_text, "names of her own"))
    assert [task.id for task in work.tasks if task.action == "cut-hoop"][:3] == [
        "cut-Top-Steel",
        "cut-Top-Steel-2",
        "cut-H3",
    ]


def test_tapes_are_cut_before_they_are_marked_hanging(harbour: tuple[SimpleNamespace, Work]) -> None:
    _, work = harbour
    mark = doing(work, "mark-tapes", "T1")
    assert "cut-tapes" in mark.needs
    assert "cut-tapes" not in doing(work, "sew-tapes", "T1").needs
    assert mark.id in doing(work, "sew-tapes", "T1").needs


def test_a_hoop_no_tape_reaches_is_clamped_in_the_band(worked: Worked, harbour_text: str) -> None:
    _, work = worked(changed(harbour_text, "tapes to the band"))
    assert [task.parts for task in work.tasks if task.action == "clamp-ends"] == [("H7", "band")]
    assert "sew-H7" not in {task.id for task in work.tasks}


def test_the_first_stop_measures_the_hem_where_the_spec_wants_it(
    harbour: tuple[SimpleNamespace, Work],
) -> None:
    cage, work = harbour
    stop = next(task for task in work.tasks if task.id == "try-on-1")
    values = {condition.key: (condition.value, condition.tolerance) for condition in stop.conditions}
    for point in ("front", "side", "back"):
        assert values[f"hem-height-{point}"] == (pytest.approx(7 * 0.0254), pytest.approx(0.25 * 0.0254))
    assert values["waist-closed"][0] == pytest.approx(cage.spec.wearer.waist)


def test_the_door_of_the_spec_is_walked_through(harbour: tuple[SimpleNamespace, Work]) -> None:
    stop = next(task for task in harbour[1].tasks if task.id == "try-on-3")
    assert next(c.value for c in stop.conditions if c.key == "door") == pytest.approx(32 * 0.0254)


def test_sewing_by_hand_takes_longer_than_by_machine(worked: Worked, harbour_text: str) -> None:
    hand = worked(harbour_text.replace(", sewing machine]", "]"))[1]
    assert hand.minutes > worked(harbour_text)[1].minutes + 60


def test_the_proof_join_is_started_early_and_hangs_over_night(harbour: tuple[SimpleNamespace, Work]) -> None:
    _, work = harbour
    proof = next(task for task in work.tasks if task.id == "prove-join")
    first = next(task for task in work.tasks if task.id == "join-H1")
    assert proof.wait >= 8 * 60
    assert proof.session < first.session


def test_a_hoop_open_in_front_has_ends_and_no_join(drawn: Drawn, harbour_text: str) -> None:
    cage = drawn(harbour_text)
    top = cage.shape.hoops[0]
    opened = replace(cage.shape, hoops=(replace(top, plan=replace(top.plan, arc=5.0)), *cage.shape.hoops[1:]))
    supply, _ = provide(cage.spec, opened)
    assert supply is not None
    tips = next(line for line in supply.shopping if line.item == "end tips")
    assert tips.need == 3  # two ends and a tenth, rounded up
    work, _ = arrange(cage.spec, opened, supply)
    assert work is not None
    ids = {task.id for task in work.tasks}
    assert "join-H1" not in ids
    assert {"join-H2", "sew-H1", "clip-H1"} <= ids


def test_a_session_too_short_for_single_tasks_is_noted(drawn: Drawn, harbour_text: str) -> None:
    cage = drawn(harbour_text.replace("session: 2 h", "session: 30 min"))
    supply, _ = provide(cage.spec, cage.shape)
    assert supply is not None
    work, said = arrange(cage.spec, cage.shape, supply)
    assert work is not None
    assert [(note.code, note.path) for note in said] == [("session-short", ("workshop", "session"))]
    long = [task for task in work.tasks if task.minutes > 30]
    assert said[0].message.startswith(f"of {len(work.tasks)} tasks {len(long)} take longer")


def test_a_rate_of_the_workshop_changes_only_what_it_names(drawn: Drawn, harbour_text: str) -> None:
    from hoopwright.work.bench import Bench
    from hoopwright.work.cage import cage_tasks
    from hoopwright.work.rates import RATES

    cage = drawn(harbour_text)
    supply, _ = provide(cage.spec, cage.shape)
    assert supply is not None
    slow = {**RATES, "sew fixing": replace(RATES["sew fixing"], minutes=9.0)}
    usual, changed_ = (cage_tasks(Bench(cage.spec, cage.shape, supply, rates)) for rates in (RATES, slow))
    more = {b.id: b.minutes - a.minutes for a, b in zip(usual, changed_, strict=True) if a != b}
    assert more == {f"sew-H{k}": 27.0 for k in range(1, 8)}


def test_several_hands_share_the_work_each_doing_what_she_knows(worked: Worked, harbour_text: str) -> None:
    hands = "hands: [{name: Ann, skills: [cutting metal, soldering, fitting]}, {name: Bea}]"
    _, alone = worked(harbour_text)
    _, work = worked(harbour_text.replace("helper: false}", f"helper: false, {hands}}}"))
    assert work.minutes == alone.minutes
    assert {task.id for task in work.tasks} == {task.id for task in alone.tasks}
    assert len(work.sessions) < len(alone.sessions)
    assert {task.hand for task in work.tasks} == {"Ann", "Bea"}
    assert all(task.hand == "Bea" for task in work.tasks if task.setup in ("machine", "hand"))
    done: dict[str, Task] = {}
    for task in work.tasks:
        for need in (done[name] for name in task.needs):
            assert (need.session, need.start + need.minutes) <= (task.session, task.start)
        done[task.id] = task


def test_the_order_of_one_maker_says_how_good_it_is(harbour: tuple[SimpleNamespace, Work]) -> None:
    order = harbour[1].order
    assert order is not None
    assert (order.sessions, order.sessions_least) == (10, 10)
    assert order.fitting == order.fitting_least == harbour[1].tasks[
        [task.id for task in harbour[1].tasks].index("try-on-1")
    ].session
    assert order.changes_least <= order.changes <= 12


def test_the_exact_order_of_one_maker_is_proven(worked: Worked, harbour_text: str) -> None:
    _, work = worked(harbour_text.replace("helper: false}", "helper: false, order: exact}"))
    assert work.order is not None
    assert work.order.proven
    assert (work.order.way, work.order.sessions, work.order.changes) == ("exact", 10, 11)


def test_a_task_that_nobody_can_do_stops_the_plan(drawn: Drawn, harbour_text: str) -> None:
    hands = "hands: [{name: Ann, skills: [cutting metal, fitting]}]"
    cage = drawn(harbour_text.replace("helper: false}", f"helper: false, {hands}}}"))
    supply, _ = provide(cage.spec, cage.shape)
    assert supply is not None
    work, said = arrange(cage.spec, cage.shape, supply)
    assert work is None
    assert [found.code for found in said] == ["skill-missing"] * 3
    assert "`soldering`, which `prove-join` wants" in " ".join(found.message for found in said)
