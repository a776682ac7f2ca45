"""Pose the problem that a method solves: materials, and the masses at each hoop."""

from __future__ import annotations

from hoopwright.shape.model import Shape
from hoopwright.spec.model import Spec
from hoopwright.strength.load import cloth_masses, own_masses, skirt_masses
from hoopwright.strength.material import lasting, material_strength
from hoopwright.strength.method import Problem


def pose(spec: Spec, shape: Shape) -> Problem:
    """The mechanical problem of a spec and its shape."""
    stock = spec.build.hoops.material
    material, _ = material_strength(stock)
    return Problem(spec, shape, stock, material, lasting(stock, material), skirt_masses(spec, shape)[1:],
                   _own(spec, shape))


def _own(spec: Spec, shape: Shape) -> tuple[float, ...]:
    """What each hoop carries of the cage itself, kg: its own weight and, in a petticoat, its share of
    cloth."""
    return tuple(a + b for a, b in zip(own_masses(spec, shape), cloth_masses(spec, shape), strict=True))
