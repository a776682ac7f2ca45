"""The one form of a judgement, shared by every stage that judges."""

from __future__ import annotations

from typing import Literal

from hoopwright.source.record import record

Result = Literal["holds", "marginal", "fails", "not assessed"]


@record(frozen=True, slots=True)
class Check:
    """One judgement. ``value`` and ``limit`` are SI in ``dimension``.

    ``dimension``: ``length``, ``mass``, ``ratio`` (a plain number), ``share`` (of 1), ``stress``,
    ``force``, ``angle``, ``money``, ``count``, ``temperature`` (degrees C). ``sense`` ``at most`` or
    ``at least`` tells on which side of the limit the value should lie. ``remedy`` says in plain words what
    to change (empty when it holds); ``source`` names the formula's or limit's source, or says that it is
    our judgement. ``says`` is the check in a maker's words, without numbers.
    """

    code: str
    part: str
    value: float | None
    limit: float | None
    dimension: str
    sense: Literal["at most", "at least"]
    result: Result
    remedy: str
    source: str
    says: str

    @property
    def beyond(self) -> bool:
        """Whether the value lies on the wrong side of the limit; a marginal check may, where that can be borne."""
        if self.value is None or self.limit is None:
            return False
        return self.value > self.limit if self.sense == "at most" else self.value < self.limit
