"""The cutting problem over columns (a length and what is cut from it), solved by HiGHS through highspy.

Rows: every size is cut at least as often as it is wanted; no kind of length is used more often than there is.
Money is scaled so that the dearest length costs 1. One thread, fixed seed, no time limit: the same
everywhere.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from hoopwright.highs import quiet_solver
from hoopwright.source.record import record
from hoopwright.supply.cutting.packing import Fill
from hoopwright.supply.cutting.stock import Stock

Column = tuple[int, Fill]
"""A kind of length (index into Kinds) and how many pieces of each size are cut from it."""


@record(frozen=True, slots=True)
class Kinds:
    """Distinct lengths: those on hand (price 0), then the offers; `scale` price units are 1 for the
    solver."""

    caps: tuple[int, ...]
    prices: tuple[int, ...]
    avail: tuple[int, ...]
    scale: int
    hand_kinds: int


def kinds_of(stock: Stock) -> Kinds:
    """The distinct lengths of a stock."""
    hand = sorted({c for c in stock.hand if c > 0})
    return Kinds(
        caps=tuple(hand) + stock.caps,
        prices=(0,) * len(hand) + stock.prices,
        avail=tuple(stock.hand.count(c) for c in hand) + stock.avail,
        scale=max(stock.prices, default=1),
        hand_kinds=len(hand),
    )


@record(frozen=True, slots=True)
class Duals:
    """Worth of one more piece of each size (>= 0), of one more length of each kind (<= 0), and the least cost
    of the present columns."""

    worths: tuple[float, ...]
    limits: tuple[float, ...]
    value: float


class Master:
    """The linear program over columns that grows; one row per size, then one per kind."""

    def __init__(self, counts: Sequence[int], kinds: Kinds) -> None:
        self._kinds = kinds
        self._counts = tuple(counts)
        self._solver: Any = quiet_solver()
        self.columns: list[Column] = []
        self._known: set[Column] = set()
        infinity = self._solver.inf
        for count in counts:
            self._solver.addRow(float(count), infinity, 0, [], [])
        for avail in kinds.avail:
            self._solver.addRow(-infinity, float(avail), 0, [], [])
        for i in range(len(counts)):  # a piece left uncut costs more than any length
            self._solver.addCol(4.0, 0.0, infinity, 1, [i], [1.0])

    def add(self, column: Column) -> bool:
        """Add a column; False when it is there already or cuts nothing."""
        if column in self._known or not any(column[1]):
            return False
        self._known.add(column)
        _add_column(self._solver, column, self._kinds, len(self._counts))
        self.columns.append(column)
        return True

    def used(self) -> list[float]:
        """How often each column is used in the present fractional optimum."""
        return [float(x) for x in self._solver.getSolution().col_value][len(self._counts) :]

    def solve(self) -> Duals:
        """Optimal duals of the present columns."""
        self._solver.run()
        value = float(self._solver.getObjectiveValue())
        dual = list(self._solver.getSolution().row_dual)
        m = len(self._counts)
        return Duals(tuple(max(0.0, d) for d in dual[:m]), tuple(min(0.0, d) for d in dual[m:]), value)


def choose(
    counts: Sequence[int], kinds: Kinds, columns: Sequence[Column], most_cost: int, nodes: int
) -> tuple[list[Column] | None, bool]:
    """The cheapest whole-number choice of columns that costs at most `most_cost` price units.

    Returns the columns chosen (repeated; None when none was found) and whether that answer is final.
    """
    solver = quiet_solver()
    import highspy

    infinity = solver.inf
    for count in counts:
        solver.addRow(float(count), infinity, 0, [], [])
    for avail in kinds.avail:
        solver.addRow(-infinity, float(avail), 0, [], [])
    solver.addRow(-infinity, (most_cost + 0.5) / kinds.scale, 0, [], [])
    for j, column in enumerate(columns):
        _add_column(solver, column, kinds, len(counts), cost_row=True)
        solver.changeColIntegrality(j, highspy.HighsVarType.kInteger)
    solver.setOptionValue("mip_max_nodes", nodes)
    solver.setOptionValue("mip_rel_gap", 0.0)
    solver.setOptionValue("mip_abs_gap", 0.4 / kinds.scale)
    solver.run()
    status = solver.getModelStatus()
    if status == highspy.HighsModelStatus.kInfeasible:
        return None, True
    if solver.getInfo().primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
        return None, False
    values = list(solver.getSolution().col_value)
    chosen = [c for c, x in zip(columns, values, strict=True) for _ in range(round(x))]
    return chosen, status == highspy.HighsModelStatus.kOptimal


def _add_column(solver: Any, column: Column, kinds: Kinds, sizes: int, cost_row: bool = False) -> None:
    kind, fill = column
    cost = kinds.prices[kind] / kinds.scale
    rows = [i for i, n in enumerate(fill) if n] + [sizes + kind]
    values = [float(n) for n in fill if n] + [1.0]
    if cost_row and cost:
        rows.append(sizes + len(kinds.caps))
        values.append(cost)
    solver.addCol(cost, 0.0, float(kinds.avail[kind]), len(rows), rows, values)
