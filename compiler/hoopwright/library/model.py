"""Types of the library: grades, sections, stock, goods, joins, tools, cautions.

SI units throughout (m, kg, Pa); money is Decimal; minutes are minutes. Physical data carry the name of their
source as text; the library never holds a price.
"""

from __future__ import annotations

from decimal import Decimal
from typing import Literal

from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Money:
    """An amount in one currency (ISO 4217 code)."""

    amount: Decimal
    currency: str


@record(frozen=True, slots=True)
class Pack:
    """Goods sold in packs of one length, m. ``at_most`` packs can be had; None: any number. ``coil`` is the
    diameter it is wound to inside, m (None: not known)."""

    length: float
    price: Money | None
    at_most: int | None = None
    coil: float | None = None


@record(frozen=True, slots=True)
class ByMeasure:
    """Goods cut to measure: ``price`` for each ``per`` metres, sold in whole steps of ``step`` metres."""

    per: float
    step: float
    price: Money | None


@record(frozen=True, slots=True)
class Pieces:
    """Goods sold by the piece: ``price`` for ``count`` pieces."""

    count: int
    price: Money | None


Offer = Pack | ByMeasure | Pieces


@record(frozen=True, slots=True)
class Section:
    """A cross section. Flat strip stands on edge: ``width`` is vertical, ``thickness`` radial.

    ``round`` uses ``diameter``; ``tube`` uses ``diameter`` and ``wall``. Unused values are 0.
    ``text`` is the section as the maker wrote it.
    """

    kind: Literal["flat", "round", "tube"]
    width: float = 0.0
    thickness: float = 0.0
    diameter: float = 0.0
    wall: float = 0.0
    text: str = ""

    @property
    def height(self) -> float:
        """Vertical size as worn, m: the width of a strip on edge, or the diameter."""
        return self.width if self.kind == "flat" else self.diameter

    @property
    def depth(self) -> float:
        """Size in the bending direction, m: a strip's thickness, or the diameter."""
        return self.thickness if self.kind == "flat" else self.diameter


@record(frozen=True, slots=True)
class Grade:
    """A material grade. ``e`` Young's modulus Pa, ``g`` shear modulus Pa, ``elastic_limit`` Pa,
    ``density`` kg/m3.

    ``creeps`` is true when stiffness falls under lasting load. ``hard`` is true when tin snips fail on it.
    ``spread`` is the relative uncertainty of ``e``. ``temper``: degrees C from which heat takes strength away
    (None: nothing to lose, or not known).
    """

    name: str
    e: float
    g: float
    elastic_limit: float
    density: float
    source: str
    spread: float = 0.0
    creeps: bool = False
    hard: bool = False
    metal: bool = True
    temper: float | None = None


@record(frozen=True, slots=True)
class Droop:
    """Bench test: a clamped overhang with a hung mass drops by ``drop``. m, kg.

    ``turned`` is the drop with the other face up, or None. ``angle`` is how far the clamp points below the
    level, radians; above it is negative.
    """

    overhang: float
    hang: float
    drop: float
    turned: float | None = None
    angle: float = 0.0

    @property
    def mean_drop(self) -> float:
        """The drop, or the mean of both faces, which takes a coil set out."""
        return self.drop if self.turned is None else (self.drop + self.turned) / 2


@record(frozen=True, slots=True)
class Wrap:
    """Bench test: bent round a cylinder of diameter ``around``; ``keeps`` is the diameter of the curve
    kept, m, or None."""

    around: float
    springs_back: bool
    keeps: float | None = None


@record(frozen=True, slots=True)
class Weigh:
    """Bench test: ``length`` metres weigh ``mass`` kilograms."""

    length: float
    mass: float


BenchTest = Droop | Wrap | Weigh


@record(frozen=True, slots=True)
class Stock:
    """What hoops are made of: a grade in a section, with its tests and how it is sold.

    ``on_hand`` holds free lengths, m. ``form`` is a trade word derived from grade and section. ``shop`` is
    where it is bought (blank: not said).
    """

    name: str
    grade: Grade
    section: Section
    bench: tuple[BenchTest, ...] = ()
    sold: tuple[Offer, ...] = ()
    on_hand: tuple[float, ...] = ()
    form: Literal["strip", "wire", "cane", "tube", "rod"] = "strip"
    shop: str = ""

    @property
    def linear_density(self) -> float:
        """Mass of a metre, kg/m, weighed if a weight test is given, else from section and grade."""
        from math import pi

        weighed = [test for test in self.bench if isinstance(test, Weigh)]
        if weighed:
            return sum(test.mass for test in weighed) / sum(test.length for test in weighed)
        s = self.section
        if s.kind == "flat":
            area = s.width * s.thickness
        elif s.kind == "round":
            area = pi / 4 * s.diameter**2
        else:
            area = pi / 4 * (s.diameter**2 - (s.diameter - 2 * s.wall) ** 2)
        return area * self.grade.density


@record(frozen=True, slots=True)
class Remnant:
    """A washed piece of cloth on hand: ``length`` along its selvage and usable ``width`` across, m."""

    length: float
    width: float


@record(frozen=True, slots=True)
class Goods:
    """Haberdashery and cloth: tape, braid, cord, cloth, fastening, consumable.

    ``width`` m (usable, cloth and tapes; of a cord its thickness); ``areal_density`` kg/m2 (cloth);
    ``linear_density`` kg/m (tape, braid, cord); ``shrinkage`` share; ``nap`` true when pieces may not be turned head
    to tail. ``on_hand``: lengths in m for goods by length, counts for pieces; ``remnants`` pieces of cloth that are
    narrower. ``shop`` is where it is bought (blank: not said).
    """

    name: str
    kind: Literal["tape", "braid", "cord", "cloth", "fastening", "consumable"]
    width: float = 0.0
    areal_density: float = 0.0
    linear_density: float = 0.0
    shrinkage: float = 0.0
    nap: bool = False
    sold: tuple[Offer, ...] = ()
    on_hand: tuple[float, ...] = ()
    source: str = ""
    remnants: tuple[Remnant, ...] = ()
    shop: str = ""

    @property
    def washed_width(self) -> float:
        """Its width after the first wash, m: cloth draws in across as it does along."""
        return self.width * (1 - self.shrinkage)


@record(frozen=True, slots=True)
class Consumption:
    """Small stuff used up by one join or fixing: ``amount`` uses of goods; ``per_piece`` uses one
    bought piece serves."""

    goods: str
    amount: float
    per_piece: float


@record(frozen=True, slots=True)
class JoinStrength:
    """What a join bears, conservatively: ``shear`` along the lap and ``tension`` across it for a moment,
    ``lasting`` across it for good. Of a ``bonded`` lap in Pa on its face, else in N at either end."""

    bonded: bool
    shear: float
    tension: float
    lasting: float


@record(frozen=True, slots=True)
class Join:
    """How the ends of a hoop are joined.

    ``tools``: each entry is a group of names, any one of which will do. ``sections`` and ``metal_only``
    say what it
    suits. ``cautions`` are keys of the caution table. ``mass`` kg added by each join.
    """

    name: str
    lap: float
    tools: tuple[tuple[str, ...], ...]
    consumes: tuple[Consumption, ...]
    minutes: float
    cautions: tuple[str, ...]
    sections: tuple[str, ...]
    metal_only: bool
    heat: bool
    mass: float
    proof: str
    remarks: str
    source: str
    sleeve: float = 0.0
    temperature: float = 0.0  # degrees C the stock is brought to
    strength: JoinStrength | None = None


@record(frozen=True, slots=True)
class Tool:
    """A tool, what it is for, and the cautions that go with it (keys of the caution table)."""

    name: str
    purpose: str
    cautions: tuple[str, ...] = ()
    aliases: tuple[str, ...] = ()


@record(frozen=True, slots=True)
class Caution:
    """A caution printed with the steps it belongs to."""

    key: str
    text: str
    source: str
