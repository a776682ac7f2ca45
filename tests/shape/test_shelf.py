"""Shelves: the stretch that leans most is named, and what is told to change really makes that stretch steeper."""

from math import radians

import pytest

from hoopwright.shape.draw import draw

CRINOLETTE = """\
spec: 1
units: inches
wearer: {stature: 64 in, waist: 25 1/2 in, hip: 36 1/2 in, waist_to_hip: 7 3/4 in}
shape:
  ground_plan:
    {kind: half, chord: {top: 11 in, hem: 23 in}, reach: {top: 5 in, hem: 14 1/2 in},
     full: {count: 1, width_over_depth: 0.95}}
  top_hoop: {below_waist: 7 in}
  hem: {girth: 90 in, off_floor: 6 in}
  hoops: {count: 12}
"""


def shelf(shape):
    return next(check for check in shape.checks if check.code == "shelf")


def test_a_shelf_at_the_waistband_is_mended_at_the_top_hoop(make):
    shape, found = draw(make.spec(below=3.0))
    assert shelf(shape).part.endswith(" from the waistband to H1")
    assert "a lower or a smaller top hoop (shape.top_hoop)" in shelf(shape).remedy
    [note] = [one for one in found if one.code == "shelf"]
    assert note.path == ("shape", "top_hoop")
    assert "from the waistband to H1" in note.message
    assert shelf(draw(make.spec(below=5.0))[0]).value < shelf(shape).value


@pytest.mark.parametrize(("change", "steeper"), [
    (("hem: 23 in", "hem: 24 in"), True),
    (("girth: 90 in", "girth: 88 in"), True),
    (("count: 12", "count: 11"), True),
    (("below_waist: 7 in", "below_waist: 9 in"), False),
])
def test_a_shelf_between_two_hoops_is_mended_at_them(drawn, change, steeper):
    """Above the full hoop the tape leans 49 degrees; a lower top hoop would only make it worse."""
    found = shelf(drawn(CRINOLETTE).shape)
    assert found.part.endswith(" from H11 to H12")
    assert found.value > radians(45)
    for key in ("chord of H11 (shape.ground_plan.chord.hem)", "a smaller H12 (shape.hem.girth)", "(shape.hoops)"):
        assert key in found.remedy
    assert "top_hoop" not in found.remedy
    assert (shelf(drawn(CRINOLETTE.replace(*change)).shape).value < found.value) is steeper


def test_the_note_lies_at_the_key_of_the_stretch(make):
    shape, found = draw(make.yaml(CRINOLETTE))
    [note] = [one for one in found if one.code == "shelf"]
    assert note.path == ("shape", "hem", "girth")
    assert "from H11 to H12" in note.message
    assert all(mark.lean < shelf(shape).value + 1e-9 for tape in shape.tapes for mark in tape.marks)


def test_a_tape_that_comes_in_under_the_hips_bears_no_skirt(make, bustle_text):
    """From the hips to H2 the outer tapes lean 48 degrees inward: there is nothing to lie on."""
    shape, found = draw(make.yaml(bustle_text))
    first = shape.tapes[0].marks[1]
    assert first.inward
    assert first.on_body
    assert first.lean > radians(45)
    assert shelf(shape).result == "holds"
    assert [one for one in found if one.code == "shelf"] == []
