"""Work on many items by several processes at once: handed out one by one, given back in the items' own order.

A worker holds one item at a time, so that one that crashes or is killed takes nothing with it but that item;
another takes its place. Workers only compute: what is printed and written is left to the process that asked.
They start afresh (nothing is forked), end when that process does, however it ends, and leave an interrupt
from the keyboard to it.
"""

from __future__ import annotations

import os
import signal
from collections import deque
from collections.abc import Callable, Generator, Sequence
from contextlib import suppress
from multiprocessing import get_context, resource_tracker
from multiprocessing.connection import Connection, wait
from multiprocessing.process import BaseProcess
from typing import Any, TypeVar

from hoopwright.cli.defect import Defect, attempt, caught, ended
from hoopwright.cli.interrupts import held_back
from hoopwright.cli.memory import clear_away, look_seldom
from hoopwright.source.record import record

S = TypeVar("S")
T = TypeVar("T")

AHEAD = 4
"""Results for each worker that may wait for an earlier one's turn: so many are held in memory, and no more."""


def several(work: Callable[[S], T], items: Sequence[S], jobs: int) -> Generator[T | Defect]:
    """The results of ``work`` on each item, in order, found by ``jobs`` processes.

    ``work``, items and results travel between processes, so they must be picklable. Where an item brought
    out a defect, that stands in the place of its result. Closing the generator ends the workers.
    """
    crew = _Crew(work, jobs)
    waiting = deque(range(len(items)))
    done: dict[int, Any] = {}
    try:
        for turn in range(len(items)):
            while True:
                done |= crew.finished()
                while waiting and waiting[0] < turn + AHEAD * jobs and crew.has_room:
                    if crew.give(waiting[0], items[waiting[0]]):
                        waiting.popleft()
                if turn not in done and not crew.busy:  # no process may be started
                    done[waiting.popleft()] = attempt(work, items[turn])
                if turn in done:
                    break
                crew.rest()
            yield done.pop(turn)
    finally:
        crew.dismiss()


@record(frozen=True, slots=True)
class _Worker:
    """A process, the end it is told through, and the end it answers at."""

    process: BaseProcess
    tell: Connection
    hear: Connection


class _Crew:
    """The workers: ``busy`` ones by the number of their item, ``free`` ones; never more than ``most``."""

    def __init__(self, work: Callable[[Any], Any], most: int) -> None:
        self.work, self.most = work, most
        self.busy: dict[int, _Worker] = {}
        self.free: list[_Worker] = []

    @property
    def has_room(self) -> bool:
        """Whether one more item can be handed out."""
        return len(self.busy) < self.most

    def give(self, at: int, item: Any) -> bool:
        """Hand an item to a free worker, or to a new one; a free one that has ended is passed over. False where the
        system starts no more processes: from then on those there are do the work, and the asker itself where there
        are none."""
        while self.free:
            worker = self.free.pop()
            if _told(worker, item):
                self.busy[at] = worker
                return True
            _dismissed(worker)
        try:
            self.busy[at] = worker = _started(self.work)
        except OSError:
            self.most = len(self.busy)
            return False
        _told(worker, item)  # one that ended already is found out when its answer is fetched
        return True

    def finished(self) -> dict[int, Any]:
        """Answers that are there, by number; a worker that ended gives a defect for its item."""
        found: dict[int, Any] = {}
        ready = wait([worker.hear for worker in self.busy.values()], timeout=0)
        for at, worker in [(at, worker) for at, worker in self.busy.items() if worker.hear in ready]:
            del self.busy[at]
            try:
                found[at] = worker.hear.recv()
                self.free.append(worker)
            except (EOFError, OSError):
                found[at] = ended(_dismissed(worker))
        return found

    def rest(self) -> None:
        """Wait until an answer is there."""
        wait([worker.hear for worker in self.busy.values()])

    def dismiss(self) -> None:
        """End every worker: the free ones are told to, the busy ones are stopped."""
        for worker in self.busy.values():
            worker.process.kill()
        for worker in (*self.free, *self.busy.values()):
            _dismissed(worker)
        self.free, self.busy = [], {}


def _started(work: Callable[[Any], Any]) -> _Worker:
    context = get_context("spawn")
    asked, tell = context.Pipe(duplex=False)
    hear, answer = context.Pipe(duplex=False)
    process = context.Process(target=_serve, args=(work, asked, answer), daemon=True)
    try:
        resource_tracker.ensure_running()  # when it starts it lets interrupts through again, so it is started before
        with held_back():
            process.start()
    except OSError:  # no more processes may be started
        tell.close()
        hear.close()
        raise
    finally:
        asked.close()
        answer.close()
    return _Worker(process, tell, hear)


def _told(worker: _Worker, item: Any) -> bool:
    try:
        worker.tell.send(item)
    except OSError:
        return False
    return True


def _dismissed(worker: _Worker) -> int | None:
    """End a worker by hanging up on it; returns its exit code."""
    worker.tell.close()
    worker.hear.close()
    worker.process.join()
    return worker.process.exitcode


def _serve(work: Callable[[Any], Any], asked: Connection, answer: Connection) -> None:
    """A worker's whole life: items in, results out, until the other side hangs up."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    look_seldom()
    with suppress(EOFError, OSError):
        while True:
            result = attempt(work, asked.recv())
            clear_away()
            try:
                answer.send(result)
            except OSError:
                raise
            except Exception as problem:  # a result that cannot travel
                answer.send(caught(problem))


def usable() -> int:
    """Processors that this process may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1
