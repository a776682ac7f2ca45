"""What a stock can bear: from its grade and section, unless a test of a sample on the bench says otherwise.

A droop test gives the stiffness, a wrap test bounds or gives the elastic limit. A bench test
outranks the grade; where they differ by more than 30 % one of them wants another look.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from hoopwright.library.model import Droop, Stock, Wrap
from hoopwright.source.diagnostic import Finding, Path, warning
from hoopwright.strength.droop import GRAVITY, stiffness_from_droop
from hoopwright.strength.model import MaterialStrength
from hoopwright.strength.section import properties
from hoopwright.strength.setting import wrap_bound, wrap_estimate

DISAGREES = 0.30
LASTING = 0.25
"""Share of the stiffness that a plastic which creeps keeps under lasting load (typical, from memory)."""


@dataclass(frozen=True, slots=True)
class Limits:
    """sigma_y/E from wrap tests: ``least`` it is proven to have, ``most`` it can have, ``found`` as
    measured."""

    least: float | None
    most: float | None
    found: float | None


@lru_cache(maxsize=64)
def material_strength(stock: Stock) -> tuple[MaterialStrength, tuple[str, ...]]:
    """Stiffness and elastic limit taken for a stock, and what disagrees (``stiffness``, ``elastic limit``).

    Short-term values; see :func:`lasting`.
    """
    section, grade = properties(stock.section), stock.grade
    plain = grade.e * section.weak
    bench = bench_stiffness(stock)
    ratio = 1.0 if bench is None else bench / plain
    e = grade.e * ratio
    limits = wrap_limits(stock)
    limit, stress_off = _elastic_limit(e, grade.elastic_limit, limits)
    disagree = (*(("stiffness",) if abs(ratio - 1) > DISAGREES else ()),
                *(("elastic limit",) if stress_off else ()))
    tested = bench is not None or limits != Limits(None, None, None)
    return MaterialStrength(stock.name, e * section.weak, e * section.strong, grade.g * ratio *
    section.torsion, limit, "bench" if tested else "grade"), disagree


def lasting(stock: Stock, material: MaterialStrength) -> MaterialStrength:
    """The same under a load that stays: a plastic that creeps keeps a quarter of its stiffness."""
    if not stock.grade.creeps:
        return material
    return MaterialStrength(material.name, material.ei_weak * LASTING, material.ei_strong * LASTING,
                            material.gj * LASTING, material.elastic_limit, material.origin)


def modulus(stock: Stock, material: MaterialStrength) -> float:
    """Young's modulus that goes with a stiffness taken for a stock, Pa."""
    return material.ei_weak / properties(stock.section).weak


def bench_stiffness(stock: Stock) -> float | None:
    """EI weak from the droop tests, N m2: their mean (turn the strip over and average); None without one."""
    own = stock.linear_density * GRAVITY
    found = [stiffness_from_droop(test.overhang, test.hang * GRAVITY, own, test.drop)
             for test in stock.bench if isinstance(test, Droop)]
    return sum(found) / len(found) if found else None


def wrap_limits(stock: Stock) -> Limits:
    """sigma_y/E as the wrap tests tell it."""
    depth = stock.section.depth
    tests = [test for test in stock.bench if isinstance(test, Wrap)]
    least = [wrap_bound(depth, test.around) for test in tests if test.springs_back]
    most = [wrap_bound(depth, test.around) for test in tests if not test.springs_back and test.keeps is None]
    found = [wrap_estimate(depth, test.around, test.keeps) for test in tests if test.keeps is not None]
    return Limits(max(least, default=None), min(most, default=None), sum(found) / len(found) if found else
    None)


def _elastic_limit(e: float, grade: float, limits: Limits) -> tuple[float, bool]:
    """The elastic limit, Pa, and whether bench and grade differ by more than 30 %.

    A measured value is taken as it is; a proof on one side moves the grade's value only where it
    contradicts it.
    """
    limit = grade if limits.found is None else limits.found * e
    if limits.least is not None:
        limit = max(limit, limits.least * e)
    if limits.most is not None:
        limit = min(limit, limits.most * e)
    return limit, abs(limit / grade - 1) > DISAGREES


def disagreement(stock: Stock, what: str, path: Path) -> Finding:
    """A bench test and a grade that differ by more than 30 %."""
    return warning(
        "bench-disagrees", path,
        f"bench test and grade of `{stock.name}` differ by more than 30 % in {what}; the bench test is taken",
        "measure again, on a second sample and with the strip turned over; check the section and the grade",
    )
