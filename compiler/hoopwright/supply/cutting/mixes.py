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
    does.

    Depth-first over the offers, dearest first; the last is computed; pruned with the strongest row.
    """
    if not rows:
        return 0
    if not all(row.met(stock.avail) for row in rows):
        return None
    lead = max(rows, key=lambda row: _floor(stock, row))
    order = sorted(range(len(stock.caps)), key=lambda t: (-stock.prices[t], -lead.holds[t]))
    rates = _best_rates(stock, lead, order)
    best = cost_of(stock, stock.avail)

    def visit(depth: int, cost: int, needs: list[int], lead_need: int) -> None:
        nonlocal best
        kind = order[depth]
        price = stock.prices[kind]
        holds = [row.holds[kind] for row in rows]
        if depth == len(order) - 1:
            n = _fewest(needs, holds, stock.avail[kind])
            best = best if n is None else min(best, cost + n * price)
            return
        rate = rates[depth + 1]
        for n in range(stock.avail[kind] + 1):
            spent, rest = cost + n * price, lead_need - n * lead.holds[kind]
            if spent >= best:
                return
            if rest > 0 and (rate is None or spent * rate[0] + rest * rate[1] >= best * rate[0]):
                continue
            visit(depth + 1, spent, [d - n * h for d, h in zip(needs, holds, strict=True)], rest)

    visit(0, 0, [row.need for row in rows], lead.need)
    return best


def _fewest(needs: list[int], holds: list[int], avail: int) -> int | None:
    """The fewest of one offer that meet all needs; None when there are not enough."""
    fewest = 0
    for need, held in zip(needs, holds, strict=True):
        if need > fewest * held:
            if held == 0:
                return None
            fewest = -(-need // held)
    return fewest if fewest <= avail else None


def _floor(stock: Stock, row: Row) -> float:
    """Cost of what a row needs at the best worth for money."""
    rates = [p / h for h, p in zip(row.holds, stock.prices, strict=True) if h > 0]
    return row.need * min(rates) if rates else float("inf")


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


def _within(stock: Stock, rows: tuple[Row, ...], low: int, high: int) -> Iterator[Mix]:
    """Mixes within a window of cost that meet all rows, by depth-first search pruned with the first row."""
    rows = rows or (Row(0, tuple(max(0, c) for c in stock.caps)),)
    lead = max(rows, key=lambda row: _floor(stock, row))
    order = sorted(range(len(stock.caps)), key=lambda t: (-stock.prices[t], -lead.holds[t]))
    rates = _best_rates(stock, lead, order)
    chosen = [0] * len(stock.caps)
    if not stock.caps:
        yield from [()] if low <= 0 else []
        return

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
