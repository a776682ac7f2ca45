"""How a cage is solved: one interface for the closed forms and for anything better.

A method takes a :class:`Problem` and gives a :class:`Solution`; checks and verdict do not know which.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import Protocol

from hoopwright.library.model import Stock
from hoopwright.shape.model import Shape
from hoopwright.source.record import record
from hoopwright.spec.model import Spec
from hoopwright.strength.gravity import GRAVITY
from hoopwright.strength.model import (
    Buckling,
    HoopLines,
    HoopStrength,
    MaterialStrength,
    SideStrength,
    TapeStrength,
    TieStrength,
    WheelStrength,
)


@record(frozen=True, slots=True)
class Problem:
    """A cage with its load. ``skirt`` and ``own``: kg at each hoop from the top, of the skirt and of the
    hoop itself.

    ``material`` holds short-term values of ``stock``, ``worn`` those under a lasting load.
    """

    spec: Spec
    shape: Shape
    stock: Stock
    material: MaterialStrength
    worn: MaterialStrength
    skirt: tuple[float, ...]
    own: tuple[float, ...]

    @property
    def loads(self) -> tuple[float, ...]:
        """What pulls down at each hoop from the top, N."""
        return tuple((skirt + own) * GRAVITY for skirt, own in zip(self.skirt, self.own, strict=True))


@record(frozen=True, slots=True)
class Solution:
    """What a method finds. ``weakest`` is the part that ``buckling`` is about; ``swing`` of the hem, m;
    ``waist_pull`` outward on the waistband and ``body_push`` the sum of the body's pushes back, N.

    ``screened``: ``buckling`` is the lower bound of the closed forms, below what the cage really bears.

    ``unassessed``: codes of checks this method cannot judge, each with the reason. ``sources`` may
    name a check's source where it is not the usual closed form, ``says`` what it says. ``status`` is
    ``solved``, or what a solver found instead; ``trouble`` says it in words, ``carries`` is the
    share of its load at which a cage gives way that does not carry all of it (None: not known). ``spared``:
    hoops in which a set changes nothing, as they are sewn where they lie. ``spokes``:
    what else is of the hoops' stock and bends.
    """

    method: str
    hoops: tuple[HoopStrength, ...]
    tapes: tuple[TapeStrength, ...]
    buckling: Buckling
    weakest: str
    swing: float | None
    waist_pull: float
    unassessed: Mapping[str, str] = field(default_factory=dict)
    sources: Mapping[str, str] = field(default_factory=dict)
    says: Mapping[str, str] = field(default_factory=dict)
    status: str = "solved"
    trouble: tuple[str, ...] = ()
    carries: float | None = None
    lines: tuple[HoopLines, ...] = ()
    ties: tuple[TieStrength, ...] = ()
    wheel: WheelStrength | None = None
    sides: tuple[SideStrength, ...] = ()
    body_push: float = 0.0
    spared: frozenset[str] = frozenset()
    spokes: tuple[HoopStrength, ...] = ()
    screened: bool = False


JUDGED = ("sag", "out-of-round", "set-worn", "buckling", "slack")
"""Codes of the checks that a solution is asked for."""


def unjudged(problem: Problem, method: str, why: str) -> Solution:
    """The loads as they are, N/m, and nothing else: no check of :data:`JUDGED` is assessed, and ``why`` not."""
    hoops = tuple(
        HoopStrength(hoop.id, load / hoop.girth, 0.0, None, None, None, None)
        for hoop, load in zip(problem.shape.hoops, problem.loads, strict=True)
    )
    return Solution(method, hoops, (), Buckling(None, False), "", None, 0.0, dict.fromkeys(JUDGED, why))


class Method(Protocol):
    """Anything that solves a cage."""

    def __call__(self, problem: Problem) -> Solution:
        """The solution of a problem; never an exception for a cage the shape stage has drawn."""
        ...
