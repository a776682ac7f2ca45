"""What a stock can bear: from its grade and section, unless a test of a sample on the bench says otherwise.

A droop test gives the stiffness, a wrap test bounds or gives the elastic limit. A bench test
outranks the grade; where they differ by more than 30 % one of them wants another look.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from hoopwright.library.model import Stock
from hoopwright.source.diagnostic import Finding, Path, warning
from hoopwright.strength.forms.section import properties
from hoopwright.strength.model import MaterialStrength
from hoopwright.strength.samples.bench import DISAGREES, Limits, evidence

LASTING = 0.25
"""Share of the stiffness that a plastic which creeps keeps under lasting load (typical, from memory)."""


@lru_cache(maxsize=64)
def material_strength(stock: Stock) -> tuple[MaterialStrength, tuple[str, ...]]:
    """Stiffness and elastic limit taken for a stock, and what disagrees with its section and grade
    (``stiffness``, ``elastic limit``, ``weight``).

    Short-term values; see :func:`lasting`.
    """
    section, grade = properties(stock.section), stock.grade
    plain = grade.e * section.weak
    tests = evidence(stock)
    ratio = 1.0 if tests.stiffness is None else tests.stiffness / plain
    e = grade.e * ratio
    limit, stress_off = _elastic_limit(e, grade.elastic_limit, tests.limits)
    disagree = (*(("stiffness",) if abs(ratio - 1) > DISAGREES else ()),
                *(("elastic limit",) if stress_off else ()),
                *(("weight",) if tests.weight is not None and abs(tests.weight - 1) > DISAGREES else ()))
    tested = tests.stiffness is not None or tests.limits != Limits(None, None, None)
    return MaterialStrength(
        stock.name, e * section.weak, e * section.strong, grade.g * ratio * section.torsion, limit,
        "bench" if tested else "grade", tests.count, tests.spread), disagree


def lasting(stock: Stock, material: MaterialStrength) -> MaterialStrength:
    """The same under a load that stays: a plastic that creeps keeps a quarter of its stiffness."""
    if not stock.grade.creeps:
        return material
    return replace(material, ei_weak=material.ei_weak * LASTING, ei_strong=material.ei_strong * LASTING,
                   gj=material.gj * LASTING)


def modulus(stock: Stock, material: MaterialStrength) -> float:
    """Young's modulus that goes with a stiffness taken for a stock, Pa."""
    return material.ei_weak / properties(stock.section).weak


def narrowest(stock: Stock, material: MaterialStrength) -> float:
    """Diameter of the narrowest cylinder a sample springs back straight from, m: ``t (E/sigma_y - 1)``, the wrap
    test's ``sigma_y/E = t/(D + t)`` turned round."""
    return stock.section.depth * (modulus(stock, material) / material.elastic_limit - 1)


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


def contradiction(stock: Stock, what: str, path: Path) -> Finding:
    """Tests of one stock that lie more than 30 % apart."""
    return warning(
        "bench-contradictory", path,
        f"the bench tests of `{stock.name}` lie more than 30 % apart in {what}; their mean or the safer one"
        " is taken",
        "repeat the one that stands alone; the clamp must not give, and both faces of a strip are averaged",
    )
