"""Time the whole-cage solver against OpenSees and PyNite on the same mesh, as ratios within one run.

Run: python tests/benchmarks/cage_solver.py

The cage: eight hoops of 48 elements on six tapes with a gap in front. OpenSees: corotational beams, UmfPack,
RCM, ten load steps, displacement increment 1e-9, weak springs against free swinging; timed from built model
to result. PyNite: one linear static solve with the same springs. The solver: from laid-out cage to converged
state. Each time is the least of several runs; the machine should be otherwise idle. Aims: OpenSees at least
15, PyNite at least 3, growth from 24 to 96 elements at most 4.
"""

from __future__ import annotations

import contextlib
import io
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import numpy as np
from measured import Ratio, tell

from hoopwright.strength.cage.build import Layout, lay_out
from hoopwright.strength.cage.model import CageModel, HoopModel, Section
from hoopwright.strength.cage.newton import newton, start
from hoopwright.strength.cage.solve import Options, solve
from hoopwright.strength.cage.system import System

sys.path.insert(0, str(Path(__file__).parents[1] / "external"))
sys.path.insert(0, str(Path(__file__).parents[1] / "strength"))
from apparatus.ovals import even_tapes, oval_points
from make_opensees_references import Reference, load_opensees, strip

SPRING = 1.0
"""N/m at every hoop node, level: keeps linear and first steps regular."""


def cage() -> CageModel:
    """Eight hoops from 45 to 90 cm on six tapes."""
    section: Section = strip(9.5, 1.07)
    hoops = tuple(
        HoopModel(f"H{k + 1}", oval_points(w, w, -0.12 - 0.1 * k), section, line_load_n_per_m=3.0)
        for k, w in enumerate(np.linspace(0.45, 0.9, 8).tolist())
    )
    return CageModel(hoops, even_tapes(tuple(h.id for h in hoops), 6, (0.26, 0.19), gap=0.25))


def least(run: Callable[[], float], times: int) -> float:
    """Return the least of several timings."""
    return min(run() for _ in range(times))


def own(elements: int) -> float:
    """Seconds from laid-out cage to converged state."""
    layout = lay_out(cage(), elements)

    def run() -> float:
        began = time.perf_counter()
        system = System(layout)
        found = newton(system, *start(system), 1.0)
        assert found.converged
        return time.perf_counter() - began

    return least(run, 7)


def opensees(layout: Layout) -> float:
    """Seconds of OpenSees' analysis."""
    ops = load_opensees()

    def run() -> float:
        reference = Reference(ops, layout, 1)
        reference.spring(SPRING)
        began = time.perf_counter()
        reference.analyse(1.0, 1e-9)
        return time.perf_counter() - began

    return least(run, 2)


def pynite(layout: Layout) -> float:
    """Seconds of one linear solve in PyNite."""
    from Pynite import FEModel3D

    model = FEModel3D()
    section = layout.model.hoops[0].section
    e, g = section.modulus, 79e9
    area, iy, iz = section.ea / e, section.ei_strong / e, section.ei_weak / e
    model.add_material("steel", e, g, 0.3, 0.0)
    model.add_section("strip", area, iy, iz, section.gj / g)
    model.add_section("tape", 3000.0 / e, 1e-14, 1e-14, 1e-14)
    for k, p in enumerate(layout.x.tolist()):
        model.add_node(f"N{k}", *p)
        if k >= layout.hoop_nodes:
            model.def_support(f"N{k}", *[True] * 6)
        else:
            model.def_support_spring(f"N{k}", "DX", SPRING)
            model.def_support_spring(f"N{k}", "DY", SPRING)
            model.add_node_load(f"N{k}", "FZ", float(layout.loads.force[k, 2]))
    for k, (i, j) in enumerate(zip(layout.rods.first.tolist(), layout.rods.second.tolist(), strict=True)):
        model.add_member(f"R{k}", f"N{i}", f"N{j}", "steel", "strip")
    for k, (i, j) in enumerate(zip(layout.bars.first.tolist(), layout.bars.second.tolist(), strict=True)):
        model.add_member(f"T{k}", f"N{i}", f"N{j}", "steel", "tape")
    began = time.perf_counter()
    with contextlib.redirect_stdout(io.StringIO()):
        model.analyze_linear()
    return time.perf_counter() - began


def main() -> None:
    """Print the ratios."""
    tell(ratios())


def ratios() -> Iterator[Ratio]:
    """The solver against itself and against its references."""
    layout = lay_out(cage(), 48)
    base = own(48)
    yield Ratio("laying the cage out over solving it", timed(lambda: lay_out(cage(), 48)) / base,
                more=f"the solve takes {1000 * base:.0f} ms")
    yield Ratio("load factor and report too over solving it",
                timed(lambda: solve(cage(), Options(48))) / base)
    yield Ratio("growth from 24 to 96 elements", own(96) / own(24), 4.0)
    yield Ratio("one linear solve by PyNite over our nonlinear one", pynite(layout) / base, 3.0, most=False)
    yield Ratio("OpenSees on the same mesh over our solver", opensees(layout) / base, 15.0, most=False)


def timed(call: Callable[[], object]) -> float:
    """Return the least time of a call in three."""

    def run() -> float:
        began = time.perf_counter()
        call()
        return time.perf_counter() - began

    return least(run, 3)


if __name__ == "__main__":
    main()
