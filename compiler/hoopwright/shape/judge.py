"""One rule for turning a number and its limit into a check."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal

from hoopwright.spec.check import Check, Result

Sense = Literal["at most", "at least"]
ALIKE = 1e-6
"""Part of a value by which others of the same worth may differ."""
MARGIN = 0.10
"""The share of a limit by which a check of strength must pass to hold outright: our judgement."""


def worst(found: Iterable[tuple[float, str]]) -> tuple[float, str]:
    """The largest value and its part, of at least one; of parts that rounding alone keeps apart, as the tapes of either
    side are, the first."""
    told = list(found)
    most = max(value for value, _ in told)
    return next(one for one in told if one[0] >= most - ALIKE * abs(most))


def judged(
    code: str, part: str, value: float | None, limit: float | None, dimension: str, sense: Sense, *,
    says: str, source: str, remedy: str, unknown: str = "", soft: bool = False, margin: float = 0.0,
) -> Check:
    """A check of ``value`` against ``limit``: it holds, fails, is marginal, or is not assessed without
    either.

    ``soft``: a miss is marginal, for what is worth a look but no fault. ``margin``: a pass by less than
    this share of the limit is marginal. ``remedy`` is what to change when it does not hold, ``unknown``
    what to state when it cannot be assessed.
    """
    result = result_of(value, limit, sense, soft, margin)
    words = "" if result == "holds" else unknown if result == "not assessed" else remedy
    return Check(code, part, value, limit, dimension, sense, result, words, source, says)


def result_of(value: float | None, limit: float | None, sense: Sense, soft: bool = False,
              margin: float = 0.0) -> Result:
    """The result alone; see :func:`judged`."""
    if value is None or limit is None:
        return "not assessed"
    room = limit - value if sense == "at most" else value - limit
    if room < 0:
        return "marginal" if soft else "fails"
    return "marginal" if room < margin * abs(limit) else "holds"
