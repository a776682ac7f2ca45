"""Fittings: the rules of take-up, and cages that really hang wrong, read and put right."""

from __future__ import annotations

from dataclasses import replace
from math import cos, hypot, radians, sqrt
from types import SimpleNamespace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from hoopwright.shape.body import Body
from hoopwright.shape.draw import draw
from hoopwright.shape.fit.takeup import shares, taken_up
from hoopwright.shape.model import Shape
from hoopwright.source.diagnostic import Finding
from hoopwright.spec.model import Fitting, Line, Spec

INCH = 0.0254
IDS = [f"T{k}" for k in range(1, 7)]


def fitting(on: str = "2027-03-02", **said: Any) -> Fitting:
    empty = Fitting(on, {}, False, {}, {}, None, "", ("fittings", 0))
    return replace(empty, **said)


def drawn(spec: Spec) -> tuple[Shape, tuple[Finding, ...]]:
    shape, told = draw(spec)
    assert shape is not None, told
    return shape, told


def hung(shape: Shape, spec: Spec, sunk: list[float], stretch: list[float]) -> dict[str, float]:
    """Hem heights of a real cage: each tape hangs from its own true place ``sunk`` below where the waist was
    measured, and is ``stretch`` longer than its marks say; hoops keep their radius. Plain triangles, one to
    a stretch."""
    heights = {}
    for k, tape in enumerate(shape.tapes):
        fixings = {hoop.id: fix.at for hoop in shape.hoops for fix in hoop.fixings if fix.tape == tape.id}
        x, y, z = tape.start
        z -= sunk[k]
        run = 0.0
        for mark in tape.marks:
            length = (mark.at - run) * (1 + stretch[k])
            across = hypot(fixings[mark.hoop][0] - x, fixings[mark.hoop][1] - y)
            z -= sqrt(length**2 - across**2)
            x, y, run = fixings[mark.hoop][0], fixings[mark.hoop][1], mark.at
        heights[tape.id] = z - spec.build.hoops.material.section.height / 2
    return heights


def slim(make: SimpleNamespace, **more: Any) -> Spec:
    """A cage whose tapes touch no body."""
    spec: Spec = make.spec(hip=28.5, waist_oval=1.0, **more)
    return spec


def test_a_straight_tape_is_taken_up_by_e_cos_a() -> None:
    """1/4 in low at 32 degrees: 0.21 in, worked by hand."""
    lean, e = radians(32), 0.25 * INCH
    down, out = 30 * INCH * cos(lean), 30 * INCH * (1 - cos(lean) ** 2) ** 0.5
    points = [(0.0, 0.0, 1.0), (out, 0.0, 1.0 - down)]
    [up] = taken_up(points, (0.0, e), Body(()))
    assert up / INCH == pytest.approx(0.21, abs=0.005)
    assert up == pytest.approx(e * cos(lean), rel=0.005)


def test_a_straight_tape_of_many_stretches_gives_the_same_at_its_end() -> None:
    points = [(0.1 * k, 0.0, 1.0 - 0.2 * k) for k in range(5)]
    e = 0.006
    low = tuple(e * share for share in shares(points, 4))
    ups = taken_up(points, low, Body(()))
    assert ups[-1] == pytest.approx(e * 2 / sqrt(5), rel=0.01)
    assert ups[0] == pytest.approx(ups[-1] / 4, rel=0.01)


def test_the_same_all_round_is_taken_up_at_the_waistband(make: SimpleNamespace) -> None:
    spec = slim(make)
    low = 0.5 * INCH
    found = dict.fromkeys(IDS, spec.shape.hem_off_floor - low)
    shape, _ = drawn(replace(spec, fittings=(fitting(hem=found),)))
    before, _ = drawn(spec)
    [refit] = shape.refits
    assert refit.moved == ()
    assert refit.all_round == pytest.approx(low)
    assert 0.7 * low < refit.skirt[0].side - refit.skirt[1].side < low
    for old, new in zip(before.tapes, shape.tapes, strict=True):
        ups = [a.at - b.at for a, b in zip(old.marks, new.marks, strict=True)]
        assert ups == pytest.approx([refit.drawn_up[old.id]] * len(ups), abs=1e-9)
        assert ups[0] == pytest.approx(low * cos(old.marks[0].lean), rel=0.06)


def test_one_tape_off_moves_its_own_marks_and_no_others(make: SimpleNamespace) -> None:
    spec = slim(make)
    shape, _ = drawn(replace(spec, fittings=(fitting(hem={"T4": spec.shape.hem_off_floor - 0.5 * INCH}),)))
    before, _ = drawn(spec)
    for old, new in zip(before.tapes, shape.tapes, strict=True):
        ups = [a.at - b.at for a, b in zip(old.marks, new.marks, strict=True)]
        if old.id == "T4":
            assert ups == sorted(ups)
            assert 0.4 * INCH < ups[-1] <= 0.5 * INCH
        else:
            assert ups == [0.0] * len(ups)


def test_one_hoop_off_moves_only_its_marks(make: SimpleNamespace) -> None:
    spec = slim(make)
    before, _ = drawn(spec)
    hoop = before.hoops[3]
    shape, _ = drawn(replace(spec, fittings=(fitting(hoop_heights={"H4": hoop.height - 0.5 * INCH}),)))
    assert {mark.hoop for mark in shape.refits[0].moved} == {"H4"}
    for old, new in zip(before.tapes, shape.tapes, strict=True):
        assert old.marks[3].at - new.marks[3].at == pytest.approx(
            0.5 * INCH * cos(old.marks[3].lean), rel=0.03)


def test_a_hoop_made_larger_keeps_its_height(make: SimpleNamespace) -> None:
    spec = slim(make)
    before, _ = drawn(spec)
    made = before.hoops[2].girth + 2 * INCH
    shape, _ = drawn(replace(spec, fittings=(fitting(hoop_girths={"H3": made}),)))
    assert shape.hoops[2].girth == made
    assert {mark.hoop for mark in shape.refits[0].moved} == {"H3"}
    after = hung(shape, spec, [0.0] * 6, [0.0] * 6)
    assert all(abs(height - spec.shape.hem_off_floor) < INCH / 8 for height in after.values())


def test_what_is_right_within_its_tolerance_is_left_alone(make: SimpleNamespace) -> None:
    spec = slim(make)
    before, _ = drawn(spec)
    near = {tape: spec.shape.hem_off_floor + (0.24 if k % 2 else -0.24) * INCH for k, tape in enumerate(IDS)}
    said = fitting(hem=near, hoop_girths={"H2": before.hoops[1].girth + 0.2 * INCH},
                   waist=spec.wearer.waist + 0.2 * INCH)
    shape, told = drawn(replace(spec, fittings=(said,)))
    assert shape.tapes == before.tapes
    assert shape.hoops == before.hoops
    assert shape.refits[0].right
    assert not [one for one in told if one.code.startswith("fitting")]


def test_a_waist_that_closes_wider_takes_from_the_overlap(make: SimpleNamespace) -> None:
    spec = slim(make)
    shape, told = drawn(replace(spec, fittings=(fitting(waist=29.5 * INCH),)))
    assert shape.waistband.girth == pytest.approx(29.5 * INCH)
    assert shape.waistband.overlap == pytest.approx(0.5 * INCH)
    assert "waistband-short" in [one.code for one in told]


OFFS = st.lists(st.floats(-1, 1), min_size=6, max_size=6)
STRETCHES = st.lists(st.floats(0, 0.01), min_size=6, max_size=6)
LINES = st.sampled_from([Line("dome", 1.3), Line("dome", 2.0), Line("cone", 1.0), Line("bell", 1.6)])


@given(OFFS, STRETCHES, LINES, st.booleans(), st.sampled_from([None, 9.0]))
@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_after_a_fitting_the_hem_is_level(make: SimpleNamespace, offs: list[float], stretch: list[float],
                                          line: Line, same: bool, band: float | None) -> None:
    """The waist mismeasured by up to an inch at each tape and the tapes stretched by up to 1 %: one fitting
    brings the hem within 1/8 in of where it should be when anything was off by more than 1/4 in, and a second
    one finds nothing to move."""
    spec = slim(make, line=line, band=band)
    sunk = [(offs[0] if same else off) * INCH for off in offs]
    wanted = spec.shape.hem_off_floor
    first, _ = drawn(spec)
    found = hung(first, spec, sunk, stretch)
    once = replace(spec, fittings=(fitting(hem=found),))
    fitted, _ = drawn(once)
    after = hung(fitted, spec, sunk, stretch)
    allowed = INCH / 8 + 1e-6 if max(abs(h - wanted) for h in found.values()) > INCH / 4 else INCH / 4 + 1e-6
    assert all(abs(height - wanted) <= allowed for height in after.values())
    twice, _ = drawn(replace(once, fittings=(*once.fittings, fitting("2027-03-09", hem=after))))
    assert twice.tapes == fitted.tapes
    assert twice.refits[1].right


def doubted(make: SimpleNamespace, *said: Fitting) -> list[tuple[str, tuple[str | int, ...]]]:
    _, told = drawn(replace(slim(make), fittings=said))
    return [(one.code, one.path) for one in told if one.severity.value == "warning"]


def test_what_is_hard_to_believe_is_told(make: SimpleNamespace) -> None:
    at = ("fittings", 0)
    tape = (*at, "hem_height", "T2")
    assert doubted(make, fitting(hem={"T2": 70 * INCH / 25.4})) == [
        ("fitting-implausible", tape), ("fitting-contradicts", tape)]
    assert doubted(make, fitting(hoop_girths={"H2": 90 * INCH})) == [
        ("fitting-implausible", (*at, "hoop_girth", "H2"))]
    assert ("fitting-implausible", (*at, "waist")) in doubted(make, fitting(waist=35 * INCH))
    high = fitting(hem=dict.fromkeys(IDS, 13 * INCH), same=True)
    assert doubted(make, high) == [("fitting-implausible", (*at, "hem_height")), ("tape-too-short", at)]


def test_a_reading_as_before_its_correction_is_told(make: SimpleNamespace) -> None:
    low = {"T2": 6.5 * INCH}
    told = doubted(make, fitting(hem=low), fitting("2027-03-09", hem=low))
    assert [code for code, _ in told] == ["fitting-contradicts"]


def test_a_hoop_longer_than_its_strip_is_told(make: SimpleNamespace) -> None:
    from hoopwright.spec.model import Progress

    spec = slim(make)
    shape, _ = drawn(spec)
    girth = shape.hoops[1].girth
    said = fitting(hoop_girths={"H2": girth + INCH})
    _, told = drawn(replace(spec, fittings=(said,), progress=Progress((), {"H2": girth + INCH})))
    assert [one.code for one in told if one.severity.value == "warning"] == ["fitting-contradicts"]
