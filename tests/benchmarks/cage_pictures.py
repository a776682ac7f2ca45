"""Time what is said and drawn of a solved cage against solving it, as ratios within one run.

Run: python tests/benchmarks/cage_pictures.py

The cage is that of the worked example. Solve: from the mechanical model to the converged state and its load
factor, at 48 elements a hoop. Report: reading forces, stress, sag and outlines out of the state. Figure: the
loaded cage beside the wished one. Tables: spring-back, seat and strength as text. The aim is a tenth of the
solve together; what is drawn of the cage apart from its load (elevations, charts, gauges) is timed too, as it
is the same for any solver.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from pathlib import Path

from measured import Ratio, tell

from hoopwright.compile import compile_spec
from hoopwright.render.drawing.loaded import draw_loaded
from hoopwright.render.figures import draw_figures
from hoopwright.render.views.annex import annex_view
from hoopwright.render.views.handling import handling_view
from hoopwright.strength import whole
from hoopwright.strength.cage.build import lay_out
from hoopwright.strength.cage.solve import describe, solve
from hoopwright.strength.cage.system import System
from hoopwright.strength.cage.track import Stops, factor_of, reach
from hoopwright.strength.handling import handlings, seated
from hoopwright.strength.problem import pose

SPEC = Path(__file__).resolve().parents[2] / "specs" / "harbour-play" / "cage.yaml"
ROUNDS = 9


def least(call: Callable[[], object]) -> float:
    """The least time of a call in several rounds, s."""
    times = []
    for _ in range(ROUNDS):
        began = time.perf_counter()
        call()
        times.append(time.perf_counter() - began)
    return min(times)


def main() -> None:
    """Print the ratios."""
    tell(ratios())


def ratios() -> Iterator[Ratio]:
    """Each part of what is said and drawn, and all of it, over the solve."""
    plan = compile_spec(SPEC.read_bytes(), SPEC.name).plan
    assert plan is not None
    problem = pose(plan.spec, plan.shape)
    model = whole.model(problem)
    system = System(lay_out(model, 48))
    reached = reach(system, Stops())
    factor = factor_of(system, reached, Stops())
    result = solve(model)
    base = least(lambda: solve(model))
    parts = {
        "report": least(lambda: whole.solution(problem, describe(system, reached.found, "solved", factor))),
        "spring-back and seat": least(lambda: (handlings(problem), seated(problem))),
        "loaded figure": least(lambda: draw_loaded(plan)),
        "tables": least(lambda: (annex_view(plan, ()), handling_view(plan))),
    }
    for name, spent in parts.items():
        yield Ratio(f"{name} over the solve", spent / base)
    yield Ratio("figures and reports of strength over the solve", sum(parts.values()) / base, 0.1)
    every = least(lambda: draw_figures(plan))
    yield Ratio("all figures of the plan, gauges and steps too, over the solve", every / base,
                more=f"the solve takes {1000 * base:.0f} ms")
    assert result.status == "solved"


if __name__ == "__main__":
    main()
