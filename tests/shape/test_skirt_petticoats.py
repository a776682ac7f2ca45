"""Gathered petticoats under the skirt: each asks 3/8 in more of its length (common practice, no source)."""

from __future__ import annotations

import pytest

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


def text_of(first: bool, second: bool, family: str) -> str:
    return SPEC.replace("FIRST", str(first).lower()).replace("SECOND", str(second).lower()).replace(CAGE, family)


@pytest.mark.parametrize("family", FAMILIES.values(), ids=FAMILIES)
def test_each_gathered_petticoat_asks_3_8_in_more_at_front_side_and_back(family: str, drawn) -> None:
    plain, one, two = (drawn(text_of(*petticoats, family)).shape.skirt
                       for petticoats in ((False, False), (True, False), (True, True)))
    for place in ("front", "side", "back"):
        assert getattr(one, place) - getattr(plain, place) == pytest.approx(0.375 * INCH)
        assert getattr(two, place) - getattr(plain, place) == pytest.approx(0.75 * INCH)
    assert two.hem_girth == plain.hem_girth
