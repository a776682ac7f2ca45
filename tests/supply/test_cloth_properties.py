"""Cloth: what must hold for every layout (Hypothesis)."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from itertools import combinations
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.supply.cloth import (
    Band,
    Cloth,
    ClothPart,
    ClothPlan,
    Gore,
    Panel,
    Placement,
    Remnant,
    lay_out,
)

SLOW = settings(max_examples=40, deadline=None)
cm = st.integers(5, 90).map(lambda n: n / 100)
small = st.integers(5, 40).map(lambda n: n / 100)
grains = st.sampled_from(["along", "across", "either"])
bands = st.builds(
    Band,
    st.just("band"),
    st.integers(30, 400).map(lambda n: n / 100),
    small,
    st.sampled_from([0.0, 0.02]),
    st.booleans(),
    grains,
    st.integers(1, 2),
)
panels = st.builds(Panel, st.just("panel"), cm, cm, grains, st.integers(1, 4))
gores = st.builds(Gore, st.just("gore"), small, cm, cm, st.integers(1, 6))
cloths = st.builds(Cloth, st.just("cloth"), st.sampled_from([0.9, 1.12, 1.5]), nap=st.booleans())
remnant_lists = st.lists(st.builds(Remnant, cm, cm), max_size=2)


@st.composite
def part_lists(draw: st.DrawFn) -> list[ClothPart]:
    kinds = draw(st.lists(st.sampled_from(["band", "panel", "gore", "panel"]), min_size=1, max_size=4))
    made: list[ClothPart] = []
    for i, kind in enumerate(kinds):
        part = draw({"band": bands, "panel": panels, "gore": gores}[kind])
        made.append(replace(part, part=f"{kind} {i}"))
    return made


def area(outline: tuple[tuple[float, float], ...]) -> float:
    turns = zip(outline, (*outline[1:], outline[0]), strict=True)
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in turns)) / 2


def apart(a: Placement, b: Placement) -> bool:
    """Two convex outlines do not overlap when an edge of one of them separates them."""
    for one, other in ((a.outline, b.outline), (b.outline, a.outline)):
        for (x0, y0), (x1, y1) in zip(one, (*one[1:], one[0]), strict=True):
            sides = [(x1 - x0) * (y - y0) - (y1 - y0) * (x - x0) for x, y in other]
            if all(side <= 1e-5 for side in sides):
                return True
    return False


@SLOW
@given(part_lists(), cloths, remnant_lists)
def test_every_part_lies_once_inside_the_cloth_and_nothing_overlaps(
    parts: list[ClothPart], cloth: Cloth, remnants: list[Remnant]
) -> None:
    plan = lay_out(parts, cloth, remnants)
    if not isinstance(plan, ClothPlan):
        return
    for sheet in plan.sheets:
        for p in sheet.placements:
            assert p.x >= 0
            assert p.y >= 0
            assert max(x for x, _ in p.outline) <= sheet.width + 1e-4
            assert max(y for _, y in p.outline) <= sheet.length + 1e-4
        assert all(apart(a, b) for a, b in combinations(sheet.placements, 2))
    placed = [p for sheet in plan.sheets for p in sheet.placements]
    assert all(n == 1 for n in Counter((p.part, p.copy, p.piece) for p in placed).values())
    for part in parts:
        mine = [p for p in placed if p.part == part.part]
        if isinstance(part, Band):
            for way in (w for w in plan.bands if w.part == part.part):
                strips = [p for p in mine if p.copy == way.copy]
                lengths = sorted(p.height if way.way == "lengthwise" else p.width for p in strips)
                assert lengths == pytest.approx(sorted(way.strips), abs=1e-4)
                assert way.joins == len(strips) - 1 + part.ring
                assert len(strips) == 1 or min(lengths) >= part.shortest - 1e-4
                assert sum(lengths) >= part.length + way.joins * part.join - 1e-4
        else:
            assert len(mine) == part.count
            want = (
                part.width * part.height
                if isinstance(part, Panel)
                else part.height * (part.top + part.bottom) / 2
            )
            assert [area(p.outline) for p in mine] == pytest.approx([want] * part.count, abs=1e-3)
            if isinstance(part, Panel) and part.grain != "either":
                assert all(p.turned == (part.grain == "across") for p in mine)
        if cloth.nap:
            assert not any(p.flipped for p in mine)


@SLOW
@given(part_lists(), cloths, remnant_lists)
def test_bounds_steps_and_remnants(parts: list[ClothPart], cloth: Cloth, remnants: list[Remnant]) -> None:
    bare = lay_out(parts, cloth)
    if not isinstance(bare, ClothPlan):
        return
    assert bare.lower_bound <= bare.used + 1e-9
    assert bare.needed - 1e-4 <= bare.buy < bare.needed + cloth.step
    for other in (bare.used_crosswise, bare.used_lengthwise):
        assert other is None or other >= bare.lower_bound - 1e-9
    with_remnants = lay_out(parts, cloth, remnants)
    assert isinstance(with_remnants, ClothPlan)
    assert with_remnants.buy <= bare.buy


@SLOW
@given(part_lists(), cloths, remnant_lists, st.randoms(use_true_random=False))
def test_the_order_of_the_parts_does_not_matter(
    parts: list[ClothPart], cloth: Cloth, remnants: list[Remnant], random: Random
) -> None:
    shuffled, others = parts[:], remnants[:]
    random.shuffle(shuffled)
    random.shuffle(others)
    assert lay_out(shuffled, cloth, others) == lay_out(parts, cloth, remnants)
