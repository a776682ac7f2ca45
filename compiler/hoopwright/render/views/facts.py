"""Measures that several chapters and instructions share."""

from __future__ import annotations

from hoopwright.library.model import BenchTest, Droop, Wrap
from hoopwright.plan.model import Plan
from hoopwright.render.quantities import Printer
from hoopwright.shape.model import PlanOutline
from hoopwright.source.record import record
from hoopwright.spec.family import family_of, full_word
from hoopwright.spec.model import HoopBuild
from hoopwright.strength.material import material_strength, narrowest

FIRE_FEET = 3 * 0.3048
"""How far past the hem's radius to keep from open fire, m: 3 ft; in centimetres a whole metre is said."""

FASTENING_NEEDS = 0.0127
"""How much of the waistband's overlap must stay for its fastening when it is let out, m: 1/2 in, our rule."""


@record(frozen=True, slots=True)
class HoopFacts:
    """What hoops are made of and how they are joined; all empty without hoops. ``wrap``: how wide across what a sample
    is wrapped round, blank for cane, which keeps a curve; ``tightest``: the hoop bent to the tightest curve."""

    stock: str = ""
    grade: str = ""
    section: str = ""
    made_of: str = ""
    flat: bool = False
    sprung: bool = False
    bent_wet: bool = False
    wrap: str = ""
    tightest: str = ""
    metal: bool = False
    lap: str = ""
    sleeve: str = ""
    join: str = ""
    join_how: str = ""
    join_proof: str = ""
    casing: str = ""


@record(frozen=True, slots=True)
class Facts:
    """Printed measures by name; ``hoop`` those of what hoops are made of. ``it`` is the word for the design, ``full``
    the same written out."""

    source: str
    unit: str
    hoop: HoopFacts
    hoops: int
    tapes: int
    casing_end: str
    tape_material: str
    tape_top: str
    tape_hem: str
    tape_reserve: str
    tape_tolerance: str
    hoop_tolerance: str
    hem_tolerance: str
    pull: str
    waist: str
    waistband_cut: str
    waistband_turning: str
    overlap: str
    fastening: str
    waist_range: str
    front_gap: str
    hem_across: str
    hem_off_floor: str
    two_abreast: str
    fire_distance: str
    wearer: str
    it: str
    full: str


def facts(plan: Plan) -> Facts:
    """The shared measures of a plan."""
    spec, shape, build, allow = plan.spec, plan.shape, plan.spec.build, plan.spec.allowances
    p = Printer.of(spec)
    hem = shape.lowest
    radius = shape.sides.across / 2 if shape.sides is not None else max(hem.width, hem.depth) / 2
    reach = radius if shape.sides is not None else max(radius, hem.depth / 2 + abs(hem.offset))
    more = max(0.0, shape.waistband.overlap - FASTENING_NEEDS)
    return Facts(
        source=plan.source,
        unit=p.unit,
        hoop=HoopFacts() if build.hooped is None else _hoop(build.hooped, plan),
        hoops=len(shape.hoops),
        tapes=len(shape.tapes),
        casing_end=p.length(allow.casing_end),
        tape_material=build.tapes.material.name if build.tapes is not None else "",
        tape_top=p.length(allow.tape_top),
        tape_hem=p.length(allow.tape_hem),
        tape_reserve=p.length(allow.tape_reserve),
        tape_tolerance=p.length(allow.tape_tolerance),
        hoop_tolerance=p.length(allow.hoop_tolerance),
        hem_tolerance=p.length(allow.hem_tolerance),
        pull="1 kg" if p.units == "centimetres" else f"{p.mass(1.0)} (1 kg)",
        waist=p.length(shape.waistband.girth),
        waistband_cut=p.length(shape.waistband.cut),
        waistband_turning=p.length(allow.waistband_turning),
        overlap=p.length(shape.waistband.overlap),
        fastening=build.waistband.fastening.name,
        waist_range=f"{p.length(shape.waistband.girth)} to {p.length(shape.waistband.girth + more)}" if more
        else p.length(shape.waistband.girth),
        front_gap=p.length(build.tapes.front_gap) if build.tapes and build.tapes.front_gap else "",
        hem_across=_across(p, hem) if shape.sides is None else f"{p.length(2 * radius)} across",
        hem_off_floor=p.length(spec.shape.hem_off_floor),
        two_abreast=p.long(4 * radius),
        fire_distance=p.long(reach + (1.0 if p.units == "centimetres" else FIRE_FEET)),
        wearer=spec.wearer.name,
        it=family_of(spec),
        full=full_word(spec),
    )


def _across(p: Printer, hem: PlanOutline) -> str:
    """How wide the hem is, and how deep where that is another measure."""
    wide, deep = p.length(hem.width), p.length(hem.depth)
    return f"{wide} across" if wide == deep else f"{wide} across and {deep} from front to back"


def _hoop(hoops: HoopBuild, plan: Plan) -> HoopFacts:
    p, stock, join = Printer.of(plan.spec), hoops.material, hoops.join
    return HoopFacts(
        stock=stock.name,
        grade=stock.grade.name,
        section=_section(plan),
        made_of=_section(plan) if stock.grade.name == stock.name else f"{stock.grade.name}, {_section(plan)}",
        flat=stock.section.kind == "flat",
        sprung=hoops.sprung,
        bent_wet=hoops.bent_wet,
        wrap="" if stock.form == "cane" else p.length(narrowest(stock, material_strength(stock)[0])),
        tightest=min(plan.shape.hoops, key=lambda hoop: hoop.girth).id,
        metal=stock.grade.metal,
        lap=p.length(hoops.lap) if hoops.lap else "",
        sleeve=p.length(join.sleeve) if join.sleeve else "",
        join=join.name,
        join_how=join.remarks,
        join_proof=join.proof,
        casing=hoops.casing.name if hoops.casing else "",
    )


def _section(plan: Plan) -> str:
    """A stock's section as the maker wrote it, or printed when it was assumed."""
    section, p = plan.spec.build.hoops.material.section, Printer.of(plan.spec)
    if section.text:
        return section.text
    if section.kind == "flat":
        return f"{p.small(section.width)} × {section.thickness * 1000:g} mm"
    return f"{section.diameter * 1000:g} mm across"


def waist_places(plan: Plan) -> tuple[str, ...]:
    """Places on the waistband from centre front by the wearer's left, in order: ``T1 at 3 1/2 in``."""
    p, girth = Printer.of(plan.spec), plan.shape.waistband.girth
    places = [(tape.waist_fraction, tape.id) for tape in plan.shape.tapes] + [(0.5, "centre back")]
    return tuple(f"{name} at {p.length(share * girth)}" for share, name in sorted(places))


def bench_rows(plan: Plan) -> tuple[str, ...]:
    """The bench tests of the hoops' stock, or of a corded sample, as the spec records them."""
    p, build = Printer.of(plan.spec), plan.spec.build
    tests = build.cords.sample.bench if build.cords is not None else build.hoops.material.bench
    return tuple(_bench(test, p) for test in tests)


def _bench(test: BenchTest, p: Printer) -> str:
    if isinstance(test, Droop):
        return (f"droop, {p.length(test.overhang)} over the edge with {p.mass(test.hang)} on the tip drops"
                f" {p.length(test.drop)}")
    if isinstance(test, Wrap):
        kept = "" if test.keeps is None else f", keeps a curve {p.length(test.keeps)} across"
        return (f"wrap round {p.length(test.around)},"
                f" {'springs back' if test.springs_back else 'does not spring back'}{kept}")
    return f"weight, {p.long(test.length)} weigh {p.mass(test.mass)}"


@record(frozen=True, slots=True)
class Band:
    """The hem band's measures."""

    upper: str
    lower: str
    depth: str
    height: str
    length: str
    seam: str
    join: str
    channel: str
    stated: bool
    material: str
    pieces: tuple[str, ...]


def band_facts(plan: Plan, pieces: tuple[str, ...]) -> Band | None:
    """The hem band, or None. ``pieces`` are its pieces as the cloth layout counts them."""
    band, join, p = plan.shape.band, plan.spec.allowances.band_join, Printer.of(plan.spec)
    if band is None:
        return None
    return Band(band.upper, band.lower, p.length(band.depth), p.length(band.height), p.length(band.length),
                p.length(band.seam), p.length(join) if join else "", p.length(band.channel), band.stated,
                band.material, pieces)


def cage_weight(plan: Plan) -> str:
    """What the cage weighs, printed."""
    return Printer.of(plan.spec).mass(plan.assessment.weights.total)
