"""What is left to do once certain jobs are done: looked up once for all part-orders that have done the same."""

from __future__ import annotations

from operator import sub
from typing import NamedTuple

from hoopwright.work.schedule.bounds import minutes_of
from hoopwright.work.schedule.desk import Desk


class Left(NamedTuple):
    """What is left once certain jobs are done: which can be next (those that rest afterwards first), the
    minutes of all of it (no job counted longer than a session) and its weights as packed, runs that it
    needs by set-up and in all, minutes that must come before the goal. ``tail``: the most sessions that must
    follow that of a job which can be next; ``last``: the jobs that so many must follow."""

    first: tuple[int, ...]
    work: float
    weights: tuple[float, ...]
    runs: tuple[int, ...]
    every_run: int
    ahead: float
    tail: int
    last: tuple[int, ...]


class Lefts:
    """What is left at one desk, by the mask of the jobs done."""

    def __init__(self, desk: Desk) -> None:
        self.desk = desk
        jobs = range(len(desk.minutes))
        ordered = sorted(jobs, key=self._eager)
        self._rank = sorted(jobs, key=ordered.__getitem__)
        first = tuple(sorted((at for at in jobs if not desk.needs[at]), key=self._rank.__getitem__))
        ahead = minutes_of(desk.net.before[desk.goal], desk.minutes) if desk.goal >= 0 else 0.0
        packed = tuple(map(sum, zip(*desk.weights, strict=True)))
        self._known = {0: self._seen(first, sum(desk.sizes), packed, ahead)}

    def __getitem__(self, done: int) -> Left:
        """What is left once jobs are done that were asked for before."""
        return self._known[done]

    def after(self, before: Left, at: int, done: int) -> Left:
        """What is left once job ``at`` is done too, and so all of ``done``."""
        known = self._known.get(done)
        if known is None:
            desk = self.desk
            place = before.first.index(at)
            first = before.first[:place] + before.first[place + 1 :]
            fresh = [then for then in desk.net.after[at] if not desk.needs[then] & ~done]
            if fresh:
                first = tuple(sorted((*first, *fresh), key=self._rank.__getitem__))
            needed = desk.goal >= 0 and desk.net.before[desk.goal] >> at & 1
            known = self._known[done] = self._seen(
                first,
                before.work - desk.sizes[at],
                tuple(map(sub, before.weights, desk.weights[at])),
                before.ahead - desk.minutes[at] if needed else before.ahead,
            )
        return known

    def _seen(self, first: tuple[int, ...], work: float, packed: tuple[float, ...], ahead: float) -> Left:
        """What is left, with what is looked up of the jobs that can be next."""
        found = self.desk.found
        rows = [found.runs[at] for at in first]
        runs = tuple(map(max, *rows)) if len(rows) > 1 else tuple(*rows)
        tails = [found.tail[at] for at in first]
        tail = max(tails, default=0)
        last = tuple([at for at, mine in zip(first, tails, strict=True) if mine == tail])
        return Left(first, work, packed, runs, sum(runs), ahead, tail, last)

    def _eager(self, at: int) -> tuple[bool, bool, int]:
        """Jobs that rest afterwards first, then those the goal waits for, then as named."""
        desk = self.desk
        needed = desk.goal < 0 or at == desk.goal or desk.net.before[desk.goal] >> at & 1
        return (desk.net.jobs[at].rest <= 0, not needed, at)
