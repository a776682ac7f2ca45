"""Side hoops against two survivors, by their online records, as the records give their sizes.

- Victoria and Albert Museum, O13863, side hoop of 1778: 75 by 45 cm, 30 cm from the waist.
- Victoria and Albert Museum, O1318194, fan hoop of 1760-80: 112 by 32 cm, five hoops.

A record gives outer sizes only: each spec has these as its widths, and the test holds that the drawn pair
comes out at them within the record's own rounding (half a centimetre), and that the girth of an oval of those
sizes is 1.91 m and 2.44 m (a full turn of the ellipse).
"""

from __future__ import annotations

import pytest

from hoopwright.shape.draw import draw
from hoopwright.shape.ellipse import perimeter
from hoopwright.shape.model import Shape
from hoopwright.source.read import read
from hoopwright.spec.resolve import resolve

ROUNDED = 0.005
BODY = """\
spec: 1
units: centimetres
wearer: {stature: 158 cm, waist: 62 cm, hip: 90 cm, hip_rows: [{below_waist: 0 cm, girth: 62 cm, oval: 1.4},
  {below_waist: 20 cm, girth: 86 cm, oval: 1.4}]}
"""


def shape_of(text: str) -> Shape:
    document, said = read((BODY + text).encode(), "survivor.yaml")
    assert document is not None, said
    spec, found = resolve(document)
    assert spec is not None, found
    shape, told = draw(spec)
    assert shape is not None, told
    return shape


def hips() -> float:
    """Width of these hips, from a pair that hardly reaches beyond them, m."""
    pair = shape_of(sides("45 cm", ["{drop: 25 cm, reach: 1 cm}"])).sides
    assert pair is not None
    return pair.across - 0.02


def sides(deep: str, hoops: list[str]) -> str:
    return (
        f"shape: {{ground_plan: {{kind: pair, front_to_back: {deep}, hoops: [{', '.join(hoops)}]}}}}\n"
        "build: {carried_by: channels, side_hoops: {pocket_slit: 0 cm}}\n"
    )


def test_girths_of_the_two_ovals() -> None:
    assert perimeter(0.75 / 2, 0.45 / 2) == pytest.approx(1.91, abs=ROUNDED)
    assert perimeter(1.12 / 2, 0.32 / 2) == pytest.approx(2.44, abs=ROUNDED)


def test_side_hoop_of_1778_lies_30_cm_from_the_waist_and_is_75_by_45() -> None:
    reach = (0.75 - hips()) / 2
    shape = shape_of(
        sides(
            "45 cm",
            [f"{{drop: 15 cm, reach: {reach * 70:.3f} cm}}", f"{{drop: 30 cm, reach: {reach * 100:.3f} cm}}"],
        )
    )
    assert shape.sides is not None
    low = shape.sides.channels[-1]
    assert shape.sides.across == pytest.approx(0.75, abs=ROUNDED)
    assert shape.hoops[2].plan.depth == pytest.approx(0.45, abs=ROUNDED)
    assert low.drop == pytest.approx(0.30, abs=ROUNDED)
    assert low.width == pytest.approx(perimeter(0.225, reach) / 2, abs=ROUNDED)


def test_fan_hoop_with_five_hoops_is_112_by_32() -> None:
    reach = (1.12 - hips()) / 2
    hoops = [f"{{drop: {5 * k} cm, reach: {reach * 100 * k / 5:.3f} cm}}" for k in range(1, 6)]
    shape = shape_of(sides("32 cm", hoops))
    assert shape.sides is not None
    assert len(shape.sides.channels) == 5
    assert shape.sides.across == pytest.approx(1.12, abs=ROUNDED)
    assert max(hoop.plan.depth for hoop in shape.hoops) == pytest.approx(0.32, abs=ROUNDED)
    outs = [x for hoop in shape.hoops for x, _ in hoop.plan.path]
    assert max(outs) - min(outs) == pytest.approx(1.12, abs=ROUNDED)
