"""What the cutting of lengths reads and writes: plain frozen values, lengths in metres, money in Decimal."""

from __future__ import annotations

from decimal import Decimal
from typing import Literal

from hoopwright.source.record import record

Source = Literal["bought", "on hand"]
Measure = Literal["cost", "length"]


@record(frozen=True, slots=True)
class Piece:
    """One length to be cut: `part` is its label (unique within an order), `length` in m, laps included.

    `spliceable` is False for a part that must stay in one piece even when the order allows splices.
    """

    part: str
    length: float
    spliceable: bool = True


@record(frozen=True, slots=True)
class Pack:
    """One offer of a shop: `length` in m, `price` of one pack (None: not known), `available` (None: no
    limit)."""

    length: float
    price: Decimal | None = None
    available: int | None = None
    name: str = ""


@record(frozen=True, slots=True)
class SpliceRule:
    """Permission to make a piece of up to `most` + 1 lengths.

    Each splice takes `lap` m more stock, `cost` money and `minutes` of work; no length of a spliced piece is
    shorter than `shortest` m, its laps included.
    """

    lap: float
    cost: Decimal = Decimal(0)
    minutes: float = 0.0
    most: int = 1
    shortest: float = 0.3048


@record(frozen=True, slots=True)
class CuttingRules:
    """Shop-floor rules, all in m.

    `kerf` is lost at every cut; a piece that takes exactly what remains needs no cut, and a remainder
    thinner than the kerf is lost with it. `trim` is taken once off every length that is cut into, bought or
    on hand. A remainder of at least `useful` goes back into the cupboard; a shorter one is waste.
    """

    kerf: float = 0.0
    trim: float = 0.0
    useful: float = 0.3048
    splice: SpliceRule | None = None


@record(frozen=True, slots=True)
class CuttingOrder:
    """All that one material needs: pieces, offers of the shops, lengths on hand (m, free) and rules."""

    pieces: tuple[Piece, ...]
    packs: tuple[Pack, ...] = ()
    on_hand: tuple[float, ...] = ()
    rules: CuttingRules = CuttingRules()


@record(frozen=True, slots=True)
class WorkLimits:
    """How much search is allowed, counted in steps and never in seconds, so that the result is the same
    everywhere."""

    nodes: int = 80_000
    columns: int = 20_000
    solver_nodes: int = 20_000


@record(frozen=True, slots=True)
class CutPiece:
    """A piece, or the `share`-th of `shares` lengths of a spliced piece; `length` in m as it is cut."""

    part: str
    length: float
    share: int = 1
    shares: int = 1


@record(frozen=True, slots=True)
class CutPack:
    """One length that is cut into: `length` and `left` in m, `offer` the bought Pack (None when on hand)."""

    length: float
    source: Source
    pieces: tuple[CutPiece, ...]
    left: float
    offer: Pack | None = None


@record(frozen=True, slots=True)
class Bought:
    """How many packs of one offer are bought, and what they cost together (None: price not known)."""

    pack: Pack
    count: int
    cost: Decimal | None


@record(frozen=True, slots=True)
class SpliceReport:
    """What splicing does: `count` splices, `saves` against the best plan without them (before `cost`, the
    money they take; None when there is no plan without them or a price is missing), and `minutes` of
    work."""

    count: int
    parts: tuple[str, ...]
    saves: Decimal | None
    cost: Decimal
    minutes: float


@record(frozen=True, slots=True)
class CuttingPlan:
    """How to cut. See `hoopwright.supply.cutting` for the order in which plans are compared.

    `cost` is the money for packs alone (None when no price of a bought pack is known), `partial` whether a
    price is missing. `measure` says what was minimised: "cost", or "length" bought when a price is missing.
    `lower_bound` is in the unit of the measure (money, or metres) and includes splices' money; `objective`
    likewise. `gap` = (objective - lower_bound) / objective, 0 when `proven`. `waste`, `longest_left` in m;
    `waste_proven` tells whether those two are proven as well. `steps` is the work spent, `method` the
    argument that proves it.
    """

    packs: tuple[CutPack, ...]
    bought: tuple[Bought, ...]
    cost: Decimal | None
    partial: bool
    measure: Measure
    objective: Decimal
    lower_bound: Decimal
    proven: bool
    gap: float
    waste: float
    longest_left: float
    waste_proven: bool
    method: str
    steps: int
    splices: SpliceReport | None = None


@record(frozen=True, slots=True)
class TooLong:
    """A piece that no length at hand or for sale can give: `longest` (m) is the longest usable one, `splices`
    how many splices would mend it with the order's splice rule or a lapless join (None: none can)."""

    part: str
    length: float
    longest: float
    splices: int | None


@record(frozen=True, slots=True)
class NotEnough:
    """All limited packs and all stock on hand together do not hold the pieces; `missing` m at least (0: no
    arrangement fits)."""

    needed: float
    available: float
    missing: float


@record(frozen=True, slots=True)
class BadOrder:
    """A value no shop or bench has: which one, and why."""

    what: str
    why: str


CuttingProblem = TooLong | NotEnough | BadOrder


@record(frozen=True, slots=True)
class CuttingFailure:
    """No plan: every reason found, in a stated order (bad values, then pieces by part, then stock)."""

    problems: tuple[CuttingProblem, ...]
