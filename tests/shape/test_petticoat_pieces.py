"""What a maker cuts for a petticoat with hoops, worked by hand in inches: a cone from 30 round to 110 over a height of
36 (slant 38.19), six gores, 3/8 in strip (channels 5/8), 1/2 in seams, hoops every 5 up from the hem."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from math import hypot, pi, sqrt
from types import SimpleNamespace

import pytest

from hoopwright.shape.model import Shape

INCH = 0.0254
SLANT = hypot(36, 80 / (2 * pi))
CONE = """\
spec: 1
units: inches
wearer: {stature: 5 ft 5 in, waist: 30 in, hip: 38 in, waist_height: WAIST}
shape:
  line: {kind: cone}
  hem: {girth: 110 in, off_floor: 4 in}
  hoops: {count: 6, spacing: from hem, every: 5 in}
build:
  carried_by: channels
  hoops: {material: strip}
  panels: {gores: 6, top: 30 in}
  waistband: {material: twill, width: 1 in}
  channels: {kind: applied casing, material: calico}
materials:
  strip: {grade: "spring steel, tempered", section: {kind: flat, width: 3/8 in, thickness: 0.02 in}}
"""
LEVEL, TILTED = "40 11/16 in", "{front: 41 11/16 in, side: 40 11/16 in, back: 40 in}"
Drawn = Callable[[str], SimpleNamespace]


@pytest.fixture(scope="module")
def cone(drawn: Drawn) -> Shape:
    return drawn(CONE.replace("WAIST", LEVEL)).shape


def inches(*metres: float) -> list[float]:
    return [one / INCH for one in metres]


def test_a_gore_is_cut_from_a_turning_below_the_hem_to_a_seam_above_the_waist(cone: Shape) -> None:
    """1/2 turned up, half a channel, the slant, a seam: its sides run straight on beyond both lines."""
    gore = cone.panels[0]
    grows = (110 - 30) / 6 / SLANT
    below, above = 0.5 + 0.3125, 0.5
    low, high = 110 / 6 + 1 + below * grows, 30 / 6 + 1 - above * grows
    assert inches(gore.width, gore.height) == pytest.approx([low, below + SLANT + above], abs=0.01)
    (x0, y0), (x1, y1), (x2, y2), (x3, y3) = gore.outline
    assert inches(x1 - x0, x2 - x3, y0, y1) == pytest.approx([low, high, 0, 0], abs=0.01)
    assert inches(y2, y3) == pytest.approx([below + SLANT + above] * 2, abs=0.01)
    assert {seam.to: seam.corners for seam in gore.seams if "gore" not in seam.to} == {"waistband": (2, 3)}
    assert sorted(seam.corners for seam in gore.seams if "gore" in seam.to) == [(1, 2), (3, 0)]
    assert {round(seam.allowance / INCH, 6) for seam in gore.seams} == {0.5}


def test_the_top_has_cloth_to_level_it_where_the_waist_is_higher(drawn: Drawn, cone: Shape) -> None:
    tilted = drawn(CONE.replace("WAIST", TILTED)).shape
    assert inches(cone.petticoat.head, tilted.petticoat.head) == pytest.approx([0.5, 1.5])
    drawstring = drawn(CONE.replace("WAIST", LEVEL).replace("top: 30 in", "waist: drawstring")).shape
    channel = 4 * pi / 2 + 4  # of a 4 mm cord, mm
    assert inches(drawstring.petticoat.head) == pytest.approx([0.5 + channel / 25.4], abs=0.001)


def test_casings_are_cut_a_seam_longer_at_each_end_and_turned_in_a_quarter_on_each_edge(cone: Shape) -> None:
    for channel, hoop in zip(cone.petticoat.channels, cone.hoops, strict=True):
        assert inches(channel.strip, channel.height) == pytest.approx([hoop.girth / INCH + 1, 0.625 + 0.5])
        assert channel.girth == pytest.approx(hoop.girth)


def test_a_casing_of_tape_is_as_wide_as_the_tape(drawn: Drawn) -> None:
    tape = drawn(CONE.replace("WAIST", LEVEL).replace("material: calico", "material: twill")).shape
    assert inches(*(one.height for one in tape.petticoat.channels)) == pytest.approx([1.0] * 6)


def test_channel_lines_are_arcs_about_the_tip_from_seam_to_seam(cone: Shape) -> None:
    """The tip lies girth/80 slants above a hoop's line; an arc of that radius rises over half a gore's width."""
    gore = cone.panels[0]
    for k, (rule, hoop) in enumerate(zip(reversed(gore.rules), reversed(cone.hoops), strict=True)):
        girth = hoop.girth / INCH
        radius, half = girth / 80 * SLANT, girth / 12
        xs, ys = zip(*rule.points, strict=True)
        middle = gore.width / INCH / 2
        low = 0.5 + 0.3125 + 5 * k
        assert rule.name == hoop.id
        assert inches(rule.offset, min(ys)) == pytest.approx([low, low], abs=0.01)
        assert inches(xs[0], xs[-1]) == pytest.approx([middle - half, middle + half], abs=0.01)
        assert inches(ys[0], ys[-1]) == pytest.approx([low + radius - sqrt(radius**2 - half**2)] * 2, abs=0.01)
        for (x, y), (x1, _) in pairwise(rule.points):
            assert x1 > x
            assert hypot(x / INCH - middle, low + radius - y / INCH) == pytest.approx(radius, abs=0.01)


def test_a_gores_own_widths_hold(drawn: Drawn) -> None:
    """Six gores of 7 at the top and 18 1/3 at the hem make 42 round above, gathered to the waist."""
    own = drawn(CONE.replace("WAIST", LEVEL).replace("top: 30 in", "gore: {top: 7 in, hem: 18 1/3 in}")).shape
    assert inches(own.petticoat.top, own.petticoat.hem) == pytest.approx([42, 110], abs=0.01)


def test_cords_of_a_drawstring_are_half_a_metre_longer_than_their_edge(drawn: Drawn) -> None:
    shape = drawn(CONE.replace("WAIST", LEVEL).replace("top: 30 in", "waist: drawstring, top: 45 in")).shape
    assert shape.waistband.cut == pytest.approx(45 * INCH + 0.5)
    assert shape.waistband.overlap == 0.0
    assert shape.petticoat.drawstring == pytest.approx(45 * INCH + 0.5)


@pytest.mark.parametrize("line", ["{kind: dome}", "{kind: bell}", "{kind: cone}"])
def test_a_gore_is_as_wide_at_every_channel_as_its_share_of_the_hoop_and_two_seams(drawn: Drawn, line: str) -> None:
    """Measured across the flat gore at the channel's line: a dome's gores widen to each of its hoops."""
    text = CONE.replace("WAIST", LEVEL).replace("{kind: cone}", line)
    shape = drawn(text.replace(", spacing: from hem, every: 5 in", "") if "dome" in line else text).shape
    gore, cloth = shape.panels[0], shape.petticoat
    right = sorted((y, x) for x, y in gore.outline if x > gore.width / 2)
    for rule, channel, hoop in zip(gore.rules, cloth.channels, shape.hoops, strict=True):
        (y0, x0), (y1, x1) = next((a, b) for a, b in pairwise(right) if a[0] <= rule.offset <= b[0])
        half = x0 + (x1 - x0) * (rule.offset - y0) / (y1 - y0) - gore.width / 2
        assert inches(2 * half) == pytest.approx([channel.girth / INCH / 6 + 1], abs=0.01)
        assert channel.girth >= hoop.girth - 1e-9
    assert (len(gore.outline) > 4) is ("dome" in line)
