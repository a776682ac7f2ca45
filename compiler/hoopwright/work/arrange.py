"""The work stage: every task of the job, in working order, cut into sessions."""

from __future__ import annotations

from dataclasses import replace

from hoopwright.library.cautions import CAUTIONS
from hoopwright.shape.model import Shape
from hoopwright.source.diagnostic import Finding, error, note, warning
from hoopwright.source.printed import minutes_text
from hoopwright.spec.model import Spec
from hoopwright.strength.model import Assessment
from hoopwright.supply.model import Supply
from hoopwright.work.again import again
from hoopwright.work.bench import Bench
from hoopwright.work.builders import all_tasks
from hoopwright.work.model import Session, Task, Work
from hoopwright.work.progress import progress_findings, ticked
from hoopwright.work.rates import with_own
from hoopwright.work.schedule import Job, network
from hoopwright.work.schedule.network import longest_chain
from hoopwright.work.schedule.solver import SolverMissing
from hoopwright.work.sessions import Planned, plan_sessions, unskilled

FIRST_FITTING = "try-on-1"
_ALWAYS = ("fire", "escape", "no-approval")


def arrange(
    spec: Spec, shape: Shape, supply: Supply, found: Assessment | None = None
) -> tuple[Work | None, tuple[Finding, ...]]:
    """The whole work, for one maker or the workshop's hands. ``found`` says how it hangs: stops ask for that, or, where
    it is not known, for the shape as drawn. Says in a note when a task is longer than a
    session; stops when nobody can do a task."""
    bench = Bench(spec, shape, supply, with_own(spec.workshop.rates), found=found)
    tasks = all_tasks(bench)
    spent, lacking = bench.spent(), _lacking(tasks, spec)
    if lacking:
        return None, lacking
    chain = longest_chain(network(Job(task.id, task.minutes, task.needs) for task in tasks))
    planned, kept = _planned(tasks, spec)
    ordered, sessions = planned.tasks, planned.sessions
    ordered = ticked(ordered, spec)
    first = next(task for task in ordered if task.id == FIRST_FITTING)
    work = Work(
        tasks=ordered,
        sessions=sessions,
        minutes=sum(task.minutes for task in ordered),
        critical_minutes=chain.minutes,
        critical=chain.jobs,
        first_fitting=FIRST_FITTING,
        minutes_to_first_fitting=_until(first, sessions),
        cautions=_cautions(ordered),
        again=again(bench, tasks),
        order=planned.order,
        spent=spent,
    )
    return work, (*kept, *_session_note(ordered, spec), *progress_findings(ordered, spec))


def _planned(tasks: tuple[Task, ...], spec: Spec) -> tuple[Planned, tuple[Finding, ...]]:
    """The sessions; the built-in order, and a warning, where the solver asked for is not there."""
    try:
        return plan_sessions(tasks, spec.workshop, FIRST_FITTING), ()
    except SolverMissing:
        built_in = replace(spec.workshop, order="built-in")
        return plan_sessions(tasks, built_in, FIRST_FITTING), (
            warning("solver-missing", ("workshop", "order"),
                    "the exact order of several hands wants OR-Tools, which is not installed",
                    "install it with `pip install hoopwright[solver]`, or write `order: built-in`"),
        )


def _lacking(tasks: tuple[Task, ...], spec: Spec) -> tuple[Finding, ...]:
    """An error for every skill that tasks want and nobody has."""
    return tuple(
        error("skill-missing", ("workshop", "hands"), f"nobody knows `{skill}`, which `{task}` wants",
              f"give `{skill}` to one of the hands; hands without `skills` know everything")
        for skill, task in unskilled(tasks, spec.workshop).items()
    )


def _until(task: Task, sessions: tuple[Session, ...]) -> float:
    """Minutes that sessions have lasted when a task begins."""
    return sum(session.minutes for session in sessions if session.number < task.session) + task.start


def _cautions(tasks: tuple[Task, ...]) -> tuple[str, ...]:
    """Every caution of the job once, in the library's order, and those that always hold."""
    used = {key for task in tasks for key in task.cautions} | set(_ALWAYS)
    return tuple(key for key in CAUTIONS if key in used)


def _session_note(tasks: tuple[Task, ...], spec: Spec) -> tuple[Finding, ...]:
    long = [task for task in tasks if task.minutes > spec.workshop.session]
    if not long:
        return ()
    worst, session = max(long, key=lambda task: task.minutes), minutes_text(spec.workshop.session)
    return (
        note(
            "session-short",
            ("workshop", "session"),
            f"of {len(tasks)} tasks one takes longer than a session of {session}: `{worst.id}`, with"
            f" {minutes_text(worst.minutes)}" if len(long) == 1 else
            f"of {len(tasks)} tasks {len(long)} take longer than a session of {session}; the longest is"
            f" `{worst.id}`, with {minutes_text(worst.minutes)}",
            "it has a session of its own; plan more time for that one" if len(long) == 1 else
            "each of them has a session of its own; plan more time for those",
        ),
    )
