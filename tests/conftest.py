"""Specs built by hand, for tests of the stages after the spec stage."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from hoopwright.library.model import Goods, Grade, Join, Section, Stock
from hoopwright.plan.model import Plan
from hoopwright.spec.model import (
    Allowances,
    BandBuild,
    Build,
    GroundPlan,
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
from hoopwright.work.model import Work

INCH = 0.0254
SPRING = Grade("spring steel, tempered", 205e9, 79e9, 1200e6, 7850.0, "test value", hard=True)
STRIP = Stock("strip", SPRING, Section("flat", width=0.375 * INCH, thickness=0.042 * INCH))
TWILL = Goods("twill", "tape", width=INCH, linear_density=0.0062)
BRAID = Goods("braid", "braid", linear_density=0.010)
CALICO = Goods("calico", "cloth", width=45 * INCH, areal_density=0.140)
HOOK = Goods("hook and bar", "fastening")
SOLDERED = Join("lap soldered", INCH, (), (), 12.0, (), ("flat",), True, True, 0.002, "", "", "test value")


def tape_places(count: int, waist: float, gap: float | None) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Fractions at the waist and at the hem: a gap straddles centre front, the rest is divided equally."""
    hem = tuple((k + 0.5) / count for k in range(count))
    if gap is None:
        return hem, hem
    first, step = gap / 2 / waist, (waist - gap) / (count - 1) / waist
    return tuple(first + k * step for k in range(count)), hem


def build_spec(
    *,
    waist: float = 28.0,
    waist_oval: float = 1.4,
    hip: float = 40.0,
    stature: float | None = 67.0,
    heights: tuple[float, float, float, float] = (41.0, 41.5, 41.5, 41.0),
    line: Line | None = None,
    below: float = 6.0,
    top: PlaceListed | None = None,
    top_girth: float | None = None,
    hem: float = 110.0,
    off_floor: float = 7.0,
    count: int = 7,
    spacing: str = "by tape",
    ratio: float = 1.0,
    listed: tuple[PlaceListed, ...] = (),
    tapes: int = 6,
    gap: float | None = 7.0,
    to: str = "hem",
    band: float | None = 9.0,
    cut_height: float | None = None,
    stock: Stock = STRIP,
    lap: float = 1.0,
    load: tuple[Layer, ...] = (Layer("over-skirt", 1.9, "straight"), Layer("petticoat", 0.468, "straight")),
    limits: Limits | None = None,
    overlap: float = 2.0,
    bare: bool = False,
    **rest: Any,
) -> Spec:
    """A spec from lengths in inches; every default is the worked example's. ``heights``: front, left,
    right, back."""
    m = INCH
    at_waist, at_hem = tape_places(tapes, waist, gap)
    wearer = Wearer(
        "wearer",
        None if stature is None else stature * m,
        waist * m,
        waist_oval,
        hip * m,
        8 * m,
        heights[0] * m,
        heights[1] * m,
        heights[2] * m,
        heights[3] * m,
        (HipRow(0.0, waist * m, waist_oval), HipRow(8 * m, hip * m, 1.5)),
        None if stature is None else 0.41 * stature * m,
    )
    shape = ShapeSpec(
        GroundPlan(),
        line or Line("dome", 1.3),
        top or PlaceListed(below_waist=below * m),
        None if top_girth is None else top_girth * m,
        hem * m,
        off_floor * m,
        count,
        spacing,
        ratio,
        listed,
    )
    build = Build(
        "tapes",
        HoopBuild(stock, SOLDERED, lap * m, None if bare else BRAID),
        TapeBuild(TWILL, tapes, None if gap is None else gap * m, to, at_waist, at_hem),
        WaistbandBuild(TWILL, m, overlap * m, 0.0, HOOK),
        None
        if band is None
        else BandBuild(CALICO, band * m, "either", None if cut_height is None else cut_height * m),
    )
    spec = Spec(
        "test cage",
        "inches",
        wearer,
        shape,
        build,
        load,
        m,
        {"strip": stock},
        {g.name: g for g in (TWILL, BRAID, CALICO, HOOK)},
        Allowances(),
        limits or Limits(),
        Workshop(None, 120.0, False, "A4"),
        None,
    )
    return replace(spec, **rest)


def resolve_text(text: str) -> Spec:
    """The spec of a text as a maker writes it, which must be free of errors."""
    from hoopwright.source.read import read
    from hoopwright.spec.resolve import resolve

    document, said = read(text.encode(), "cage.yaml")
    assert document is not None, said
    spec, found = resolve(document)
    assert spec is not None, found
    return spec


@pytest.fixture(scope="session")
def make() -> SimpleNamespace:
    """``make.spec(...)`` builds a spec in inches, ``make.yaml(text)`` reads one; goods are beside."""
    goods = {"strip": STRIP, "spring": SPRING, "calico": CALICO, "twill": TWILL, "braid": BRAID}
    return SimpleNamespace(spec=build_spec, yaml=resolve_text, inch=INCH, **goods)


@pytest.fixture(scope="session")
def drawn() -> Callable[[str], SimpleNamespace]:
    """``drawn(text)`` takes a spec as a maker writes it through the source, spec and shape stages."""

    def through(text: str) -> SimpleNamespace:
        from hoopwright.shape.draw import draw

        spec = resolve_text(text)
        shape, told = draw(spec)
        assert shape is not None, told
        return SimpleNamespace(spec=spec, shape=shape)

    return through


@pytest.fixture(scope="session")
def worked(drawn: Callable[[str], SimpleNamespace]) -> Callable[[str], tuple[SimpleNamespace, Work]]:
    """``worked(text)`` takes a spec through supply and work too: its spec and shape, and the work."""

    def through(text: str) -> tuple[SimpleNamespace, Work]:
        from hoopwright.supply.provide import provide
        from hoopwright.work.arrange import arrange

        cage = drawn(text)
        supply, said = provide(cage.spec, cage.shape)
        assert supply is not None, said
        work, told = arrange(cage.spec, cage.shape, supply)
        assert work is not None, told
        return cage, work

    return through


@pytest.fixture
def harbour(
    worked: Callable[[str], tuple[SimpleNamespace, Work]], harbour_text: str
) -> tuple[SimpleNamespace, Work]:
    """The worked example's spec and shape, and its work."""
    return worked(harbour_text)


@pytest.fixture(scope="session")
def committed() -> Callable[[str], Plan]:
    """``committed("quay-market/petticoat.yaml")`` is the plan of a spec in the repository, made once."""

    @cache
    def planned(name: str) -> Plan:
        from hoopwright.compile import compile_spec

        path = Path(__file__).parents[1] / "specs" / name
        made = compile_spec(path.read_bytes(), path.name)
        assert made.plan is not None, made.diagnostics
        return made.plan

    return planned


@pytest.fixture(scope="session")
def harbour_text() -> str:
    """The worked example as it stands in the repository."""
    return (Path(__file__).parents[1] / "specs" / "harbour-play" / "cage.yaml").read_text()


@pytest.fixture(scope="session")
def bustle_text() -> str:
    """A small bustle cage of half hoops, an invented one."""
    return """\
spec: 1
units: centimetres
wearer: {stature: 162 cm, waist: 70 cm, hip: 98 cm, waist_height: 103 cm}
shape:
  ground_plan: {kind: half, chord: {top: 30 cm, hem: 38 cm}, reach: {top: 7 cm, hem: 18 cm}}
  top_hoop: {below_waist: 13 cm}
  hem: {off_floor: 56 cm}
  hoops: {count: 5}
build: {tapes: {count: 5}}
"""
