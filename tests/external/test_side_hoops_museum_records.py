"""Side hoops against two survivors, by their online records.

- Victoria and Albert Museum, O13863, side hoop of 1778: 75 by 45 cm, 30 cm from the waist.
- Victoria and Albert Museum, O1318194, fan hoop of 1760-80: 112 by 32 cm, five hoops.

A record gives outer sizes only. In go its depth, its number or drop, and reaches by hand beyond hips 34 cm wide
(34 by 24.3, 92.2 round by Ramanujan's rule); out of the drawn lines come its width and depth, within the record's
own rounding (half a centimetre), and the drop measured from the waistline. A hoop of the one's or the other's
outline closed to a ring is 1.91 m and 2.44 m round: put in as a girth and a depth, it is as wide as the record.
"""

from __future__ import annotations

from collections.abc import Callable
from types import SimpleNamespace

import pytest

ROUNDED = 0.005
Drawn = Callable[[str], SimpleNamespace]
BODY = """\
spec: 1
units: centimetres
wearer: {stature: 158 cm, waist: 62 cm, hip: 92 cm, waist_height: 98 cm,
  hip_rows: [{below_waist: 0 cm, girth: 62 cm, oval: 1.4}, {below_waist: 20 cm, girth: 92.2 cm, oval: 1.399}]}
"""


def sides(deep: str, hoops: list[tuple[float, float]]) -> str:
    """Side hoops of (drop, reach) in cm."""
    said = ", ".join(f"{{drop: {drop} cm, reach: {reach} cm}}" for drop, reach in hoops)
    return BODY + (f"shape: {{ground_plan: {{kind: pair, front_to_back: {deep}, hoops: [{said}]}}}}\n"
                   "build: {carried_by: channels, side_hoops: {pocket_slit: 0 cm}}\n")


def extent(hoops: list[SimpleNamespace]) -> tuple[float, float]:
    """Width and depth of the drawn lines together, m."""
    points = [point for hoop in hoops for point in hoop.plan.path]
    wide, deep = zip(*points, strict=True)
    return max(wide) - min(wide), max(deep) - min(deep)


def test_side_hoop_of_1778_is_75_by_45_and_30_cm_from_the_waist(drawn: Drawn) -> None:
    shape = drawn(sides("45 cm", [(15, 14), (30, 20.5)])).shape
    low = [hoop for hoop in shape.hoops if hoop.place == "hem"]
    assert [hoop.id for hoop in low] == ["L2", "R2"]
    assert extent(low) == pytest.approx((0.75, 0.45), abs=ROUNDED)
    assert [0.98 - hoop.height for hoop in low] == pytest.approx([0.30] * 2, abs=ROUNDED)


def test_fan_hoop_with_five_hoops_is_112_by_32(drawn: Drawn) -> None:
    shape = drawn(sides("32 cm", [(6, 12), (12, 22), (18, 30), (24, 36), (30, 39)])).shape
    assert shape.sides is not None
    assert len(shape.sides.channels) == 5
    assert extent(list(shape.hoops)) == pytest.approx((1.12, 0.32), abs=ROUNDED)
    assert shape.sides.across == pytest.approx(1.12, abs=ROUNDED)


@pytest.mark.parametrize(("girth", "deep", "wide"), [("1.91 m", 45, 0.75), ("2.44 m", 32, 1.12)])
def test_a_ring_of_that_girth_and_depth_is_as_wide_as_the_record(drawn: Drawn, girth: str, deep: float,
                                                                 wide: float) -> None:
    text = (f"shape: {{ground_plan: {{kind: thrown back, reach: {{front: {deep / 2} cm, back: {deep / 2} cm}}}},"
            f" hem: {{girth: {girth}}}, hoops: {{count: 3}}}}\n")
    hem = drawn(BODY + text).shape.hoops[-1].plan
    assert (hem.width, hem.depth) == pytest.approx((wide, deep / 100), abs=ROUNDED)
