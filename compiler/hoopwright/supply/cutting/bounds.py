"""Rows that every sufficient mix of packs must satisfy: cheap, exact lower bounds.

Each row takes a non-negative worth of the pieces, and the most of it that each pack can hold; a mix whose
packs together hold less than all pieces are worth cannot be enough. Two worths are used, for every size u:
the number of pieces of at least u (a pack holds at most cap // u of them), and their length (a pack holds
at most the largest sum of such pieces that it can reach, found by subset sums in one long integer). The
second with the smallest u is the plain sum of lengths, sharpened.
"""

from __future__ import annotations

from hoopwright.source.record import record
from hoopwright.supply.cutting.stock import Stock

_KEPT = 16


@record(frozen=True, slots=True)
class Row:
    """A mix n is enough only if the sum of n_t x `holds`_t is at least `need` (what is on hand is taken off
    already)."""

    need: int
    holds: tuple[int, ...]

    def held(self, mix: tuple[int, ...]) -> int:
        """The most that a mix can hold."""
        return sum(n * h for n, h in zip(mix, self.holds, strict=True))

    def met(self, mix: tuple[int, ...]) -> bool:
        """Whether a mix satisfies the row."""
        return self.held(mix) >= self.need


def extend_sums(sums: int, size: int, count: int, mask: int) -> int:
    """Bit set of reachable sums after adding `count` pieces of one size, cut off by `mask`."""
    take = 1
    while count > 0:
        take = min(take, count)
        sums |= (sums << (size * take)) & mask
        count -= take
        take *= 2
    return sums


def reach(sums: int, cap: int) -> int:
    """The largest sum in the bit set not above `cap` (0 when only the empty sum fits)."""
    if cap <= 0:
        return 0
    return max(0, (sums & ((1 << (cap + 1)) - 1)).bit_length() - 1)


def cover_rows(stock: Stock) -> tuple[Row, ...]:
    """The strongest rows that something must still be bought for, the plain sum of lengths first."""
    bins = stock.caps + stock.hand
    kinds = len(stock.caps)
    mask = (1 << (max(bins, default=0) + 1)) - 1
    sums, number, length = 1, 0, 0
    held = [0] * len(bins)
    rows: list[Row] = []
    for size, count in zip(stock.sizes, stock.counts, strict=True):
        sums = extend_sums(sums, size, count, mask)
        number, length = number + count, length + size * count
        held = [h if h == c else reach(sums, c) for h, c in zip(held, bins, strict=True)]
        fits = [max(0, c) // size for c in bins]
        rows.append(Row(number - sum(min(count_, number) for count_ in fits[kinds:]), tuple(fits[:kinds])))
        rows.append(Row(length - sum(held[kinds:]), tuple(held[:kinds])))
    return _strongest([r for r in reversed(rows) if r.need > 0], stock)


def _strongest(rows: list[Row], stock: Stock) -> tuple[Row, ...]:
    """The plain sum of lengths, and those rows that ask most money at the best worth for money."""

    def asks(row: Row) -> float:
        rates = [p / h for h, p in zip(row.holds, stock.prices, strict=True) if h > 0]
        return row.need * min(rates) if rates else float("inf")

    kept = list(dict.fromkeys(rows))
    return tuple(dict.fromkeys([*kept[:1], *sorted(kept[1:], key=asks, reverse=True)[:_KEPT]]))
