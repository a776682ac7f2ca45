"""The supply stage: from a shape to cut lists, cloth layouts, a shopping list and its cost."""

from __future__ import annotations

from hoopwright.shape.model import Shape
from hoopwright.source.diagnostic import Finding, failed
from hoopwright.spec.model import Spec
from hoopwright.supply.budget import budget_check
from hoopwright.supply.listing import list_goods
from hoopwright.supply.mending import mend, mending_findings
from hoopwright.supply.model import Cutting, Supply
from hoopwright.supply.money import add_up
from hoopwright.supply.tools import missing_tools, wanted_jobs
from hoopwright.supply.trouble import price_note


def provide(spec: Spec, shape: Shape) -> tuple[Supply | None, tuple[Finding, ...]]:
    """What to buy and how to cut it.

    Everything on hand is used first; the shopping list holds only what is bought. ``None`` comes with at
    least one error: a piece longer than any pack, too little stock, a cloth too narrow. A missing price
    is a note and makes the cost partial.
    """
    listing = list_goods(spec, shape)
    if failed(listing.said):
        return None, listing.said
    cuts = listing.cuts
    cost = add_up(listing.lines, spec)
    budget = budget_check(spec, cost, listing.lines)
    supply = Supply(
        cutting=Cutting(
            tuple(pack for cut in cuts for pack in cut.packs),
            all(cut.proven for cut in cuts),
            max((cut.gap for cut in cuts), default=0.0),
            listing.splicing,
        ),
        layouts=tuple(layout for cloth in listing.laid for layout in cloth.layouts),
        shopping=listing.lines,
        cost=cost,
        tools_missing=missing_tools(spec, wanted_jobs(spec)),
        checks=(budget,) if budget is not None else (),
        mending=mend(spec, shape, spec.progress.cut, spec.progress.done) if spec.progress.cut else None,
    )
    return supply, (*listing.said, *price_note(cost.missing, spec), *mending_findings(supply.mending, spec))
