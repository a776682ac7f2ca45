"""What is taken for a stock: grade, bench tests, disagreement, creep."""

from dataclasses import replace

import pytest

from hoopwright.library.model import Droop, Section, Stock, Weigh, Wrap
from hoopwright.shape.draw import draw
from hoopwright.strength import closed
from hoopwright.strength.assess import assess
from hoopwright.strength.material import lasting, material_strength
from hoopwright.strength.samples.bench import wrap_limits


def strip(make, *bench, **changes):
    return replace(make.strip, bench=bench, **changes)


def test_grade_and_section_without_a_test(make):
    got, disagree = material_strength(strip(make))
    width, thickness = 0.375 * make.inch, 0.042 * make.inch
    assert got.ei_weak == pytest.approx(205e9 * width * thickness**3 / 12)
    assert (got.elastic_limit, got.origin, disagree) == (1200e6, "grade", ())


def test_worked_example_by_hand(make):
    """An 18 in overhang with 100 g drops 6 1/2 in: 0.187 N m2 against 0.198 from the section."""
    tested, _ = material_strength(strip(make, Droop(18 * make.inch, 0.1, 6.5 * make.inch)))
    plain, _ = material_strength(strip(make))
    assert tested.ei_weak == pytest.approx(0.187, abs=5e-4)
    assert plain.ei_weak == pytest.approx(0.198, abs=5e-4)
    assert tested.origin == "bench"


def test_a_droop_test_scales_all_stiffness(make):
    tested, _ = material_strength(strip(make, Droop(18 * make.inch, 0.1, 6.5 * make.inch)))
    plain, _ = material_strength(strip(make))
    ratio = tested.ei_weak / plain.ei_weak
    assert tested.ei_strong / plain.ei_strong == pytest.approx(ratio)
    assert tested.gj / plain.gj == pytest.approx(ratio)


def test_turned_over_and_averaged(make):
    one = Droop(18 * make.inch, 0.1, 6.5 * make.inch)
    other = Droop(18 * make.inch, 0.1, 6.0 * make.inch)
    single = [material_strength(strip(make, test))[0].ei_weak for test in (one, other)]
    both = material_strength(strip(make, one, other))[0].ei_weak
    assert both == pytest.approx(sum(single) / 2)


def test_a_weighed_sample_counts_in_the_droop(make):
    light = material_strength(strip(make, Droop(0.5, 0.1, 0.15)))[0].ei_weak
    heavy = material_strength(strip(make, Droop(0.5, 0.1, 0.15), Weigh(1.0, 0.1225)))[0].ei_weak
    assert heavy == pytest.approx(0.3052, abs=5e-5)
    assert light < heavy


def test_springing_back_moves_the_limit_only_where_it_contradicts(make):
    """0.042 in round 6 in proves 0.00695 E = 1425 MPa, more than the grade's 1200; round 20 in proves
    less."""
    proven, _ = material_strength(strip(make, Wrap(6 * make.inch, True)))
    weak_proof, _ = material_strength(strip(make, Wrap(20 * make.inch, True)))
    assert proven.elastic_limit / 1e6 == pytest.approx(205e3 * 0.042 / 6.042, rel=1e-9)
    assert weak_proof.elastic_limit == 1200e6
    assert weak_proof.origin == "bench"


def test_taking_a_set_lowers_the_limit(make):
    failed, disagree = material_strength(strip(make, Wrap(14 * make.inch, False)))
    assert failed.elastic_limit / 1e6 == pytest.approx(205e3 * 0.042 / 14.042, rel=1e-9)
    assert disagree == ("elastic limit",)


def test_a_kept_curve_gives_the_limit_itself(make):
    got, _ = material_strength(strip(make, Wrap(4 * make.inch, False, keeps=30 * make.inch)))
    bound = 205e9 * 0.042 / 4.042
    assert 0.5 * bound < got.elastic_limit < bound
    assert wrap_limits(strip(make, Wrap(0.1, False, keeps=0.5))).most is None


def test_disagreement_of_more_than_30_percent_is_a_finding(make):
    spec = make.spec(stock=strip(make, Droop(18 * make.inch, 0.1, 12 * make.inch)))
    shape, _ = draw(spec)
    (finding,) = assess(spec, shape, closed.solve)[1]
    assert (finding.code, finding.path) == ("bench-disagrees", ("materials", "strip", "bench"))
    assert "stiffness" in finding.message
    assert assess(make.spec(), shape, closed.solve)[1] == ()


def test_a_plastic_that_creeps_keeps_a_quarter(make):
    tube = Stock("tube", replace(make.spring, creeps=True), Section("tube", diameter=0.010, wall=0.0015))
    short, _ = material_strength(tube)
    worn = lasting(tube, short)
    assert (worn.ei_weak, worn.gj) == pytest.approx((short.ei_weak / 4, short.gj / 4))
    assert lasting(make.strip, short) is short
