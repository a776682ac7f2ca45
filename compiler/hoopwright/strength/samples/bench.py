"""Tests of samples on the bench, taken together: what they say, how far they lie apart, whether they clash.

A droop test gives the stiffness, a wrap test bounds or gives the elastic limit, a weighing checks section and
grade. Several tests of one material are averaged; their spread is the largest less the smallest, over the
mean.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import product

from hoopwright.library.model import BenchTest, Droop, Stock, Weigh, Wrap
from hoopwright.source.record import record
from hoopwright.strength.forms.droop import stiffness_from_droop
from hoopwright.strength.forms.setting import wrap_bound, wrap_estimate
from hoopwright.strength.gravity import GRAVITY

DISAGREES = 0.30
"""Tests further apart than this share are worth another look: our judgement."""


@record(frozen=True, slots=True)
class Limits:
    """sigma_y/E from wrap tests: ``least`` it is proven to have, ``most`` it can have, ``found`` as
    measured."""

    least: float | None
    most: float | None
    found: float | None


@record(frozen=True, slots=True)
class Evidence:
    """All tests of a stock: ``stiffness`` EI N m2 and the ``spread`` of its tests (a share; None for fewer
    than two), ``limits`` of the elastic strain, ``weight`` of a metre over what section and grade say,
    ``count`` of tests, and what clashes among them (``stiffness``, ``elastic limit``, ``weight``)."""

    stiffness: float | None
    spread: float | None
    limits: Limits
    weight: float | None
    count: int
    clashes: tuple[str, ...]


def evidence(stock: Stock) -> Evidence:
    """What the tests of a stock say together."""
    stiff, weights = _stiffnesses(stock), weight_ratios(stock)
    limits = wrap_limits(stock)
    clashes = (
        *(("stiffness",) if (spread_of(stiff) or 0.0) > DISAGREES else ()),
        *(("elastic limit",) if _wraps_clash(stock) else ()),
        *(("weight",) if (spread_of(weights) or 0.0) > DISAGREES else ()),
    )
    return Evidence(_mean(stiff), spread_of(stiff), limits, _mean(weights), len(stock.bench), clashes)


def droop_stiffnesses(tests: Sequence[BenchTest], line: float) -> tuple[float, ...]:
    """EI weak of each droop test, N m2, both faces averaged; ``line`` is the sample's own weight, N/m. A test that
    cannot be is left out."""
    found = []
    for test in tests:
        if isinstance(test, Droop):
            try:
                found.append(stiffness_from_droop(test.overhang, test.hang * GRAVITY, line, test.mean_drop, test.angle))
            except ValueError:
                continue
    return tuple(found)


def _stiffnesses(stock: Stock) -> tuple[float, ...]:
    return droop_stiffnesses(stock.bench, stock.linear_density * GRAVITY)


def weight_ratios(stock: Stock) -> tuple[float, ...]:
    """Each weighing over what section and grade say."""
    plain = replace(stock, bench=()).linear_density
    return tuple(test.mass / test.length / plain for test in stock.bench if isinstance(test, Weigh))


def wrap_limits(stock: Stock) -> Limits:
    """sigma_y/E as the wrap tests tell it."""
    least, most, found = _wraps(stock)
    return Limits(max(least, default=None), min(most, default=None), _mean(found))


def _wraps(stock: Stock) -> tuple[list[float], list[float], list[float]]:
    """(proven, refuted, measured) elastic strains."""
    depth = stock.section.depth
    tests = [test for test in stock.bench if isinstance(test, Wrap)]
    least = [wrap_bound(depth, test.around) for test in tests if test.springs_back]
    most = [wrap_bound(depth, test.around) for test in tests if not test.springs_back and test.keeps is None]
    found = [wrap_estimate(depth, test.around, test.keeps) for test in tests if test.keeps is not None]
    return least, most, found


def _wraps_clash(stock: Stock) -> bool:
    """Whether one wrap proves by more than 30 % what another rules out."""
    least, most, found = _wraps(stock)
    apart = [low / high - 1 for low, high in product((*least, *found), most)]
    apart += [low / value - 1 for low, value in product(least, found)]
    return max(apart, default=0.0) > DISAGREES or (spread_of(found) or 0.0) > DISAGREES


def spread_of(values: Sequence[float]) -> float | None:
    """Largest less smallest over the mean; None for fewer than two.

    >>> spread_of([0.9, 1.1])
    0.20000000000000007
    """
    mean = _mean(values)
    return None if mean is None or len(values) < 2 else (max(values) - min(values)) / mean


def _mean(values: Sequence[float]) -> float | None:
    return sum(values) / len(values) if values else None
