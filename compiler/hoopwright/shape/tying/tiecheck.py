"""Checks of ties: whether a tied hoop keeps near its oval, and whether its ties pass clear of the wearer."""

from __future__ import annotations

from collections.abc import Sequence

from hoopwright.shape.body import Body
from hoopwright.shape.judge import judged
from hoopwright.shape.model import Hoop
from hoopwright.shape.tying.bodyline import straight_check
from hoopwright.shape.tying.ties import MOST_OFF, Tied
from hoopwright.spec.check import Check
from hoopwright.spec.model import Spec


def tie_checks(spec: Spec, hoops: Sequence[Hoop], tied: Sequence[Tied], body: Body) -> tuple[Check, ...]:
    """The two checks of cross-ties, where there are ovals, and that of the straight ties of open hoops."""
    wanted = [(hoop, one) for hoop, one in zip(hoops, tied, strict=True) if _wants(spec, hoop)]
    straight = straight_check(spec, hoops, tied, body)
    return (*((_oval(wanted), _clear(wanted)) if wanted else ()), *((straight,) if straight else ()))


def _wants(spec: Spec, hoop: Hoop) -> bool:
    """Whether a hoop is a closed oval, which a spring does not take by itself."""
    return hoop.closed and abs(hoop.plan.width - hoop.plan.depth) > 2 * spec.allowances.hoop_tolerance


def _oval(wanted: Sequence[tuple[Hoop, Tied]]) -> Check:
    off = [
        (abs(one.off) if one.ties else abs(hoop.plan.width - hoop.plan.depth) / 4, hoop.id)
        for hoop, one in wanted
    ]
    value, part = max(off)
    return judged(
        "oval", part, value, MOST_OFF, "length", "at most", soft=True,
        says="the ties draw the hoops near to their ovals",
        source="closed spring of even stiffness between its ties, an elastica (derived); the limit is our"
        " judgement",
        remedy="take more ties (build.ties.count), or an oval nearer to a circle",
    )


def _clear(wanted: Sequence[tuple[Hoop, Tied]]) -> Check:
    crossed = [hoop.id for hoop, one in wanted if one.crossed]
    return judged(
        "tie-clear", crossed[0] if crossed else "", float(len(crossed)), 0.0, "count", "at most",
        says="no tie passes where the wearer stands",
        source="geometry: the body's hip rows as ovals, the lowest standing for the legs below it",
        remedy="leave `build.ties.count` out, so that ties lie beside or behind the legs",
    )
