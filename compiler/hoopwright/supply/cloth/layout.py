"""The entries: parts and a cloth in, the layout that buys least out."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import ROUND_HALF_UP, Decimal
from math import ceil

from hoopwright.supply.cloth.boxes import Shape, metres
from hoopwright.supply.cloth.check import check_cloth, usable_units
from hoopwright.supply.cloth.model import (
    Band,
    BandWay,
    Cloth,
    ClothFailure,
    ClothPart,
    ClothPlan,
    ClothShort,
    Placement,
    Remnant,
    Sheet,
    Way,
)
from hoopwright.supply.cloth.search import Found, Task, bound, search
from hoopwright.supply.cloth.skyline import Laid
from hoopwright.supply.cutting.stock import UNIT

_CENT = Decimal("0.01")


def lay_out(
    parts: Sequence[ClothPart], cloth: Cloth, remnants: Sequence[Remnant] = ()
) -> ClothPlan | ClothFailure:
    """Lay parts on a cloth so that the least is bought, then with the fewest joins, then on the least length.

    Lengths in m. Remnants (of the same cloth) are used when that buys less or saves joins. Pure; a bad part
    or cloth gives a ClothFailure, never an exception. The order of the parts does not matter.
    """
    problems = check_cloth(parts, cloth, remnants)
    if problems:
        return ClothFailure(problems)
    ordered = tuple(sorted(parts, key=lambda p: p.part))
    step = cloth.step * (1 - cloth.shrink_along) / UNIT
    task = Task(ordered, usable_units(cloth), cloth.nap, tuple(remnants), step)
    best = search(task)
    if best is None:
        return ClothFailure(())
    plan = _to_plan(task, cloth, best)
    if cloth.most is not None and plan.buy > cloth.most + 1e-9:
        return ClothFailure((ClothShort(cloth.name, plan.needed, cloth.most),))
    return plan


def _to_plan(task: Task, cloth: Cloth, best: Found) -> ClothPlan:
    kept = 1 - cloth.shrink_along
    used = metres(best.layout.length)
    buy = round(best.steps * cloth.step, 7)
    lower = bound(task)
    proven = best.steps == 0 or (not task.remnants and ceil((lower - 0.5) / task.step) >= best.steps)
    sheets = [
        _sheet("on hand", s.remnant.name, s.remnant.width, s.remnant.length, s.laid) for s in best.scraps
    ]
    if best.layout.laid:
        sheets.append(_sheet("bought", cloth.name, metres(task.usable), used, best.layout.laid))
    return ClothPlan(
        cloth=cloth,
        sheets=tuple(sheets),
        bands=tuple(
            BandWay(b.band.part, b.way, tuple(metres(x) for x in b.strips), b.joins, b.copy)
            for b in best.bands
        ),
        used=used,
        needed=round(used / kept, 7),
        buy=buy,
        cost=_cost(cloth, buy),
        joins=best.joins,
        lower_bound=0.0 if task.remnants else metres(lower),
        proven=proven,
        used_crosswise=_used(task, "crosswise"),
        used_lengthwise=_used(task, "lengthwise"),
    )


def _used(task: Task, way: Way) -> float | None:
    """Least length found with every band cut one way; None when there is no band or one may not be cut so."""
    if not any(isinstance(p, Band) for p in task.parts):
        return None
    found = search(task, way)
    return None if found is None else metres(found.layout.length)


def _cost(cloth: Cloth, buy: float) -> Decimal | None:
    """Money for the length bought, rounded to a hundredth; None without a price."""
    if cloth.price is None:
        return None
    share = Decimal(repr(buy)) / Decimal(repr(cloth.per))
    return (cloth.price * share).quantize(_CENT, ROUND_HALF_UP)


def _sheet(source: str, name: str, width: float, length: float, laid: Sequence[Laid]) -> Sheet:
    placements = [_placement(spot, shape) for spot in laid for shape in spot.box.shapes]
    placements.sort(key=lambda p: (p.y, p.x, p.part, p.copy, p.piece))
    return Sheet("bought" if source == "bought" else "on hand", name, width, length, tuple(placements))


def _placement(spot: Laid, shape: Shape) -> Placement:
    left, low = spot.x + shape.dx, spot.y
    middle, high = left + shape.width / 2, spot.y + shape.height
    outline = (
        (middle - shape.lower / 2, low),
        (middle + shape.lower / 2, low),
        (middle + shape.upper / 2, high),
        (middle - shape.upper / 2, high),
    )
    return Placement(
        part=shape.part,
        copy=shape.copy,
        piece=shape.piece,
        x=metres(left),
        y=metres(low),
        width=metres(shape.width),
        height=metres(shape.height),
        turned=shape.turned,
        flipped=shape.flipped,
        outline=tuple((metres(x), metres(y)) for x, y in outline),
    )
