"""Rings pressed in their plane and rings hung on tapes, evenly spaced or not, against a frame of many short
beams solved by PyNite."""

from math import cos, pi, sin

import pytest
from apparatus import ring
from Pynite import FEModel3D

from hoopwright.strength.forms import hang, uneven

STRONG, TORSION, WEAK = 80.0, 1.0, 2.0


def frame(bays, per_bay=16):
    """A ring of ``bays`` times ``per_bay`` beams, radius 1, in the XZ plane (Y up): B = 80, C = 1, A = 2."""
    model = FEModel3D()
    model.add_material("unit", E=1.0, G=1.0, nu=0.3, rho=0.0)
    model.add_section("strip", A=1e8, Iy=WEAK, Iz=STRONG, J=TORSION)
    count = bays * per_bay
    for k in range(count):
        turn = 2 * pi * k / count
        model.add_node(f"N{k}", cos(turn), 0.0, sin(turn))
    for k in range(count):
        model.add_member(f"M{k}", f"N{k}", f"N{(k + 1) % count}", "unit", "strip")
    return model, count


def solved(model):
    model.analyze_linear(check_statics=False)
    return {
        name: (node.DX["Combo 1"], node.DY["Combo 1"], node.DZ["Combo 1"])
        for name, node in model.nodes.items()
    }


def extrapolated(solve, n):
    """The value for endlessly short beams, from two meshes; polygons miss a ring by the square of the
    step."""
    coarse, fine = solve(n, 16), solve(n, 32)
    return [b + (b - a) / 3 for a, b in zip(coarse, fine, strict=True)]


def pressed(n, per_bay):
    """(inward at a load, outward midway) under unit loads. Symmetry holds the first node; a weak spring the
    ring."""
    model, count = frame(n, per_bay)
    for k in range(count):
        model.def_support(f"N{k}", support_DY=True, support_RX=True, support_RZ=True)
    for j in range(n):
        turn = 2 * pi * j / n
        model.add_node_load(f"N{j * per_bay}", "FX", -cos(turn))
        model.add_node_load(f"N{j * per_bay}", "FZ", -sin(turn))
    model.nodes["N0"].support_DZ = model.nodes["N0"].support_RY = True
    model.def_support_spring("N0", "DX", 1e-6)
    moved = solved(model)
    mean = [sum(moved[f"N{k}"][axis] for k in range(count)) / count for axis in range(3)]
    turn = pi / n
    at, middle = moved["N0"], moved[f"N{per_bay // 2}"]
    return mean[0] - at[0], (middle[0] - mean[0]) * cos(turn) + (middle[2] - mean[2]) * sin(turn)


def hung(n, per_bay):
    """(sag,) under a unit line load put on the nodes; tapes hold the height at n nodes and nothing else."""
    model, count = frame(n, per_bay)
    for k in range(count):
        model.add_node_load(f"N{k}", "FY", -2 * pi / count)
    for j in range(n):
        model.def_support(f"N{j * per_bay}", support_DY=True)
    model.nodes["N0"].support_DX = model.nodes["N0"].support_DZ = True
    model.nodes[f"N{per_bay}"].support_DX = True
    return (-solved(model)[f"N{per_bay // 2}"][1],)


@pytest.mark.parametrize("n", [3, 4, 6])
def test_inward_loads(n):
    inward, outward = extrapolated(pressed, n)
    assert inward == pytest.approx(ring.inward_at_load(n, 1, 1, WEAK), rel=1e-3)
    assert outward == pytest.approx(ring.outward_midway(n, 1, 1, WEAK), rel=1e-3)


@pytest.mark.parametrize("n", [4, 6, 8])
def test_sag_between_tapes(n):
    assert extrapolated(hung, n)[0] == pytest.approx(hang.sag(n, 1, 1, STRONG, TORSION), rel=1e-3)


def test_frame_comes_nearer_as_beams_get_shorter():
    exact = hang.sag(4, 1, 1, STRONG, TORSION)
    misses = [abs(hung(4, per_bay)[0] - exact) for per_bay in (8, 16, 32)]
    assert misses[0] > 3 * misses[1] > 9 * misses[2]


def hung_anywhere(at, count):
    """(sag, reactions) of a ring held at nodes ``at`` of ``count``, under a unit line load."""
    model, _ = frame(1, count)
    for k in range(count):
        model.add_node_load(f"N{k}", "FY", -2 * pi / count)
    for k in at:
        model.def_support(f"N{k}", support_DY=True)
    model.nodes["N0"].support_DX = model.nodes["N0"].support_DZ = True
    model.nodes[f"N{count // 4}"].support_DX = True
    moved = solved(model)
    return max(-moved[f"N{k}"][1] for k in range(count)), [model.nodes[f"N{k}"].RxnFY["Combo 1"] for k in at]


@pytest.mark.parametrize("at", [(9, 22, 35, 37, 61), (11, 23, 33, 43, 53, 61), (6, 20, 36, 52, 66)])
def test_tapes_at_uneven_places(at):
    """72 and 144 beams, taken to endlessly short ones."""
    coarse, fine = hung_anywhere(at, 72), hung_anywhere([2 * k for k in at], 144)
    found = uneven.hung([k / 72 for k in at], 1, 1, STRONG, TORSION)
    assert fine[0] + (fine[0] - coarse[0]) / 3 == pytest.approx(found.sag, rel=5e-3)
    limit = [b + (b - a) / 3 for a, b in zip(coarse[1], fine[1], strict=True)]
    assert limit == pytest.approx(list(found.reactions), rel=2e-3, abs=2e-3)
