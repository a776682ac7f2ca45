"""The assembled cage: energy, residual and exact tangent of any state, in the order of its unknowns."""

from __future__ import annotations

import numpy as np

from hoopwright.source.record import record
from hoopwright.strength.cage import rod
from hoopwright.strength.cage.arc import arc_stiffness
from hoopwright.strength.cage.arrays import Floats, Ints, cross, outer
from hoopwright.strength.cage.bars import BarState, bar_state, bar_tangent, pull, pull_energy
from hoopwright.strength.cage.build import Layout
from hoopwright.strength.cage.contact import Body, Contact, contact_of
from hoopwright.strength.cage.outline import Line
from hoopwright.strength.cage.rotation import exp
from hoopwright.strength.cage.sparse import Pattern

_ON_PLANE = 1e-7
"""What lies no farther from a mirror's plane lies on it, m."""


@record(frozen=True, slots=True)
class State:
    """Node positions (nodes, 3) and triads (hoop nodes, 3, 3)."""

    x: Floats
    triads: Floats


@record(frozen=True, slots=True)
class Guess:
    """Forces carried along by the mixed iteration: rods (n, 6) and bars (n,); see `newton`."""

    rods: Floats
    bars: Floats


@record(frozen=True, slots=True)
class Evaluated:
    """What one state gives: element geometry, two-way bar forces, and which body contacts push."""

    rods: rod.Kinematics
    stress: Floats
    bars: BarState
    contact: Contact | None


class System:
    """Numbering and assembly for one layout."""

    def __init__(self, layout: Layout) -> None:
        """Number the unknowns of the layout."""
        self.layout = layout
        body = layout.model.body
        self.body = Body(body) if body is not None and body.stiffness > 0 else None
        self.move, self.spin, self.n, self.moves_with = _number(layout)
        r, b = layout.rods, layout.bars
        self.stiffness, self.curvature = layout.rods.stiffness, layout.rods.curvature
        self.soft = 0.0
        self.lines = tuple(Line(layout, hoop, mesh)
                           for hoop, mesh in zip(layout.model.hoops, layout.hoops, strict=True))
        self.rod_dofs = np.hstack(
            [self.move[r.first], self.spin[r.first], self.move[r.second], self.spin[r.second]]
        )
        self.bar_dofs = np.hstack([self.move[b.first], self.move[b.second]])
        hoop = layout.hoop_nodes
        self.pattern = Pattern(
            self.n, [self.rod_dofs, self.bar_dofs, self.spin[:hoop], self.move[: layout.moving_nodes]]
        )
        spinning = np.zeros(self.n + 1)
        spinning[self.spin.ravel()] = 1
        self.is_spin = spinning[: self.n] > 0
        self.size = float(np.ptp(layout.x, axis=0).max())
        stiffest = max(float((r.section[:, 0] / r.length).max()), float((b.ea / b.length).max(initial=0.0)))
        self.rounding = 30 * float(np.finfo(np.float64).eps) * stiffest * self.size
        softest = float((r.section[:, 1:].min(axis=1) / r.length).min())
        self.hold = np.where(self.is_spin, 1e-9 * softest, 0.0)
        loose = self.move[hoop : layout.moving_nodes].ravel()
        loose = loose[loose < self.n]
        self.hold[loose] = (
            1e-6 * max(layout.loads.weight, 1e-9) / self.size
        )  # a slack tape's joints rest nowhere

    def damping_unit(self, factor: float) -> Floats:
        """Return the damper of strength 1 (n,): about the stiffness with which the cage hangs."""
        unit = max(self.layout.loads.weight * factor, 1e-9) / (self.size * len(self.layout.x))
        return np.where(self.is_spin, 0.01 * unit * self.size**2, unit)

    def evaluate(self, state: State) -> Evaluated:
        """Return geometry and forces of a state."""
        r = self.layout.rods
        i, j = r.first, r.second
        k = rod.kinematics(state.x[i], state.x[j], state.triads[i], state.triads[j], r.length)
        stress = np.matmul(self.stiffness, (k.strain - r.birth)[:, :, None])[:, :, 0]
        touch = self._touching(state)
        return Evaluated(k, stress, bar_state(self.layout.bars, state.x), touch)

    def follow(self, now: Evaluated) -> bool:
        """Take the rods' stiffness for their present shape, when that has changed by over 0.02 rad a rod."""
        bend, r = now.rods.strain[:, 3:], self.layout.rods
        change = float(np.abs((bend - self.curvature) * r.length[:, None]).max())
        if change <= 0.02:
            return False
        self.stiffness, self.curvature = arc_stiffness(r.length, bend, r.section), bend
        return True

    def unfollow(self) -> None:
        """Take the rods' stiffness for their wished shape again."""
        rods = self.layout.rods
        self.stiffness, self.curvature = rods.stiffness, rods.curvature

    def energy(self, state: State, factor: float, now: Evaluated | None = None) -> float:
        """Return the total potential energy, J; ``now`` is what the state gives, where that is known."""
        lay = self.layout
        now = now or self.evaluate(state)
        e = now.rods.strain - lay.rods.birth
        total = 0.5 * float(np.einsum("ni,nij,nj->", e, self.stiffness, e))
        total += float((pull_energy(now.bars.force, self.soft) * lay.bars.length / lay.bars.ea).sum())
        if now.contact is not None:
            total += 0.5 * float((now.contact.stiffness * now.contact.depth**2).sum())
        total -= factor * float((lay.loads.force * (state.x - lay.x)).sum())
        total -= factor * float((lay.loads.couple * state.triads[:, :, 0]).sum())
        return total - float((lay.twist_springs * state.triads[:, :, 2]).sum())

    def pulls(self, now: Evaluated, bar_force: Floats) -> Floats:
        """Return what tensions `bar_force` in the bars add to the residual, (n,)."""
        pulls = bar_force[:, None] * now.bars.unit
        out = np.bincount(self.bar_dofs.ravel(), np.hstack([-pulls, pulls]).ravel(), minlength=self.n + 1)
        return np.asarray(out[: self.n])

    def residual(self, state: State, now: Evaluated, bar_force: Floats, factor: float) -> Floats:
        """Return inner forces less loads (n,); `bar_force` are the tensions to count."""
        lay = self.layout
        pulls = bar_force[:, None] * now.bars.unit
        places = [self.rod_dofs.ravel(), self.bar_dofs.ravel(), self.move.ravel(), self.spin.ravel()]
        turning = factor * cross(state.triads[:, :, 0], lay.loads.couple)
        turning += cross(state.triads[:, :, 2], lay.twist_springs)
        values = [rod.nodal_forces(now.rods, now.stress).ravel(), np.hstack([-pulls, pulls]).ravel()]
        values += [-factor * lay.loads.force.ravel(), -turning.ravel()]
        if now.contact is not None:
            places.append(self.move[now.contact.nodes].ravel())
            values.append(-now.contact.push.ravel())
        out = np.bincount(np.concatenate(places), np.concatenate(values), minlength=self.n + 1)
        return np.asarray(out[: self.n])

    def tangent(self, state: State, now: Evaluated, guess: Guess, factor: float) -> Floats:
        """Return the values of the tangent, its geometric part from the forces of `guess`."""
        lay, r = self.layout, self.layout.rods
        inner = rod.tangent(now.rods, self.stiffness, guess.rods, r.length)
        to = rod.to_nodes(now.rods.frame)
        rods = np.matmul(to.transpose(0, 2, 1), np.matmul(inner, to))
        tension, pulling = pull(guess.bars, self.soft)
        k = bar_tangent(lay.bars, now.bars, pulling, tension)
        bars = np.block([[k, -k], [-k, k]])
        return self.pattern.fill([rods, bars, self._turning(state, factor), self._pushing(now)])

    def _turning(self, state: State, factor: float) -> Floats:
        """Second derivative by spins of -couple . tangent and -spring . width, for every hoop node."""
        lay = self.layout
        out = np.zeros((lay.hoop_nodes, 3, 3))
        for axis, c in ((0, factor * lay.loads.couple), (2, lay.twist_springs)):
            t = state.triads[:, :, axis]
            both = outer(c, t)
            out += np.einsum("ni,ni->n", c, t)[:, None, None] * np.eye(3) - 0.5 * (
                both + both.transpose(0, 2, 1)
            )
        return out

    def _pushing(self, now: Evaluated) -> Floats:
        out = np.zeros((self.layout.moving_nodes, 3, 3))
        touch = now.contact
        if touch is not None:
            bent = outer(touch.gradient, touch.gradient) + touch.depth[:, None, None] * touch.curvature
            np.add.at(out, touch.nodes, touch.stiffness[:, None, None] * bent)
        return out

    def _touching(self, state: State) -> Contact | None:
        return contact_of(self.body, self.layout.rests, state.x, self.layout.moving_nodes)

    def moved(self, state: State, step: Floats) -> State:
        """Return the state after a step (n,) of movements and spins."""
        full = np.append(step, 0.0)
        return State(state.x + full[self.move], np.matmul(exp(full[self.spin]), state.triads))

    def wished(self) -> State:
        """Return the state in which every node is where the maker wants it."""
        return State(self.layout.x, self.layout.triads)


def _number(layout: Layout) -> tuple[Ints, Ints, int, Ints]:
    """Return numbers of movements (nodes, 3) and spins (hoop nodes, 3), held ones numbered n, then n, and for
    each node one that stands for all that move with it (a held one where there is any)."""
    hoop, nodes = layout.hoop_nodes, len(layout.x)
    move_of, spin_of = list(range(nodes)), list(range(hoop))
    held = set(range(layout.moving_nodes, nodes))
    held_spin: set[int] = set()
    for a, b, stiff in layout.joins:
        _merge(move_of, held, a, b)
        if stiff and b < hoop:
            _merge(spin_of, held_spin, a, b)
        elif stiff:
            held_spin.add(_root(spin_of, a))
    moves = [_root(move_of, k) for k in range(nodes)]
    spins = [_root(spin_of, k) for k in range(hoop)]
    keys = [("move", k) for k in sorted(set(moves)) if k not in held]
    keys += [("spin", k) for k in sorted(set(spins)) if _root(spin_of, k) not in _roots(spin_of, held_spin)]
    place = {key: 3 * k for k, key in enumerate(keys)}
    n = 3 * len(keys)
    moved = _threes([place.get(("move", k), n) for k in moves], n)
    spun = _threes([place.get(("spin", k), n) for k in spins], n)
    for mirror in layout.model.mirrors:
        axis = "xyz".index(mirror)
        on = np.flatnonzero(np.abs(layout.x[:, axis]) <= _ON_PLANE)
        moved[on, axis] = n
        for other in {0, 1, 2} - {axis}:
            spun[on[on < hoop], other] = n
    kept = np.unique(np.concatenate([moved.ravel(), spun.ravel(), [n]]))
    return (np.searchsorted(kept, moved), np.searchsorted(kept, spun), len(kept) - 1,
            np.array(moves, dtype=np.int64))


def _threes(firsts: list[int], n: int) -> Ints:
    """Return (k, 3) numbers that follow one another from each first; n stays n."""
    first = np.array(firsts, dtype=np.int64)[:, None]
    return np.asarray(np.where(first < n, first + np.arange(3), n))


def _roots(parent: list[int], some: set[int]) -> set[int]:
    return {_root(parent, k) for k in some}


def _root(parent: list[int], k: int) -> int:
    while parent[k] != k:
        k = parent[k]
    return k


def _merge(parent: list[int], held: set[int], a: int, b: int) -> None:
    a, b = _root(parent, a), _root(parent, b)
    low, high = (b, a) if b in held else ((a, b) if a in held else (min(a, b), max(a, b)))
    parent[high] = low
    if high in held:
        held.add(low)
