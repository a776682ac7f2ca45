"""A sample without a spec: stiffness, spring limit, likely grade, a stock to stand in with."""

from __future__ import annotations

import pytest

from hoopwright.library.grades import GRADES
from hoopwright.library.model import Droop, Section, Weigh, Wrap
from hoopwright.strength.forms.droop import droop
from hoopwright.strength.gravity import GRAVITY
from hoopwright.strength.samples.sample import Sample, examine

STRIP = Section("flat", width=0.010, thickness=0.001, text="10 x 1 mm")
WIRE = Section("round", diameter=0.002, text="2 mm round")
METRE = 0.010 * 0.001 * 7850


def drooping(e: float, second: float, metre: float, overhang: float = 0.45, hang: float = 0.1) -> Droop:
    """The droop that a material of that modulus shows."""
    ei = e * second
    drop, _ = droop(hang * GRAVITY * overhang**2 / ei, metre * GRAVITY * overhang**3 / ei)
    return Droop(overhang, hang, drop * overhang)


STEEL = drooping(205e9, 0.010 * 0.001**3 / 12, METRE)


def test_stiffness_modulus_and_bounds_come_back():
    got = examine(Sample("strip", (STEEL, Wrap(0.17, True), Wrap(0.10, False)), STRIP))
    assert got.modulus == pytest.approx(205e9, rel=1e-4)
    assert got.least == pytest.approx(205e9 * 0.001 / 0.171, rel=1e-4)
    assert got.most == pytest.approx(205e9 * 0.001 / 0.101, rel=1e-4)
    assert got.clashes == ()


def test_a_wrap_tells_mild_steel_from_tempered():
    tempered = examine(Sample("strip", (STEEL, Wrap(0.17, True)), STRIP)).grades
    assert tempered[0].grade == "spring steel, tempered"
    assert tempered[0].fits == ("stiffness", "spring limit")
    assert next(one for one in tempered if one.grade == "mild steel").misses == ("spring limit",)
    mild = examine(Sample("strip", (STEEL, Wrap(0.60, False)), STRIP)).grades
    assert (mild[0].grade, mild[0].misses) == ("mild steel", ())


def test_without_a_wrap_both_steels_fit():
    fitting = {one.grade for one in examine(Sample("strip", (STEEL,), STRIP)).grades if not one.misses}
    assert {"spring steel, tempered", "mild steel"} <= fitting


def test_a_weighing_tells_cane_from_steel():
    round_ = Section("round", diameter=0.006, text="6 mm round")
    got = examine(Sample("cane", (Weigh(1.0, 0.0170),), round_))
    assert got.grades[0].grade == "rattan"
    assert all("weight" in one.misses for one in got.grades if GRADES[one.grade].metal)
    assert got.metre == pytest.approx(0.0170)


@pytest.mark.parametrize(("form", "section", "grade"), [
    ("wire", WIRE, "music wire"),
    ("tube", Section("tube", diameter=0.020, wall=0.002), "polyethylene"),
    ("cane", Section("round", diameter=0.006), "rattan"),
])
def test_every_form_has_its_usual_grade(form, section, grade):
    got = examine(Sample(form, (Droop(0.5, 0.0, 0.01),), section, grade))
    assert got.stock.grade.name == grade
    assert got.stock.section == section


def test_corded_cloth_is_told_by_the_metre_of_width():
    got = examine(Sample("corded cloth", (Droop(0.20, 0.0, 0.04), Weigh(1.0, 0.030)), width=0.10))
    assert got.per_width == pytest.approx(got.stiffness / 0.10)
    assert (got.stock, got.grades, got.unweighed) == (None, (), False)


def test_without_section_or_weight_the_own_weight_is_left_out_and_said():
    bare = examine(Sample("strip", (Droop(0.45, 0.52, 0.30),)))
    weighed = examine(Sample("strip", (Droop(0.45, 0.52, 0.30), Weigh(1.0, METRE))))
    assert bare.unweighed
    assert not weighed.unweighed
    assert bare.stiffness < weighed.stiffness
    assert bare.stock is None


def test_tests_that_clash_are_told_with_and_without_a_section():
    clash = (Droop(0.45, 0.1, 0.17), Droop(0.45, 0.1, 0.10))
    assert examine(Sample("strip", clash, STRIP)).clashes == ("stiffness",)
    assert examine(Sample("strip", clash)).clashes == ("stiffness",)


def test_a_droop_that_cannot_be_is_refused():
    for section in (STRIP, None):
        with pytest.raises(ValueError, match="droop test"):
            examine(Sample("strip", (Droop(0.2, 0.1, 0.3),), section))
