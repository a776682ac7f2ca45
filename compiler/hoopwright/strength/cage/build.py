"""Lay out a model: every node, rod, bar, load and unknown of the cage, ready to solve."""

from __future__ import annotations

from bisect import bisect

import numpy as np

from hoopwright.source.record import record
from hoopwright.strength.cage import mesh as meshing
from hoopwright.strength.cage.arrays import Floats
from hoopwright.strength.cage.bars import Bars
from hoopwright.strength.cage.contact import Body, Rests
from hoopwright.strength.cage.loads import Loads, gather, rod_shares
from hoopwright.strength.cage.mesh import HoopMesh, Rods
from hoopwright.strength.cage.model import (
    CageModel,
    FixedPoint,
    FreePoint,
    HoopModel,
    HoopPoint,
    Place,
    TapeModel,
    TieModel,
)
from hoopwright.strength.gravity import GRAVITY


@record(frozen=True, slots=True)
class Layout:
    """The laid-out cage. Nodes, in this order: of the hoops, free joints of tapes and ties, held points.

    `x` (nodes, 3) m, where each is wished; `triads` (hoop nodes, 3, 3), columns along the line, through the thickness
    and along the width; `hoops` in the model's order; `joins`: two nodes that move as one, and whether they turn as
    one too; `held`: whose each held point is, a tape, a tie, or the hoop that a join holds there; `twist_springs`
    (hoop nodes, 3) N m: spring stiffness times the wished width direction.
    """

    model: CageModel
    x: Floats
    triads: Floats
    hoops: tuple[HoopMesh, ...]
    rods: Rods
    bars: Bars
    loads: Loads
    joins: tuple[tuple[int, int, bool], ...]
    rests: Rests
    held: tuple[str, ...]
    twist_springs: Floats

    @property
    def hoop_nodes(self) -> int:
        """How many nodes belong to hoops."""
        return len(self.triads)

    @property
    def moving_nodes(self) -> int:
        """How many nodes are not held: those of hoops, then the free joints of tapes and ties."""
        return len(self.triads) + _joints(self.model)


def _joints(model: CageModel) -> int:
    """How many free joints there are: knots, and those between the pieces of tapes and ties."""
    places = [*(place for tie in model.ties for place in (tie.a, tie.b)), *(join.b for join in model.joins)]
    knots = {place.id for place in places if isinstance(place, FreePoint)}
    pieces = sum((t.pieces - 1) * len(t.fixings) for t in model.tapes) + sum(t.pieces - 1 for t in model.ties)
    return pieces + len(knots)


class _Builder:
    def __init__(self, model: CageModel, elements: int) -> None:
        self.model = model
        self.places: list[Floats] = []
        self.turned: list[Floats] = []
        self.hoops: dict[str, HoopMesh] = {}
        self.fractions: dict[str, list[float]] = {}
        self.models: dict[str, HoopModel] = {h.id: h for h in model.hoops}
        nodes = rods = 0
        for hoop in model.hoops:
            f, x, t, girth = meshing.lay_hoop(hoop, meshing.breakpoints(model, hoop), hoop.elements or elements)
            count = len(f) if hoop.closed else len(f) - 1
            self.hoops[hoop.id] = HoopMesh(
                np.arange(nodes, nodes + len(f)), np.arange(rods, rods + count), f, girth, hoop.closed
            )
            self.fractions[hoop.id] = [*f.tolist(), *([float(f[0]) + 1.0] if hoop.closed else [])]
            nodes, rods = nodes + len(f), rods + count
            self.places.append(x)
            self.turned.append(t)
        self.hoop_count = nodes
        self.count = nodes + _joints(model)
        self.body = Body(model.body) if model.body is not None else None
        self.free: list[Floats] = []
        self.knots: dict[str, int] = {}
        self.held: list[tuple[float, float, float]] = []
        self.held_by: list[str] = []
        self.bars: list[tuple[int, int, float, float, float, int]] = []
        self.names: list[str] = []

    def node(self, place: Place, owner: str = "") -> int:
        if isinstance(place, FixedPoint):
            self.held.append(place.xyz)
            self.held_by.append(owner)
            self.count += 1
            return self.count - 1
        if isinstance(place, FreePoint):
            if place.id not in self.knots:
                self.knots[place.id] = self.hoop_count + len(self.free)
                self.free.append(np.array(place.xyz))
            return self.knots[place.id]
        return self.on_hoop(place.hoop, place.fraction)

    def on_hoop(self, hoop: str, fraction: float) -> int:
        """The node nearest to a fraction."""
        m, at = self.hoops[hoop], self.fractions[hoop]
        if m.closed:
            fraction = at[0] + (fraction - at[0]) % 1.0
        after = min(max(bisect(at, fraction), 1), len(at) - 1)
        near = after if at[after] - fraction < fraction - at[after - 1] else after - 1
        return int(m.nodes[near % len(m.nodes)])

    def xyz(self) -> Floats:
        held = np.array(self.held, dtype=np.float64).reshape(-1, 3)
        return np.vstack([*self.places, np.array(self.free).reshape(-1, 3), held])

    def stretch(self, ends: tuple[int, int], places: tuple[Floats, Floats], part: TapeModel | TieModel,
                length: float | None, hang: float) -> None:
        """Add the bars of one stretch of a tape or a tie, of that free length in all (None: as it lies), its
        joints pushed out of the body."""
        if part.pieces == 1:
            step = float(np.sqrt(((places[1] - places[0]) ** 2).sum())) if length is None else length
            self.bars.append((*ends, step, part.ea, hang, len(self.names) - 1))
            return
        cuts = np.linspace(0, 1, part.pieces + 1)[:, None]
        line = places[0] + cuts * (places[1] - places[0])
        if self.body is not None:
            line[1:-1] = self.body.outside(line[1:-1])
        steps = np.sqrt(((line[1:] - line[:-1]) ** 2).sum(axis=1))
        scale = 1.0 if length is None else length / float(steps.sum())
        first = self.hoop_count + len(self.free)
        self.free.extend(line[1:-1])
        chain = [ends[0], *range(first, first + part.pieces - 1), ends[1]]
        for i, j, step in zip(chain[:-1], chain[1:], steps.tolist(), strict=True):
            self.bars.append((i, j, scale * step, part.ea, hang, len(self.names) - 1))

    def where(self, place: Place) -> Floats:
        """Where a place is wished."""
        if not isinstance(place, HoopPoint):
            return np.array(place.xyz)
        return np.asarray(np.vstack(self.places)[self.on_hoop(place.hoop, place.fraction)])


def lay_out(model: CageModel, elements: int) -> Layout:
    """Return the layout of a sound model (see `check`), with at least `elements` rods in every hoop."""
    b = _Builder(model, elements)
    pairs = [(h, b.hoops[h.id]) for h in model.hoops]
    rods = meshing.rods_of(pairs, np.vstack(b.places), np.concatenate(b.turned))
    shares = rod_shares(pairs, rods)
    masses: list[tuple[int, float]] = []
    springs = np.zeros((b.hoop_count, 3))
    _add_tapes(b, _hanging(b, pairs, shares), masses, springs)
    _add_bands(b, pairs, shares, masses)
    for tie in model.ties:
        b.names.append(tie.id)
        ends, places = (b.node(tie.a, tie.id), b.node(tie.b, tie.id)), (b.where(tie.a), b.where(tie.b))
        b.stretch(ends, places, tie, tie.length, 0.0)
    joins = tuple((b.node(j.a), b.node(j.b, j.a.hoop), j.stiff) for j in model.joins)
    x = b.xyz()
    extra = np.zeros((len(x), 3))
    for node, mass in masses:
        extra[node, 2] -= mass * GRAVITY
    for load in model.point_loads:
        extra[b.node(load.at)] += load.force
    loads = gather(rods, shares, extra, b.hoop_count)
    meshes = tuple(b.hoops.values())
    rests = Rests([b.node(rest.at) for rest in model.rests], model.rests)
    held = tuple(b.held_by)
    return Layout(
        model, x, np.concatenate(b.turned), meshes, rods, _bars(b, x), loads, joins, rests, held, springs)


def _bars(b: _Builder, x: Floats) -> Bars:
    rows = np.array(b.bars, dtype=np.float64).reshape(-1, 6)
    i, j = rows[:, 0].astype(np.int64), rows[:, 1].astype(np.int64)
    d = x[j] - x[i]
    wished = np.sqrt(np.einsum("ni,ni->n", d, d))
    length = np.where(rows[:, 2] > 0, rows[:, 2], wished)
    guess = rows[:, 4] * wished / np.maximum(np.abs(d[:, 2]), 0.1 * wished + 1e-12)
    return Bars(i, j, length, rows[:, 3], guess, rows[:, 5].astype(np.int64), tuple(b.names))


def _hanging(b: _Builder, pairs: list[tuple[HoopModel, HoopMesh]], shares: Floats) -> dict[str, float]:
    """Return, for each hoop, the weight per tape of what hangs at and below it (the guess from statics)."""
    height = {h.id: float(x[:, 2].mean()) for (h, _), x in zip(pairs, b.places, strict=True)}
    own = {h.id: float(shares[m.elements, :2].sum()) for h, m in pairs}
    tapes = {h.id: sum(1 for t in b.model.tapes for k, _ in t.fixings if k == h.id) for h, _ in pairs}
    return {
        h: sum(w for k, w in own.items() if height[k] <= height[h] + 1e-9) / max(tapes[h], 1) for h in own
    }


def _add_tapes(
    b: _Builder, hanging: dict[str, float], masses: list[tuple[int, float]], springs: Floats
) -> None:
    places = np.vstack(b.places)
    turned = np.concatenate(b.turned)
    for tape in b.model.tapes:
        b.names.append(tape.id)
        above, at = b.node(FixedPoint(tape.anchor), tape.id), np.array(tape.anchor)
        for k, (hoop, fraction) in enumerate(tape.fixings):
            node = b.on_hoop(hoop, fraction)
            size = float(np.sqrt(((places[node] - at) ** 2).sum()))
            length = tape.lengths[k] if k < len(tape.lengths) else None
            b.stretch((above, node), (at, places[node]), tape, length, hanging[hoop])
            if tape.mass_per_m:
                masses.append((node, 0.5 * size * tape.mass_per_m))
                if k:
                    masses.append((above, 0.5 * size * tape.mass_per_m))
            springs[node] += tape.twist_stiffness * turned[node, :, 2]
            above, at = node, places[node]


def _add_bands(
    b: _Builder, pairs: list[tuple[HoopModel, HoopMesh]], shares: Floats, masses: list[tuple[int, float]]
) -> None:
    weight = {h.id: float(shares[m.elements, :2].sum()) for h, m in pairs}
    for band in b.model.bands:
        b.names.append(band.id)
        owner = len(b.names) - 1
        up, down = (
            [b.on_hoop(hoop, f) for f in meshing.upright_fractions(b.model, band, hoop)]
            for hoop in (band.upper, band.lower)
        )
        guess = weight[band.lower] / len(up)
        b.bars.extend((i, j, 0.0, band.ea, guess, owner) for i, j in zip(up, down, strict=True))
        for hoop, nodes in ((band.upper, up), (band.lower, down)):
            each = 0.5 * band.mass_per_m * b.hoops[hoop].girth / len(nodes)
            masses.extend((n, each) for n in nodes)
        if band.ea_diagonal > 0:
            ring = len(up) if b.hoops[band.upper].closed and b.hoops[band.lower].closed else len(up) - 1
            for k in range(ring):
                m = (k + 1) % len(up)
                b.bars.append((up[k], down[m], 0.0, band.ea_diagonal, 0.05 * guess, owner))
                b.bars.append((up[m], down[k], 0.0, band.ea_diagonal, 0.05 * guess, owner))
