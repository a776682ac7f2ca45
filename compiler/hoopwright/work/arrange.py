"""The work stage: every task of the job, in working order, cut into sessions."""

from __future__ import annotations

from hoopwright.library.cautions import CAUTIONS
from hoopwright.shape.model import Shape
from hoopwright.source.diagnostic import Finding, note
from hoopwright.source.printed import minutes_text
from hoopwright.spec.model import Spec
from hoopwright.supply.model import Supply
from hoopwright.work.again import again
from hoopwright.work.bench import Bench
from hoopwright.work.builders import all_tasks
from hoopwright.work.graph import longest_chain, task_graph
from hoopwright.work.model import Task, Work
from hoopwright.work.progress import progress_findings, ticked
from hoopwright.work.sessions import plan_sessions

FIRST_FITTING = "try-on-1"
_ALWAYS = ("fire", "escape", "no-approval")


def arrange(spec: Spec, shape: Shape, supply: Supply) -> tuple[Work | None, tuple[Finding, ...]]:
    """The whole work for one maker. Says in a note when a task is longer than a session."""
    bench = Bench(spec, shape, supply)
    tasks = all_tasks(bench)
    chain = longest_chain(task_graph(tasks))
    ordered, sessions = plan_sessions(tasks, spec.workshop.session)
    ordered = ticked(ordered, spec)
    first = next(index for index, task in enumerate(ordered) if task.id == FIRST_FITTING)
    work = Work(
        tasks=ordered,
        sessions=sessions,
        minutes=sum(task.minutes for task in ordered),
        critical_minutes=chain.minutes,
        critical=chain.tasks,
        first_fitting=FIRST_FITTING,
        minutes_to_first_fitting=sum(task.minutes for task in ordered[:first]),
        cautions=_cautions(ordered),
        again=again(bench, tasks),
    )
    return work, (*_session_note(ordered, spec), *progress_findings(ordered, spec))


def _cautions(tasks: tuple[Task, ...]) -> tuple[str, ...]:
    """Every caution of the job once, in the library's order, and those that always hold."""
    used = {key for task in tasks for key in task.cautions} | set(_ALWAYS)
    return tuple(key for key in CAUTIONS if key in used)


def _session_note(tasks: tuple[Task, ...], spec: Spec) -> tuple[Finding, ...]:
    long = [task for task in tasks if task.minutes > spec.workshop.session]
    if not long:
        return ()
    worst = max(long, key=lambda task: task.minutes)
    return (
        note(
            "session-short",
            ("workshop", "session"),
            f"{len(long)} of {len(tasks)} tasks take longer than a session of "
            f"{minutes_text(spec.workshop.session)}; the longest is `{worst.id}` with "
            f"{minutes_text(worst.minutes)}",
            "each of them has a session of its own; plan more time for it",
        ),
    )
