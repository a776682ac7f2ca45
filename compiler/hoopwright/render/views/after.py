"""The fitting sheet, and how to wear and keep the cage."""

from __future__ import annotations

from hoopwright.library.cautions import CAUTIONS
from hoopwright.plan.model import Plan
from hoopwright.render.quantities import Printer
from hoopwright.render.views.facts import Facts
from hoopwright.render.views.parts import TapeView
from hoopwright.source.record import record
from hoopwright.strength.handling import ROOM


@record(frozen=True, slots=True)
class Fitting:
    """A row for each tape: id, where it hangs, the wanted height of the hem hoop's lower edge there."""

    rows: tuple[tuple[str, str, str], ...]
    tolerance: str
    keys: tuple[str, ...]


def fitting_view(facts: Facts, tapes: dict[str, TapeView]) -> Fitting:
    """The sheet to fill in at the fitting."""
    return Fitting(
        rows=tuple((tape.id, tape.where, facts.hem_off_floor) for tape in tapes.values())
        or tuple((place, "hem hoop" if facts.hoops else "edge", facts.hem_off_floor)
                 for place in _QUARTERS),
        tolerance=facts.hem_tolerance,
        keys=tuple(tapes),
    )


_QUARTERS = ("centre front", "left side", "centre back", "right side")


@record(frozen=True, slots=True)
class Wearing:
    """Measures and cautions for the wearing sheet. ``tied``: no hoop goes all round; ``stepped_into``: every
    hoop that does, at ``least_girth``, passes the hips; ``strapped``: open hoops are closed by straps.
    ``door`` is blank when no door is stated;
    ``tight``: the hem passes it with hardly any room."""

    tied: bool
    stepped_into: bool
    strapped: bool
    least_girth: str
    hip: str
    door: str
    squeezed: bool
    tight: bool
    bends: bool
    cautions: dict[str, str]
    label: tuple[tuple[str, str], ...]
    cased: bool


WORN = ("fire", "escape", "stairs", "doors", "vehicles", "flammability", "no-approval")
"""Cautions for wearing; the cautions of the work stand with its steps."""


def worn(plan: Plan) -> tuple[str, ...]:
    """The cautions for wearing that a plan prints: cars and crowds catch hoops, and a corded petticoat has none."""
    return tuple(key for key in WORN if plan.shape.corded is None or key != "vehicles")


def wearing_view(plan: Plan, facts: Facts) -> Wearing:
    """How the cage is worn and kept."""
    spec, p = plan.spec, Printer.of(plan.spec)
    hem, hoops = plan.shape.lowest, plan.shape.hoops
    round_ = [hoop.girth for hoop in hoops if hoop.closed]
    least = min(round_, default=plan.shape.lowest_girth)
    door = spec.limits.door
    return Wearing(
        tied=bool(hoops) and not round_,
        stepped_into=least >= spec.wearer.hip,
        strapped=any(tie.kind == "strap" for tie in plan.shape.ties),
        least_girth=p.length(least),
        hip=p.length(spec.wearer.hip),
        door=p.length(door) if door else "",
        squeezed=door is not None and hem.width > door,
        tight=door is not None and door - ROOM < hem.width <= door,
        bends=any(check.code == "door" for check in plan.failing),
        cautions={key: CAUTIONS[key].text for key in WORN},
        label=(("Wearer", facts.wearer), ("Waist", facts.waist_range),
               ("Made on", ""), ("Spec", plan.source)),
        cased=plan.shape.petticoat is not None or any(hoop.cased for hoop in plan.shape.hoops),
    )
