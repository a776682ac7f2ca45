"""The fewest runs of one set-up in which the jobs of one session can be done."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from hoopwright.work.schedule.network import Network


def fewest_runs(net: Network, setups: Sequence[int], jobs: Iterable[int]) -> tuple[tuple[int, ...], ...]:
    """The jobs in runs, as few as there can be; of equals the one that begins with the first named.

    Jobs that wait for one another through jobs not among them are kept in order too. Doing all that can be
    done with a set-up before it is changed never costs a run, so a breadth-first search over the set-up
    changed to is exact.
    """
    wanted = sorted(jobs)
    mask = sum(1 << at for at in wanted)
    reached: dict[int, tuple[tuple[int, ...], ...]] = {0: ()}
    front = [0]
    while mask not in reached:
        fresh: list[int] = []
        for done in front:
            ready = [at for at in wanted if not done >> at & 1 and not net.before[at] & mask & ~done]
            for kind in dict.fromkeys(setups[at] for at in ready):
                run = _run(net, setups, wanted, mask, done, kind)
                then = done | sum(1 << at for at in run)
                if then not in reached:
                    reached[then] = (*reached[done], run)
                    fresh.append(then)
        front = fresh
    return reached[mask]


def _run(
    net: Network, setups: Sequence[int], wanted: Sequence[int], mask: int, done: int, kind: int
) -> tuple[int, ...]:
    """Everything of one set-up that can be done without changing it."""
    run: list[int] = []
    while True:
        more = [at for at in wanted
                if setups[at] == kind and not done >> at & 1 and not net.before[at] & mask & ~done]
        if not more:
            return tuple(run)
        run.extend(more)
        done |= sum(1 << at for at in more)


def reason(net: Network, setups: Sequence[int], jobs: Iterable[int]) -> tuple[int, ...]:
    """A smallest part of the jobs that needs as many runs of its set-ups as all of them."""
    left = sorted(jobs)
    runs = len(fewest_runs(net, setups, left))
    for at in list(left):
        rest = [other for other in left if other != at]
        if len(fewest_runs(net, setups, rest)) == runs:
            left = rest
    return tuple(left)
