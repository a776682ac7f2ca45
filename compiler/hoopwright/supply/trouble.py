"""What stands in the way of buying or cutting, as findings in the maker's words."""

from __future__ import annotations

import math
from collections.abc import Iterable

from hoopwright.library.model import Offer, Pack, Pieces
from hoopwright.source.diagnostic import Finding, Path, error, note, warning
from hoopwright.source.printed import length_text, long_length_text
from hoopwright.spec.model import Spec
from hoopwright.supply.cloth.model import BadCloth, ClothShort, TooWide
from hoopwright.supply.cloths import ClothProblem, PacksShort
from hoopwright.supply.cutting.model import BadOrder, CuttingFailure, NotEnough, TooLong
from hoopwright.supply.needs import ClothNeed, LengthNeed
from hoopwright.supply.width import widths_text

_EIGHTH = 0.0254 / 8
_WASHED = " once washed"
_MOST_NAMED = 12


def cutting_trouble(need: LengthNeed, failure: CuttingFailure, spec: Spec) -> tuple[Finding, ...]:
    """One finding for pieces too long for the packs that can be bought, else for stock that does not suffice."""
    broken = [problem for problem in failure.problems if isinstance(problem, BadOrder)]
    if broken:
        raise ValueError(f"{need.item}: {broken[0].what}: {broken[0].why}")
    too_long = [problem for problem in failure.problems if isinstance(problem, TooLong)]
    if too_long:
        return (_pack_too_short(need, too_long, spec),)
    beyond = _beyond_packs(need)
    if beyond:
        return (_pack_too_short(need, beyond, spec, some=True),)
    return tuple(
        _stock_short(need, problem, spec) for problem in failure.problems if isinstance(problem, NotEnough)
    )


def _beyond_packs(need: LengthNeed) -> list[TooLong]:
    """Pieces too long for every pack sold without limit, when such packs are sold and no splice is allowed.

    Longer lengths, on hand or sold in a limited number, hold some of them and not all.
    """
    packs = [offer.length for offer in need.sold if isinstance(offer, Pack) and offer.at_most is None]
    if not packs or need.splice is not None:
        return []
    longest = max(packs) * (1 - need.shrinkage) - need.trim
    return [TooLong(piece.part, piece.length, longest, None) for piece in need.pieces if piece.length > longest]


def _pack_too_short(need: LengthNeed, pieces: list[TooLong], spec: Spec, some: bool = False) -> Finding:
    worst = max(pieces, key=lambda problem: (problem.length, problem.part))
    parts = {problem.part for problem in pieces}
    named = [f"`{piece.part}`" for piece in need.pieces if piece.part in parts]
    names = ", ".join(named) if len(named) <= _MOST_NAMED else f"{named[0]} and {len(named) - 1} more lengths"
    wanted = long_length_text(worst.length, spec.units)
    longest = long_length_text(worst.longest, spec.units) + (_WASHED if need.shrinkage else "")
    there = f"the longest length to be had is {longest}"
    if some:
        there = f"the packs sold give {longest}; what is longer does not hold them all"
    mend = f"a pack of at least {_up((worst.length + need.trim) / (1 - need.shrinkage), spec)} mends it"
    related: tuple[tuple[Path, str], ...] = ()
    if spec.build.hooped is not None and need.item == spec.build.hooped.material.name:
        mend += f"; {_splice(worst, spec)}"
        if "build.hoops.join" in spec.stated:
            related = ((("build", "hoops", "join"), "a splice is one more of these"),)
    else:
        mend += "; or sew two lengths end to end and write what that gives under `on_hand`"
    return error(
        "pack-too-short",
        ("materials", need.item, "sold"),
        f"{names} of `{need.item}` cannot be cut in one piece: {wanted} is needed and {there}",
        mend,
        related=related,
    )


def _splice(worst: TooLong, spec: Spec) -> str:
    """How a splice would mend it: one more join of the chosen kind for each further length."""
    join, lap = spec.build.hoops.join, spec.build.hoops.lap
    spare = worst.longest - lap
    if spare <= 0:
        return f"these packs are shorter than the lap of `{join.name}`, so no splice helps"
    lengths = 1
    while lengths * worst.longest - (lengths - 1) * lap < worst.length and lengths < 100:
        lengths += 1
    if spec.build.hoops.splices >= lengths - 1:
        return ("splices are allowed, but no plan with so many of them was found in the search:"
                " longer packs need fewer")
    laps = f", {length_text(lap, spec.units)} more strip for each" if lap > 0 else ""
    return (
        f"or the hoop is made of {lengths} lengths, with {lengths - 1} more `{join.name}` "
        f"join{'' if lengths == 2 else 's'} as a splice, never at centre front{laps}: "
        f"write `splices: {lengths - 1}` under `build.hoops`"
    )


def _stock_short(need: LengthNeed, problem: NotEnough, spec: Spec) -> Finding:
    wanted = long_length_text(problem.needed, spec.units)
    had = long_length_text(problem.available, spec.units) + (_WASHED if need.shrinkage else "")
    if problem.missing > 0:
        mend = f"find {_up(problem.missing / (1 - need.shrinkage), spec)} more, or raise `at_most`"
    else:
        mend = "no way of cutting fits these lengths: one more or one longer pack mends it"
    return error(
        "stock-short",
        ("materials", need.item, "sold"),
        f"`{need.item}` does not suffice: {wanted} is needed, {had} is to be had",
        mend,
    )


def _up(metres: float, spec: Spec) -> str:
    """A length to be bought, as printed but never less than what is wanted."""
    step = _EIGHTH if spec.units == "inches" else 0.01 if metres > 0.99 else 0.001
    return long_length_text(math.ceil(metres / step - 1e-6) * step, spec.units)


def cloth_trouble(need: ClothNeed, failure: ClothProblem, spec: Spec) -> tuple[Finding, ...]:
    """Findings for parts wider than the cloth and for too little of it."""
    name = need.goods.name
    if isinstance(failure, PacksShort):
        return (_cloth_short(need, failure.needed, failure.to_be_had, failure.never, spec),)
    broken = [problem for problem in failure.problems if isinstance(problem, BadCloth)]
    if broken:
        raise ValueError(f"{name}: {broken[0].what}: {broken[0].why}")
    found: list[Finding] = []
    for problem in failure.problems:
        if isinstance(problem, TooWide):
            found.append(_too_narrow(need, problem, spec))
        elif isinstance(problem, ClothShort):
            found.append(_cloth_short(need, problem.needed, problem.most, False, spec))
    return tuple(found)


def _too_narrow(need: ClothNeed, problem: TooWide, spec: Spec) -> Finding:
    return error(
        "cloth-too-narrow",
        ("materials", need.goods.name, "width"),
        f"`{problem.part}` is {length_text(problem.across, spec.units)} across the grain it is to be cut on, "
        f"and `{need.goods.name}` is {length_text(problem.usable, spec.units)} wide when washed",
        f"take a cloth at least {_wide(problem.across / (1 - need.goods.shrinkage), spec)} wide; or "
        + ("more gores, each of them narrower" if problem.part == "gore" else
           "cut it the other way of the grain"),
    )


def _wide(metres: float, spec: Spec) -> str:
    """A width to be bought, as printed but never less than what is wanted."""
    step = _EIGHTH if spec.units == "inches" else 0.001
    return length_text(math.ceil(metres / step - 1e-6) * step, spec.units)


def _cloth_short(need: ClothNeed, needed: float, had: float, never: bool, spec: Spec) -> Finding:
    name = need.goods.name
    if never:
        said = f"`{name}` does not suffice: no number of these packs holds the strips"
    else:
        wanted, there = long_length_text(needed, spec.units), long_length_text(had, spec.units)
        there += _WASHED if need.goods.shrinkage else ""
        said = f"`{name}` does not suffice: {wanted} is needed, {there} is to be had"
    return error(
        "cloth-short",
        ("materials", name, "sold"),
        said,
        f"what is needed in one length is {widths_text(need, spec)}"
        + (", before the wash" if need.goods.shrinkage else ""),
    )


def price_note(missing: Iterable[str], spec: Spec) -> tuple[Finding, ...]:
    """A note that names everything without a price, at the budget when there is one."""
    wanted = tuple(missing)
    names = ", ".join(f"`{name}`" for name in wanted)
    if not names:
        return ()
    listed = (*spec.goods, *spec.stocks)
    alike = [(name, other) for name in wanted for other in listed
             if other != name and other.casefold() == name.casefold()]
    path: Path = ("limits", "budget") if spec.limits.budget is not None else ("materials",)
    return (
        note(
            "price-missing",
            path,
            f"the cost is partial: no price is known for {names}",
            f"`{alike[0][1]}` is another name than `{alike[0][0]}`: write it with the same letters, small and capital"
            if alike else "write `sold:` with a price for each under `materials`",
        ),
    )


def piece_warning(name: str, sold: tuple[Offer, ...]) -> tuple[Finding, ...]:
    """A warning when goods used by the length are offered by the piece only."""
    if not sold or not all(isinstance(offer, Pieces) for offer in sold):
        return ()
    return (
        warning(
            "sold-by-piece",
            ("materials", name, "sold"),
            f"`{name}` is used by the length and offered by the piece only, so its price is left out",
            "write how long a piece is, as in `{length: 10 m, price: 5.90 EUR}`",
        ),
    )
