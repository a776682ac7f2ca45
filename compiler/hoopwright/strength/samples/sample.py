"""A sample tested in the shop, without a spec: its stiffness, its spring limit, what it is likely made of.

Everything comes from the same formulas as the tests of a spec's materials. A sample of corded cloth
has a width and no grade; only its droop counts.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from hoopwright.library.grades import DEFAULT_SECTIONS, GRADES, grade_for
from hoopwright.library.model import BenchTest, Droop, Grade, Section, Stock, Weigh
from hoopwright.source.record import record
from hoopwright.strength.forms.droop import stiffness_from_droop
from hoopwright.strength.forms.section import properties
from hoopwright.strength.gravity import GRAVITY
from hoopwright.strength.samples.bench import DISAGREES, Evidence, evidence, spread_of

Form = Literal["strip", "wire", "cane", "tube", "rod", "corded cloth"]
FITS = 1.0 + DISAGREES
"""A measured value fits a grade's within this factor either way: our judgement."""
USUAL: dict[Form, str] = {"strip": "spring steel, tempered", "wire": "music wire", "cane": "rattan",
                          "tube": "polyethylene", "rod": "polyethylene"}
"""The grade whose density stands in while none is known."""


@record(frozen=True, slots=True)
class Sample:
    """What was tested. ``section`` and ``grade`` may be unknown; ``width`` m is that of corded cloth."""

    form: Form
    tests: tuple[BenchTest, ...]
    section: Section | None = None
    grade: str = ""
    width: float | None = None


@record(frozen=True, slots=True)
class Likely:
    """How a grade fits: ``fits`` and ``misses`` name what was measured (``stiffness``, ``spring limit``,
    ``weight``)."""

    grade: str
    fits: tuple[str, ...]
    misses: tuple[str, ...]


@record(frozen=True, slots=True)
class Report:
    """What the tests say. ``stiffness`` EI N m2 with its ``spread``; ``per_width`` N m for cloth; ``modulus``
    Pa; ``least``, ``most``, ``found`` of the elastic limit, Pa; ``metre`` kg/m as weighed and ``plain`` as
    section and grade say; ``grades`` best first; ``stock`` to stand in with, None when too little is known;
    ``clashes`` as in :class:`Evidence`; ``unweighed`` when the sample's own weight was left out."""

    stiffness: float | None
    spread: float | None
    per_width: float | None
    modulus: float | None
    least: float | None
    most: float | None
    found: float | None
    metre: float | None
    plain: float | None
    grades: tuple[Likely, ...]
    stock: Stock | None
    clashes: tuple[str, ...]
    unweighed: bool


def examine(sample: Sample) -> Report:
    """The report on a sample; ValueError for a droop that cannot be."""
    if sample.section is None:
        return _bare(sample)
    section = sample.section
    named = sample.grade or USUAL[sample.form]
    stock = Stock("sample", grade_for(named, section), section, sample.tests, form=_form(sample.form))
    _check(stock)
    tests = evidence(stock)
    likely = _likely(stock, tests, sample)
    chosen = sample.grade or next((one.grade for one in likely if not one.misses), "")
    modulus = None if tests.stiffness is None else tests.stiffness / properties(section).weak
    e = modulus if modulus is not None else stock.grade.e
    bounds = tests.limits
    plain = replace(stock, bench=()).linear_density
    return Report(
        tests.stiffness, tests.spread, None, modulus,
        None if bounds.least is None else bounds.least * e,
        None if bounds.most is None else bounds.most * e,
        None if bounds.found is None else bounds.found * e,
        None if tests.weight is None else tests.weight * plain, plain, likely,
        replace(stock, grade=grade_for(chosen, section)) if chosen else None, tests.clashes, False,
    )


def _form(form: Form) -> Literal["strip", "wire", "cane", "tube", "rod"]:
    return "strip" if form == "corded cloth" else form


def _bare(sample: Sample) -> Report:
    """A sample without a section: the droop alone, with its own weight where it was weighed."""
    weighed = [test for test in sample.tests if isinstance(test, Weigh)]
    metre = sum(test.mass for test in weighed) / sum(test.length for test in weighed) if weighed else None
    stiff = [_stiffness(test, metre or 0.0) for test in sample.tests if isinstance(test, Droop)]
    mean = sum(stiff) / len(stiff) if stiff else None
    spread = spread_of(stiff)
    wide = None if mean is None or not sample.width else mean / sample.width
    clashes = ("stiffness",) if (spread or 0.0) > DISAGREES else ()
    return Report(mean, spread, wide, None, None, None, None, metre, None, (), None, clashes,
                  bool(stiff) and metre is None)


def _stiffness(test: Droop, metre: float) -> float:
    weight, line = test.hang * GRAVITY, metre * GRAVITY
    return stiffness_from_droop(test.overhang, weight, line, test.mean_drop, test.angle)


def _check(stock: Stock) -> None:
    """ValueError for a droop that cannot be, which :func:`evidence` would leave out."""
    for test in stock.bench:
        if isinstance(test, Droop):
            _stiffness(test, stock.linear_density)


def _likely(stock: Stock, tests: Evidence, sample: Sample) -> tuple[Likely, ...]:
    """Every grade that comes in this kind of section, best first: fewest misses, most fits, then name."""
    found = [_fit(grade_for(name, stock.section), stock, tests) for name in sorted(GRADES)
             if _comes_as(name, stock.section) and (not sample.grade or name == sample.grade)]
    usual = USUAL[sample.form]

    def order(one: Likely) -> tuple[int, int, bool, str]:
        return len(one.misses), -len(one.fits), one.grade != usual, one.grade

    return tuple(sorted(found, key=order))


def _comes_as(name: str, section: Section) -> bool:
    """Music wire and cane are round; tube is of plastic; the rest comes flat and round."""
    if section.kind == "tube":
        return name == "polyethylene"
    flat = DEFAULT_SECTIONS[name].kind == "flat"
    return flat or section.kind == "round"


def _fit(grade: Grade, stock: Stock, tests: Evidence) -> Likely:
    """How the tests fit one grade; a measured stiffness counts for the strain it springs back from."""
    known = replace(stock, grade=grade)
    e = grade.e if tests.stiffness is None else tests.stiffness / properties(stock.section).weak
    measured: list[tuple[str, bool]] = []
    if tests.stiffness is not None:
        measured.append(("stiffness", _near(e / grade.e, FITS + grade.spread)))
    limits = tests.limits
    if limits.found is not None:
        measured.append(("spring limit", _near(limits.found * e / grade.elastic_limit, 1.5)))
    elif limits.least is not None or limits.most is not None:
        low, high = (limits.least or 0.0) * e, limits.most
        measured.append(("spring limit", low <= 1.5 * grade.elastic_limit
                         and (high is None or high * e >= grade.elastic_limit / 1.5)))
    if tests.weight is not None:
        weighed = tests.weight * replace(stock, bench=()).linear_density
        ratio = weighed / replace(known, bench=()).linear_density
        measured.append(("weight", _near(ratio, FITS)))
    return Likely(grade.name, tuple(what for what, fits in measured if fits),
                  tuple(what for what, fits in measured if not fits))


def _near(ratio: float, factor: float) -> bool:
    return 1 / factor <= ratio <= factor
