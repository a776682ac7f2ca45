"""What the cage can take, in plain words near the wearing sheet and in numbers in the annex."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.quantities import Printer
from hoopwright.source import quantity
from hoopwright.source.record import record
from hoopwright.strength.model import Handling, Situation

PUSHES = ((2.0, "hardly at all"), (10.0, "a finger holds it"), (40.0, "one hand holds it"),
          (100.0, "two hands hold it"))
"""Up to so many newtons, in words; more takes two people: our judgement."""
SHORT: tuple[Situation, ...] = ("chair", "door", "car", "bag")
NAMES: dict[Situation, str] = {
    "closing": "bending a hoop to its curve",
    "door": "through the door",
    "chair": "on a chair",
    "car": "in a car",
    "bag": "in a bag",
    "coil": "on its coil",
}


@record(frozen=True, slots=True)
class HandlingView:
    """``short``: (what, what happens, does it spring back, how it pushes) for the wearer; ``rows`` and
    ``seated`` for the annex, printed."""

    short: tuple[tuple[str, str, str, str], ...]
    rows: tuple[tuple[str, ...], ...]
    seated: tuple[tuple[str, ...], ...]


def push_words(force: float) -> str:
    """A push in newtons in plain words.

    >>> push_words(8.0)
    'a finger holds it'
    """
    return next((words for most, words in PUSHES if force <= most), "it takes two people to hold")


def handling_view(plan: Plan) -> HandlingView:
    """Both tables of a plan."""
    p, found = Printer.of(plan.spec), {one.situation: one for one in plan.assessment.handling}
    return HandlingView(
        short=tuple(_short(situation, found.get(situation), plan, p) for situation in SHORT),
        rows=tuple(_row(one, p) for one in plan.assessment.handling),
        seated=tuple((
            one.id, one.lies, p.length(one.back), p.length(one.front), p.length(one.sides),
            "–" if one.gap is None else p.length(one.gap), p.length(one.radius),
        ) for one in plan.assessment.seated),
    )


def _short(situation: Situation, found: Handling | None, plan: Plan, p: Printer) -> tuple[str, str, str, str]:
    name = NAMES[situation]
    if found is None:
        return name, _untouched(situation, plan, p), "nothing is bent", "–"
    return name, f"{found.part} {_happens(found, plan, p)}", _springs(found, plan), push_words(found.push)


def _untouched(situation: Situation, plan: Plan, p: Printer) -> str:
    limits = plan.spec.limits
    return {
        "chair": "no hoop is bent by sitting down",
        "door": f"every hoop passes {p.length(limits.doorway)} as it is",
        "car": f"every hoop has room in {p.length(limits.car)}",
        "bag": f"no closed hoop is wider than {p.length(limits.bag)}",
    }.get(situation, "")


def _happens(found: Handling, plan: Plan, p: Printer) -> str:
    limits = plan.spec.limits
    if found.situation == "chair":
        lies = next(one for one in plan.assessment.seated if one.id == found.part)
        return (f"lies {lies.lies}, on a seat {p.length(limits.chair.height)} high and"
                f" {p.length(limits.chair.depth)} deep")
    across = plan.shape.hoop(found.part).plan.width
    return {
        "door": f"is pressed narrow to {p.length(limits.doorway)}" if across > limits.doorway
        else f"only just passes {p.length(limits.doorway)}",
        "car": f"is drawn in to {p.length(limits.car)}",
        "bag": "is folded into three",
    }.get(found.situation, "")


def _springs(found: Handling, plan: Plan) -> str:
    if found.keeps is not None:
        return "**no**, it keeps a bend"
    missed = any(check.code == found.situation and check.result in ("fails", "marginal")
                 for check in plan.assessment.checks)
    return "yes, but with little to spare" if missed else "yes"


def _row(found: Handling, p: Printer) -> tuple[str, ...]:
    kept = "springs back" if found.keeps is None else f"keeps a curve {p.long(found.keeps)} across"
    push = f"{quantity.force_text(found.push)}, {push_words(found.push)}"
    return (NAMES[found.situation], found.part or "–", p.length(found.radius),
            quantity.stress_text(found.stress), quantity.stress_text(found.limit), push, kept)
