"""Make the OpenSees reference results in data/opensees_cages.json (needs OpenSeesPy; the tests do not).

Run: python tests/external/make_opensees_references.py

Reference: OpenSees (Pacific Earthquake Engineering Research Center), elasticBeamColumn with the Corotational
transformation for hoops, corotTruss with a material that only pulls for tapes, ties and bands. Every hoop
element of the 48-element mesh is cut into 5 and into 10 straight chords (240 and 480 a hoop); what both give
is extrapolated to none of their length, the error of chords being quadratic. Springs that hold every hoop at
first are taken away in steps, because an unloaded cage swings freely.
"""

from __future__ import annotations

import ctypes
import dataclasses
import importlib.util
import json
import sys
from pathlib import Path
from typing import Any

import numpy as np

from hoopwright.strength.cage import model as m
from hoopwright.strength.cage.build import Layout, lay_out
from hoopwright.strength.cage.curve import curve_of, plane_normal, triads, walk
from hoopwright.strength.cage.loads import line_load

sys.path.insert(0, str(Path(__file__).parents[1] / "strength"))
from apparatus.ovals import even_tapes, oval_points

OUT = Path(__file__).parent / "data" / "opensees_cages.json"
ELEMENTS = 48


def strip(width_mm: float, thickness_mm: float) -> m.Section:
    """A flat steel strip on edge: E 205 GPa, G 79 GPa, 7850 kg/m3."""
    b, t, e = width_mm * 1e-3, thickness_mm * 1e-3, 205e9
    twist = b * t**3 / 3 * (1 - 0.63 * t / b)
    return m.Section(
        e * b * t, e * b * t**3 / 12, e * t * b**3 / 12, 79e9 * twist, 7850 * b * t, t / 2, b / 2, e
    )


def _points(*args: float, **more: Any) -> tuple[m.Xyz, ...]:
    return tuple((round(x, 7), round(y, 7), round(z, 7)) for x, y, z in oval_points(*args, count=64, **more))


def _round_hoops(section: m.Section, w: float, **more: Any) -> list[m.HoopModel]:
    rows = ((0.50, -0.16), (0.68, -0.36), (0.82, -0.60), (0.90, -0.88))
    return [
        m.HoopModel(f"H{k + 1}", _points(d, d, z), section, line_load_n_per_m=w, **more)
        for k, (d, z) in enumerate(rows)
    ]


def _names(hoops: list[m.HoopModel]) -> tuple[str, ...]:
    return tuple(h.id for h in hoops)


def _open_front() -> m.CageModel:
    hoops = _round_hoops(strip(9.5, 1.07), 3.0)
    return m.CageModel(tuple(hoops), even_tapes(_names(hoops), 6, (0.26, 0.19), gap=0.36))


def _open_upper_hoops() -> m.CageModel:
    hoops = _round_hoops(strip(13, 1.2), 3.0)
    for k in (0, 1):
        d, z = 2 * max(p[0] for p in hoops[k].points), hoops[k].points[0][2]
        points = _points(d, d, z, start=0.14, end=0.86)
        hoops[k] = dataclasses.replace(hoops[k], points=points, closed=False, start=0.14, end=0.86)
    return m.CageModel(tuple(hoops), even_tapes(_names(hoops), 7, (0.26, 0.19), gap=0.28))


def _thrown_back_oval() -> m.CageModel:
    rows = ((0.50, 0.46, -0.16, -0.01), (0.70, 0.61, -0.36, -0.05), (0.86, 0.73, -0.60, -0.10))
    hoops = [
        m.HoopModel(f"H{k + 1}", _points(a, b, z, y), strip(9.5, 1.07), line_load_n_per_m=3.0)
        for k, (a, b, z, y) in enumerate((*rows, (0.97, 0.81, -0.88, -0.15)))
    ]
    return m.CageModel(tuple(hoops), even_tapes(_names(hoops), 6, (0.26, 0.19)))


def _tied_half_hoops() -> m.CageModel:
    rows = ((0.40, 0.30, -0.10), (0.46, 0.42, -0.22), (0.48, 0.48, -0.34), (0.48, 0.50, -0.46))
    hoops, ties, pulls = [], [], []
    for k, (a, b, z) in enumerate(rows):
        points = _points(a, b, z, 0.06, start=0.22, end=0.78)
        load = 6.0 if k < 3 else 9.0
        hoops.append(
            m.HoopModel(f"H{k + 1}", points, strip(9.5, 1.07), False, 0.22, 0.78, line_load_n_per_m=load)
        )
        ends = (m.HoopPoint(f"H{k + 1}", 0.22), m.HoopPoint(f"H{k + 1}", 0.78))
        ties.append(m.TieModel(f"L{k + 1}", *ends, length=points[0][0] - points[-1][0], ea=300.0))
        pulls += [m.PointLoad(ends[0], (1.6, 0.0, 0.0)), m.PointLoad(ends[1], (-1.9, 0.2, 0.0))]
    places = (0.22, 0.36, 0.5, 0.64, 0.78)
    rim = oval_points(0.26, 0.19, 0.0, count=100)
    tapes = tuple(
        m.TapeModel(f"T{n + 1}", rim[round(100 * f)], tuple((h.id, f) for h in hoops))
        for n, f in enumerate(places)
    )
    return m.CageModel(tuple(hoops), tapes, ties=tuple(ties), point_loads=tuple(pulls))


def _thin_strip() -> m.CageModel:
    hoops = _round_hoops(strip(6, 0.5), 1.85)
    return m.CageModel(tuple(hoops), even_tapes(_names(hoops), 6, (0.26, 0.19), gap=0.2))


def _uneven_load() -> m.CageModel:
    hoops = _round_hoops(strip(9.5, 1.07), 2.0)
    rows = ((0.0, 0.0), (0.125, 1.0), (0.25, 5.0), (0.375, 2.0), (0.5, 0.5), (0.75, 0.0))
    hoops = [dataclasses.replace(h, load_rows=rows) for h in hoops]
    hand = m.PointLoad(m.HoopPoint("H3", 0.25), (-1.5, 0.4, 0.0))
    return m.CageModel(tuple(hoops), even_tapes(_names(hoops), 6, (0.26, 0.19)), point_loads=(hand,))


def _hem_band() -> m.CageModel:
    hoops = _round_hoops(strip(9.5, 1.07), 3.0)
    lower = m.HoopModel("H5", _points(0.9, 0.9, -1.08), strip(9.5, 1.07), line_load_n_per_m=4.0)
    band = m.BandModel("B", "H4", "H5", ea=400.0, ea_diagonal=60.0)
    tapes = even_tapes(_names(hoops), 6, (0.26, 0.19), gap=0.25)
    return m.CageModel((*hoops, lower), tapes, bands=(band,))


CASES = {
    "open front, gap of 36 %": _open_front,
    "two upper hoops open in front": _open_upper_hoops,
    "thrown-back oval": _thrown_back_oval,
    "tied half hoops": _tied_half_hoops,
    "thin strip near collapse": _thin_strip,
    "uneven load and a leaning hand": _uneven_load,
    "hem band": _hem_band,
}


def load_opensees() -> Any:
    """Return OpenSeesPy's module, the shared libraries that it ships loaded first."""
    spec = importlib.util.find_spec("openseespylinux")
    if spec is not None and spec.origin is not None:
        for name in ("libquadmath.so.0", "libgfortran.so.4", "libblas.so.3", "liblapack.so.3"):
            ctypes.CDLL(str(Path(spec.origin).parent / "lib" / name), mode=ctypes.RTLD_GLOBAL)
    import openseespy.opensees as ops

    return ops


class Reference:
    """One cage in OpenSees with every hoop element cut into `cuts` chords."""

    def __init__(self, ops: Any, layout: Layout, cuts: int) -> None:
        """Build nodes, elements and loads."""
        self.ops, self.layout, self.cuts = ops, layout, cuts
        self.tag = self.springs = 0
        self.hoop_elements: list[list[int]] = []
        self.loads: dict[int, np.ndarray] = {}
        ops.wipe()
        ops.model("basic", "-ndm", 3, "-ndf", 6)
        for k, (hoop, mesh) in enumerate(zip(layout.model.hoops, layout.hoops, strict=True)):
            self._hoop(k, hoop, mesh)
        for k in range(layout.hoop_nodes, len(layout.x)):
            ops.node(k, *layout.x[k].tolist())
            ops.fix(k, 1, 1, 1, 1, 1, 1)
        self.bars = [self._bar(k) for k in range(len(layout.bars.ea))]
        for load in layout.model.point_loads:
            mesh = next(h for i, h in enumerate(layout.hoops) if layout.model.hoops[i].id == load.at.hoop)
            at = int(mesh.nodes[np.argmin(np.abs(mesh.fractions - load.at.fraction))])
            self.loads[at] = self.loads[at] + np.array(load.force)

    def _hoop(self, k: int, hoop: m.HoopModel, mesh: Any) -> None:
        ops, s = self.ops, hoop.section
        ends = np.append(mesh.fractions, mesh.fractions[0] + 1.0) if mesh.closed else mesh.fractions
        fine = np.interp(np.arange((len(ends) - 1) * self.cuts + 1) / self.cuts, np.arange(len(ends)), ends)
        count = len(fine) - 1 if mesh.closed else len(fine)
        curve = curve_of(hoop)
        share = fine % 1.0 if mesh.closed else (fine - hoop.start) / (hoop.end - hoop.start)
        place, tangent = walk(curve, np.clip(share, 0, 1) * curve.length)
        up = triads(tangent, plane_normal(np.array(hoop.points)))[:, :, 2]
        tags = [
            int(mesh.nodes[i // self.cuts]) if i % self.cuts == 0 else 100000 * (k + 1) + i
            for i in range(count)
        ]
        for i in range(count):
            ops.node(tags[i], *place[i].tolist())
            self.loads[tags[i]] = np.zeros(3)
        tags = [*tags, tags[0]] if mesh.closed else tags
        area = s.ea / s.modulus
        rows = []
        load = line_load(hoop, fine)
        for i in range(len(fine) - 1):
            self.tag += 1
            ops.geomTransf("Corotational", self.tag, *(0.5 * (up[i] + up[i + 1])).tolist())
            stiff = (area, s.modulus, s.gj, 1.0, s.ei_strong / s.modulus, s.ei_weak / s.modulus)
            ops.element("elasticBeamColumn", self.tag, tags[i], tags[i + 1], *stiff, self.tag)
            rows.append(self.tag)
            arc = curve.length * (fine[i + 1] - fine[i]) / (fine[-1] - fine[0])
            self.loads[tags[i]][2] -= arc * (2 * load[i] + load[i + 1]) / 6
            self.loads[tags[i + 1]][2] -= arc * (load[i] + 2 * load[i + 1]) / 6
        self.hoop_elements.append(rows)

    def _bar(self, k: int) -> int:
        bars, ops = self.layout.bars, self.ops
        i, j = int(bars.first[k]), int(bars.second[k])
        wished = float(np.linalg.norm(self.layout.x[i] - self.layout.x[j]))
        self.tag += 1
        # strain counted from the unstressed length: E eps0 shift, and EA scaled to the wished length
        ea = float(bars.ea[k]) * wished / float(bars.length[k])
        slack = (float(bars.length[k]) - wished) / wished
        ops.uniaxialMaterial("ElasticPPGap", self.tag, ea, 1e9 * ea, max(slack, 0.0)) if slack > 0 else None
        if slack <= 0:
            ops.uniaxialMaterial("Elastic", 500000 + self.tag, ea, 0.0, 1e-9 * ea)
            if slack < 0:
                ops.uniaxialMaterial("InitStrainMaterial", self.tag, 500000 + self.tag, -slack)
            else:
                ops.uniaxialMaterial("Elastic", self.tag, ea, 0.0, 1e-9 * ea)
        ops.element("corotTruss", self.tag, i, j, 1.0, self.tag)
        return self.tag

    def solve(self, factor: float) -> None:
        """Load the cage in steps, held by springs; then take the springs away one strength after another."""
        ops = self.ops
        helpers = [self.spring(k) for k in np.geomspace(2000.0, 0.002, 26).tolist()]
        self.analyse(factor, 1e-10)
        ops.loadConst()
        ops.integrator("LoadControl", 0.0)
        for group in helpers:
            for tag in group:
                ops.remove("element", tag)
            self._run(1)

    def _run(self, steps: int) -> None:
        for way in (("Newton",), ("NewtonLineSearch", "-type", "Bisection"), ("KrylovNewton",)):
            self.ops.algorithm(*way)
            if self.ops.analyze(steps) == 0:
                return
        raise RuntimeError("OpenSees found no equilibrium")

    def analyse(self, factor: float, increment: float) -> None:
        """Apply the load in ten steps."""
        ops = self.ops
        ops.timeSeries("Linear", 1)
        ops.pattern("Plain", 1, 1)
        for tag, force in sorted(self.loads.items()):
            ops.load(tag, *(factor * force).tolist(), 0.0, 0.0, 0.0)
        ops.constraints("Plain")
        ops.numberer("RCM")
        ops.system("UmfPack")
        ops.test("NormDispIncr", increment, 100)
        ops.algorithm("Newton")
        ops.integrator("LoadControl", 0.1)
        ops.analysis("Static")
        self._run(10)

    def spring(self, stiff: float) -> list[int]:
        """Hold every node of the coarse mesh by springs of `stiff` N/m; return the elements, to be taken
        away.
        """
        ops = self.ops
        self.springs += 1
        self.tag += 1
        ops.uniaxialMaterial("Elastic", self.tag, stiff)
        material = self.tag
        group = []
        for node in np.concatenate([mesh.nodes for mesh in self.layout.hoops]).tolist():
            twin = 1000000 + 1000 * self.springs + node
            ops.node(twin, *self.layout.x[node].tolist())
            ops.fix(twin, 1, 1, 1, 1, 1, 1)
            self.tag += 1
            ops.element("zeroLength", self.tag, twin, node, "-mat", *[material] * 3, "-dir", 1, 2, 3)
            group.append(self.tag)
        return group

    def values(self) -> dict[str, Any]:
        """Return tensions, movements of the hoops' nodes, and per hoop thrust and greatest moments."""
        ops, lay = self.ops, self.layout
        hoops = []
        for mesh, tags, hoop in zip(lay.hoops, self.hoop_elements, lay.model.hoops, strict=True):
            local = np.array([ops.eleResponse(t, "localForce") for t in tags])
            ends = np.stack([local[:, [3, 4, 5]], local[:, [9, 10, 11]]], axis=1)
            axial, share = local[:, 6], np.repeat(lay.rods.length[mesh.elements], self.cuts)
            stress = hoop.section.modulus * (
                np.abs(ends[:, :, 2]) * hoop.section.half_thickness / hoop.section.ei_weak
                + np.abs(ends[:, :, 1]) * hoop.section.half_width / hoop.section.ei_strong
                + np.abs(axial)[:, None] / hoop.section.ea
            )
            hoops.append(
                {
                    "moved": [ops.nodeDisp(int(n))[:3] for n in mesh.nodes],
                    "thrust": -float(axial @ share / share.sum()),
                    "weak": float(np.abs(ends[:, :, 2]).max()),
                    "strong": float(np.abs(ends[:, :, 1]).max()),
                    "torque": float(np.abs(ends[:, :, 0]).max()),
                    "stress": float(stress.max()),
                }
            )
        return {"tensions": [ops.eleResponse(t, "axialForce")[0] for t in self.bars], "hoops": hoops}


def extrapolated(coarse: Any, fine: Any) -> Any:
    """Return what two meshes, one twice as fine, tend to when the error is quadratic in the element's length.

    A chord's torque is even along it and stands for its middle, so the greatest errs in proportion.
    """
    if isinstance(coarse, dict):
        return {k: extrapolated(coarse[k], fine[k]) for k in coarse if k != "torque"} | {
            k: float(f"{2 * fine[k] - coarse[k]:.9g}") for k in coarse if k == "torque"
        }
    if isinstance(coarse, list):
        return [extrapolated(a, b) for a, b in zip(coarse, fine, strict=True)]
    return float(f"{(4 * fine - coarse) / 3:.9g}")


def main() -> None:
    """Write the reference file; entries whose model has not changed are kept."""
    ops = load_opensees()
    old = json.loads(OUT.read_text())["cages"] if OUT.exists() else []
    done = {(e["case"], e["factor"], json.dumps(e["model"])): e for e in old}
    out: list[Any] = []
    for name, make in CASES.items():
        cage = make()
        layout = lay_out(cage, ELEMENTS)
        model = json.loads(json.dumps(dataclasses.asdict(cage)))
        for factor in (1.0, 2.0):
            entry = done.get((name, factor, json.dumps(model)))
            if entry is None:
                found = []
                for cuts in (5, 10):
                    reference = Reference(ops, layout, cuts)
                    reference.solve(factor)
                    found.append(reference.values())
                entry = {"case": name, "factor": factor, "model": model, "reference": extrapolated(*found)}
            out.append(entry)
            print(name, factor, flush=True)
            made = {"made with": f"OpenSees {ops.version()}", "cages": out}
            OUT.parent.mkdir(exist_ok=True)
            OUT.write_text(json.dumps(made, separators=(",", ":")) + "\n")


if __name__ == "__main__":
    main()
