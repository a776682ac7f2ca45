"""The typed spec: every value resolved, in SI units, with what was assumed listed beside it.

Lengths are metres, masses kilograms, densities SI, angles radians, times minutes, money Decimal.
The JSON Schema in ``schemas/v1/spec.schema.json`` is the language; this is its meaning.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from decimal import Decimal
from typing import Literal

from hoopwright.library.model import Goods, Join, Stock
from hoopwright.source.diagnostic import Path
from hoopwright.source.record import record

Units = Literal["inches", "centimetres"]
LineKind = Literal["cone", "dome", "bell", "drum", "table"]
Spacing = Literal["by tape", "level", "widening", "listed", "from hem"]
PlanKind = Literal["round", "oval", "thrown back", "half", "pair"]
Carrier = Literal["tapes", "channels", "cords", "wheel"]


@record(frozen=True, slots=True)
class Assumed:
    """A value the maker did not state.

    ``path`` is the key that overrides it, dotted (``wearer.waist_height.side``). ``value`` is SI when
    ``dimension`` names one (``length``, ``mass``, ``share``, ``force`` ...), else it is text.
    """

    path: str
    value: float | str
    dimension: str
    reason: str


@record(frozen=True, slots=True)
class HipRow:
    """The body's outline at a depth below the waistline: girth, and width over depth of its oval."""

    below_waist: float
    girth: float
    oval: float


@record(frozen=True, slots=True)
class Sitting:
    """The wearer on a chair, m: ``waist`` of the waistline and ``thigh`` of the thighs' top above the seat,
    ``knee`` from the back of the body to the front of the knees."""

    waist: float = 0.245
    thigh: float = 0.163
    knee: float = 0.587


@record(frozen=True, slots=True)
class Wearer:
    """The body the cage is made for, in shoes and over all that is worn beneath.

    Waist heights are above the floor. ``stature`` and ``step`` may be unknown (None).
    """

    name: str
    stature: float | None
    waist: float
    waist_oval: float
    hip: float
    waist_to_hip: float
    front: float
    left: float
    right: float
    back: float
    hip_rows: tuple[HipRow, ...]
    step: float | None
    sitting: Sitting = Sitting()

    @property
    def side(self) -> float:
        """Mean waist height of the two sides, m."""
        return (self.left + self.right) / 2


@record(frozen=True, slots=True)
class TableRow:
    """A row of the maker's own line: a height above the floor and the girth there."""

    height: float
    girth: float


@record(frozen=True, slots=True)
class Line:
    """How the girth grows downward. ``power`` is the dome's swell or the bell's exponent."""

    kind: LineKind
    power: float
    rows: tuple[TableRow, ...] = ()


@record(frozen=True, slots=True)
class PlaceListed:
    """A hoop's place stated by the maker: exactly one of the three depths is set."""

    below_waist: float | None = None
    height: float | None = None
    down_tape: float | None = None


@record(frozen=True, slots=True)
class Graded:
    """A value at the top hoop and at the lowest one; even with height in between."""

    top: float
    low: float

    def at(self, share: float) -> float:
        """The value at a share of the height from the top hoop (0) to the lowest (1)."""
        return self.top if self.top == self.low else self.top + (self.low - self.top) * share


@record(frozen=True, slots=True)
class HalfPlan:
    """Half hoops behind the body. ``chord``: between the ends of a hoop; ``reach``: how far its middle stands
    behind the chord (None: it follows from the hem's girth); ``set_back``: how far the chord lies behind
    the waist's centre (None: the ends rest on the body); m. The lowest ``full`` hoops go all round, ovals
    of width over depth ``full_oval``."""

    chord: Graded
    reach: Graded | None
    set_back: Graded | None = None
    full: int = 0
    full_oval: float = 1.0


@record(frozen=True, slots=True)
class SideHoop:
    """A hoop of a pair: ``drop`` below the waistline at the side, ``reach`` beyond the hip, m."""

    drop: float
    reach: float


@record(frozen=True, slots=True)
class PairPlan:
    """Side hoops, alike on both sides: half ovals ``front_to_back`` m deep where they lie on the hip, the
    ``hoops`` from the top."""

    front_to_back: float
    hoops: tuple[SideHoop, ...]


@record(frozen=True, slots=True)
class GroundPlan:
    """The outline from above. ``oval``: width over depth; ``set_back``: how far the centre lies behind the
    waist's centre, m; ``reach``: how far the hem reaches in front of and behind the waist's centre, m, when
    that is stated instead of the two. ``half`` is set for half hoops only, ``pair`` for side hoops."""

    kind: PlanKind = "round"
    oval: Graded = Graded(1.0, 1.0)
    set_back: Graded = Graded(0.0, 0.0)
    reach: tuple[float, float] | None = None
    half: HalfPlan | None = None
    pair: PairPlan | None = None


@record(frozen=True, slots=True)
class Opening:
    """The upper ``hoops`` are open in front. ``gap``: opening along the hoop's line, m (None: from the first
    tape to the last); ``straps``: whether a strap across each opening holds its ends."""

    hoops: int
    gap: Graded | None
    straps: bool


@record(frozen=True, slots=True)
class ShapeSpec:
    """The wished shape. ``hem_off_floor`` is to the lower edge of the hem hoop.

    ``listed`` holds the hoops above the hem hoop (and above the band's upper hoop), from the top,
    when ``spacing`` is ``listed``. ``names`` may be shorter than ``count``; a blank keeps H1, H2 ...
    """

    ground_plan: GroundPlan
    line: Line
    top_hoop: PlaceListed
    top_girth: float | None
    hem_girth: float
    hem_off_floor: float
    count: int
    spacing: Spacing
    ratio: float
    listed: tuple[PlaceListed, ...] = ()
    names: tuple[str, ...] = ()
    opening: Opening | None = None
    every: float = 0.0  # from hoop to hoop up the cloth, m, when ``spacing`` is ``from hem``


@record(frozen=True, slots=True)
class HoopBuild:
    """What hoops are made of and how they are closed. ``casing`` is None for a bare hoop; ``splices`` is how
    many splices, each a join of the same kind, one hoop may have; ``formed`` is None where nothing is said of
    it: then hoops are sprung, and cane that closing would set is bent wet."""

    material: Stock
    join: Join
    lap: float
    casing: Goods | None
    splices: int = 0
    formed: Literal["sprung", "pre-formed"] | None = None


@record(frozen=True, slots=True)
class TapeBuild:
    """The tapes that carry the hoops.

    ``waist_fractions`` and ``hem_fractions``: fractions of girth from centre front by the wearer's
    left, ascending, one a tape.
    """

    material: Goods
    count: int
    front_gap: float | None
    to: Literal["hem", "band"]
    waist_fractions: tuple[float, ...]
    hem_fractions: tuple[float, ...]


@record(frozen=True, slots=True)
class WaistbandBuild:
    """The waistband: a tape or cloth band closed by a fastening."""

    material: Goods
    width: float
    overlap: float
    ease: float
    fastening: Goods


@record(frozen=True, slots=True)
class BandBuild:
    """The hem band: cloth folded double between the two lowest hoops.

    ``depth`` is between the two hoops' centres. ``cut_height`` is the maker's own rule, or None.
    """

    material: Goods
    depth: float
    grain: Literal["along", "across", "either"]
    cut_height: float | None


@record(frozen=True, slots=True)
class TieBuild:
    """Ties across the hoops, of ``material``: ``count`` beside each other on every hoop that needs any (0: as
    many as the oval asks for)."""

    material: Goods
    count: int


@record(frozen=True, slots=True)
class HipTieBuild:
    """Tapes from the front of a hoop round behind the hips, which hold a back-heavy cage off the legs: one on
    each of ``count`` hoops, from the one nearest the hips downward."""

    material: Goods
    count: int


@record(frozen=True, slots=True)
class LacingBuild:
    """A lacing inside half hoops: two panels of ``material`` at their ends, laced to each other with ``cord``
    through eyelets ``spacing`` m apart, ``gap`` m between the panels as laced. It sets the chord."""

    material: Goods
    cord: Goods
    gap: float
    spacing: float


@record(frozen=True, slots=True)
class ChannelBuild:
    """The channels of a petticoat. ``material``: cloth or tape of applied casings, None for tucks.
    ``feed_gap``: length of the opening in each through which its hoop goes in; ``turning``: turned in on
    each edge of a casing; m."""

    kind: Literal["tuck", "applied casing"]
    material: Goods | None
    feed_gap: float
    turning: float


@record(frozen=True, slots=True)
class FlounceBuild:
    """A gathered strip round the petticoat: ``depth`` finished, its lower edge ``above_hem`` m above the
    hoop of the hem; ``fullness``: its length over the girth there. ``cut_height`` is the maker's own rule, or
    None."""

    material: Goods
    depth: float
    fullness: float
    above_hem: float
    cut_height: float | None


@record(frozen=True, slots=True)
class PanelBuild:
    """The petticoat's cloth: ``count`` gores, or straight breadths. ``top``: girth of its upper edge before
    it is gathered, ``placket``: length of the opening below the waist, m. ``cord`` is set where a drawstring
    closes it. ``gore``: the maker's own finished widths at top and hem, m, or None."""

    kind: Literal["gores", "breadths"]
    count: int
    material: Goods
    top: float
    placket: float
    cord: Goods | None
    gore: tuple[float, float] | None = None


@record(frozen=True, slots=True)
class WheelBuild:
    """A wheel at the waist, ``width`` m across. ``set_back``: its centre behind the waist's; ``tilt``: its
    back raised about the waist's centre, radians; ``rim_drop``: the rim below the hole, square to the wheel;
    m. ``rings`` from the hole to the rim, both counted. ``roll`` m thick and ``roll_length`` m long lies
    under
    it, of ``roll_material``. ``slit``: of the cover from its hole to the front (None: to the first ring that
    passes over the hips)."""

    width: float
    set_back: float
    tilt: float
    rim_drop: float
    rings: int
    spokes: int
    roll: float
    roll_length: float
    roll_material: Goods
    cover: Goods
    slit: float | None


@record(frozen=True, slots=True)
class SideBuild:
    """The cloth of side hoops: ``on_band`` of the waistband for each, its middle at the fraction ``at`` of
    the waist by the wearer's left; ``pocket`` length of the slit (None: as long as there is room, 8 in at
    most); a steel ``shorter`` than its channel; m. ``tie`` inside, of that tape."""

    material: Goods
    tie: Goods
    on_band: float
    at: float
    pocket: float | None
    shorter: float


@record(frozen=True, slots=True)
class Build:
    """How the cage is built. What carries the hoops says which of the optional parts there are: ``tapes``
    for tapes. Parts of other carriers stand beside it, each with None as its default."""

    carried_by: Carrier
    hoops: HoopBuild
    tapes: TapeBuild | None
    waistband: WaistbandBuild
    band: BandBuild | None
    ties: TieBuild | None = None
    lacing: LacingBuild | None = None
    hip_ties: HipTieBuild | None = None
    channels: ChannelBuild | None = None
    panels: PanelBuild | None = None
    flounces: tuple[FlounceBuild, ...] = ()
    wheel: WheelBuild | None = None
    sides: SideBuild | None = None


@record(frozen=True, slots=True)
class Layer:
    """Something worn over or hung from the cage.

    ``mass`` in kg is resolved from weight, or from area and areal density. ``heights`` (m above the
    floor) is used by ``flounced`` only. ``cloth``, ``area`` are set when ``buy`` is true.
    ``gathered``: a petticoat under the skirt, which stands off and asks for more skirt length.
    """

    name: str
    mass: float
    hang: Literal["straight", "gored", "flounced"]
    heights: tuple[float, ...] = ()
    cloth: Goods | None = None
    area: float | None = None
    buy: bool = False
    gathered: bool = False


@record(frozen=True, slots=True)
class Allowances:
    """Every allowance, tolerance and cutting default, m unless said otherwise."""

    seam: float = 0.0127
    waistband_turning: float = 0.0127
    casing_end: float = 0.0127
    braid_take_up: float = 0.08  # share of the girth
    band_join: float = 0.0
    band_ease: float = 0.00635
    kerf: float = 0.0015875
    end_trim: float = 0.0
    smallest_offcut: float = 0.3048
    splice_shortest: float = 0.3048
    tape_top: float = 0.0381
    tape_hem: float = 0.0381
    tape_reserve: float = 0.0762
    tape_stretch: float = 3000.0  # EA, N
    hoop_tolerance: float = 0.00635
    tape_tolerance: float = 0.003175
    hem_tolerance: float = 0.00635
    small_stuff_reserve: float = 0.10  # share
    money_reserve: float = 0.10  # share


@record(frozen=True, slots=True)
class Chair:
    """A chair: ``height`` of its seat above the floor, ``depth`` of the seat, m."""

    height: float = 0.45
    depth: float = 0.43


@record(frozen=True, slots=True)
class Limits:
    """What the cage is judged against. None means no such check beyond the note."""

    budget: Decimal | None = None
    currency: str | None = None
    door: float | None = None
    weight: float | None = None
    sag: float = 0.0127
    out_of_round: float = 0.03  # share of the diameter
    factor: float = 2.5
    stress_worn: float = 0.6  # share of the elastic limit
    stress_door: float = 0.9
    swing: float = 0.0508
    chair: Chair = Chair()
    car: float = 0.508  # room across on the back seat
    bag: float = 0.6096  # hoops wider than this are folded into three


@record(frozen=True, slots=True)
class Worker:
    """Somebody who works on it. ``skills`` None: knows everything."""

    name: str
    skills: tuple[str, ...] | None = None


@record(frozen=True, slots=True)
class Workshop:
    """Tools at hand (None: no tool check), session length in minutes, paper for gauges.

    ``hands`` is empty for one maker. ``rates`` are the workshop's own, minutes by rate; ``counts``: how many
    there are of a tool, where more than one.
    """

    tools: tuple[str, ...] | None
    session: float
    helper: bool
    paper: Literal["A4", "letter"]
    hands: tuple[Worker, ...] = ()
    order: Literal["built-in", "exact"] = "built-in"
    rates: Mapping[str, float] = field(default_factory=dict)
    counts: Mapping[str, int] = field(default_factory=dict)


@record(frozen=True, slots=True)
class Progress:
    """Work done: ids of tasks, and lengths cut by part, m. Parts may have gone from the design since."""

    done: tuple[str, ...] = ()
    cut: Mapping[str, float] = field(default_factory=dict)


@record(frozen=True, slots=True)
class Fitting:
    """What was measured when it was tried on, on a day written year-month-day; m.

    ``hem``: lower edge of the hem hoop above the floor, by tape; ``same`` tells that one height was written
    for all tapes. ``hoop_heights``: of a hoop's middle above the floor; ``hoop_girths``: as made; ``waist``:
    the waistband as closed. ``path`` is where it stands in the spec.
    """

    on: str
    hem: Mapping[str, float]
    same: bool
    hoop_heights: Mapping[str, float]
    hoop_girths: Mapping[str, float]
    waist: float | None
    notes: str
    path: Path


@record(frozen=True, slots=True)
class Spec:
    """One design, checked and complete.

    ``currency`` is the one currency of all prices, or None when nothing has a price. ``goods`` and
    ``stocks`` hold every material the build can name, by name. ``assumed`` is sorted by path.
    ``stated`` is the set of dotted paths the maker wrote. ``shops`` tells what a delivery from each costs.
    When several materials are offered for one use, ``offered`` names those this design takes, and
    ``substitutes`` are the same design with the others, in the maker's order.
    """

    title: str
    units: Units
    wearer: Wearer
    shape: ShapeSpec
    build: Build
    load: tuple[Layer, ...]
    skirt_off_floor: float
    stocks: Mapping[str, Stock]
    goods: Mapping[str, Goods]
    allowances: Allowances
    limits: Limits
    workshop: Workshop
    currency: str | None
    assumed: tuple[Assumed, ...] = ()
    stated: frozenset[str] = frozenset()
    paths: Mapping[str, Path] = field(default_factory=dict)
    shops: Mapping[str, Decimal] = field(default_factory=dict)
    offered: tuple[str, ...] = ()
    substitutes: tuple[Spec, ...] = ()
    progress: Progress = Progress()
    fittings: tuple[Fitting, ...] = ()
