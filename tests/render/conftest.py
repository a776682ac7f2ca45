"""A plan built by hand, so that the render stage is tested without the stages before it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from math import cos, hypot, pi, sin

import pytest

from hoopwright.library.model import (
    ByMeasure,
    Consumption,
    Goods,
    Grade,
    Join,
    Money,
    Pack,
    Pieces,
    Section,
    Stock,
)
from hoopwright.plan.assemble import assemble
from hoopwright.plan.model import Plan
from hoopwright.shape.model import (
    BodyRow,
    Fixing,
    HemBand,
    Hoop,
    Mark,
    PlanOutline,
    Shape,
    Skirt,
    Tape,
    Waistband,
)
from hoopwright.source.diagnostic import Diagnostic, Severity, Span
from hoopwright.spec.check import Check
from hoopwright.spec.model import (
    Allowances,
    Assumed,
    BandBuild,
    Build,
    HipRow,
    HoopBuild,
    Layer,
    Limits,
    Line,
    PlaceListed,
    ShapeSpec,
    Spec,
    TapeBuild,
    WaistbandBuild,
    Wearer,
    Workshop,
)
from hoopwright.strength.model import (
    Assessment,
    Buckling,
    HoopStrength,
    MaterialStrength,
    Segment,
    TapeStrength,
    Weights,
)
from hoopwright.supply.model import (
    ClothLayout,
    Cost,
    CutPack,
    CutPiece,
    Cutting,
    Placement,
    ShoppingLine,
    Supply,
    ToolNeed,
)
from hoopwright.work.actions import ACTIONS
from hoopwright.work.model import Condition, Session, Task, Work

IN = 0.0254
HEIGHTS = (35.5, 31.88, 28.13, 24.26, 20.29, 16.19, 7.19)
GIRTHS = (58.6, 72.3, 84.3, 94.9, 103.9, 110.0, 110.0)
TAPES = 6


def _usd(text: str) -> Money:
    return Money(Decimal(text), "USD")


STRIP = Stock(
    "strip",
    Grade("spring steel, tempered", 205e9, 79e9, 1.2e9, 7850, "sheet"),
    Section("flat", 3 / 8 * IN, 0.042 * IN, text="3/8 in x 0.042 in"),
    sold=(Pack(50 * 12 * IN, _usd("19.00")), Pack(100 * 12 * IN, _usd("33.00"))),
    on_hand=(14 * 12 * IN,),
)
TWILL = Goods("twill", "tape", IN, 0, 0.0075, sold=(Pack(360 * IN, _usd("6.50")),))
BRAID = Goods("braid", "braid", 0.02, 0, 0.006, sold=(ByMeasure(36 * IN, 36 * IN, _usd("0.60")),))
CALICO = Goods("calico", "cloth", 45 * IN, 0.14, sold=(ByMeasure(36 * IN, 9 * IN, _usd("4.20")),))
HOOK = Goods("hook and bar", "fastening", sold=(Pieces(3, _usd("2.10")),))
SOLDER = Goods("solder and flux", "consumable", sold=(Pieces(1, None),))
SOLDERED = Join(
    "lap soldered",
    IN,
    (("soldering iron",),),
    (Consumption("solder and flux", 1, 40),),
    12,
    (),
    ("flat",),
    True,
    True,
    0.004,
    "hang 2 kg over night",
    "iron only",
    "common practice, no source",
)


def _spec(title: str) -> Spec:
    return Spec(
        title=title,
        units="inches",
        wearer=Wearer(
            "",
            67 * IN,
            28 * IN,
            1.4,
            40 * IN,
            8 * IN,
            41 * IN,
            41.5 * IN,
            41.5 * IN,
            41 * IN,
            (HipRow(0, 28 * IN, 1.4),),
            27.5 * IN,
        ),
        shape=ShapeSpec(
            "round",
            Line("dome", 1.3),
            PlaceListed(below_waist=6 * IN),
            None,
            110 * IN,
            7 * IN,
            7,
            "by tape",
            1.0,
        ),
        build=Build(
            "tapes",
            HoopBuild(STRIP, SOLDERED, IN, BRAID),
            TapeBuild(TWILL, TAPES, 7 * IN, "hem", _waist_fractions(), _hem_fractions()),
            WaistbandBuild(TWILL, IN, 2 * IN, 0.0, HOOK),
            BandBuild(CALICO, 9 * IN, "either", None),
        ),
        load=(
            Layer("over-skirt", 1.9, "straight"),
            Layer("petticoat", 0.47, "straight", cloth=CALICO, area=3.3),
        ),
        skirt_off_floor=IN,
        stocks={"strip": STRIP},
        goods={g.name: g for g in (TWILL, BRAID, CALICO, HOOK, SOLDER)},
        allowances=Allowances(),
        limits=Limits(Decimal("85"), "USD", 32 * IN, 1.814),
        workshop=Workshop(
            ("bolt cutters", "file", "soldering iron", "clamps", "sewing machine"), 120, False, "A4"
        ),
        currency="USD",
        assumed=(
            Assumed("allowances.kerf", 0.0015875, "length", "a saw cut this wide is usual"),
            Assumed("shape.skirt.off_floor", IN, "length", "a skirt usually clears the floor by this"),
        ),
        stated=frozenset({"spec", "wearer.waist"}),
    )


def _waist_fractions() -> tuple[float, ...]:
    start = 3.5 / 28
    return tuple(start + i * (1 - 2 * start) / (TAPES - 1) for i in range(TAPES))


def _hem_fractions() -> tuple[float, ...]:
    return tuple((i + 0.5) / TAPES for i in range(TAPES))


def _point(fraction: float, girth: float, height: float) -> tuple[float, float, float]:
    radius = girth / (2 * pi)
    return (radius * sin(2 * pi * fraction), radius * cos(2 * pi * fraction), height)


def _shape() -> Shape:
    spots = {}
    for number, (waist, hem) in enumerate(zip(_waist_fractions(), _hem_fractions(), strict=True), 1):
        for i, (girth, height) in enumerate(zip(GIRTHS, HEIGHTS, strict=True)):
            share = (41 - height) / (41 - 7.19)
            fraction = waist + (hem - waist) * share
            spots[f"T{number}", i] = (fraction, _point(fraction, girth * IN, height * IN))
    places = ("top", "body", "body", "body", "body", "band top", "hem")
    hoops = tuple(
        Hoop(
            f"H{i + 1}",
            places[i],
            HEIGHTS[i] * IN,
            (41.5 - HEIGHTS[i]) * IN,
            GIRTHS[i] * IN,
            PlanOutline("round", GIRTHS[i] * IN / pi, GIRTHS[i] * IN / pi, 0.0, 2 * pi),
            (GIRTHS[i] + 1) * IN,
            (GIRTHS[i] * 1.08 + 1) * IN if i < 5 else 0.0,
            i < 5,
            tuple(Fixing(f"T{t}", *spots[f"T{t}", i]) for t in range(1, TAPES + 1)),
        )
        for i in range(7)
    )
    tapes = []
    for number, (waist, hem) in enumerate(zip(_waist_fractions(), _hem_fractions(), strict=True), 1):
        last, at, marks = _point(waist, 28 * IN, 41 * IN), 0.0, []
        start = last
        for i in range(7):
            here = spots[f"T{number}", i][1]
            flat, drop = hypot(here[0] - last[0], here[1] - last[1]), last[2] - here[2]
            at, last = at + hypot(flat, drop), here
            marks.append(Mark(f"H{i + 1}", at, (pi / 2 if drop == 0 else flat / drop)))
        tapes.append(Tape(f"T{number}", waist, hem, 2 * pi * waist, start, tuple(marks), at + 6 * IN, "H7"))
    return Shape(
        (41 * IN, 41.5 * IN, 41 * IN, 41.5 * IN),
        hoops,
        tuple(tapes),
        Waistband(28 * IN, IN, 2 * IN, 31 * IN, "twill"),
        HemBand("H6", "H7", 9 * IN, 20.25 * IN, 110 * IN, 0.5 * IN, 0.625 * IN, False, "calico", "either"),
        (BodyRow(41 * IN, 10.3 * IN, 7.4 * IN),),
        (),
        Skirt(46 * IN, 46.5 * IN, 46 * IN, 114 * IN, IN),
        ((41 * IN, 4.5 * IN), (7.19 * IN, 17.5 * IN)),
        (
            Check(
                "stride",
                "hem",
                2.79,
                1.53,
                "length",
                "at least",
                "holds",
                "",
                "our rule, 2.2 steps",
                "the hem leaves room for a long step",
            ),
        ),
    )


def _assessment() -> Assessment:
    return Assessment(
        "closed forms",
        (
            Check(
                "sag", "H7", 0.004, 0.0127, "length", "at most", "holds", "", "derived", "hoops hang level"
            ),
            Check(
                "weight",
                "cage",
                1.69,
                1.814,
                "mass",
                "at most",
                "marginal",
                "use a lighter strip",
                "limits.weight",
                "the cage is light enough",
            ),
        ),
        tuple(
            HoopStrength(f"H{i + 1}", 1.2, 4.0 - i / 2, 0.001 * i, 0.0002, 0.0001, 2.3e8) for i in range(7)
        ),
        tuple(
            TapeStrength(f"T{t}", tuple(Segment(f"H{i + 1}", 9.0 - i, i == 6) for i in range(7)))
            for t in range(1, TAPES + 1)
        ),
        Buckling(6.1, True),
        0.012,
        8.4,
        4.1,
        Weights(1.3, 0.06, 0.05, 0.01, 0.2, 0.03),
        (MaterialStrength("strip", 0.187, 14.8, 0.27, 1.2e9, "bench"),),
        "stands, but",
        ("the cage is close to its limit of weight",),
    )


def _supply() -> Supply:
    packs = (
        CutPack("strip", 168 * IN, "on hand", (CutPiece("H6", 111 * IN),), 57 * IN),
        CutPack(
            "strip",
            600 * IN,
            "bought",
            tuple(CutPiece(f"H{i + 1}", (GIRTHS[i] + 1) * IN) for i in (6, 4, 3, 2, 1, 0)),
            70 * IN,
        ),
        CutPack(
            "twill",
            360 * IN,
            "bought",
            (*(CutPiece(f"T{t}", 42 * IN) for t in range(1, 7)), CutPiece("waistband", 31 * IN)),
            77 * IN,
        ),
    )
    layout = ClothLayout(
        "calico",
        45 * IN,
        "across",
        3,
        2,
        60.75 * IN,
        63 * IN,
        110 * IN,
        tuple(
            Placement("band", 0.0, i * 20.25 * IN, 45 * IN if i < 2 else 22 * IN, 20.25 * IN, True)
            for i in range(3)
        ),
        False,
    )
    lines = (
        ShoppingLine(
            "strip",
            "stock",
            1,
            600 * IN,
            0,
            Decimal("19.00"),
            Decimal("19.00"),
            529 * IN,
            168 * IN,
            ("H1", "H2", "H3", "H4", "H5", "H7"),
        ),
        ShoppingLine(
            "twill",
            "tape",
            1,
            360 * IN,
            0,
            Decimal("6.50"),
            Decimal("6.50"),
            283 * IN,
            0,
            ("T1", "T2", "T3", "T4", "T5", "T6", "waistband"),
        ),
        ShoppingLine(
            "calico", "cloth", 7, 9 * IN, 0, Decimal("1.05"), Decimal("7.35"), 61 * IN, 0, ("band",)
        ),
        ShoppingLine(
            "hook and bar", "fastening", 1, 0, 3, Decimal("2.10"), Decimal("2.10"), 2, 0, ("waistband",)
        ),
        ShoppingLine("solder and flux", "consumable", 1, 0, 1, None, None, 1, 0, ("joins",)),
    )
    cost = Cost(Decimal("34.95"), Decimal("3.50"), Decimal("85"), "USD", ("solder and flux",))
    return Supply(
        Cutting(packs, False, 0.04),
        (layout,),
        lines,
        cost,
        (ToolNeed(("awl", "fine punch"), "marking through cloth"),),
        (
            Check(
                "budget",
                "cost",
                38.45,
                85.0,
                "money",
                "at most",
                "holds",
                "",
                "limits.budget",
                "the money is enough",
            ),
        ),
    )


def _parts(action: str) -> list[tuple[str, ...]]:
    said = ACTIONS[action].parts
    hoops = [(f"H{i + 1}",) for i in range(7)]
    if said == "one hoop, band":
        return [("H6", "band"), ("H7", "band")]
    if said == "one hoop":
        return hoops[:5] if action in {"case-hoop"} else hoops
    if said == "every cased hoop":
        return [tuple(f"H{i + 1}" for i in range(5))]
    if said in {"every tape", "every tape, waistband"}:
        return [tuple(f"T{t}" for t in range(1, TAPES + 1))]
    return [tuple(word for word in said.replace("the goods: ", "").split(", "))]


CONDITIONS = (
    Condition("waist-closed", "waistband", 28 * IN, 0.25 * IN, "move the hook"),
    Condition("hem-height-front", "H7", 7 * IN, 0.25 * IN, "take it up at the waistband"),
    Condition("hoop-level", "H4", 24.26 * IN, 0.25 * IN, "move its marks"),
    Condition("no-contact", "cage", None, None, "lower the hoop that rests on the body"),
)


def _work() -> Work:
    tasks: list[Task] = []
    for action in ACTIONS.values():
        for parts in _parts(action.key):
            name = f"{action.key}-{parts[0]}" if action.parts.startswith("one hoop") else action.key
            stop = action.key.startswith("try-on")
            tasks.append(
                Task(
                    name,
                    action.kind,
                    action.key,
                    action.meaning.split(",")[0],
                    (tasks[-1].id,) if tasks else (),
                    7.5,
                    ("bolt cutters",) if action.setup == "metal" else (),
                    parts,
                    ("cut-ends",) if action.key == "cut-hoop" else (),
                    action.setup,
                    1 + len(tasks) // 20,
                    480.0 if action.key == "prove-join" else 0.0,
                    stop,
                    CONDITIONS if stop else (),
                )
            )
    numbers = sorted({task.session for task in tasks})
    sessions = tuple(
        Session(
            n,
            tuple(t.id for t in tasks if t.session == n),
            sum(t.minutes for t in tasks if t.session == n),
            "the two hours are over",
        )
        for n in numbers
    )
    total = sum(t.minutes for t in tasks)
    return Work(
        tuple(tasks),
        sessions,
        total,
        total,
        tuple(t.id for t in tasks),
        "try-on-body-alone",
        300.0,
        ("cut-ends",),
    )


def _findings() -> tuple[Diagnostic, ...]:
    return (
        Diagnostic(
            "waist-height-odd",
            Severity.WARNING,
            "a waist at 0.61 of the stature is low",
            "cage.yaml",
            Span("cage.yaml", 8, 3, 8, 12),
            help="measure the waist height again",
        ),
    )


@pytest.fixture(scope="session")
def make_plan() -> Callable[..., Plan]:
    """``make_plan(title=..., units=...)``: the hand-built plan."""

    def make(title: str = "Harbour play, act two", units: str = "inches") -> Plan:
        spec = replace(_spec(title), units=units)
        return assemble(
            "specs/harbour/cage.yaml", spec, _shape(), _assessment(), _supply(), _work(), _findings()
        )

    return make


@pytest.fixture(scope="session")
def plan(make_plan: Callable[..., Plan]) -> Plan:
    """The hand-built plan, in inches."""
    return make_plan()
