"""Who works on it, with what. Times in minutes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import Literal

from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Worker:
    """Somebody who works on it. ``skills`` None: knows everything."""

    name: str
    skills: tuple[str, ...] | None = None


@record(frozen=True, slots=True)
class Workshop:
    """Tools at hand (None: no tool check), session length in minutes, paper for gauges.

    ``hands`` is empty for one maker. ``rates`` are the workshop's own, minutes by rate; ``counts``: how many
    there are of a tool, where more than one.
    """

    tools: tuple[str, ...] | None
    session: float
    helper: bool
    paper: Literal["A4", "letter"]
    hands: tuple[Worker, ...] = ()
    order: Literal["built-in", "exact"] = "built-in"
    rates: Mapping[str, float] = field(default_factory=dict)
    counts: Mapping[str, int] = field(default_factory=dict)
