"""The annex: checks with numbers and sources, strength, assumed values, findings."""

from __future__ import annotations

from hoopwright.library.cautions import CAUTIONS
from hoopwright.plan.model import Plan
from hoopwright.plan.naming import named
from hoopwright.render.quantities import Printer, assumed_text
from hoopwright.render.words import closed, ids_text, plain_key, sentence
from hoopwright.source import quantity
from hoopwright.source.record import record
from hoopwright.spec.check import Check
from hoopwright.spec.family import family_of
from hoopwright.strength.model import MaterialStrength

REMEDY = {"fails": "To mend it:", "marginal": "To know:", "not assessed": "Why not:", "holds": ""}
"""How the remedy of a check is led in, by its result."""
MEANT = {
    "fails": "change it before you make anything",
    "marginal": "let pass, though close to its limit or past it; what to know stands beside it",
    "not assessed": "no number can be given here; why stands beside it",
    "holds": "within its limit, and nothing to do",
}
"""What a result asks of the maker."""


@record(frozen=True, slots=True)
class CheckRow:
    """One judgement with everything known about it. ``where`` a marginal value lies; ``label`` leads in the remedy."""

    code: str
    part: str
    says: str
    value: str
    limit: str
    result: str
    where: str
    label: str
    remedy: str
    source: str


@record(frozen=True, slots=True)
class Annex:
    """Everything for those who want the numbers. ``results`` are those that the checks have, with what they mean."""

    checks: tuple[CheckRow, ...]
    results: tuple[tuple[str, str], ...]
    method: str
    hoops: tuple[tuple[str, ...], ...]
    tapes: tuple[tuple[str, ...], tuple[tuple[str, ...], ...]]
    materials: tuple[tuple[str, ...], ...]
    corded: tuple[tuple[str, str], ...]
    weights: tuple[tuple[str, str], ...]
    totals: tuple[tuple[str, str], ...]
    assumed: tuple[tuple[str, str, str], ...]
    findings: tuple[tuple[str, str, str, str], ...]
    cautions: tuple[tuple[str, str, str], ...]


def annex_view(plan: Plan, general: tuple[str, ...]) -> Annex:
    """The annex of a plan. ``general`` are the caution keys printed outside the steps."""
    p = Printer.of(plan.spec)
    return Annex(
        checks=tuple(
            CheckRow(check.code, named(plan.spec, check.part), sentence(check.says), p.check_value(check),
                     p.check_limit(check), check.result, _where(check), REMEDY[check.result], closed(check.remedy),
                     check.source)
            for check in plan.checks),
        results=tuple((result, MEANT[result]) for result in dict.fromkeys(check.result for check in plan.checks)),
        method=plan.assessment.method,
        hoops=_hoops(plan, p),
        tapes=_tapes(plan),
        materials=_materials(plan),
        corded=_corded(plan, p),
        weights=_weights(plan, p),
        totals=_totals(plan, p),
        assumed=tuple((value.path, assumed_text(value, plan.spec.units), value.reason)
                      for value in plan.spec.assumed),
        findings=tuple((found.severity.value, found.code,
                        f"line {found.span.line}" if found.span else "", _said(found.message, found.help))
                       for found in plan.findings),
        cautions=_cautions(plan, general),
    )


def _where(check: Check) -> str:
    """On which side of its limit what is marginal lies."""
    return "" if check.result != "marginal" else "past its limit" if check.beyond else "close to its limit"


def _said(message: str, help: str) -> str:
    return " ".join(filter(None, (sentence(message), sentence(help))))


def _hoops(plan: Plan, p: Printer) -> tuple[tuple[str, ...], ...]:
    return tuple((
        hoop.id, f"{hoop.load:.2f} N/m", quantity.force_text(hoop.thrust), *(
            p.by(value, "length") for value in (hoop.sag, hoop.inward, hoop.outward)),
        p.by(hoop.stress, "stress"),
    ) for hoop in plan.assessment.hoops)


def _tapes(plan: Plan) -> tuple[tuple[str, ...], tuple[tuple[str, ...], ...]]:
    """(heads, rows): tapes whose printed tensions agree share a column, a row is a stretch."""
    columns: dict[tuple[tuple[str, str], ...], list[str]] = {}
    for tape in plan.assessment.tapes:
        tensions = tuple((part.to, f"{quantity.force_text(part.tension)}{', slack' if part.slack else ''}")
                         for part in tape.segments)
        columns.setdefault(tensions, []).append(tape.id)
    stretches = dict.fromkeys(to for tensions in columns for to, _ in tensions)
    rows = tuple((f"down to {to}", *(dict(tensions).get(to, "–") for tensions in columns))
                 for to in stretches)
    return tuple(ids_text(ids) for ids in columns.values()), rows


def _materials(plan: Plan) -> tuple[tuple[str, ...], ...]:
    origin = {"bench": "bench test", "grade": "book values of the grade"}
    return tuple((
        stock.name, f"{stock.ei_weak:.3g} N m2", f"{stock.ei_strong:.3g} N m2", f"{stock.gj:.3g} N m2",
        quantity.stress_text(stock.elastic_limit), origin[stock.origin] + _tested(stock),
    ) for stock in plan.assessment.materials)


def _tested(stock: MaterialStrength) -> str:
    """How many tests, and how far their stiffness lies apart."""
    if stock.tests < 2:
        return ""
    apart = "" if stock.spread is None else f", stiffness within {quantity.share_text(stock.spread)}"
    return f" ({stock.tests} tests{apart})"


def _corded(plan: Plan, p: Printer) -> tuple[tuple[str, str], ...]:
    """(what, how much) of a corded petticoat's sample and of its rows as one ring; nothing for hoops."""
    found = plan.assessment.corded
    if found is None:
        return ()
    unknown = "not tested"
    stiff = (found.stiffness, found.cord)
    apart = "" if found.spread is None else f"; its tests lie within {quantity.share_text(found.spread)}"
    line = f"{found.line:.2f} N/m, {'weighed' if found.weighed else 'worked out from cloth and cord, without starch'}"
    return (
        ("Sample, stiffness along its cords", unknown if stiff[0] is None else f"{stiff[0]:.3g} N m2{apart}"),
        ("One cord with the cloth that goes with it", unknown if stiff[1] is None else f"{stiff[1]:.3g} N m2"),
        ("Sample, weight for length", line),
        ("Bending length: hung over by twice so far, its tip lies 41.5 degrees below the edge",
         unknown if found.bending_length is None else p.length(found.bending_length)),
        ("All rows as one ring, across and above the floor",
         f"{p.length(2 * found.radius)}, {p.length(found.height)}"),
        ("Hung from it, the petticoat's own share counted", p.mass(found.carried)),
        ("The cloth above goes out for each unit down", f"{found.slope:.2f}"),
        ("Inward pull of the cloth on the ring", f"{found.press:.2f} N/m"),
        ("What the ring bears in its plane", unknown if found.critical is None else f"{found.critical:.2f} N/m"),
    )


def _weights(plan: Plan, p: Printer) -> tuple[tuple[str, str], ...]:
    weights = plan.assessment.weights
    parts = (("hoops", weights.hoops), ("casings", weights.casings), ("tapes", weights.tapes),
             ("waistband", weights.waistband), ("hem band", weights.band), ("joins", weights.joins),
             ("cloth", weights.cloth), ("cord", weights.cords),
             (f"{family_of(plan.spec)} alone", weights.total),
             ("all that hangs from the waist", plan.assessment.carried))
    return tuple((name, p.mass(value)) for name, value in parts if value)


def _totals(plan: Plan, p: Printer) -> tuple[tuple[str, str], ...]:
    found = plan.assessment
    if found.corded is not None:
        return (("Outward pull of the cloth on the waist", quantity.force_text(found.waist_pull)),
                ("Load on the waist", f"{found.carried:.1f} kg"))
    factor = p.by(found.buckling.value, "ratio")
    least = "at least " if found.buckling.at_least and found.buckling.value is not None else ""
    return (
        ("Load it bears before a hoop buckles, over its own load", least + factor),
        (f"Outward pull of {'all tapes' if plan.shape.tapes else 'the cloth'} on the waistband",
         quantity.force_text(found.waist_pull)),
        ("How far the hem's centre swings from its place", p.by(found.swing, "length")),
        ("Load on the waistband", f"{found.carried:.1f} kg"),
        *_held(plan),
    )


def _held(plan: Plan) -> tuple[tuple[str, str], ...]:
    """What holds a wheel or side hoops."""
    wheel, found = plan.assessment.wheel, plan.assessment
    if wheel is not None:
        does = "holds down" if wheel.front < 0.0 else "bears"
        return (
            (f"What the waistband {does} in front", quantity.force_text(abs(wheel.front))),
            ("What the waistband bears behind", quantity.force_text(wheel.back)),
            ("What the roll bears", quantity.force_text(wheel.roll)),
        )
    if found.sides:
        return (("All the pushes of both hips together", quantity.force_text(found.body_push)),)
    return ()


def _cautions(plan: Plan, general: tuple[str, ...]) -> tuple[tuple[str, str, str], ...]:
    """(name, where it is printed, source) for every caution in the plan."""
    keys = dict.fromkeys((*general, *plan.work.cautions, *(key for task in plan.work.tasks
                                                            for key in task.cautions)))
    return tuple((plain_key(key), "wearing" if key in general else "steps", CAUTIONS[key].source)
                 for key in keys if key in CAUTIONS)
