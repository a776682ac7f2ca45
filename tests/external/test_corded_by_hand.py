"""A corded petticoat against numbers worked by hand, plain geometry, and against Peirce's cantilever.

Source of the first three: worked by hand, plain geometry. Girth 108 in and 2 in of seams, 24 cords of 1/8 in:
2,640 in of cord are 73 1/3 yd; a sandwich takes up 24 (pi/2 - 1)/8 = 1.7 in of length, tucks 24 pi/8 = 9.4 in; finished
38 in, sandwich, turnings 1 in, shrinkage 4 %: 40.7/0.96 = 42.4 in cut.

Source of the cantilever: ISO 9073-7 and ASTM D1388, after F. T. Peirce, The "handle" of cloth as a measurable quantity,
Journal of the Textile Institute 21 (1930), T377 (from memory): a strip whose tip hangs 41.5 degrees below the edge
overhangs by twice its bending length.
"""

from __future__ import annotations

from math import atan2, degrees

import pytest

from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan
from hoopwright.strength.forms.droop import droop

INCH = 0.0254
SPEC = """\
spec: 1
title: By hand
units: inches
wearer: {stature: 67 in, waist: 28 in, waist_height: 42 in}
shape: {hem: {girth: 108 in}, length: 38 in}
build:
  carried_by: cords
  panels: {breadths: 2, material: sheeting}
  cords: {held: HELD, material: cord, spacing: 1/4 in, shrinkage: SHRINKS, groups: [{cords: 16}, {cords: 8, gap: 1 in}]}
materials:
  sheeting: {kind: cloth, weight: 140 g/m2, width: 60 in}
  cord: {kind: cord, diameter: 1/8 in}
allowances: {seam: 1/2 in}
"""


def plan(held: str = "sandwich", shrinks: str = "0 %") -> Plan:
    made = compile_spec(SPEC.replace("HELD", held).replace("SHRINKS", shrinks).encode(), "hand.yaml")
    assert made.plan is not None, made.diagnostics
    return made.plan


def test_the_cord_of_24_rows_is_73_yards_and_a_third() -> None:
    cloth = plan().shape.corded
    assert cloth is not None
    assert cloth.run / INCH == pytest.approx(2640)
    assert cloth.run / (36 * INCH) == pytest.approx(73 + 1 / 3)


@pytest.mark.parametrize(("held", "takes"), [("sandwich", 1.7), ("tuck", 9.4)])
def test_what_24_rows_take_up(held: str, takes: float) -> None:
    cloth = plan(held).shape.corded
    assert cloth is not None
    assert cloth.takes / INCH == pytest.approx(takes, abs=0.05)


def test_the_cut_length_is_42_and_four_tenths() -> None:
    cloth = plan(shrinks="4 %").shape.corded
    assert cloth is not None
    assert (cloth.head + cloth.turning) / INCH == pytest.approx(1)
    assert cloth.high / INCH == pytest.approx(42.4, abs=0.05)


def test_a_strip_at_41_and_a_half_degrees_overhangs_twice_its_bending_length() -> None:
    """q L^3/EI = 8 when L = 2 c, for c = (EI/q)^(1/3)."""
    drop, reach = droop(0.0, 8.0)
    assert degrees(atan2(drop, reach)) == pytest.approx(41.5, abs=0.7)
