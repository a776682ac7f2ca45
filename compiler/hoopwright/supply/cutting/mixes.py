"""Mixes of packs in order of cost: how many of each offer to buy."""

from __future__ import annotations

from collections.abc import Iterator

from hoopwright.supply.cutting.bounds import Row
from hoopwright.supply.cutting.stock import Stock

Mix = tuple[int, ...]

_WINDOW_MIXES = 4_000


def cost_of(stock: Stock, mix: Mix) -> int:
    """Cost of a mix in price units."""
    return sum(n * p for n, p in zip(mix, stock.prices, strict=True))


def cheapest_cover(stock: Stock, rows: tuple[Row, ...]) -> int | None:
    """The least cost of a mix that meets every row, a lower bound on the cost of any plan; None when none
    does."""
    if not rows:
        return 0
    high = cost_of(stock, stock.avail)
    if not all(row.met(stock.avail) for row in rows):
        return None
    low = cost_floor(stock, rows)
    while True:
        step = max(max(stock.prices), (high - low) // 16)
        found = [cost_of(stock, mix) for mix in _within(stock, rows, low, min(high, low + step))]
        if found:
            return min(found)
        low = low + step + 1


def mixes_between(stock: Stock, rows: tuple[Row, ...], low: int, high: int, most: int) -> list[Mix]:
    """Mixes that meet every row and cost from `low` to `high`, cheapest first; at most `most` are looked at.

    Equal costs come in the order: fewer packs, then more of the longer ones.
    """
    found: list[Mix] = []
    for mix in _within(stock, rows, low, high):
        found.append(mix)
        if len(found) >= most:
            break
    return sorted(found, key=lambda mix: (cost_of(stock, mix), sum(mix), tuple(-n for n in reversed(mix))))


def in_order(stock: Stock, rows: tuple[Row, ...], low: int, high: int) -> Iterator[Mix | None]:
    """Mixes by cost, window after window; None when a window holds too many to be listed."""
    step = max(1, min(stock.prices, default=1) // 4)
    start = low
    while start <= high:
        found = mixes_between(stock, rows, start, min(high, start + step - 1), _WINDOW_MIXES)
        if len(found) == _WINDOW_MIXES:
            yield None
            return
        yield from found
        start += step


def cost_floor(stock: Stock, rows: tuple[Row, ...]) -> int:
    """A quick lower bound on cost: for each row, what is needed at the best worth for money."""
    best = 0
    for row in rows:
        pairs = [(h, p) for h, p in zip(row.holds, stock.prices, strict=True) if h > 0]
        best = max(best, min(-(-row.need * p // h) for h, p in pairs) if pairs else 0)
    return best


def _within(stock: Stock, rows: tuple[Row, ...], low: int, high: int) -> Iterator[Mix]:
    """Mixes within a window of cost that meet all rows, by depth-first search pruned with the first row."""
    if not rows:
        if low <= 0:
            yield tuple(0 for _ in stock.caps)
        return
    lead = rows[0]
    order = sorted(range(len(stock.caps)), key=lambda t: (-stock.prices[t], -lead.holds[t]))
    rates = _best_rates(stock, lead, order)
    chosen = [0] * len(stock.caps)

    def visit(depth: int, cost: int, need: int) -> Iterator[Mix]:
        if depth == len(order):
            if cost >= low and need <= 0 and all(row.met(tuple(chosen)) for row in rows):
                yield tuple(chosen)
            return
        kind = order[depth]
        price, holds = stock.prices[kind], lead.holds[kind]
        most = min(stock.avail[kind], (high - cost) // price)
        least = 0
        if depth == len(order) - 1:
            worth = -(-need // holds) if holds else (0 if need <= 0 else most + 1)
            least = max(0, worth, -(-(low - cost) // price))
        rate = rates[depth + 1]
        for n in range(least, most + 1):
            rest, spent = need - n * holds, cost + n * price
            if rest > 0 and (rate is None or spent * rate[0] + rest * rate[1] > high * rate[0]):
                continue
            chosen[kind] = n
            yield from visit(depth + 1, spent, rest)
        chosen[kind] = 0

    yield from visit(0, 0, lead.need)


def _best_rates(stock: Stock, lead: Row, order: list[int]) -> list[tuple[int, int] | None]:
    """For each depth, the (holds, price) of the cheapest worth among the kinds from there on."""
    rates: list[tuple[int, int] | None] = [None] * (len(order) + 1)
    for depth in range(len(order) - 1, -1, -1):
        here = (lead.holds[order[depth]], stock.prices[order[depth]])
        after = rates[depth + 1]
        if here[0] == 0 or (after is not None and after[1] * here[0] <= here[1] * after[0]):
            rates[depth] = after
        else:
            rates[depth] = here
    return rates
