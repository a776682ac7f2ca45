"""Checks of what a cage must stand apart from being worn, each with what to change and how much it helps."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from hoopwright.library.grades import grade_for
from hoopwright.library.model import Stock
from hoopwright.shape.judge import judged
from hoopwright.source.record import record
from hoopwright.spec.check import Check, Result
from hoopwright.strength.handling import handled
from hoopwright.strength.material import material_strength
from hoopwright.strength.mending.change import A_FIFTH_OFF, of_section, scaled
from hoopwright.strength.method import Problem
from hoopwright.strength.model import Situation

SPRING = "spring steel, tempered"
_SHARE = "against a share of the elastic limit (our judgement)"


@record(frozen=True, slots=True)
class Kind:
    """Words of a situation's check: what it says, where its number comes from, what else one can do."""

    says: str
    source: str
    otherwise: str
    nothing: str
    soft: bool = False


KINDS: Mapping[Situation, Kind] = MappingProxyType({
    "chair": Kind(
        "the hoops spring back after sitting down on them",
        "where hoops meet seat, thighs and floor, their whole curvature times E t/2 (derived, our model of"
        f" sitting) {_SHARE}",
        "lift the hoops behind before sitting down, or sit on a stool", "no closed hoop comes near the seat"),
    "car": Kind(
        "the hoops spring back after being drawn in on the back seat of a car",
        f"hoop between parallel walls as an elastica, flat contact included (derived) {_SHARE}",
        "take the cage off for the drive", "", soft=True),
    "bag": Kind(
        "hoops wider than the bag spring back after being folded into three",
        f"folded into three rounds of a third of the radius (common practice), E t/2 times 3/R {_SHARE}",
        "carry it flat, or in a wider bag (limits.bag)", "no closed hoop is wider than the bag", soft=True),
    "coil": Kind(
        "the stock springs back straight from the coil it is sold on",
        f"curvature of the coil times E t/2 {_SHARE}",
        "ask for a wider coil; a curl left by it does no harm when each hoop is closed the way it curls",
        "it is sold in no packs, or how is not stated", soft=True),
})
"""The checks of handling apart from closing and the door, by situation."""


def handling_checks(problem: Problem) -> tuple[Check, ...]:
    """A check for each situation of :data:`KINDS`."""
    return tuple(_check(situation, kind, problem) for situation, kind in KINDS.items())


def _check(code: Situation, kind: Kind, problem: Problem) -> Check:
    found = handled(code, problem)
    limit = problem.spec.limits.stress_door * problem.material.elastic_limit
    if found is None:
        result: Result = "not assessed" if code == "coil" else "holds"
        words = kind.nothing if code == "coil" else ""
        return Check(code, "", None, limit, "stress", "at most", result, words, kind.source, kind.says)
    used = found.stress / limit
    remedy = "; ".join(filter(None, (_changes(code, problem, used), kind.otherwise))) if used > 1 else ""
    soft = kind.soft or problem.stock.form == "cane"
    return judged(code, found.part, found.stress, limit, "stress", "at most", says=kind.says,
                  source=kind.source, remedy=remedy, soft=soft)


def _changes(code: Situation, problem: Problem, used: float) -> str:
    """Changes that were computed and mend it, with how much they help."""
    said = []
    for words, stock in _stocks(problem.stock):
        changed = replace(problem, stock=stock, material=material_strength(stock)[0])
        found = handled(code, changed)
        limit = problem.spec.limits.stress_door * changed.material.elastic_limit
        now = found.stress / limit if found is not None else 0.0
        if now <= 1.0:
            said.append(f"{words} (from {used * 100:.0f} % to {now * 100:.0f} % of what is allowed)")
    return ", or ".join(said)


def _stocks(stock: Stock) -> tuple[tuple[str, Stock], ...]:
    """The same stock a fifth thinner, and in spring steel, untested, where it is a softer metal."""
    section = stock.section
    changes = [(f"take a {stock.form} a fifth thinner", of_section(stock, scaled(section, 1.0, A_FIFTH_OFF)))]
    if stock.grade.metal and not stock.grade.hard and section.kind != "tube":
        spring = grade_for(SPRING, section)
        changes.append((f"take {SPRING}, of the same section", replace(stock, grade=spring, bench=())))
    return tuple(changes)
