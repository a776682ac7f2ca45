"""The lacing inside half hoops: two panels from the ends of the hoops towards centre back, laced together.

Each panel is as wide at every hoop as half of what the lacing leaves of the line from end to end, which lies round
the body where it stands between them. Its outer edge is sewn to
the ends of the half hoops and their tape, its inner edge is turned in over the eyelets. Drawn closer, the
lacing shortens the chord, and the half hoops stand out further.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, dist

from hoopwright.shape.model import XY, Panel, Rule, Seam, Tie
from hoopwright.shape.tapes import Level
from hoopwright.spec.model import Spec

LACED = "lacing panel"
"""The part's name."""
FACING = 0.0381
"""What is turned in along the eyelets, m: 1 1/2 in; common practice, no source."""
BEYOND = 0.0254
"""How far the panels go beyond the first and the last half hoop, m: our choice."""
TIE_UP = 0.75
"""Cord for the bow at the end and to draw the lacing open, m: our choice."""


def lacing_panels(spec: Spec, levels: Sequence[Level], ties: Sequence[Tie]) -> tuple[Panel, ...]:
    """The pair of panels, or none without a lacing."""
    build = spec.build.lacing
    lines = {tie.hoop: tie.length for tie in ties if tie.kind == "lacing"}
    bows = [level for level in levels if level.id in lines]
    if build is None or len(bows) < 2:
        return ()
    seam = spec.allowances.seam
    low = bows[-1].height - BEYOND
    edge: list[XY] = []
    for level in reversed(bows):
        edge.append((max(0.0, (lines[level.id] - build.gap) / 2), level.height - low))
    height = bows[0].height + BEYOND - low
    inner = [(edge[0][0], 0.0), *edge, (edge[-1][0], height)]
    right = [(FACING + x + seam, y + seam) for x, y in inner]
    wide, tall = max(x for x, _ in right), height + 2 * seam
    outline = ((0.0, 0.0), (right[0][0], 0.0), *right[1:-1], (right[-1][0], tall), (0.0, tall))
    eyelets = Rule("eyelets", ((FACING / 2, seam), (FACING / 2, seam + height)), 0.0)
    hoops = tuple(
        Rule(level.id, ((0.0, y + seam), (FACING + x + seam, y + seam)), y + seam)
        for level, (x, y) in zip(reversed(bows), edge, strict=True)
    )
    corners = len(outline)
    return (
        Panel(
            LACED, 2, build.material.name, outline, wide, tall, "up",
            (Seam((1, corners - 2), "ends of the half hoops", seam), Seam((0, 1), "hem of the panel", seam),
             Seam((corners - 2, corners - 1), "hem of the panel", seam)),
            (eyelets, *hoops), mirrored=True,
        ),
    )


def eyelet_count(spec: Spec, panels: tuple[Panel, ...]) -> int:
    """Eyelets on both panels together."""
    build = spec.build.lacing
    if build is None:
        return 0
    return sum(
        panel.count * (ceil(_run(panel) / build.spacing - 1e-9) + 1)
        for panel in panels if panel.part == LACED
    )


def cord_length(spec: Spec, panels: tuple[Panel, ...]) -> float:
    """Cord for the lacing, m: a crossing to each pair of eyelets twice over, and what is tied."""
    build = spec.build.lacing
    if build is None or not any(panel.part == LACED for panel in panels):
        return 0.0
    pairs = eyelet_count(spec, panels) / 2
    across = dist((0.0, 0.0), (build.gap + FACING, build.spacing))
    return 2 * pairs * across + TIE_UP


def _run(panel: Panel) -> float:
    first, last = panel.rules[0].points
    return dist(first, last)
