"""Which methods solve which kind of design."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from hoopwright.source.record import record
from hoopwright.spec.model import Spec
from hoopwright.strength import closed, whole
from hoopwright.strength.families import frames, pair, petticoat, wheel
from hoopwright.strength.method import Method


@record(frozen=True, slots=True)
class Methods:
    """``solve`` for the design itself, ``trial`` for changed ones, held beside one another, ``quick`` by closed forms,
    which cost nothing and choose the size of remedies."""

    solve: Method
    trial: Method
    quick: Method


METHODS: Mapping[str, Methods] = MappingProxyType({
    "tapes": Methods(whole.solve, whole.trial, closed.solve),
    "channels": Methods(petticoat.solve, petticoat.solve, petticoat.solve),
    "pair": Methods(pair.solve, pair.trial, frames.solve_pair),
    "wheel": Methods(wheel.solve, wheel.trial, frames.solve_wheel),
})
"""The methods of every kind of design with hoops."""


def kind_of(spec: Spec) -> str:
    """The kind that methods go by: ``pair`` for side hoops, else what carries the hoops."""
    return "pair" if spec.build.sides is not None else spec.build.carried_by
