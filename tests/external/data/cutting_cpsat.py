"""Cutting instances solved by OR-Tools CP-SAT, the reference of `test_cutting_against_cpsat.py`.

    python tests/external/data/cutting_cpsat.py [SECONDS]

writes `cutting_cpsat.json` beside this file: generated instances (lengths in 0.1 mm, prices in cents) with
the cost that CP-SAT found, the bound it proved, and whether they are equal. The model knows nothing of the
project's own methods: one variable for how many pieces of a length lie on a pack, for every pack that may
be bought. To save time it is shown the project's plan as a hint, which cannot change what it proves.
"""

from __future__ import annotations

import json
import random
import sys
from collections import Counter
from math import floor
from pathlib import Path
from typing import Any

from ortools.sat.python import cp_model

DATA = Path(__file__).with_suffix(".json")
FEET, INCH = 3048, 254
FAMILIES: list[tuple[str, list[int], tuple[int, int]]] = [
    ("strip in one coil length", [50 * FEET], (55, 115)),
    ("strip in two coil lengths", [50 * FEET, 100 * FEET], (50, 120)),
    ("strip in three coil lengths", [25 * FEET, 50 * FEET, 100 * FEET], (50, 130)),
    ("cane in one length", [25_000], (30, 95)),
    ("tube in two lengths", [30_000, 60_000], (40, 110)),
    ("tape in two lengths", [15 * FEET, 30 * FEET], (36, 50)),
    ("cane in three lengths", [20_000, 25_000, 40_000], (20, 75)),
]
COUNTS = [7, 8, 9, 10, 11, 12, 14, 16, 18, 20, 24, 28, 32, 40, 50, 60]
LARGE = [(80, 0), (100, 1), (120, 0), (150, 2), (200, 1), (250, 0), (300, 1), (300, 2)]


def instance(seed: int, count: int, family: int) -> dict[str, Any]:
    """A generated instance: `count` pieces of one of the families."""
    dice = random.Random(seed)
    name, packs, (low, high) = FAMILIES[family]
    kinds = max(3, count // dice.choice([1, 1, 2, 4]))
    sizes = [round(dice.uniform(low, high) * 8) * INCH // 8 for _ in range(kinds)]
    return {
        "name": f"{count} pieces, {name}, seed {seed}",
        "pieces": [dice.choice(sizes) for _ in range(count)],
        "packs": [
            {"length": p, "cents": round(p / 100 * dice.uniform(1.0, 1.4)), "available": None} for p in packs
        ],
        "on_hand": [round(dice.uniform(20, 170) * INCH) for _ in range(dice.choice([0, 1, 3, 5]))],
        "kerf": dice.choice([0, 16, 30]),
        "trim": dice.choice([0, 0, 100]),
    }


def instances() -> list[dict[str, Any]]:
    """All instances; a third of the small ones have a limited cheap offer."""
    made = [instance(i, count, i % len(FAMILIES)) for i, count in enumerate(COUNTS * 3)]
    made += [instance(900 + i, count, family) for i, (count, family) in enumerate(LARGE)]
    for i, one in enumerate(made[:48]):
        if i % 3 == 0:
            one["packs"][0]["available"] = 1 + i % 4
            one["packs"].append(
                {
                    "length": one["packs"][0]["length"],
                    "cents": one["packs"][0]["cents"] + 97,
                    "available": None,
                }
            )
    return made


class Model:
    """The assignment model: x[s, j] pieces of size s on pack j."""

    def __init__(self, data: dict[str, Any]) -> None:
        kerf, trim = data["kerf"], data["trim"]
        self.model = cp_model.CpModel()
        self.sizes = Counter(p + kerf for p in data["pieces"])
        self.bins: list[tuple[str, int, Any, dict[int, Any]]] = []
        self._cost: list[Any] = []
        for length in sorted(data["on_hand"]):
            self._open("on hand", length, length - trim + kerf, 0, 1)
        for pack in data["packs"]:
            most = self._most(pack["length"] - trim + kerf)
            most = most if pack["available"] is None else min(most, pack["available"])
            self._open(
                f"{pack['length']} {pack['cents']}",
                pack["length"],
                pack["length"] - trim + kerf,
                pack["cents"],
                most,
            )
        for size, count in self.sizes.items():
            self.model.add(sum(x[size] for _, _, _, x in self.bins if size in x) == count)
        self.model.minimize(sum(self._cost))

    def _most(self, cap: int) -> int:
        """How many packs of one length first-fit decreasing takes for all pieces that fit: never are more
        needed."""
        rooms: list[int] = []
        for size in sorted(self.sizes.elements(), reverse=True):
            place = next((i for i, room in enumerate(rooms) if room >= size), None)
            if size > cap:
                continue
            if place is None:
                rooms.append(cap - size)
            else:
                rooms[place] -= size
        return len(rooms)

    def _open(self, kind: str, length: int, cap: int, cents: int, most: int) -> None:
        before = None
        for _ in range(most):
            used = self.model.new_bool_var("")
            x = {
                s: self.model.new_int_var(0, min(n, floor(cap / s)), "")
                for s, n in self.sizes.items()
                if s <= cap
            }
            fill = sum(s * v for s, v in x.items())
            self.model.add(fill <= max(0, cap) * used)
            if before is not None:
                self.model.add(used <= before[0])
                self.model.add(fill <= before[1])
            before = (used, fill)
            self.bins.append((kind, length, used, x))
            self._cost.append(cents * used)

    def hint(self, plan: list[tuple[str, int, list[int]]]) -> None:
        """Show a plan: (kind, length, sizes cut) of every pack used, fuller ones first."""
        waiting = sorted(plan, key=lambda p: -sum(p[2]))
        for kind, length, used, x in self.bins:
            mine = next((p for p in waiting if p[0] == kind and p[1] == length), None)
            cut = Counter(mine[2]) if mine else Counter()
            if mine:
                waiting.remove(mine)
            self.model.add_hint(used, mine is not None)
            for size, variable in x.items():
                self.model.add_hint(variable, cut[size])

    def solve(self, seconds: float) -> tuple[int | None, int]:
        """Least cost found (None: none, or none exists) and the proven bound, in cents; one thread."""
        solver = cp_model.CpSolver()
        solver.parameters.num_workers = 1
        solver.parameters.random_seed = 1
        solver.parameters.max_time_in_seconds = seconds
        status = solver.solve(self.model)
        if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
            return None, 0
        return round(solver.objective_value), round(solver.best_objective_bound)


def our_plan(data: dict[str, Any]) -> list[tuple[str, int, list[int]]]:
    """The project's plan of an instance in the form of a hint."""
    from decimal import Decimal

    from hoopwright.supply.cutting import CuttingOrder, CuttingPlan, CuttingRules, Pack, Piece, cut_lengths

    order = CuttingOrder(
        tuple(Piece(f"P{i}", p / 10_000) for i, p in enumerate(data["pieces"])),
        tuple(Pack(p["length"] / 10_000, Decimal(p["cents"]) / 100, p["available"]) for p in data["packs"]),
        tuple(x / 10_000 for x in data["on_hand"]),
        CuttingRules(kerf=data["kerf"] / 10_000, trim=data["trim"] / 10_000),
    )
    plan = cut_lengths(order)
    if not isinstance(plan, CuttingPlan):
        return []
    made = []
    for pack in plan.packs:
        length = round(pack.length * 10_000)
        price = pack.offer.price if pack.offer else None
        kind = "on hand" if price is None else f"{length} {round(price * 100)}"
        made.append((kind, length, [round(c.length * 10_000) + data["kerf"] for c in pack.pieces]))
    return made


def main() -> None:
    seconds = float(sys.argv[1]) if len(sys.argv) > 1 else 20.0
    solved = []
    for data in instances():
        model = Model(data)
        model.hint(our_plan(data))
        cost, bound = model.solve(seconds)
        solved.append({**data, "cost": cost, "bound": bound, "proven": cost is not None and cost == bound})
        print(data["name"], cost, bound)
    lines = ",\n".join(json.dumps(one) for one in solved)
    DATA.write_text(f"[\n{lines}\n]\n")


if __name__ == "__main__":
    main()
