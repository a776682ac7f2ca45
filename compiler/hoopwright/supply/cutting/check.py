"""Whether an order can be planned at all: values, pieces too long, stock that is not there."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from math import isfinite

from hoopwright.supply.cutting.model import BadOrder, CuttingOrder, CuttingProblem, CuttingRules, TooLong
from hoopwright.supply.cutting.stock import down, up


def check_order(order: CuttingOrder) -> tuple[CuttingProblem, ...]:
    """All problems of an order, bad values first, then pieces too long by length and label; empty when it
    is sound."""
    bad = _bad_values(order)
    if bad:
        return tuple(bad)
    if order.rules.splice is not None:
        return ()
    return tuple(_too_long(order))


def longest_usable(order: CuttingOrder) -> float:
    """The longest piece (m) that one length, bought or on hand, can give; 0 when there is no stock at all."""
    lengths = [p.length for p in order.packs if p.available is None or p.available > 0]
    return max([x - order.rules.trim for x in (*lengths, *order.on_hand)], default=0.0)


def splices_needed(length: float, longest: float, lap: float) -> int | None:
    """How many splices make a piece of `length` from lengths of at most `longest` (m); None when laps eat
    all of it."""
    count = 0
    while length + count * lap > (count + 1) * longest:
        count += 1
        if longest <= lap or count > 50:
            return None
    return count


def _too_long(order: CuttingOrder) -> list[CuttingProblem]:
    longest = longest_usable(order)
    found = [p for p in order.pieces if up(p.length) > down(longest)]
    return [
        TooLong(p.part, p.length, longest, splices_needed(p.length, longest, 0.0))
        for p in sorted(found, key=lambda p: (-p.length, p.part))
    ]


def _bad_values(order: CuttingOrder) -> list[CuttingProblem]:
    found: list[CuttingProblem] = []

    def require(sound: bool, what: str, why: str) -> None:
        if not sound:
            found.append(BadOrder(what, why))

    for piece in sorted(order.pieces, key=lambda p: (p.part, p.length)):
        require(_positive(piece.length), f"length of {piece.part}", "must be a positive length")
    labels = [p.part for p in order.pieces]
    for label in sorted({x for x in labels if labels.count(x) > 1}) if len(set(labels)) < len(labels) else ():
        require(False, f"part {label}", "is listed more than once")
    for pack in sorted(order.packs, key=lambda p: (p.name, p.length)):
        name = pack.name or f"pack of {pack.length:g} m"
        require(_positive(pack.length), f"length of {name}", "must be a positive length")
        dear = pack.price is None or (pack.price.is_finite() and pack.price > Decimal(0))
        require(dear, f"price of {name}", "must be above zero")
        require(pack.available is None or pack.available >= 0, f"number of {name}", "must not be negative")
    for length in sorted(order.on_hand):
        require(_positive(length), "length on hand", "must be a positive length")
    _rule_values(order.rules, require)
    return found


def _rule_values(rules: CuttingRules, require: Callable[[bool, str, str], None]) -> None:
    for what, value in (("kerf", rules.kerf), ("end trim", rules.trim), ("useful remainder", rules.useful)):
        require(isfinite(value) and value >= 0, what, "must not be negative")
    if rules.splice is not None:
        splice = rules.splice
        require(isfinite(splice.lap) and splice.lap >= 0, "lap of a splice", "must not be negative")
        require(splice.cost.is_finite() and splice.cost >= 0, "cost of a splice", "must not be negative")
        require(splice.most >= 1, "splices per piece", "must be at least one")


def _positive(length: float) -> bool:
    return isfinite(length) and length > 0
