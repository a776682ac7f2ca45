"""A spec's values in one form: ``1 in`` and ``2.54 cm`` are the same, and the order of keys means nothing."""

from __future__ import annotations

from typing import Any

from hoopwright.source.overlay import exchanged
from hoopwright.source.quantity import QuantityError
from hoopwright.spec.checking.quantities import PARSERS
from hoopwright.spec.checking.schema import whole_schema
from hoopwright.spec.checking.walk import titled

_DIGITS = 9


def canonical(value: dict[str, Any]) -> dict[str, Any]:
    """``value`` with every quantity that can be read as its number in SI units, to nine figures."""
    read: dict[tuple[str | int, ...], object] = {}
    for path, title, item in titled(value, whole_schema("spec")):
        parser = PARSERS.get(title)
        if parser is None or item is None:
            continue
        try:
            number = parser(item)
        except QuantityError:
            continue
        read[path] = f"{number:.{_DIGITS}g}" if isinstance(number, float) else number
    found: dict[str, Any] = exchanged(value, read)
    return found
