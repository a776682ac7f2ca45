"""One-dimensional cutting: which packs to buy and how to cut them.

The only entry is `cut_lengths(order, limits) -> CuttingPlan | CuttingFailure`, a pure function of its arguments.
"""
