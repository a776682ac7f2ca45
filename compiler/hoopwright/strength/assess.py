"""The strength stage: a spec and its shape in, an assessment out."""

from __future__ import annotations

from hoopwright.shape.model import Shape
from hoopwright.source.diagnostic import Finding
from hoopwright.spec.model import Spec
from hoopwright.strength.checks import strength_checks
from hoopwright.strength.families.corded import assess_corded
from hoopwright.strength.families.over import skirt_worn
from hoopwright.strength.handling import handlings, seated
from hoopwright.strength.material import contradiction, disagreement, material_strength
from hoopwright.strength.method import Method
from hoopwright.strength.methods import METHODS, kind_of
from hoopwright.strength.model import Assessment
from hoopwright.strength.problem import pose
from hoopwright.strength.samples.bench import evidence
from hoopwright.strength.verdict import verdict
from hoopwright.strength.weight import weights


def assess(
    spec: Spec, shape: Shape, method: Method | None = None, *, advice: bool = True
) -> tuple[Assessment | None, tuple[Finding, ...]]:
    """What the design does under its load, judged.

    ``method`` solves it in place of the one of its kind. Without ``advice`` no changed design is solved to say what
    would mend a check that fails: the usual words stand there.
    """
    if shape.corded is not None:
        return assess_corded(spec, shape)
    problem, known = pose(spec, shape), METHODS[kind_of(spec)]
    solution = (method or known.solve)(problem)
    mass = weights(spec, shape)
    checks = strength_checks(problem, solution, mass, known.trial if advice else None)
    word, reasons = verdict(checks)
    carried = mass.total + sum(layer.mass for layer in spec.load)
    return Assessment(
        solution.method, checks, (*solution.hoops, *solution.spokes), solution.tapes, solution.buckling, solution.swing,
        solution.waist_pull, carried, mass, (problem.material,), word, reasons, solution.lines,
        tuple(one for one in handlings(problem) if one.situation not in solution.unassessed),
        () if "chair" in solution.unassessed else seated(problem), solution.ties,
        wheel=solution.wheel, sides=solution.sides, body_push=solution.body_push,
        skirt=skirt_worn(problem, solution),
    ), _findings(spec)


def _findings(spec: Spec) -> tuple[Finding, ...]:
    stock = spec.build.hoops.material
    _, disagree = material_strength(stock)
    path = ("materials", stock.name, "bench")
    clashes = evidence(stock).clashes
    return (*(contradiction(stock, what, path) for what in clashes),
            *(disagreement(stock, what, path) for what in disagree if what not in clashes))
