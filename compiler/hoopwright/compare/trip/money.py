"""A cost shared out exactly: in proportion to what each would have paid alone.

Each design pays the same share of what the material would have cost it alone, so none pays more than alone as
long as the whole costs no more than all alone. Sums are exact: what rounding leaves over goes, one smallest
coin each, to those it was taken from most, the first named first when equal.
"""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction


def share_out(total: Decimal, alone: Sequence[Decimal], used: Sequence[float]) -> tuple[Decimal, ...]:
    """``total`` split by ``alone``, or by the amount ``used`` when nobody would have paid anything alone.

    The parts sum to ``total`` exactly and are whole multiples of its smallest decimal place, at least 0.01.

    >>> share_out(Decimal("10.00"), [Decimal(1), Decimal(1), Decimal(1)], [1.0, 1.0, 1.0])
    (Decimal('3.34'), Decimal('3.33'), Decimal('3.33'))
    """
    weights = [Fraction(amount) for amount in alone]
    if sum(weights) == 0:
        weights = [Fraction(amount) for amount in used]
    if sum(weights) == 0:
        weights = [Fraction(1)] * len(alone)
    places = max(2, *(-int(Decimal(amount).as_tuple().exponent) for amount in (total, *alone)))
    coin = Decimal(1).scaleb(-places)
    coins = int(total / coin)
    quotas = [coins * weight / sum(weights) for weight in weights]
    parts = [int(quota) for quota in quotas]
    order = sorted(range(len(quotas)), key=lambda k: (parts[k] - quotas[k], k))
    for k in order[: coins - sum(parts)]:
        parts[k] += 1
    return tuple(coin * part for part in parts)
