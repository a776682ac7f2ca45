"""Pose the problem that a method solves: materials, and the masses at each hoop."""

from __future__ import annotations

from hoopwright.shape.model import Shape
from hoopwright.spec.model import Spec
from hoopwright.strength.load import own_masses, skirt_masses
from hoopwright.strength.material import lasting, material_strength
from hoopwright.strength.method import Problem


def pose(spec: Spec, shape: Shape) -> Problem:
    """The mechanical problem of a spec and its shape."""
    stock = spec.build.hoops.material
    material, _ = material_strength(stock)
    return Problem(spec, shape, stock, material, lasting(stock, material), skirt_masses(spec, shape)[1:],
                   own_masses(spec, shape))
