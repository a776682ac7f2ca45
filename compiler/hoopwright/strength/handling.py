"""What a cage must stand apart from being worn: closing, doors, chairs, cars, bags, the coil it came on.

For each the tightest radius, the stress there from the whole curvature (E t/2 times it), and the push the
hoops give back. What passes the elastic limit keeps a curve, by :func:`setting.kept_ratio`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace
from math import pi
from types import MappingProxyType

from hoopwright.library.coils import usual_coil
from hoopwright.library.model import Pack, Stock
from hoopwright.shape.model import Hoop
from hoopwright.strength import seat
from hoopwright.strength.bows import bowed
from hoopwright.strength.formed import curved
from hoopwright.strength.forms.doorway import squeezed
from hoopwright.strength.forms.setting import kept_ratio
from hoopwright.strength.method import Problem
from hoopwright.strength.model import Handling, Seated, Situation

ROOM = 0.0254
"""With less room in a door than this, both sides together, a hoop is pressed narrow all the same, m: our judgement."""
PALM = 0.10
"""Width of a hand that bends an end round, m: our figure."""


def radius_of(hoop: Hoop) -> float:
    """Radius of the round a hoop's line would make if it were even, m; an open one is a piece of it."""
    return hoop.girth / (2 * pi * (hoop.end - hoop.start))


def handlings(problem: Problem, among: Iterable[str] | None = None) -> tuple[Handling, ...]:
    """The worst hoop of every situation, in the order in which a cage meets them; ``among``: only of these."""
    parts = None if among is None else frozenset(among)
    return tuple(found for situation in SITUATIONS
                 if (found := handled(situation, problem, parts)) is not None)


def handled(situation: Situation, problem: Problem, among: frozenset[str] | None = None) -> Handling | None:
    """The hoop that suffers most in a situation, with the push of the stiffest; None when there is none."""
    if problem.shape.wheel is not None and situation not in ("closing", "coil"):
        return None
    found = [one for one in SITUATIONS[situation](problem) if among is None or one.part in among]
    if not found:
        return None
    worst = max(found, key=lambda one: (one.stress, one.part))
    return replace(worst, push=max(one.push for one in found))


def seated(problem: Problem) -> tuple[Seated, ...]:
    """Where each hoop lies when the wearer sits."""
    rows = []
    for hoop, lies in _places(problem):
        tight = 1 / lies.curvature
        if lies.gap is not None:
            tight = squeezed(lies.gap / (2 * lies.radius)).least_radius * lies.radius
        rows.append(Seated(hoop.id, lies.lies, lies.back, lies.front, lies.sides, lies.gap, tight))
    return tuple(rows)


def _made(problem: Problem, situation: Situation, part: str, radius: float, push: float) -> Handling:
    """The stress of a bend to ``radius`` m, and the diameter of the curve it leaves."""
    stress, limit = curved(problem, 1 / radius), problem.material.elastic_limit
    keeps = None
    if stress > limit:
        ratio = kept_ratio(limit / (2 * stress))
        keeps = 2 * radius / max(ratio, 1e-9)
    return Handling(situation, part, radius, stress, limit, push, keeps)


def _closed(problem: Problem) -> Iterator[Handling]:
    """Every hoop bent into its round, a half hoop into the bow that its chord holds."""
    bends = {part: curvature for curvature, part in bowed(problem.shape)}
    for hoop in problem.shape.hoops:
        radius = 1 / bends[hoop.id] if bends.get(hoop.id) else radius_of(hoop)
        yield _made(problem, "closing", hoop.id, radius, problem.material.ei_weak / radius / PALM)


def _between(problem: Problem, situation: Situation, gap: float) -> Iterator[Handling]:
    """Every hoop that is wider than the gap, squeezed between two walls."""
    for hoop in problem.shape.hoops:
        radius = radius_of(hoop)
        if gap >= 2 * radius:
            continue
        found = squeezed(gap / (2 * radius))
        yield _made(problem, situation, hoop.id, found.least_radius * radius,
                    found.force * problem.material.ei_weak / radius**2)


def _door(problem: Problem) -> Iterator[Handling]:
    """What is deeper than wide goes through as it hangs, but for the little room that making it takes up."""
    gap = problem.spec.limits.doorway
    wide = {hoop.id for hoop in problem.shape.hoops if hoop.plan.width + ROOM > gap}
    return (found for found in _between(problem, "door", gap) if found.part in wide)


def _car(problem: Problem) -> Iterator[Handling]:
    return _between(problem, "car", problem.spec.limits.car)


def _chair(problem: Problem) -> Iterator[Handling]:
    weak, strong, twist = problem.material.ei_weak, problem.material.ei_strong, problem.material.gj
    for hoop, lies in _places(problem):
        radius = radius_of(hoop)
        if lies.gap is not None:
            found = squeezed(lies.gap / (2 * radius))
            yield _made(problem, "chair", hoop.id, found.least_radius * radius,
                        found.force * weak / radius**2)
        elif lies.saddle > 0.0:
            push = 72 * strong * twist / (strong + 4 * twist) * lies.saddle / radius**3
            yield _made(problem, "chair", hoop.id, 1 / lies.curvature, push)


def _bag(problem: Problem) -> Iterator[Handling]:
    """Hoops too wide for the bag folded into three rounds of a third of their radius.

    The fold is held shut against the moment A (3/R - 1/R) by a strap across it, an arm of R/3: 6 A/R^2.
    """
    for hoop in problem.shape.hoops:
        radius = radius_of(hoop)
        if hoop.closed and 2 * radius > problem.spec.limits.bag:
            yield _made(problem, "bag", hoop.id, radius / 3, 6 * problem.material.ei_weak / radius**2)


def _coil(problem: Problem) -> Iterator[Handling]:
    """Wound to its coil; the end presses out with the moment 2A/D over half the coil: 4 A/D^2."""
    depth = problem.stock.section.depth
    for pack in packs_of(problem.stock):
        across = (usual_coil(pack.length) if pack.coil is None else pack.coil) + depth
        yield _made(problem, "coil", "", across / 2, 4 * problem.material.ei_weak / across**2)


def packs_of(stock: Stock) -> tuple[Pack, ...]:
    """The packs it is sold in."""
    return tuple(offer for offer in stock.sold if isinstance(offer, Pack))


def _places(problem: Problem) -> Iterator[tuple[Hoop, seat.Place]]:
    """Every closed hoop and where it lies on the chair; the ends of an open one let it swing up unbent."""
    spec, shape = problem.spec, problem.shape
    sits, chair = spec.wearer.sitting, spec.limits.chair
    waist = shape.body[0].depth if shape.body else 0.0
    sitter = seat.Sitter(chair.height, chair.depth, sits.waist, sits.thigh, sits.knee, waist)
    for hoop in shape.hoops:
        if hoop.closed:
            yield hoop, seat.place(sitter, radius_of(hoop), hoop.below_waist, _front_tape(problem, hoop),
                                   problem.stock.section.height / 2)


def _front_tape(problem: Problem, hoop: Hoop) -> float:
    """Length down to a hoop of the tape nearest centre front, m; without tapes its own depth and radius."""
    found = [(_from_front(tape.waist_fraction), mark.at) for tape in problem.shape.tapes
             for mark in tape.marks if mark.hoop == hoop.id]
    return min(found)[1] if found else hoop.below_waist + radius_of(hoop)


def _from_front(fraction: float) -> float:
    return min(fraction % 1.0, 1.0 - fraction % 1.0)


SITUATIONS: Mapping[Situation, Callable[[Problem], Iterator[Handling]]] = MappingProxyType({
    "closing": _closed,
    "door": _door,
    "chair": _chair,
    "car": _car,
    "bag": _bag,
    "coil": _coil,
})
"""Every situation, with what it does to the hoops."""
