"""A bracketed root of a function of one variable."""

from __future__ import annotations

from collections.abc import Callable

_MOST_STEPS = 200


def bracketed_root(
    function: Callable[[float], float], low: float, high: float, tolerance: float = 1e-13
) -> float:
    """The root of ``function`` between ``low`` and ``high``, where it changes sign.

    Regula falsi with the Illinois step, bisecting whenever that stalls, so that it always ends.
    ``tolerance`` is relative to the bracket. ValueError when both ends have the same sign.
    """
    at_low, at_high = function(low), function(high)
    if at_low == 0.0:
        return low
    if at_high == 0.0:
        return high
    if (at_low > 0) == (at_high > 0):
        raise ValueError(f"no change of sign between {low} and {high}")
    width = abs(high - low) * tolerance
    kept = 0
    for _ in range(_MOST_STEPS):
        middle = (low * at_high - high * at_low) / (at_high - at_low)
        if kept > 2 or not min(low, high) < middle < max(low, high):
            middle, kept = (low + high) / 2, 0
        at_middle = function(middle)
        if at_middle == 0.0 or abs(high - low) <= width:
            return middle
        if (at_middle > 0) == (at_high > 0):
            step = abs(high - middle)
            high, at_high = middle, at_middle
            at_low /= 2
        else:
            step = abs(middle - low)
            low, at_low = middle, at_middle
            at_high /= 2
        kept = kept + 1 if step < abs(high - low) / 2 else 0
        if step <= width:
            return middle
    return (low + high) / 2
