"""A farthingale cut in 1589: Juan de Alcega, Libro de geometria, pratica y traca, Madrid 1589, folio 67 (the
translation quoted from memory).

It is 13 palmos, about 2.72 m, round the hem and 1 1/2 varas long, which makes a cone of about 15 degrees; no
number of hoops is given. A vara of Castile is 0.836 m. The waist is not given either: 66 cm is taken; each
5 cm of it move the angle by 0.4 degrees.
"""

from __future__ import annotations

from math import degrees, pi, sqrt

import pytest

from hoopwright.shape.draw import draw
from hoopwright.source.read import read
from hoopwright.spec.resolve import resolve

VARA = 0.836
LONG = 1.5 * VARA
HEM = 2.72
WAIST = 0.66
HEIGHT = sqrt(LONG**2 - ((HEM - WAIST) / (2 * pi)) ** 2)
WAISTLINE = HEIGHT + 0.02 + 0.004 + 0.0125
"""The hem 2 cm off the floor, half a rod of 8 mm and half a band of 25 mm."""
SPEC = f"""\
spec: 1
units: centimetres
wearer: {{waist: 66 cm, hip: 90 cm, waist_to_hip: 20 cm, waist_height: {WAISTLINE * 1000} mm}}
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


def test_alcegas_farthingale_is_a_cone_of_about_15_degrees() -> None:
    document, said = read(SPEC.encode(), "alcega.yaml")
    assert document is not None, said
    spec, found = resolve(document)
    assert spec is not None, found
    shape, told = draw(spec)
    assert shape is not None, told
    assert shape.petticoat is not None
    assert degrees(shape.petticoat.half_angle) == pytest.approx(15.0, abs=0.5)
    assert shape.petticoat.slant == pytest.approx(LONG, abs=0.001)
    assert shape.hoops[-1].girth == pytest.approx(HEM)
    assert shape.petticoat.hem == pytest.approx(13 * 0.209, abs=0.005)
