"""Gathered petticoats under the skirt: each asks 3/8 in more of its length (common practice, no source)."""

from __future__ import annotations

import pytest

from hoopwright.shape.draw import draw
from hoopwright.shape.model import Skirt
from hoopwright.source.read import read
from hoopwright.spec.resolve import resolve

INCH = 0.0254
SPEC = """\
spec: 1
units: inches
wearer: {stature: 5 ft 5 in, waist: 28 in}
shape: {hem: {girth: 105 in}}
load:
  - {name: skirt, weight: 3 lb}
  - {name: first petticoat, weight: 1 lb, gathered: FIRST}
  - {name: second petticoat, weight: 1 lb, gathered: SECOND}
"""


CAGE = "shape: {hem: {girth: 105 in}}"
FAMILIES = {
    "cage": CAGE,
    "wheel": "shape: {line: {kind: drum}}\nbuild: {carried_by: wheel, wheel: {width: 36 in}}",
    "side hoops": "shape: {ground_plan: {kind: pair, front_to_back: 12 in, hoops: [{drop: 6 in, reach: 4 in}]}}\n"
                  "build: {carried_by: channels}",
    "corded": "shape: {hem: {girth: 105 in}}\nbuild: {carried_by: cords, cords: {groups: [{cords: 6}]}}",
}


def skirt(first: bool, second: bool, family: str = CAGE) -> Skirt:
    text = SPEC.replace("FIRST", str(first).lower()).replace("SECOND", str(second).lower()).replace(CAGE, family)
    document, said = read(text.encode(), "cage.yaml")
    assert document is not None, said
    spec, found = resolve(document)
    assert spec is not None, found
    shape, told = draw(spec)
    assert shape is not None, told
    return shape.skirt


@pytest.mark.parametrize("family", FAMILIES.values(), ids=FAMILIES)
def test_each_gathered_petticoat_asks_3_8_in_more_at_front_side_and_back(family: str) -> None:
    plain, one, two = (skirt(*petticoats, family) for petticoats in ((False, False), (True, False), (True, True)))
    for place in ("front", "side", "back"):
        assert getattr(one, place) - getattr(plain, place) == pytest.approx(0.375 * INCH)
        assert getattr(two, place) - getattr(plain, place) == pytest.approx(0.75 * INCH)
    assert two.hem_girth == plain.hem_girth
