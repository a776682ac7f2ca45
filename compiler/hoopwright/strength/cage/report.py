"""Turn a solved state into the result's plain values."""

from __future__ import annotations

import numpy as np

from hoopwright.source.record import record
from hoopwright.strength.cage import rod
from hoopwright.strength.cage.arrays import Floats, apply_t, cross
from hoopwright.strength.cage.loads import line_load
from hoopwright.strength.cage.mesh import HoopMesh
from hoopwright.strength.cage.model import HoopModel, Xyz
from hoopwright.strength.cage.outline import Outline
from hoopwright.strength.cage.result import (
    BandResult,
    Held,
    HoopResult,
    RestResult,
    SegmentResult,
    TapeResult,
    TieResult,
)
from hoopwright.strength.cage.system import Evaluated, State, System


@record(frozen=True, slots=True)
class SectionForces:
    """In every rod: axial force (n,) N, and torque, strong and weak moment (n, 2, 3) N m at its two ends."""

    axial: Floats
    moments: Floats


def section_forces(system: System, state: State, now: Evaluated, factor: float) -> SectionForces:
    """Return the forces in the sections; each rod's own load is taken off its ends."""
    rods, shares = system.layout.rods, system.layout.loads.shares
    ends = rod.nodal_forces(now.rods, now.stress)
    moments = np.empty((len(ends), 2, 3))
    for k, (node, sign) in enumerate(((rods.first, -1.0), (rods.second, 1.0))):
        couple = np.zeros((len(node), 3))
        couple[:, 2] = -factor * shares[:, 2 + k]
        moment = ends[:, 6 * k + 3 : 6 * k + 6] - cross(state.triads[node, :, 0], couple)
        moments[:, k] = sign * apply_t(state.triads[node], moment)
    axial = apply_t(now.rods.frame, ends[:, 6:9])[:, 0]
    return SectionForces(axial, moments)


def hoop_results(system: System, state: State, now: Evaluated, factor: float) -> tuple[HoopResult, ...]:
    """Return the results of all hoops."""
    forces = section_forces(system, state, now, factor)
    touch = now.contact
    touching = np.zeros(0, dtype=np.int64) if touch is None else touch.nodes[: touch.of_body]
    return tuple(
        _hoop(system, state, factor, hoop, mesh, line.lies(state.x, state.triads), forces,
              int(np.isin(mesh.nodes, touching).sum()))
        for hoop, mesh, line in zip(system.layout.model.hoops, system.layout.hoops, system.lines, strict=True)
    )


def _hoop(
    system: System,
    state: State,
    factor: float,
    hoop: HoopModel,
    mesh: HoopMesh,
    lies: Outline,
    forces: SectionForces,
    touching: int,
) -> HoopResult:
    m, axial = forces.moments[mesh.elements], forces.axial[mesh.elements]
    length = system.layout.rods.length[mesh.elements]
    stress = _stress(hoop, m, axial)
    worst = int(np.argmax(stress))
    f = np.append(mesh.fractions, mesh.fractions[0] + 1.0) if mesh.closed else mesh.fractions
    born = system.layout.rods.birth[mesh.elements, 5]
    bend = np.hypot(m[:, :, 2] / hoop.section.ei_weak + born[:, None], m[:, :, 1] / hoop.section.ei_strong)
    s = hoop.section
    closing = (
        np.abs(system.layout.rods.curvature[mesh.elements, 2] - born).max() * s.half_thickness * s.modulus
    )
    load = factor * float((line_load(hoop, 0.5 * (f[:-1] + f[1:])) * length).sum()) / mesh.girth
    return HoopResult(
        id=hoop.id,
        load_n_per_m=load,
        thrust_n=-float((axial * length).sum() / length.sum()),
        sag_m=lies.sag,
        inward_m=max(0.0, float(-lies.outward.min())),
        outward_m=max(0.0, float(lies.outward.max())),
        moment_weak_n_m=float(np.abs(m[:, :, 2]).max()),
        moment_strong_n_m=float(np.abs(m[:, :, 1]).max()),
        torque_n_m=float(np.abs(m[:, :, 0]).max()),
        stress_pa=float(stress.ravel()[worst]),
        stress_at=float(f[worst // 2 + worst % 2] % 1.0 if mesh.closed else f[worst // 2 + worst % 2]),
        closing_stress_pa=float(closing),
        least_radius_m=1.0 / max(float(bend.max()), 1e-9),
        shift_m=lies.shift,
        turn_rad=lies.turn,
        tilt_rad=lies.tilt,
        touching=touching,
        fractions=tuple(float(k) for k in mesh.fractions),
        wished=tuple(_xyz(p) for p in system.layout.x[mesh.nodes]),
        deformed=tuple(_xyz(p) for p in state.x[mesh.nodes]),
    )


def _xyz(p: Floats) -> Xyz:
    return float(p[0]), float(p[1]), float(p[2])


def _stress(hoop: HoopModel, moments: Floats, axial: Floats) -> Floats:
    """Return the greatest fibre stress at both ends of each rod, (n, 2) Pa; twist is not counted."""
    s = hoop.section
    weak = np.abs(moments[:, :, 2]) * s.half_thickness / s.ei_weak
    strong = np.abs(moments[:, :, 1]) * s.half_width / s.ei_strong
    bending = np.hypot(weak, strong) if s.is_round else weak + strong
    return np.asarray(s.modulus * (bending + np.abs(axial)[:, None] / s.ea))


def bar_results(
    system: System, now: Evaluated
) -> tuple[tuple[TapeResult, ...], tuple[BandResult, ...], tuple[TieResult, ...]]:
    """Return tapes, bands and ties."""
    model, bars = system.layout.model, system.layout.bars
    tension = np.maximum(now.bars.force, 0.0)
    limit = 1e-3 * system.layout.loads.weight / max(len(model.tapes), 1)
    rows = {name: np.flatnonzero(bars.owner == k) for k, name in enumerate(bars.names)}
    tapes = []
    for tape in model.tapes:
        own = rows[tape.id]
        greatest = tension[own].reshape(-1, tape.pieces).max(axis=1)
        ways = (now.bars.unit[own] * now.bars.size[own, None]).reshape(-1, tape.pieces, 3).sum(axis=1)
        over = bars.length[own].reshape(-1, tape.pieces).sum(axis=1) - np.sqrt((ways**2).sum(axis=1))
        segments = tuple(
            SegmentResult(hoop, float(t), bool(t < limit), max(float(long), 0.0))
            for (hoop, _), t, long in zip(tape.fixings, greatest, over, strict=True)
        )
        pull = tension[own[0]] * now.bars.unit[own[0]]
        out = np.array(tape.anchor[:2]) - np.array(model.waist_centre)
        size = float(np.sqrt(out @ out))
        outward = float(pull[:2] @ out) / size if size > 1e-9 else 0.0
        tapes.append(TapeResult(tape.id, segments, outward, -float(pull[2])))
    bands = []
    for band in model.bands:
        own = rows[band.id]
        count = len(own) if band.ea_diagonal == 0 else _uprights(len(own))
        slack = int((tension[own[:count]] < limit).sum())
        bands.append(BandResult(band.id, float(tension[own].max()), slack, count))
    ties = [
        TieResult(t.id, float(tension[rows[t.id]].max()), bool(tension[rows[t.id]].max() < limit))
        for t in model.ties
    ]
    return tuple(tapes), tuple(bands), tuple(ties)


def _uprights(bars: int) -> int:
    """Uprights among the bars of a band with diagonals: k of 3 k when closed, k + 1 of 3 k + 1 when open."""
    return bars // 3 if bars % 3 == 0 else (bars - 1) // 3 + 1


def rest_results(system: System, state: State) -> tuple[RestResult, ...]:
    """Return how hard each rest pushes."""
    rests = system.layout.rests
    push = rests.stiffness * np.maximum(rests.depth(state.x), 0.0)
    return tuple(RestResult(rest.id, float(p))
                 for rest, p in zip(system.layout.model.rests, push, strict=True))


def held_results(system: System, now: Evaluated) -> tuple[Held, ...]:
    """Return the wearer's force on every held point: what rods and bars ask there, less the load on it."""
    lay = system.layout
    force = -lay.loads.force
    ends, pulls = rod.nodal_forces(now.rods, now.stress), np.maximum(now.bars.force, 0.0)[:, None] * now.bars.unit
    for nodes, part in ((lay.rods.first, ends[:, :3]), (lay.rods.second, ends[:, 6:9]),
                        (lay.bars.first, -pulls), (lay.bars.second, pulls)):
        np.add.at(force, nodes, part)
    if now.contact is not None:
        np.add.at(force, now.contact.nodes, -now.contact.push)
    whole = np.zeros_like(force)
    np.add.at(whole, system.moves_with, force)
    return tuple(Held(part, _xyz(lay.x[k]), _xyz(whole[k]))
                 for k, part in enumerate(lay.held, start=lay.moving_nodes))
