"""What the first wash takes: assumed for cotton and linen, counted off what is bought, never off what is on hand."""

from __future__ import annotations

from collections.abc import Callable
from types import SimpleNamespace

import pytest

from hoopwright.compile import compile_spec
from hoopwright.library.goods import GOODS, usual_shrinkage
from hoopwright.plan.model import Plan
from hoopwright.supply.model import Supply
from hoopwright.supply.provide import provide

INCH, YARD = 0.0254, 0.9144
BY_YARD = "[{per: 1 yd, step: 1/4 yd, price: 4.20 USD}]"
Drawn = Callable[[str], SimpleNamespace]


def planned(text: str) -> Plan:
    found = compile_spec(text.encode(), "cage.yaml")
    assert found.plan is not None, found.diagnostics
    return found.plan


def supply_of(drawn: Drawn, text: str) -> Supply:
    cage = drawn(text)
    supply, said = provide(cage.spec, cage.shape)
    assert supply is not None, said
    return supply


def refused(drawn: Drawn, text: str) -> tuple[str, str]:
    cage = drawn(text)
    supply, said = provide(cage.spec, cage.shape)
    assert supply is None
    (found,) = (one for one in said if one.severity.value == "error")
    return found.message, found.help or ""


@pytest.mark.parametrize("name", ["twill", "lacing cord", "braid", "piping cord", "calico", "drill", "lawn"])
def test_cotton_loses_three_per_cent(name: str) -> None:
    assert GOODS[name].shrinkage == 0.03


@pytest.mark.parametrize("name", ["taffeta", "wool flannel", "serge"])
def test_silk_and_wool_are_not_taken_for_cotton(name: str) -> None:
    assert GOODS[name].shrinkage == 0.0


def test_a_name_that_says_another_fibre_is_believed() -> None:
    assert [usual_shrinkage(name) for name in ("linen", "Nylon tape", "silk-satin")] == [0.03, 0.0, 0.0]


def test_braid_of_37_ft_8_in_is_13_yards_before_the_wash(drawn: Drawn, harbour_text: str) -> None:
    """Casings of 452.1 in: 452.1/0.97 = 466.1 in, 12.95 yd; 13 yd are 468 in, 453.96 in once washed."""
    supply = supply_of(drawn, harbour_text)
    (pack,) = (pack for pack in supply.cutting.packs if pack.material == "braid")
    (line,) = (line for line in supply.shopping if line.item == "braid")
    assert pack.pack / INCH == pytest.approx(468)
    assert pack.washed / INCH == pytest.approx(453.96)
    assert pack.left / INCH == pytest.approx(453.96 - 452.1, abs=0.1)
    assert line.packs == 13
    assert (line.washed or 0) / INCH == pytest.approx(453.96)


def test_tape_on_hand_is_washed_already(drawn: Drawn, harbour_text: str) -> None:
    """Twill of 24 ft 3 1/4 in: a length of 24 ft 4 in in the drawer holds it all, nothing is bought."""
    text = harbour_text.replace("twill: {kind: tape,", "twill: {kind: tape, on_hand: [24 ft 4 in],")
    supply = supply_of(drawn, text)
    (pack,) = (pack for pack in supply.cutting.packs if pack.material == "twill")
    assert pack.origin == "on hand"
    assert pack.washed == pack.pack == pytest.approx(292 * INCH)
    assert not pack.shrinks


def test_a_whole_width_on_hand_is_as_wide_as_the_cloth_when_washed(drawn: Drawn, harbour_text: str) -> None:
    """45 in less 3 % are 43.65 in; a piece with its own width keeps that."""
    text = harbour_text.replace("width: 45 in,", "width: 45 in, on_hand: [2 yd],")
    (layout,) = supply_of(drawn, text).layouts
    assert layout.width / INCH == pytest.approx(43.65)
    assert not layout.shrinks
    own = harbour_text.replace("width: 45 in,", "width: 45 in, on_hand: [{length: 2 yd, width: 44 in}],")
    (layout,) = supply_of(drawn, own).layouts
    assert layout.width / INCH == pytest.approx(44)


def test_a_maker_who_has_washed_says_so(drawn: Drawn, harbour_text: str) -> None:
    """With 0 % the band has its 45 in again, and no value is assumed."""
    text = harbour_text.replace("width: 45 in,", "width: 45 in, shrinkage: 0 %,")
    plan = planned(text)
    (layout,) = plan.supply.layouts
    assert layout.width / INCH == pytest.approx(45)
    assert not layout.shrinks
    assert "materials.calico.shrinkage" not in {value.path for value in plan.spec.assumed}


def test_what_is_assumed_is_listed_with_its_key(harbour_text: str) -> None:
    found = {value.path: value for value in planned(harbour_text).spec.assumed}
    said = found["materials.calico.shrinkage"]
    assert (said.value, said.dimension) == (0.03, "share")
    assert "common practice, no source" in said.reason
    assert "0 %" in said.reason


def test_a_roll_too_short_is_mended_by_one_that_is_long_enough_before_the_wash(
    drawn: Drawn, harbour_text: str
) -> None:
    """T1 is 43.55 in: 43.55 / 0.97 = 44.90 in, printed up as 45 in; a roll of 44 1/2 in is 43.17 in washed."""
    roll = "sold: [{length: 10 yd, price: 6.50 USD}]"
    message, help = refused(drawn, harbour_text.replace(roll, "sold: [{length: 44 1/2 in, price: 1 USD}]"))
    assert "the longest length to be had is 3 ft 7 1/8 in once washed" in message
    assert "a pack of at least 3 ft 9 in mends it" in help
    supply = supply_of(drawn, harbour_text.replace(roll, "sold: [{length: 45 in, price: 1 USD}]"))
    assert {pack.material for pack in supply.cutting.packs if pack.shrinks} == {"twill", "braid"}


def test_cloth_in_packs_is_counted_as_washed_in_what_is_to_be_had(drawn: Drawn, harbour_text: str) -> None:
    """One pack of 1 yd and a washed remnant of 10 in: 0.97 * 36 + 10 = 44.92 in, against 56 in of band."""
    text = harbour_text.replace("width: 45 in,", "width: 45 in, on_hand: [10 in],")
    message, help = refused(drawn, text.replace(BY_YARD, "[{length: 1 yd, price: 4.20 USD, at_most: 1}]"))
    assert "4 ft 8 in is needed, 3 ft 8 7/8 in once washed is to be had" in message
    assert "4 ft 9 3/4 in at 45 in wide" in help  # 56 in / 0.97 = 57.73 in
    assert help.endswith("before the wash")


def test_packs_of_cloth_that_shrink_keep_their_length_in_the_shop(drawn: Drawn, harbour_text: str) -> None:
    """Two packs of 1 yd: each 36 in bought, 34.92 in washed."""
    supply = supply_of(drawn, harbour_text.replace(BY_YARD, "[{length: 1 yd, price: 4.20 USD}]"))
    packs = [(layout.buy / INCH, layout.washed / INCH) for layout in supply.layouts]
    assert packs == [(pytest.approx(36), pytest.approx(34.92))] * len(packs)
    (line,) = (line for line in supply.shopping if line.item == "calico")
    assert line.packs == len(packs)


def test_a_cloth_too_narrow_is_mended_by_one_that_is_wide_enough_before_the_wash(
    drawn: Drawn, harbour_text: str
) -> None:
    """A band 20 1/4 in high along a cloth of 20 1/2 in, 19.9 in washed: 20 1/4 / 0.97 = 20.88 in, so 21 in."""
    text = harbour_text.replace("material: calico}\n\nload", "material: calico, grain: along}\n\nload")
    message, help = refused(drawn, text.replace("width: 45 in,", "width: 20 1/2 in,"))
    assert "19 7/8 in wide when washed" in message
    assert "take a cloth at least 21 in wide" in help
