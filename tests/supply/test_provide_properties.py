"""What holds for every cage that can be provided: any size, any packs, any stock on hand."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from decimal import Decimal
from types import SimpleNamespace

from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.supply.model import Supply
from hoopwright.supply.provide import provide

MICRON, TENTH = 1e-6, 1e-4  # of a millimetre the latter: cloth is laid out on a fine grid
Drawn = Callable[[str], SimpleNamespace]

CAGE = """
spec: 1
units: inches
wearer: {{stature: 5 ft 6 in, waist: 27 in}}
shape: {{hem: {{girth: {hem} in}}, hoops: {{count: {count}}}}}
build: {{hoops: {{material: strip, join: {join}}}, tapes: {{count: {tapes}, material: twill}}{band}}}
materials:
  strip:
    grade: spring steel, tempered
    section: {{kind: flat, width: 3/8 in, thickness: 0.042 in}}
    sold: [{{length: {short} ft, price: {low} USD}}, {{length: 100 ft, price: 33.00 USD}}]
    on_hand: {hand}
  twill: {{kind: tape, width: 1 in, sold: [{{per: 1 yd, step: 1/2 yd, price: 0.65 USD}}]}}
  braid: {{kind: braid, sold: [{{length: 5 yd, price: 2.75 USD}}, {{length: 12 yd, price: 6.00 USD}}]}}
  calico:
    kind: cloth
    weight: 140 g/m2
    width: {width} in
    sold: [{{per: 1 yd, step: 1/8 yd, price: 4.20 USD}}]
"""


@st.composite
def cages(draw: st.DrawFn) -> dict[str, object]:
    band = draw(st.sampled_from(("", ", hem_band: {depth: 8 in, material: calico}")))
    return {
        "hem": draw(st.integers(85, 140)),
        "count": draw(st.integers(4, 9)),
        "tapes": draw(st.integers(4, 8)),
        "join": draw(st.sampled_from(("lap soldered", "lap bound", "sleeve crimped", "lap riveted"))),
        "band": band,
        "short": draw(st.integers(13, 60)),
        "low": draw(st.integers(400, 2500)) / 100,
        "hand": "[" + ", ".join(f"{n} ft" for n in draw(st.lists(st.integers(2, 20), max_size=3))) + "]",
        "width": draw(st.sampled_from((36, 45, 60))),
    }


def supply_of(drawn: Drawn, values: dict[str, object]) -> tuple[SimpleNamespace, Supply]:
    cage = drawn(CAGE.format(**values))
    supply, said = provide(cage.spec, cage.shape)
    assert supply is not None, said
    return cage, supply


@settings(deadline=None, max_examples=60)
@given(values=cages())
def test_every_piece_is_cut_once_from_a_pack_that_holds_it(drawn: Drawn, values: dict[str, object]) -> None:
    cage, supply = supply_of(drawn, values)
    cut = Counter(piece.part for pack in supply.cutting.packs for piece in pack.pieces)
    wanted = [hoop.id for hoop in cage.shape.hoops] + [tape.id for tape in cage.shape.tapes]
    assert all(cut[part] == 1 for part in (*wanted, "waistband"))
    assert sum(cut.values()) == len(wanted) + 1 + sum(1 for hoop in cage.shape.hoops if hoop.cased)
    for pack in supply.cutting.packs:
        kerf = cage.spec.allowances.kerf if pack.material == "strip" else 0.0
        used = sum(piece.length for piece in pack.pieces) + kerf * max(0, len(pack.pieces) - 1)
        assert used <= pack.pack + MICRON
        assert 0 <= pack.left <= pack.pack - used + MICRON


@settings(deadline=None, max_examples=60)
@given(values=cages())
def test_the_list_is_what_is_cut_and_the_total_is_its_sum(drawn: Drawn, values: dict[str, object]) -> None:
    _, supply = supply_of(drawn, values)
    for item in ("strip", "twill", "braid"):
        bought = sum(
            pack.pack for pack in supply.cutting.packs if pack.material == item and pack.origin == "bought"
        )
        listed = sum(line.packs * line.pack_length for line in supply.shopping if line.item == item)
        assert abs(bought - listed) < 1e-6
    assert supply.cost.total == sum(
        (line.cost for line in supply.shopping if line.cost is not None), Decimal(0)
    )
    for line in supply.shopping:
        assert line.packs > 0
        assert line.need > 0
        assert line.packs * (line.pack_length or line.pack_count) >= line.need - line.on_hand - 1e-9
        assert line.price is None or abs(line.packs * line.price - (line.cost or 0)) <= Decimal("0.005")
    assert set(supply.cost.missing) == {line.item for line in supply.shopping if line.cost is None}


@settings(deadline=None, max_examples=40)
@given(values=cages(), more=st.integers(2, 30), cut=st.integers(1, 99))
def test_more_on_hand_and_cheaper_packs_never_cost_more(
    drawn: Drawn, values: dict[str, object], more: int, cut: int
) -> None:
    _, supply = supply_of(drawn, values)
    hand = str(values["hand"])
    fuller = {**values, "hand": hand[:-1] + (", " if hand != "[]" else "") + f"{more} ft]"}
    assert supply_of(drawn, fuller)[1].cost.total <= supply.cost.total
    cheaper = {**values, "low": round(float(str(values["low"])) * cut / 100, 2) or 0.01}
    assert supply_of(drawn, cheaper)[1].cost.total <= supply.cost.total


@settings(deadline=None, max_examples=60)
@given(values=cages())
def test_the_strips_of_a_band_make_up_its_length_on_the_cloth(
    drawn: Drawn, values: dict[str, object]
) -> None:
    cage, supply = supply_of(drawn, values)
    if cage.shape.band is None:
        assert supply.layouts == ()
        return
    (layout,) = supply.layouts
    across = layout.direction == "across"
    lengths = [placed.width if across else placed.height for placed in layout.placements]
    heights = [placed.height if across else placed.width for placed in layout.placements]
    seams = 0.0 if across else layout.joins * 2 * cage.spec.allowances.seam
    assert abs(sum(lengths) - seams - cage.shape.band.length) < TENTH
    assert all(abs(height - cage.shape.band.height) < TENTH for height in heights)
    for k, one in enumerate(layout.placements):
        assert 0 <= one.x <= one.x + one.width <= layout.width + 1e-9
        assert one.y + one.height <= layout.need + 1e-9
        for two in layout.placements[k + 1 :]:
            apart_x = one.x + one.width <= two.x + 1e-9 or two.x + two.width <= one.x + 1e-9
            apart_y = one.y + one.height <= two.y + 1e-9 or two.y + two.height <= one.y + 1e-9
            assert apart_x or apart_y
