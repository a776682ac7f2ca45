"""What was cut, held against what is wanted now: what is kept, recut, serves elsewhere, or is cut anew.

Pieces that still fit are kept. Then the longest part still wanted takes the shortest of the other pieces that
is long enough, and so on downward. Whatever is long enough for a part is so for every shorter one, so that
this serves the most parts there can be, with the least waste for those. What is left over goes to the cutting
of the parts to be made anew as stock on hand. Cost is told at the most: what is left of coils bought earlier
is not known, and may do.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import replace
from decimal import Decimal

from hoopwright.shape.model import Shape
from hoopwright.source.diagnostic import Finding, warning
from hoopwright.source.printed import length_text
from hoopwright.spec.model import Spec
from hoopwright.supply.cutting.model import CuttingFailure
from hoopwright.supply.lengths import cut_need
from hoopwright.supply.model import CutPiece, Mending, Salvage, ShoppingLine
from hoopwright.supply.needs import LengthNeed, length_needs

_NUMBERED = frozenset(("H", "T", "C", "S", "L", "R", "casing H"))
_NOISE = 1e-6
_LEAST = 0.05


def mend(spec: Spec, shape: Shape, cut: Mapping[str, float], done: Collection[str] = ()) -> Mending:
    """Every piece of ``cut`` (part -> length, m) and its fate in this design.

    Parts that are not in ``cut`` are not yet cut, unless their task is in ``done``; nothing is said of them.
    """
    pieces: list[Salvage] = []
    anew: list[CutPiece] = []
    lines: list[ShoppingLine] = []
    cost: Decimal | None = Decimal(0)
    for need in length_needs(spec, shape):
        own = {part: length for part, length in cut.items() if _is_of(part, need)}
        if not own:
            continue
        fates, missing = _assigned(own, need, spec, done)
        pieces += fates
        anew += missing
        if missing:
            more, price = _bought(need, missing, fates, spec)
            lines += more
            cost = None if cost is None or price is None else cost + price
    return Mending(tuple(pieces), tuple(anew), tuple(lines), cost)


def _is_of(part: str, need: LengthNeed) -> bool:
    """Whether a piece is of the material of ``need``: cut for one of its parts, or for a numbered hoop or
    tape that has gone since."""
    parts = [piece.part for piece in need.pieces]
    return part in parts or _family(part) in _NUMBERED.intersection(map(_family, parts))


def _family(part: str) -> str:
    """``H`` for H7, ``T`` for T2, ``casing H`` for ``casing H7``; any other name is its own family."""
    return part.rstrip("0123456789") if part[-1:].isdigit() else part


def _assigned(own: Mapping[str, float], need: LengthNeed, spec: Spec,
              done: Collection[str]) -> tuple[list[Salvage], list[CutPiece]]:
    """The fate of each piece, in the order they were noted, and the parts whose piece no longer serves."""
    wanted = {piece.part: piece.length for piece in need.pieces}
    fate: dict[str, Salvage] = {}
    for part, length in own.items():
        if part in wanted and _fits(part, length, wanted[part], spec):
            fate[part] = Salvage(part, length, "kept", part, wanted[part])
    spare = sorted((length, part) for part, length in own.items() if part not in fate)
    missing: list[CutPiece] = []
    open_parts = [part for part in wanted if part not in fate and not _done_unmeasured(part, own, done)]
    for part in sorted(open_parts, key=lambda name: (-round(wanted[name], 6), name not in own, name)):
        enough = [one for one in spare if one[0] >= wanted[part] - _tolerance(part, wanted[part], spec)]
        if enough:
            best = _own_first(enough, part)
            spare.remove(best)
            own_part = best[1] == part
            fate[best[1]] = Salvage(best[1], best[0], "recut" if own_part else "becomes", part, wanted[part])
        elif part in own:
            missing.append(CutPiece(part, wanted[part]))
    for length, part in spare:
        fate[part] = Salvage(part, length, "spare", "", wanted.get(part, 0.0))
    order = {part: index for index, part in enumerate(wanted)}
    return [fate[part] for part in own], sorted(missing, key=lambda piece: order[piece.part])


def _done_unmeasured(part: str, own: Mapping[str, float], done: Collection[str]) -> bool:
    """Whether a part is cut although no length was noted for it."""
    tasks = {"T": "cut-tapes", "C": "cut-cords", "S": "cut-spokes", "casing H": "cut-casings"}
    return part not in own and tasks.get(_family(part), f"cut-{part}") in done


def _own_first(enough: list[tuple[float, str]], part: str) -> tuple[float, str]:
    """The shortest piece that is long enough; the part's own among those as short."""
    shortest = enough[0][0]
    return next((one for one in enough if one[1] == part and one[0] <= shortest + _NOISE), enough[0])


def _fits(part: str, length: float, wanted: float, spec: Spec) -> bool:
    """Whether a piece serves as it is. A tape or a row of cord may have used up its reserve, and is trimmed
    later."""
    short = wanted - length <= _tolerance(part, wanted, spec)
    return short and (_family(part) in ("T", "C") or length - wanted <= _tolerance(part, wanted, spec))


def _tolerance(part: str, wanted: float, spec: Spec) -> float:
    """How much shorter than ``wanted`` a part may be, m: a tape and a row of cord by their reserve."""
    rules, cords = spec.allowances, spec.build.cords
    if _family(part) == "C" and cords is not None:
        return wanted * cords.reserve / (1 + cords.reserve) + _NOISE
    return (rules.tape_reserve if _family(part) == "T" else rules.hoop_tolerance) + _NOISE


def _bought(need: LengthNeed, missing: list[CutPiece], fates: list[Salvage],
            spec: Spec) -> tuple[tuple[ShoppingLine, ...], Decimal | None]:
    """What the parts cut anew want bought, the spare pieces used first."""
    spare = tuple(piece.length for piece in fates if piece.fate == "spare" and piece.length > _LEAST)
    cut = cut_need(replace(need, pieces=tuple(missing), on_hand=spare), spec)
    if isinstance(cut, CuttingFailure):
        return (), None
    costs = [line.cost for line in cut.lines]
    return cut.lines, None if None in costs else sum((one for one in costs if one is not None), Decimal(0))


def mending_findings(mending: Mending | None, spec: Spec) -> tuple[Finding, ...]:
    """A warning at each piece that no longer fits its part, with what becomes of it."""
    if mending is None:
        return ()
    anew = {piece.part for piece in mending.anew}
    return tuple(_told(piece, anew, spec) for piece in mending.pieces if piece.fate != "kept")


def _told(piece: Salvage, anew: set[str], spec: Spec) -> Finding:
    def said(length: float) -> str:
        return length_text(length, spec.units)

    path = ("progress", "cut", piece.part)
    if piece.fate == "recut":
        message = f"{piece.part} was cut {said(piece.length)}, and {said(piece.need)} is wanted now"
        help = f"cut {said(piece.length - piece.need)} off it, then note its new length"
    elif piece.fate == "becomes":
        message = f"what was cut for {piece.part} no longer serves it"
        help = f"make {piece.serves} of it: recut it to {said(piece.need)}, and note it under that name"
    else:
        message = f"what was cut for {piece.part} serves nowhere any more"
        help = f"keep its {said(piece.length)} as stock: take it out of `progress.cut`, add it to `on_hand`"
    notes = (f"{piece.part} is to be cut anew",) if piece.part in anew else ()
    return warning("cut-no-longer-fits", path, message, help, notes=notes, at_key=True)
