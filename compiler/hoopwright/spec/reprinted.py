"""The same design printed in other units: nothing that is computed changes, only how it is written."""

from __future__ import annotations

from dataclasses import replace

from hoopwright.spec.model import Spec, Units


def in_units(spec: Spec, units: Units | None) -> Spec:
    """The spec, and the substitutes it offers, with ``units``; None leaves them as they are."""
    if units is None:
        return spec
    others = tuple(replace(other, units=units) for other in spec.substitutes)
    return replace(spec, units=units, substitutes=others)
