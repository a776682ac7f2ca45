"""From the model's hoops to arrays: their nodes, and the rods between them."""

from __future__ import annotations

from itertools import pairwise

import numpy as np

from hoopwright.source.record import record
from hoopwright.strength.cage.arc import arc_stiffness
from hoopwright.strength.cage.arrays import Floats, Ints
from hoopwright.strength.cage.curve import curve_of, plane_normal, triads, walk
from hoopwright.strength.cage.model import BandModel, CageModel, HoopModel, HoopPoint
from hoopwright.strength.cage.rod import strains

_SAME = 1e-4
"""Fractions closer than this are one node: a rod of a hair's length would be so stiff that rounding hides
the balance."""
_NEAR = 0.15
"""A band's upright stands at a fixing that is nearer than this share of the space between uprights."""


@record(frozen=True, slots=True)
class HoopMesh:
    """One hoop's share of n nodes and m rods: the numbers of its `nodes` (n,) in order (a closed hoop does not repeat
    the first) and of its rods, `elements` (m,); the nodes' `fractions` (n,); its `girth` along the curve, m.
    """

    nodes: Ints
    elements: Ints
    fractions: Floats
    girth: float
    closed: bool


@record(frozen=True, slots=True)
class Rods:
    """All n rods of the hoops: `first` and `second` end node (n,); arc `length` (n,) m; `stiffness` (n, 6, 6), N and
    N m2; strain at `birth` (n, 6); the wished `curvature` (n, 3), 1/m: twist, strong, weak; `section` rows (n, 4): EA
    N, GJ, EI strong, EI weak, N m2.
    """

    first: Ints
    second: Ints
    length: Floats
    stiffness: Floats
    birth: Floats
    curvature: Floats
    section: Floats


def breakpoints(model: CageModel, hoop: HoopModel) -> list[float]:
    """Return the sorted fractions of a hoop at which something is fixed, ends of an open hoop included."""
    found = [f for t in model.tapes for h, f in t.fixings if h == hoop.id]
    places = [p for tie in model.ties for p in (tie.a, tie.b)]
    places += [p for join in model.joins for p in (join.a, join.b)] + [load.at for load in model.point_loads]
    places += [rest.at for rest in model.rests]
    found += [p.fraction for p in places if isinstance(p, HoopPoint) and p.hoop == hoop.id]
    for band in model.bands:
        if hoop.id in (band.upper, band.lower):
            found += upright_fractions(model, band, hoop.id)
    if hoop.closed:
        found = [f % 1.0 for f in found] or [0.0]
    else:
        found = [min(max(f, hoop.start), hoop.end) for f in found] + [hoop.start, hoop.end]
    out: list[float] = []
    for f in sorted(found):
        if not out or f - out[-1] > _SAME:
            out.append(f)
    if hoop.closed and len(out) > 1 and out[0] + 1.0 - out[-1] <= _SAME:
        out.pop()
    return out


def upright_fractions(model: CageModel, band: BandModel, hoop: str) -> list[float]:
    """Return where a band's upright strips meet one of its hoops: evenly, or at a fixing close by."""
    even = band_fractions(model, band.upper, band.lower, band.strips)
    fixed = sorted(f % 1.0 for t in model.tapes for h, f in t.fixings if h == hoop)
    space = even[1] - even[0]
    out = []
    for f in even:
        away, at = min(((abs((g - f + 0.5) % 1.0 - 0.5), g) for g in fixed), default=(1.0, f))
        out.append(at if away < _NEAR * space else f)
    return out


def band_fractions(model: CageModel, upper: str, lower: str, strips: int) -> list[float]:
    """Return where a band's upright strips stand: even all round, or end to end of what both share."""
    pair = [h for h in model.hoops if h.id in (upper, lower)]
    if all(h.closed for h in pair):
        return [k / strips for k in range(strips)]
    start = max(h.start for h in pair if not h.closed)
    end = min(h.end for h in pair if not h.closed)
    return [start + (end - start) * k / strips for k in range(strips + 1)]


def node_fractions(marks: list[float], hoop: HoopModel, elements: int) -> Floats:
    """Return node fractions, at least `elements` pieces in all: every mark and every middle between
    marks is a node, alike under mirroring."""
    ends = [*marks, marks[0] + 1.0] if hoop.closed else marks
    whole = ends[-1] - ends[0]
    out: list[float] = []
    for a, b in pairwise(ends):
        count = 2 * max(1, int(np.ceil(0.5 * elements * (b - a) / whole - 1e-6)))
        out.extend(a + (b - a) * k / count for k in range(count))
    if not hoop.closed:
        out.append(ends[-1])
    return np.array(out)


def lay_hoop(hoop: HoopModel, marks: list[float], elements: int) -> tuple[Floats, Floats, Floats, float]:
    """Return node fractions, positions (n, 3), triads (n, 3, 3) and the girth (arc length, m) of one hoop."""
    curve = curve_of(hoop)
    fractions = node_fractions(marks, hoop, elements)
    if hoop.closed:
        along = np.mod(fractions, 1.0) * curve.length
    else:
        along = np.clip((fractions - hoop.start) / (hoop.end - hoop.start), 0.0, 1.0) * curve.length
    place, tangent = walk(curve, along)
    edge = np.array(hoop.edge) if hoop.edge is not None else plane_normal(np.array(hoop.points))
    return fractions, place, triads(tangent, edge), curve.length


def rods_of(hoops: list[tuple[HoopModel, HoopMesh]], x: Floats, turned: Floats) -> Rods:
    """Return the elements of all hoops, in hoop order."""
    first, second, length, section, born = [], [], [], [], []
    for hoop, mesh in hoops:
        n = mesh.nodes
        after = np.roll(n, -1) if mesh.closed else n[1:]
        first.append(n if mesh.closed else n[:-1])
        second.append(after)
        step = np.diff(np.append(mesh.fractions, mesh.fractions[0] + 1.0) if mesh.closed else mesh.fractions)
        length.append(step / step.sum() * mesh.girth)
        s = hoop.section
        section.append(np.tile([s.ea, s.gj, s.ei_strong, s.ei_weak], (len(step), 1)))
        born.append(np.full(len(step), np.nan if hoop.born == "preformed" else hoop.born_curvature))
    i, j = np.concatenate(first), np.concatenate(second)
    long, rows, coil = np.concatenate(length), np.concatenate(section), np.concatenate(born)
    wished = strains(x[i], x[j], turned[i], turned[j], long)
    birth = wished.copy()
    sprung = ~np.isnan(coil)
    birth[sprung] = 0.0
    way = np.where(wished[:, 5] > 0, 1.0, -1.0)
    birth[sprung, 5] = (way * coil)[sprung]
    return Rods(i, j, long, arc_stiffness(long, wished[:, 3:], rows), birth, wished[:, 3:], rows)
