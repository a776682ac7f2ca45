"""Ties whose length the maker states: they must draw their hoop in, and as far as its oval."""

from __future__ import annotations

from collections.abc import Iterator
from math import pi

from hoopwright.shape.model import Shape
from hoopwright.shape.tying import problems
from hoopwright.source.diagnostic import Finding
from hoopwright.spec.model import Spec

AGREE = 0.0127
"""How far a stated tie may be from the oval's own, m: 1/2 in, our judgement."""


def stated_ties(spec: Spec, shape: Shape) -> tuple[Finding, ...]:
    """What is wrong with the lengths stated under ``build.ties.lengths``."""
    build = spec.build.ties
    return () if build is None else tuple(_wrong(spec, shape, build.lengths))


def _wrong(spec: Spec, shape: Shape, lengths: tuple[tuple[str, float], ...]) -> Iterator[Finding]:
    hoops = {hoop.id: hoop for hoop in shape.hoops}
    for name, length in lengths:
        hoop = hoops.get(name)
        if hoop is None:
            yield problems.tie_of_no_hoop(name, tuple(hoops))
            continue
        own = sorted({tie.length for tie in shape.ties if tie.hoop == name and tie.kind in ("cross", "chord")})
        free = hoop.girth / pi
        if hoop.closed and length >= free:
            yield problems.tie_too_long(name, free, own, spec.units)
        elif not own:
            yield problems.tie_unwanted(name)
        elif min(abs(length - one) for one in own) > AGREE:
            yield problems.tie_disagrees(name, own, spec.units)
