"""Cord, cloth and starch of a corded petticoat: every row cut once, the cupboard first, the sample counted."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable

import pytest

from hoopwright.plan.model import Plan


@pytest.fixture(scope="module")
def plan(committed: Callable[[str], Plan]) -> Plan:
    return committed("quay-market/petticoat.yaml")


def test_every_row_is_cut_once_in_one_length(plan: Plan) -> None:
    packs = [pack for pack in plan.supply.cutting.packs if pack.material == "piping cord"]
    cut = Counter(piece.part for pack in packs for piece in pack.pieces)
    assert cut == Counter({**{f"C{k}": 1 for k in range(1, 43)}, "sample cords": 1})
    for pack in packs:
        washed = pack.pack * (1 if pack.origin == "on hand" else 0.98)
        assert sum(piece.length for piece in pack.pieces) <= washed + 1e-9
    assert plan.supply.cutting.proven


def test_a_row_is_cut_with_its_reserve(plan: Plan) -> None:
    cloth = plan.shape.corded
    assert cloth is not None
    assert {row.cut for row in cloth.rows} == {cloth.rows[0].run * 1.03}


def test_the_cupboard_is_used_first(plan: Plan) -> None:
    assert any(pack.origin == "on hand" and pack.pieces for pack in plan.supply.cutting.packs)
    lining = [layout for layout in plan.supply.layouts if layout.material == "lining"]
    assert [layout.buy for layout in lining] == [0.0]


def test_cloth_of_both_layers_and_of_the_sample_is_laid_out(plan: Plan) -> None:
    laid = Counter(place.part for layout in plan.supply.layouts for place in layout.placements)
    assert laid == Counter({"breadth": 3, "facing": 3, "sample": 1, "sample facing": 1})


def test_starch_is_bought_for_sample_and_petticoat(plan: Plan) -> None:
    [line] = [line for line in plan.supply.shopping if line.item == "starch"]
    assert line.uses == ("sample, and first starching",)
