"""How long things take: named rates in minutes, each with its source. A workshop may put its own in.

Where a trade figure is a range, its middle is taken.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from hoopwright.source.record import record

PRACTICE = "common practice, no source"
OWN = "stated in the spec"
TRIAL = "23-30 hand stitches a minute, trial of 1861 in Cooper (1968), at 10 stitches an inch"


@record(frozen=True, slots=True)
class Rate:
    """``minutes`` for each ``per``: ``m`` (metre), ``piece``, ``mark``, ``fixing`` or ``task``."""

    key: str
    minutes: float
    per: str
    source: str = PRACTICE


_RATES = (
    Rate("wash", 20, "task"),
    Rate("press", 15, "task"),
    Rate("mark tape", 2, "piece"),
    Rate("mark on tape", 1, "mark"),
    Rate("cut tape", 1, "piece"),
    Rate("cut casing", 2, "piece"),
    Rate("cut cord", 0.5, "piece"),
    Rate("starch", 40, "task"),
    Rate("open coil", 10, "task"),
    Rate("bench test", 20, "task"),
    Rate("cut hoop", 10, "piece"),
    Rate("bend cane", 15, "piece"),
    Rate("mark hoop", 3, "piece"),
    Rate("mark on hoop", 1, "mark"),
    Rate("prepare join", 6, "piece"),
    Rate("shield join", 3, "piece"),
    Rate("cut panel", 8, "piece"),
    Rate("mark channel", 1.5, "mark"),
    Rate("pin waist", 15, "task"),
    Rate("gather", 4, "m"),
    Rate("thread drawstring", 10, "task"),
    Rate("thread casing", 3, "m"),
    Rate("thread channel", 3, "m"),
    Rate("cut waistband", 5, "task"),
    Rate("make waistband", 20, "task"),
    Rate("mark on waistband", 0.5, "mark"),
    Rate("sew fastening", 8, "piece"),
    Rate("cut strip", 6, "piece"),
    Rate("cut spoke", 5, "piece"),
    Rate("bind crossing", 4, "fixing"),
    Rate("stuff roll", 30, "task"),
    Rate("cut cover", 15, "task"),
    Rate("set eyelet", 2, "piece"),
    Rate("machine seam", 2.75, "m", f"1.5-4 min/m of long machine channel: {PRACTICE}"),
    Rate("hand seam", 17, "m", TRIAL),
    Rate("whip stitch", 11.5, "m", f"10-13 min/m, flatter and wider than a seam; {TRIAL}"),
    Rate("set up seam", 3, "piece"),
    Rate("clip", 1, "fixing"),
    Rate("clamp", 2, "piece"),
    Rate("wash join", 3, "piece"),
    Rate("check join", 2, "piece"),
    Rate("sew fixing", 4.5, "fixing", f"3-6 min for a sewn crossing of hoop and tape: {PRACTICE}"),
    Rate("close casing", 4, "piece"),
    Rate("trim tape", 5, "piece"),
    Rate("fitting with a helper", 30, "task"),
    Rate("fitting alone", 45, "task"),
    Rate("label", 10, "task"),
    Rate("hang up", 5, "task"),
)

JOIN = "join"
"""The rate of making one join: the library's minutes for the join of the build, unless the workshop states
its own."""

RATES: Mapping[str, Rate] = MappingProxyType({rate.key: rate for rate in _RATES})
"""Every rate by its key."""

DRYING = 480.0
"""Minutes washed tape and cloth, or cane bent wet, take to dry over night: common practice, no source."""

PROOF = 720.0
"""Minutes a proof join hangs under its load, over night: common practice, no source."""


def with_own(own: Mapping[str, float]) -> Mapping[str, Rate]:
    """The rates with the workshop's ``own`` minutes put in."""
    per = {JOIN: "piece", **{key: rate.per for key, rate in RATES.items()}}
    stated = {key: Rate(key, value, per[key], OWN) for key, value in sorted(own.items())}
    return {**RATES, **stated}


def minutes(rates: Mapping[str, Rate], *counts: tuple[str, float]) -> float:
    """Whole minutes for so many of each rate, at least one.

    >>> minutes(RATES, ("sew fixing", 6), ("close casing", 1))
    31.0
    """
    return max(1.0, float(round(sum(rates[key].minutes * count for key, count in counts))))
