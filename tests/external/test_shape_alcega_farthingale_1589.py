"""A farthingale cut in 1589: Juan de Alcega, Libro de geometria, pratica y traca, Madrid 1589, folio 67 (the
translation quoted from memory).

It is 13 palmos round the hem and 1 1/2 varas long, which makes a cone of about 15 degrees; no number of hoops is
given. A vara of Castile is 0.836 m, a palmo a quarter of it. In go hem, length and a waist, which the book does
not give; out comes the angle, for every waist that a laced body may have.
"""

from __future__ import annotations

from collections.abc import Callable
from math import degrees, pi, sqrt
from types import SimpleNamespace

import pytest

VARA = 0.836
LONG, HEM = 1.5 * VARA, 13 * VARA / 4


def farthingale(waist: float) -> str:
    """The spec; the waistline as high as lets a length of 1 1/2 varas end 2 cm off the floor, half a rod of 8 mm
    above its lower edge and half a band of 25 mm below the waistline."""
    height = sqrt(LONG**2 - ((HEM - waist) / (2 * pi)) ** 2) + 0.02 + 0.004 + 0.0125
    return f"""\
spec: 1
units: centimetres
wearer: {{waist: {waist} m, hip: 90 cm, waist_to_hip: 20 cm, waist_height: {height * 1000} mm}}
shape:
  line: {{kind: cone}}
  hem: {{girth: {HEM} m, off_floor: 2 cm}}
  hoops: {{spacing: from hem, every: 15 cm, count: 6}}
build:
  carried_by: channels
  hoops: {{material: bents}}
  panels: {{gores: 6}}
  channels: {{kind: applied casing}}
  waistband: {{width: 25 mm}}
materials:
  bents: {{grade: rattan, section: {{kind: round, diameter: 8 mm}}}}
"""


@pytest.mark.parametrize("waist", [0.60, 0.66, 0.72])
def test_alcegas_farthingale_is_a_cone_of_about_15_degrees(
        drawn: Callable[[str], SimpleNamespace], waist: float) -> None:
    cloth = drawn(farthingale(waist)).shape.petticoat
    assert degrees(cloth.half_angle) == pytest.approx(15.0, abs=0.6)
    assert cloth.slant == pytest.approx(LONG, abs=0.001)
    assert cloth.hem == pytest.approx(2.72, abs=0.005)


def test_its_gores_measure_a_vara_and_a_half_and_thirteen_palmos_flat(
        drawn: Callable[[str], SimpleNamespace]) -> None:
    """On the flat gore, seams of 1/2 in left out: six of them are 13 palmos wide at the hem's line, and from there
    to the waist's line it is 1 1/2 varas up the middle."""
    made = drawn(farthingale(0.66))
    gore, cloth = made.shape.panels[0], made.shape.petticoat
    (left, low), (right, _), (upper, top), (upper_left, _) = gore.outline
    hem = gore.rules[-1].offset
    wide = (right - left) + ((upper - upper_left) - (right - left)) * (hem - low) / (top - low)
    assert 6 * (wide - 2 * 0.0127) == pytest.approx(HEM, abs=0.001)
    assert top - cloth.head - hem == pytest.approx(LONG, abs=0.001)
