"""Which method solves which kind of cage; those not named here are solved as cages on tapes."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from hoopwright.spec.model import Spec
from hoopwright.strength.families import frames, pair, petticoat, wheel
from hoopwright.strength.method import Method


def kind_of(spec: Spec) -> str:
    """The kind of cage a method is chosen by: side hoops, else what carries the hoops."""
    return "pair" if spec.build.sides is not None else spec.build.carried_by


METHODS: Mapping[str, Method] = MappingProxyType(
    {**petticoat.METHODS, "pair": pair.solve, "wheel": wheel.solve}
)
"""Methods of what is not solved as a cage on tapes."""
TRIALS: Mapping[str, Method] = MappingProxyType(
    {**petticoat.METHODS, "pair": pair.trial, "wheel": wheel.trial}
)
"""The same for changed cages."""
QUICK: Mapping[str, Method] = MappingProxyType(
    {**petticoat.METHODS, "pair": frames.solve_pair, "wheel": frames.solve_wheel}
)
"""By closed forms, which choose the size of remedies."""
