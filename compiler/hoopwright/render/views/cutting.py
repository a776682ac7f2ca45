"""The cutting plan: lengths, packs, the check sum over printed values, and cloth."""

from __future__ import annotations

import math

from hoopwright.plan.model import Plan
from hoopwright.render.quantities import Printer, exact_length
from hoopwright.render.views.parts import HoopView, TapeView
from hoopwright.render.views.splicing import SplicingView, splicing_view
from hoopwright.render.words import counted, even, ids_text, listed
from hoopwright.source.printed import share_text
from hoopwright.source.record import record
from hoopwright.spec.model import Spec
from hoopwright.supply.model import ClothLayout, CutPack
from hoopwright.supply.needs import waist_part


@record(frozen=True, slots=True)
class PackRow:
    """One coil, roll or offcut: where it comes from, the pieces in cutting order, what is left."""

    material: str
    pack: str
    pieces: str
    left: str


@record(frozen=True, slots=True)
class ClothRow:
    """One cloth: the pieces with their sizes, how they lie, what is ``taken``: bought and needed, or on hand."""

    material: str
    width: str
    pieces: tuple[str, ...]
    lie: str
    taken: str
    other: str


@record(frozen=True, slots=True)
class Cutting:
    """The chapter. ``check_sum`` adds the printed cut lengths of all hoops."""

    hoops: tuple[HoopView, ...]
    check_sum: str
    packs: tuple[PackRow, ...]
    kerf: str
    trim: str
    gap: str
    splicing: SplicingView | None
    tape_rows: tuple[tuple[str, str], ...]
    waistband: str
    waist_part: str
    cloth: tuple[ClothRow, ...]
    has_casing: bool
    joined: bool


def cutting_view(plan: Plan, hoops: dict[str, HoopView], tapes: dict[str, TapeView]) -> Cutting:
    """The cutting plan of a plan."""
    p = Printer.of(plan.spec)
    return Cutting(
        hoops=tuple(hoops.values()),
        check_sum=check_sum(plan),
        packs=tuple(_pack(pack, p) for pack in plan.supply.cutting.packs if pack.pieces),
        kerf=exact_length(plan.spec.allowances.kerf, p.units) if plan.spec.allowances.kerf else "",
        trim=exact_length(plan.spec.allowances.end_trim, p.units) if plan.spec.allowances.end_trim else "",
        gap=_gap(plan),
        splicing=splicing_view(plan, p),
        tape_rows=_tape_rows(tuple(tapes.values())),
        waistband=p.length(plan.shape.waistband.cut),
        waist_part=waist_part(plan.shape),
        cloth=tuple(_cloth(layout, p, plan.spec) for layout in plan.supply.layouts),
        has_casing=any(hoop.casing for hoop in hoops.values()),
        joined=any(hoop.join for hoop in hoops.values()),
    )


def _gap(plan: Plan) -> str:
    """How much cheaper another way of cutting could be at most; blank when this one is proved cheapest."""
    cutting = plan.supply.cutting
    if cutting.proven:
        return ""
    return share_text(math.ceil(cutting.gap * 1000) / 1000) if cutting.gap > 0 else "an unknown share"


def check_sum(plan: Plan) -> str:
    """``seven hoops end to end = 53 ft 5 in``: the sum of the lengths as printed, so that a maker who
    adds up the table gets this very number."""
    p = Printer.of(plan.spec)
    total = sum(p.printed(hoop.cut) for hoop in plan.shape.hoops)
    return f"{counted(len(plan.shape.hoops), 'hoop')} end to end = {p.long(total)}"


def _pack(pack: CutPack, p: Printer) -> PackRow:
    origin = "on hand" if pack.origin == "on hand" else "to buy"
    return PackRow(
        material=pack.material,
        pack=f"{p.long(pack.pack)}, {origin}{washed_text(pack, p)}",
        pieces=" · ".join(_pieces(pack, p)),
        left=p.long(pack.left) if p.printed(pack.left) > 0 else "nothing",
    )


def _pieces(pack: CutPack, p: Printer) -> tuple[str, ...]:
    """The pieces in cutting order; rows of cord of one length are drawn together."""
    rows = [piece for piece in pack.pieces if piece.label[:1] == "C" and piece.label[1:].isdigit()]
    said: list[str] = []
    if len({p.length(piece.length) for piece in rows}) == 1:
        ids = ids_text(f"C{number}" for number in sorted(int(piece.label[1:]) for piece in rows))
        said.append(f"{ids} {p.length(rows[0].length)}{' each' if len(rows) > 1 else ''}")
    else:
        rows = []
    return (*said, *(f"{piece.label} {p.length(piece.length)}" for piece in pack.pieces if piece not in rows))


def _tape_rows(tapes: tuple[TapeView, ...]) -> tuple[tuple[str, str], ...]:
    """(ids, length), tapes of one printed length together."""
    if not tapes:
        return ()
    if even([tape.cut for tape in tapes]):
        return ((f"{ids_text(tape.id for tape in tapes)}, each", tapes[0].cut),)
    groups: dict[str, list[str]] = {}
    for tape in tapes:
        groups.setdefault(tape.cut, []).append(tape.id)
    return tuple((ids_text(ids), cut) for cut, ids in groups.items())


def _cloth(layout: ClothLayout, p: Printer, spec: Spec) -> ClothRow:
    counts: dict[tuple[str, str], int] = {}
    for piece in layout.placements:
        long, short = max(piece.width, piece.height), min(piece.width, piece.height)
        key = (piece.part, f"{p.length(short)} × {p.length(long)}")
        counts[key] = counts.get(key, 0) + 1
    parts: dict[str, list[str]] = {}
    for (part, size), count in counts.items():
        parts.setdefault(part, []).append(f"{counted(count, 'piece')} of {size}")
    joins = f", {counted(layout.joins, 'join')} in all" if layout.joins else ""
    return ClothRow(
        material=layout.material,
        width=f"{p.length(layout.width)} wide" + (" once washed" if _washed(layout, spec) else ""),
        pieces=tuple(f"{part}: {listed(said)}" for part, said in parts.items()),
        lie=f"strips {layout.direction} the cloth{joins}" if layout.strips else "",
        taken=taken_text(layout, p),
        other=p.long(layout.after_wash(layout.longer_way))
        if layout.longer_way is not None and layout.buy > 0 else "",
    )


def washed_text(bought: CutPack | ClothLayout, p: Printer) -> str:
    """``, 9.70 m once washed`` after what is bought; blank where the first wash takes nothing."""
    return f", {p.long(bought.washed)} once washed" if bought.shrinks else ""


def taken_text(layout: ClothLayout, p: Printer) -> str:
    """``buy 1.2 m, 1.16 m once washed; 1.10 m of it is needed``."""
    need = p.long(layout.after_wash(layout.need))
    if layout.buy <= 0:
        return f"{need} of a piece on hand"
    return f"buy {p.shop(layout.buy)}{washed_text(layout, p)}; {need} of it is needed"


def _washed(layout: ClothLayout, spec: Spec) -> bool:
    """Whether the cloth is narrower than as it is sold, by what the first wash takes."""
    goods = spec.goods.get(layout.material)
    return layout.buy > 0 and goods is not None and goods.shrinkage > 0 and layout.width < goods.width - 1e-6
