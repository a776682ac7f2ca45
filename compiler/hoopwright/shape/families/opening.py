"""Hoops open in front: which of them, and where their ends lie."""

from __future__ import annotations

from collections.abc import Sequence

from hoopwright.shape.families import problems
from hoopwright.shape.impossible import Impossible
from hoopwright.shape.model import Hoop
from hoopwright.shape.outline import Outline, Oval
from hoopwright.shape.tapes import fraction_at_height
from hoopwright.shape.waist import Waist
from hoopwright.spec.model import Opening, Spec

WIDEST = 0.48
"""The largest share of a hoop that its opening may take: with more it is a half hoop; our judgement."""
LOOSE = 0.0508
"""An end that stands out further than this beyond its last tape, m, hangs loose: 2 in, our judgement."""


def opened(
    spec: Spec, outlines: Sequence[Outline], heights: Sequence[float], waist: Waist
) -> list[Outline]:
    """The outlines with the upper hoops opened in front."""
    opening = spec.shape.opening
    if opening is None:
        return list(outlines)
    found: list[Outline] = []
    for k, outline in enumerate(outlines):
        if k < opening.hoops and isinstance(outline, Oval):
            ends = _ends(spec, opening, outline, heights, k, waist)
            outline = Oval(outline.ellipse, *ends)
        found.append(outline)
    return found


def _ends(
    spec: Spec, opening: Opening, outline: Oval, heights: Sequence[float], k: int, waist: Waist
) -> tuple[float, float]:
    """Fractions at which an open hoop begins and ends: at the gap's edges, or at the first and last tape."""
    tapes = spec.build.tapes
    if opening.gap is None and tapes is not None:
        hem = heights[-1]
        first, last = (
            fraction_at_height(
                tapes.waist_fractions[n], tapes.hem_fractions[n], waist.start(tapes.waist_fractions[n])[2],
                hem, heights[k],
            )
            for n in (0, -1)
        )
        return first, last
    lowest = heights[opening.hoops - 1]
    share = 0.0 if heights[0] <= lowest else (heights[0] - heights[k]) / (heights[0] - lowest)
    gap = 0.0 if opening.gap is None else opening.gap.at(share)
    girth = outline.ellipse.perimeter
    if gap > WIDEST * girth:
        raise Impossible(problems.gap_too_wide(gap, girth, spec.units))
    half = gap / 2 / girth
    return half, 1.0 - half


def loose_ends(hoop: Hoop) -> float:
    """How far the ends of an open hoop stand out beyond its outermost tapes, m; its whole length without
    any."""
    if hoop.closed:
        return 0.0
    if not hoop.fixings:
        return hoop.girth
    places = [fixing.fraction for fixing in hoop.fixings]
    beyond = max(min(places) - hoop.start, hoop.end - max(places))
    return beyond / (hoop.end - hoop.start) * hoop.girth
