"""The work: tasks, what each waits for, and the sessions they are done in. Minutes."""

from __future__ import annotations

from typing import Literal

from hoopwright.source.record import record

TaskKind = Literal["cut", "join", "sew", "fit"]


@record(frozen=True, slots=True)
class Condition:
    """What must be true at a stop: ``key`` names it (``work/conditions.py``), ``part`` is what it is about, expected
    ``value`` and ``tolerance`` in m, and what to change if not.

    ``value`` None: looked at, not measured with a rule.
    """

    key: str
    part: str
    value: float | None
    tolerance: float | None
    mend: str


@record(frozen=True, slots=True)
class Task:
    """One task. ``action`` keys the instruction text in the renderer (``cut-hoop``, ``mark-tapes``
    ...); ``title`` names it for lists.

    ``needs`` are ids of tasks it waits for. ``parts`` are ids (H1, T2, waistband, band); ``tools``: names to lay ready
    (of alternatives, the one at hand or the first); ``cautions`` are caution keys. A ``fit`` task that is a ``stop``
    carries ``conditions``. ``wait`` minutes pass by themselves after it (glue, proof load). ``setup`` groups tasks that
    want the same place and tools. ``session`` is 1-based, 0 before scheduling; ``hand`` does it, blank for the one
    maker, from minute ``start`` of its session on. ``done``: the maker has ticked it off.
    """

    id: str
    kind: TaskKind
    action: str
    title: str
    needs: tuple[str, ...]
    minutes: float
    tools: tuple[str, ...]
    parts: tuple[str, ...]
    cautions: tuple[str, ...]
    setup: str
    session: int = 0
    wait: float = 0.0
    stop: bool = False
    conditions: tuple[Condition, ...] = ()
    done: bool = False
    hand: str = ""
    start: float = 0.0


@record(frozen=True, slots=True)
class Again:
    """A task to do again after a fitting, for some of its parts only. ``key`` says what is to be done."""

    task: str
    key: Literal["draw-up", "move-marks", "clip", "sew", "mark-hoop", "fastening", "try-on"]
    parts: tuple[str, ...]
    minutes: float


@record(frozen=True, slots=True)
class Session:
    """Tasks done in one sitting, in order, and why it ends there."""

    number: int
    tasks: tuple[str, ...]
    minutes: float
    ends: str


@record(frozen=True, slots=True)
class Order:
    """How good the order of work is: what it comes to, and what no order can better (each ``..._least``
    given that those before it are as found).

    ``way``: ``built-in`` or ``exact``. ``hands``: their names, empty for one maker. ``fitting``: the session
    of the first try-on. ``changes`` of set-up within sessions; ``lasting``: minutes all sessions last
    together, 0 for one maker. ``proven``: no order of one maker is better up to the changes, none of several
    hands up to the sessions' length.
    """

    way: str
    proven: bool
    hands: tuple[str, ...]
    sessions: int
    sessions_least: int
    fitting: int
    fitting_least: int
    changes: int
    changes_least: int
    lasting: float = 0.0
    lasting_least: float = 0.0


@record(frozen=True, slots=True)
class Spent:
    """What a rate was counted for: ``minutes`` for each ``per``, ``count`` times."""

    rate: str
    minutes: float
    per: str
    count: float
    source: str


@record(frozen=True, slots=True)
class Work:
    """Tasks in working order and their sessions. ``minutes`` in all; ``critical`` is the longest chain of needs, which
    takes ``critical_minutes``; ``first_fitting`` the task of the first try-on, after ``minutes_to_first_fitting`` of
    work; ``cautions`` of the whole job. ``again``: what the last fitting asks to do again; ``order``: how good the
    order is; ``spent``: what each rate was counted for."""

    tasks: tuple[Task, ...]
    sessions: tuple[Session, ...]
    minutes: float
    critical_minutes: float
    critical: tuple[str, ...]
    first_fitting: str
    minutes_to_first_fitting: float
    cautions: tuple[str, ...]
    again: tuple[Again, ...] = ()
    order: Order = Order("built-in", False, (), 0, 0, 0, 0, 0, 0)
    spent: tuple[Spent, ...] = ()

    @property
    def minutes_left(self) -> float:
        """Minutes of what is not done yet, and of what is to do again."""
        open_ = sum(task.minutes for task in self.tasks if not task.done)
        return open_ + sum(item.minutes for item in self.again)
