"""Whether parts can be laid on a cloth at all."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from math import isfinite

from hoopwright.supply.cloth.bands import ways_to_cut
from hoopwright.supply.cloth.model import (
    BadCloth,
    Band,
    Cloth,
    ClothPart,
    ClothProblem,
    Gore,
    Panel,
    Remnant,
    TooWide,
)
from hoopwright.supply.cutting.stock import UNIT, down, up


def usable_units(cloth: Cloth) -> int:
    """Usable width after washing, in units."""
    return down(cloth.width * (1 - cloth.shrink_across))


def check_cloth(
    parts: Sequence[ClothPart], cloth: Cloth, remnants: Sequence[Remnant]
) -> tuple[ClothProblem, ...]:
    """All problems: bad values first, then parts that do not fit; empty when all is sound."""
    bad = [*_bad_cloth(cloth), *_bad_remnants(remnants), *_bad_parts(parts)]
    if bad:
        return tuple(bad)
    usable = usable_units(cloth)
    found = []
    for part in parts:
        across = _needs_across(part, usable)
        if across is not None:
            found.append(TooWide(part.part, across, usable * UNIT))
    return tuple(found)


def _needs_across(part: ClothPart, usable: int) -> float | None:
    """The width that a part needs and the cloth has not; None when it fits."""
    if isinstance(part, Band):
        return None if ways_to_cut(part, usable) else part.height
    if isinstance(part, Gore):
        across = max(part.top, part.bottom)
    else:
        widths = {"along": part.width, "across": part.height, "either": min(part.width, part.height)}
        across = widths[part.grain]
    return across if up(across) > usable else None


def _bad_cloth(cloth: Cloth) -> list[ClothProblem]:
    found: list[ClothProblem] = []
    for what, value in (("width", cloth.width), ("step", cloth.step), ("length its price is for", cloth.per)):
        if not _positive(value):
            found.append(BadCloth(f"{what} of {cloth.name}", "must be a positive length"))
    for what, share in (("along", cloth.shrink_along), ("across", cloth.shrink_across)):
        if not 0 <= share < 1:
            found.append(BadCloth(f"shrinkage {what} of {cloth.name}", "must be from 0 to below 1"))
    if cloth.price is not None and not (cloth.price.is_finite() and cloth.price > Decimal(0)):
        found.append(BadCloth(f"price of {cloth.name}", "must be above zero"))
    return found


def _bad_remnants(remnants: Sequence[Remnant]) -> list[ClothProblem]:
    return [
        BadCloth(f"remnant {r.name}".strip(), "must have a positive width and length")
        for r in remnants
        if not (_positive(r.width) and _positive(r.length))
    ]


def _bad_parts(parts: Sequence[ClothPart]) -> list[ClothProblem]:
    found: list[ClothProblem] = []
    labels = [p.part for p in parts]
    for label in sorted({x for x in labels if labels.count(x) > 1}):
        found.append(BadCloth(f"part {label}", "is listed more than once"))
    for part in parts:
        measures = _measures(part)
        if not all(_positive(x) for x in measures) or part.count < 1:
            found.append(
                BadCloth(f"part {part.part}", "must have positive measures and a count of at least one")
            )
        elif isinstance(part, Band) and not (isfinite(part.join) and 0 <= part.join < part.length):
            found.append(BadCloth(f"join of {part.part}", "must be at least 0 and less than the band"))
    return found


def _measures(part: ClothPart) -> tuple[float, ...]:
    if isinstance(part, Band):
        return (part.length, part.height)
    if isinstance(part, Panel):
        return (part.width, part.height)
    return (max(part.top, part.bottom), part.height, 1.0 if min(part.top, part.bottom) >= 0 else -1.0)


def _positive(value: float) -> bool:
    return isfinite(value) and value > 0
