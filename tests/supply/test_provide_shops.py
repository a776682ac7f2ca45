"""Deliveries and remnants of a whole design; and that no order of writing changes what is bought."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from types import SimpleNamespace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.supply.model import Supply
from hoopwright.supply.provide import provide

Drawn = Callable[[str], SimpleNamespace]

CAGE = """
spec: 1
units: centimetres
wearer: {{stature: 168 cm, waist: 72 cm}}
shape: {{hem: {{girth: {hem} cm}}, hoops: {{count: 6}}}}
build:
  hoops: {{material: strip, casing: none, splices: {splices}}}
  tapes: {{material: twill}}
  hem_band: {{depth: 20 cm, material: calico}}
shops: {{wire works: {delivery}, market: 0 EUR, draper: 3.10 EUR}}
materials:
{materials}
limits: {{budget: 90 EUR}}
"""
STRIP = """\
  strip:
    grade: spring steel, tempered
    section: {{kind: flat, width: 10 mm, thickness: 1 mm}}
    from: wire works
    sold: [{sold}]
    on_hand: [{hand}]"""
CALICO = """\
  calico: {{kind: cloth, weight: 140 g/m2, width: 140 cm, from: draper, on_hand: [{remnants}],
           sold: [{{per: 1 m, step: 10 cm, price: 7 EUR}}]}}"""
OTHERS = ["  twill: {kind: tape, from: market, sold: [{length: 10 m, price: 5.90 EUR}]}"]
SOLD = [
    "{length: 5 m, price: 9.00 EUR}",
    "{length: 3.1 m, price: 5.00 EUR, at_most: 2}",
    "{length: 25 m, price: 44.00 EUR}",
]


def supply_of(
    drawn: Drawn,
    *,
    sold: list[str] = SOLD,
    hand: list[str] | None = None,
    remnants: list[str] | None = None,
    turned: bool = False,
    hem: int = 280,
    splices: int = 0,
    delivery: str = "6.90 EUR",
) -> tuple[SimpleNamespace, Supply]:
    strip = STRIP.format(sold=", ".join(sold), hand=", ".join(hand or []))
    blocks = [strip, CALICO.format(remnants=", ".join(remnants or [])), *OTHERS]
    materials = "\n".join(reversed(blocks) if turned else blocks)
    cage = drawn(CAGE.format(hem=hem, splices=splices, delivery=delivery, materials=materials))
    supply, said = provide(cage.spec, cage.shape)
    assert supply is not None, said
    return cage, supply


def deliveries(supply: Supply) -> dict[str, Decimal | None]:
    return {line.item: line.cost for line in supply.shopping if line.kind == "delivery"}


def test_each_shop_bought_from_delivers_once_and_a_free_one_is_not_listed(drawn: Drawn) -> None:
    _, supply = supply_of(drawn)
    assert deliveries(supply) == {
        "delivery from wire works": Decimal("6.90"),
        "delivery from draper": Decimal("3.10"),
    }
    assert supply.cost.total == sum((line.cost or Decimal(0) for line in supply.shopping), Decimal(0))


def test_nothing_bought_there_nothing_delivered(drawn: Drawn) -> None:
    _, supply = supply_of(drawn, hand=["25 m"])
    assert list(deliveries(supply)) == ["delivery from draper"]


def test_the_budget_is_held_against_total_and_reserve_deliveries_in_it(drawn: Drawn) -> None:
    _, dear = supply_of(drawn, delivery="80 EUR")
    assert dear.cost.total + dear.cost.reserve > Decimal(90)
    assert [check.result for check in dear.checks if check.code == "budget"] == ["fails"]


def test_a_narrow_remnant_is_used_before_cloth_is_bought(drawn: Drawn) -> None:
    cage, plain = supply_of(drawn)
    _, saved = supply_of(drawn, remnants=["{length: 150 cm, width: 100 cm}"])
    assert saved.cost.total < plain.cost.total
    on_hand = [layout for layout in saved.layouts if layout.buy == 0]
    assert [layout.width for layout in on_hand] == [pytest.approx(1.0)]
    area = sum(spot.width * spot.height for layout in saved.layouts for spot in layout.placements)
    seams = 2 * cage.spec.allowances.seam * cage.shape.band.height
    assert area >= cage.shape.band.length * cage.shape.band.height - 1e-6
    assert area <= cage.shape.band.length * cage.shape.band.height + 6 * seams


@settings(deadline=None, max_examples=25)
@given(
    order=st.permutations(SOLD),
    hand=st.lists(st.sampled_from(["90 cm", "1.6 m", "2.2 m"]), max_size=3),
    remnants=st.lists(st.sampled_from(["40 cm", "{length: 60 cm, width: 50 cm}"]), max_size=2),
    hem=st.integers(230, 300),
    splices=st.integers(0, 1),
)
def test_the_order_of_writing_changes_nothing(
    drawn: Drawn, order: list[str], hand: list[str], remnants: list[str], hem: int, splices: int
) -> None:
    _, one = supply_of(drawn, hand=hand, remnants=remnants, hem=hem, splices=splices)
    _, two = supply_of(
        drawn,
        sold=order,
        hand=hand[::-1],
        remnants=remnants[::-1],
        hem=hem,
        splices=splices,
        turned=True,
    )
    assert two.cost == one.cost
    assert two.cutting == one.cutting
    assert two.shopping == one.shopping


@settings(deadline=None, max_examples=25)
@given(
    hand=st.lists(st.integers(40, 400), max_size=3),
    more=st.integers(40, 500),
    hem=st.integers(230, 300),
    cut=st.integers(10, 99),
    splices=st.integers(0, 1),
)
def test_more_on_hand_or_a_cheaper_pack_never_costs_more(
    drawn: Drawn, hand: list[int], more: int, hem: int, cut: int, splices: int
) -> None:
    shelf = [f"{length} cm" for length in hand]
    before = supply_of(drawn, hand=shelf, hem=hem, splices=splices)[1].cost.total
    fuller = supply_of(drawn, hand=[*shelf, f"{more} cm"], hem=hem, splices=splices)[1]
    assert fuller.cost.total <= before
    cheaper = [f"{{length: 5 m, price: {9 * cut / 100:.2f} EUR}}", *SOLD[1:]]
    assert supply_of(drawn, sold=cheaper, hand=shelf, hem=hem, splices=splices)[1].cost.total <= before
