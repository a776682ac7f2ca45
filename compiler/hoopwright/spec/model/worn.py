"""What is worn over it. Masses in kilograms, lengths in metres."""

from __future__ import annotations

from typing import Literal

from hoopwright.library.model import Goods
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Layer:
    """Something worn over or hung from the cage.

    ``mass`` in kg is resolved from weight, or from area and areal density. ``heights`` (m above the
    floor) is used by ``flounced`` only. ``cloth``, ``area`` are set when ``buy`` is true.
    ``gathered``: a petticoat under the skirt, which stands off and asks for more skirt length.
    """

    name: str
    mass: float
    hang: Literal["straight", "gored", "flounced"]
    heights: tuple[float, ...] = ()
    cloth: Goods | None = None
    area: float | None = None
    buy: bool = False
    gathered: bool = False
