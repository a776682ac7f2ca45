"""The worked example of the language, read into its typed form."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from hoopwright.library.model import ByMeasure, Money, Pack
from hoopwright.source.read import read
from hoopwright.spec.model import Spec
from hoopwright.spec.resolve import resolve

CAGE = Path(__file__).parents[2] / "specs" / "harbour-play" / "cage.yaml"
INCH = 0.0254


@pytest.fixture(scope="module")
def spec() -> Spec:
    document, said = read(CAGE.read_bytes(), "cage.yaml")
    assert document is not None
    assert said == ()
    spec, found = resolve(document)
    assert spec is not None
    assert found == ()
    return spec


def test_measures_are_metres(spec: Spec) -> None:
    assert spec.wearer.stature == pytest.approx(67 * INCH)
    assert (spec.wearer.front, spec.wearer.left, spec.wearer.right, spec.wearer.back) == pytest.approx(
        (41 * INCH, 41.5 * INCH, 41.5 * INCH, 41 * INCH))
    assert spec.shape.hem_girth == pytest.approx(110 * INCH)
    assert spec.shape.top_hoop.below_waist == pytest.approx(6 * INCH)


def test_tapes_stand_beside_the_front_gap(spec: Spec) -> None:
    tapes = spec.build.tapes
    assert tapes.waist_fractions == pytest.approx((0.125, 0.275, 0.425, 0.575, 0.725, 0.875))
    assert tapes.hem_fractions == pytest.approx([(2 * i + 1) / 12 for i in range(6)])


def test_materials_are_resolved(spec: Spec) -> None:
    strip = spec.build.hoops.material
    assert strip.grade.name == "spring steel, tempered"
    assert strip.section.text == "3/8 in x 0.042 in"
    assert strip.on_hand == pytest.approx((14 * 12 * INCH,))
    assert strip.sold == (Pack(pytest.approx(15.24), Money(Decimal("19.00"), "USD"), coil=0.3),
                          Pack(pytest.approx(30.48), Money(Decimal("33.00"), "USD"), coil=0.4))
    band = spec.build.band
    assert band is not None
    assert band.material.sold == (ByMeasure(pytest.approx(0.9144), pytest.approx(0.2286),
                                            Money(Decimal("4.20"), "USD")),)
    assert spec.stocks["cane"].form == "cane"


def test_layers_have_a_mass(spec: Spec) -> None:
    assert [layer.name for layer in spec.load] == ["over-skirt", "petticoat"]
    assert [layer.mass for layer in spec.load] == pytest.approx([1.9, 4 * 0.9144**2 * 0.140])


def test_what_is_stated_is_not_assumed(spec: Spec) -> None:
    assumed = {item.path for item in spec.assumed}
    assert not assumed & spec.stated
    assert "materials.twill.weight" in assumed
    assert "materials.twill.width" not in assumed
    assert {"wearer.step", "allowances.seam", "limits.sag"} <= assumed
    assert not any(path.startswith(("materials.cane", "materials.rattan")) for path in assumed)


def test_money_is_of_one_currency(spec: Spec) -> None:
    assert spec.currency == "USD"
    assert spec.limits.budget == Decimal(85)
