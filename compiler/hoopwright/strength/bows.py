"""How sharply half hoops are bent, their ends held by lacing, ties or cloth."""

from __future__ import annotations

from hoopwright.shape.model import Hoop, Shape


def bowed(shape: Shape) -> list[tuple[float, str]]:
    """Greatest curvature of each half hoop, 1/m: its reach times the pull over EI that holds its chord."""
    return [(_stands(shape.hoop(tie.hoop)) * tie.pull, tie.hoop) for tie in shape.ties
            if tie.kind in ("chord", "lacing")]


def _stands(hoop: Hoop) -> float:
    """How far a half hoop stands off its chord, m: behind it, or beside the hip by itself."""
    if not hoop.plan.sideways:
        return hoop.plan.depth
    out = [abs(x) for x, _ in hoop.real]
    return max(out) - min(out) if out else hoop.plan.width
