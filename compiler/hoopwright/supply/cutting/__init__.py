"""One-dimensional cutting: which packs to buy and how to cut them.

`cut_lengths(order, limits) -> CuttingPlan | CuttingFailure` is the entry, a pure function of its arguments.
Plans are compared by, in this order,

1. money for packs (and splices), or the length bought when any offer has no price, then the number of packs;
2. waste: the sum of all remainders shorter than `useful`, untouched lengths on hand among them;
   kerf and trim are no remainders;
3. the longest single remainder, untouched lengths on hand among them (longer is better);
4. the length cut from stock on hand (more is better), then the number of lengths cut into (fewer is better);
5. the plan itself: fewer packs, more of the longer packs; then, on the lengths in the order on hand
   (shortest first), bought (shortest first), more of the longest pieces on the earlier ones. Equal pieces
   take their labels in natural order.

The first is proven, or the gap is stated. The second and third are proven when `waste_proven` says so, and
then all five hold exactly; on orders too large to search through, exchanges make them as good as they can.
Only a plan whose `method` is "columns" has been near the solver; of plans of the same cost it may keep the
solver's own, all others are the same on every machine.
"""

from hoopwright.supply.cutting.model import (
    BadOrder,
    Bought,
    CutPack,
    CutPiece,
    CuttingFailure,
    CuttingOrder,
    CuttingPlan,
    CuttingProblem,
    CuttingRules,
    NotEnough,
    Pack,
    Piece,
    SpliceReport,
    SpliceRule,
    TooLong,
    WorkLimits,
)
from hoopwright.supply.cutting.solve import cut_lengths

__all__ = [
    "BadOrder",
    "Bought",
    "CutPack",
    "CutPiece",
    "CuttingFailure",
    "CuttingOrder",
    "CuttingPlan",
    "CuttingProblem",
    "CuttingRules",
    "NotEnough",
    "Pack",
    "Piece",
    "SpliceReport",
    "SpliceRule",
    "TooLong",
    "WorkLimits",
    "cut_lengths",
]
