"""Checks of ties: whether a tied hoop keeps near its oval, and whether its ties pass clear of the wearer."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from hoopwright.shape.curves.bow import of_length
from hoopwright.shape.judge import judged, worst
from hoopwright.shape.model import Hoop, Tie, TieKind
from hoopwright.shape.tying.ties import MOST_OFF, Tied
from hoopwright.source.quantity import length_text
from hoopwright.spec.check import Check
from hoopwright.spec.model import Spec

_LIES: tuple[tuple[TieKind, str], ...] = (
    ("chord", "the ties lie against her behind"), ("lacing", "the lacing lies against her behind"),
    ("strap", "the straps lie against her in front"),
)


def tie_checks(spec: Spec, hoops: Sequence[Hoop], tied: Sequence[Tied]) -> tuple[Check, ...]:
    """How near ovals are drawn, where there are any; whether ties and lacings pass clear of the wearer."""
    pairs = list(zip(hoops, tied, strict=True))
    wanted = [(hoop, one) for hoop, one in pairs if _wants(spec, hoop)]
    ovals = (_oval(wanted),) if wanted else ()
    return (*ovals, _clear(spec, pairs)) if wanted or any(one.ties for one in tied) else ovals


def _slid(spec: Spec, laid: Sequence[tuple[Hoop, Tie]]) -> Iterator[str]:
    """How a half hoop whose tie lies round the body is when nothing holds it forward: slid back, or off the wearer,
    until the tie is straight; of the one that it spreads most."""
    if laid:
        hoop, tie = max(laid, key=lambda one: one[1].length - one[1].span)
        out = of_length(hoop.girth, tie.length).reach
        held = "lacing" if tie.kind == "lacing" else "tie"
        yield (f"where it slides back until its {held} is straight, {hoop.id} spreads from"
               f" {length_text(tie.span, spec.units)} to {length_text(tie.length, spec.units)} from end to end and"
               f" stands out {length_text(out, spec.units)} instead of {length_text(hoop.plan.depth, spec.units)}")


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


def _clear(spec: Spec, pairs: Sequence[tuple[Hoop, Tied]]) -> Check:
    """One check of all ties of all hoops. A cross-tie cannot pass the body, which fails; what goes from end to end of
    an open hoop lies round it, which is worth a look."""
    crossed = [(one.crossed, hoop.id) for hoop, one in pairs if one.crossed]
    laid = [(hoop, tie) for hoop, one in pairs for tie in one.ties if tie.way]
    value, part = worst(crossed or [(tie.beyond, tie.hoop) for _, tie in laid] or [(0.0, "")])
    mends = ["leave `build.ties.count` out, so that ties lie beside or behind the legs"] if crossed else []
    return judged(
        "tie-clear", part, value, 0.0, "length", "at most", soft=not crossed,
        says="ties and lacings pass clear of where the wearer stands",
        source="geometry: the body's hip rows as ovals, the lowest standing for the legs below it, and a taut line"
        " round them",
        remedy="; ".join([*mends, *_lies(spec, laid)]),
    )


def _lies(spec: Spec, laid: Sequence[tuple[Hoop, Tie]]) -> Iterator[str]:
    """What it means that ties lie round the body."""
    for kind, words in _LIES:
        found = [(hoop, tie) for hoop, tie in laid if tie.kind == kind]
        if not found:
            continue
        ids = [hoop.id for hoop, _ in found]
        where = f"at {ids[0]}" if len(ids) == 1 else f"from {ids[0]} to {ids[-1]}"
        back = "" if kind == "strap" else ", or set the hoops' ends behind her (shape.ground_plan.set_back)"
        yield (f"{words} {where}, and the plan's lengths go round her, below the hips as if the legs were as"
               f" thick; have nothing hard there{back}")
        flat = [hoop.id for hoop, tie in found if tie.length > hoop.girth - spec.allowances.hoop_tolerance]
        if flat:
            yield f"at {', '.join(flat)} the way round her is as long as the hoop: the body holds it, not the tie"
        if kind != "strap":
            yield from _slid(spec, [one for one in found if one[0].id not in flat])
    if laid:
        yield "strength is worked out with their ends held straight across, without what the body pushes on them"
