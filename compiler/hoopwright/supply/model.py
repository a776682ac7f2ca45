"""What to buy and how to cut it. Lengths m, money Decimal."""

from __future__ import annotations

from decimal import Decimal
from typing import Literal

from hoopwright.source.record import record
from hoopwright.spec.check import Check

_NOISE = 1e-9


@record(frozen=True, slots=True)
class CutPiece:
    """A piece to cut from a length: which part, how long, m. A spliced part has several ``shares``, each
    with its laps; ``share`` counts them from 1."""

    part: str
    length: float
    share: int = 1
    shares: int = 1

    @property
    def label(self) -> str:
        """``H7``, or ``H7 (1 of 2)`` for a length of a spliced part."""
        return self.part if self.shares == 1 else f"{self.part} ({self.share} of {self.shares})"


@record(frozen=True, slots=True)
class CutPack:
    """One coil, hank or offcut, ``pack`` m long in the shop, and the pieces cut from it, in cutting order.

    ``washed`` is what is counted on of it, m: less than ``pack`` when it is bought and shrinks in its first wash.
    ``left`` m of that remain.
    """

    material: str
    pack: float
    origin: Literal["bought", "on hand"]
    pieces: tuple[CutPiece, ...]
    left: float
    washed: float

    @property
    def shrinks(self) -> bool:
        """Whether less is counted on than is bought."""
        return self.washed < self.pack - _NOISE


@record(frozen=True, slots=True)
class Splicing:
    """What splices do: how many, in which parts; ``saves`` on the stock against the cheapest plan without
    them (None when there is none, or a price is missing); ``cost`` of what they use up."""

    parts: tuple[str, ...]
    count: int
    saves: Decimal | None
    cost: Decimal


@record(frozen=True, slots=True)
class Cutting:
    """All packs of all goods cut in lengths. ``gap``: share of cost above the proven bound (0 when
    proven)."""

    packs: tuple[CutPack, ...]
    proven: bool
    gap: float
    splicing: Splicing | None = None


@record(frozen=True, slots=True)
class Placement:
    """A piece of cloth in its box: part, x across the width from one selvage, y along the length, m.
    ``turned``: grain across. ``outline``: its corners where it is no rectangle."""

    part: str
    x: float
    y: float
    width: float
    height: float
    turned: bool = False
    outline: tuple[tuple[float, float], ...] = ()


@record(frozen=True, slots=True)
class ClothLayout:
    """Pieces laid on a cloth ``width`` m wide when washed. ``need`` is the least length to ask for, ``buy`` that in
    shop steps, ``washed`` what is counted on of ``buy`` after the first wash (of a piece on hand, ``need``), m.

    A band is cut ``along`` or ``across`` the cloth in so many ``strips`` with so many ``joins``; ``other_way`` is the
    length the other direction would need, m (None when it cannot be laid so). ``proven``: no layout buys less.
    """

    material: str
    width: float
    direction: Literal["along", "across"]
    strips: int
    joins: int
    need: float
    buy: float
    other_way: float | None
    placements: tuple[Placement, ...]
    proven: bool
    washed: float

    @property
    def shrinks(self) -> bool:
        """Whether less is counted on than is bought."""
        return 0 < self.washed < self.buy - _NOISE

    def after_wash(self, length: float) -> float:
        """What a length in the shop is counted on when washed, m; of a piece on hand, which is washed, all of it."""
        return length * self.washed / self.buy if self.buy else length

    @property
    def longer_way(self) -> float | None:
        """``other_way`` where it takes more cloth than this one, m: worth saying to a maker who would turn it."""
        return self.other_way if self.other_way is not None and self.other_way > self.need else None


@record(frozen=True, slots=True)
class ShoppingLine:
    """A line of the shopping list.

    ``packs`` is the number of packs, steps or sets of pieces bought; one is ``pack_length`` m (0 for pieces) or
    ``pack_count`` pieces (0 for lengths). ``price`` for one pack and ``cost`` of all; None when unknown. ``need`` is
    the amount needed before rounding up (m once washed, or pieces), reserve included, ``on_hand`` what is taken from
    the cupboard.
    ``uses`` are part ids or words. ``shrinkage`` is the share of a length lost in the first wash.
    """

    item: str
    kind: str
    packs: int
    pack_length: float
    pack_count: int
    price: Decimal | None
    cost: Decimal | None
    need: float
    on_hand: float
    uses: tuple[str, ...]
    shrinkage: float = 0.0

    @property
    def asked(self) -> float:
        """``need`` as the shop has it, before the first wash."""
        return self.need / (1 - self.shrinkage)

    @property
    def washed(self) -> float | None:
        """What is counted on of all that is bought by length, m; None where the first wash takes nothing."""
        return self.packs * self.pack_length * (1 - self.shrinkage) if self.shrinkage and self.pack_length else None


@record(frozen=True, slots=True)
class Cost:
    """``total`` = sum of the list; ``reserve`` on top; ``budget`` compared with both. ``missing``:
    items without a price."""

    total: Decimal
    reserve: Decimal
    budget: Decimal | None
    currency: str | None
    missing: tuple[str, ...]

    @property
    def partial(self) -> bool:
        """Whether something to be bought has no price."""
        return bool(self.missing)


@record(frozen=True, slots=True)
class ToolNeed:
    """A tool the work asks for that the workshop does not list: any of ``choices`` will do."""

    choices: tuple[str, ...]
    purpose: str


@record(frozen=True, slots=True)
class Salvage:
    """What becomes of a piece that was cut: ``kept`` as it is, ``recut`` shorter for its own part, it
    ``becomes`` another one, or it is ``spare``.

    ``part`` is what it was cut for, ``serves`` the part it serves now (blank when spare) and ``need`` the
    length that part wants, m; of a spare piece the length its own part wants, 0 when that has gone.
    """

    part: str
    length: float
    fate: Literal["kept", "recut", "becomes", "spare"]
    serves: str
    need: float


@record(frozen=True, slots=True)
class Mending:
    """What was cut held against what is wanted now.

    Each piece's fate, what must be cut anew, what of that must be bought (spare pieces used first), and what
    it costs at most; None when a price is missing.
    """

    pieces: tuple[Salvage, ...]
    anew: tuple[CutPiece, ...]
    lines: tuple[ShoppingLine, ...]
    cost: Decimal | None

    @property
    def needed(self) -> bool:
        """Whether anything cut no longer serves its own part as it is."""
        return any(piece.fate != "kept" for piece in self.pieces)


@record(frozen=True, slots=True)
class Supply:
    """Cut lists, cloth layouts, shopping list, cost."""

    cutting: Cutting
    layouts: tuple[ClothLayout, ...]
    shopping: tuple[ShoppingLine, ...]
    cost: Cost
    tools_missing: tuple[ToolNeed, ...]
    checks: tuple[Check, ...] = ()
    mending: Mending | None = None
