"""Hours of work against a museum's copy of a cage: over 50 hours for 25 m of steel and 115 fixings of steel
to tape (Maidstone Museum, its own account of the copy).

That is one maker's first copy, sewn by hand; ours is a sum of rates. A window of half to one and a half
times the museum's figure is asked for, with the nearest cage of the language: 13 hoops on 9 tapes, sewn by
hand, hoops cased in tape. The window is ours.
"""

from __future__ import annotations

from collections.abc import Callable
from types import SimpleNamespace

import pytest

from hoopwright.supply.provide import provide
from hoopwright.work.arrange import arrange

Drawn = Callable[[str], SimpleNamespace]

COPY = """
spec: 1
units: centimetres
wearer: {stature: 160 cm, waist: 62 cm}
shape:
  top_hoop: {below_waist: 14 cm, girth: 115 cm}
  hem: {girth: 238 cm, off_floor: 14 cm}
  hoops: {count: 13, spacing: level}
build:
  hoops: {join: sleeve crimped, casing: twill}
  tapes: {count: 9}
  hem_band: {depth: 20 cm, material: calico}
workshop: {tools: [pliers, bolt cutters, file]}
"""


def test_hours_of_a_museum_copy_are_of_the_right_size(drawn: Drawn) -> None:
    cage = drawn(COPY)
    supply, _ = provide(cage.spec, cage.shape)
    assert supply is not None
    work, _ = arrange(cage.spec, cage.shape, supply)
    assert work is not None
    fixings = sum(len(tape.marks) for tape in cage.shape.tapes)
    assert fixings == pytest.approx(115, rel=0.03)
    assert cage.shape.total_hoop_length == pytest.approx(25, rel=0.03)
    assert 25 <= work.minutes / 60 <= 75
