"""The supply stage: from a shape to cut lists, cloth layouts, a shopping list and its cost."""

from __future__ import annotations

from hoopwright.shape.model import Shape
from hoopwright.source.diagnostic import Finding, failed
from hoopwright.spec.model import Spec
from hoopwright.supply.budget import budget_check
from hoopwright.supply.cloths import Laid, lay_need
from hoopwright.supply.counts import count_line, count_needs
from hoopwright.supply.cutting.model import CuttingFailure
from hoopwright.supply.lengths import Cut, cut_need
from hoopwright.supply.model import Cutting, ShoppingLine, Supply
from hoopwright.supply.money import add_up
from hoopwright.supply.needs import cloth_needs, length_needs
from hoopwright.supply.tools import missing_tools, wanted_jobs
from hoopwright.supply.trouble import cloth_trouble, cutting_trouble, piece_warning, price_note


def provide(spec: Spec, shape: Shape) -> tuple[Supply | None, tuple[Finding, ...]]:
    """What to buy and how to cut it.

    Everything on hand is used first; the shopping list holds only what is bought. ``None`` comes with at
    least one error: a piece longer than any pack, too little stock, a cloth too narrow. A missing price
    is a note and makes the cost partial.
    """
    cuts, lengths_said = _lengths(spec, shape)
    laid, cloth_said = _cloths(spec, shape)
    said = (*lengths_said, *cloth_said)
    if failed(said):
        return None, said
    counted = [count_line(need) for need in count_needs(spec, shape)]
    lines: list[ShoppingLine] = [line for cut in cuts for line in cut.lines]
    lines += [cloth.line for cloth in laid if cloth.line is not None]
    lines += [line for line in counted if line is not None]
    cost = add_up(lines, spec)
    budget = budget_check(spec, shape, cost, tuple(lines))
    supply = Supply(
        cutting=Cutting(
            tuple(pack for cut in cuts for pack in cut.packs),
            all(cut.proven for cut in cuts),
            max((cut.gap for cut in cuts), default=0.0),
        ),
        layouts=tuple(layout for cloth in laid for layout in cloth.layouts),
        shopping=tuple(lines),
        cost=cost,
        tools_missing=missing_tools(spec, wanted_jobs(spec)),
        checks=(budget,) if budget is not None else (),
    )
    return supply, (*said, *price_note(cost.missing, spec))


def _lengths(spec: Spec, shape: Shape) -> tuple[list[Cut], list[Finding]]:
    cuts: list[Cut] = []
    said: list[Finding] = []
    for need in length_needs(spec, shape):
        said.extend(piece_warning(need.item, need.sold))
        cut = cut_need(need, spec)
        if isinstance(cut, CuttingFailure):
            said.extend(cutting_trouble(need, cut, spec))
        else:
            cuts.append(cut)
    return cuts, said


def _cloths(spec: Spec, shape: Shape) -> tuple[list[Laid], list[Finding]]:
    laid: list[Laid] = []
    said: list[Finding] = []
    for need in cloth_needs(spec, shape):
        said.extend(piece_warning(need.goods.name, need.goods.sold))
        found = lay_need(need, spec)
        if isinstance(found, Laid):
            laid.append(found)
        else:
            said.extend(cloth_trouble(need, found, spec))
    return laid, said
