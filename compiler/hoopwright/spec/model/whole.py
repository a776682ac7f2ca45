"""One design, checked and complete."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from decimal import Decimal
from typing import Literal

from hoopwright.library.model import Goods, Stock
from hoopwright.source.diagnostic import Path
from hoopwright.source.record import record
from hoopwright.spec.model.allowances import Allowances
from hoopwright.spec.model.build import Build
from hoopwright.spec.model.diary import Fitting, Progress
from hoopwright.spec.model.limits import Limits
from hoopwright.spec.model.outline import ShapeSpec
from hoopwright.spec.model.wearer import Wearer
from hoopwright.spec.model.workshop import Workshop
from hoopwright.spec.model.worn import Layer

Units = Literal["inches", "centimetres"]


@record(frozen=True, slots=True)
class Assumed:
    """A value the maker did not state.

    ``path`` is the key that overrides it, dotted (``wearer.waist_height.side``). ``value`` is SI when
    ``dimension`` names one (``length``, ``mass``, ``share``, ``force`` ...), else it is text.
    """

    path: str
    value: float | str
    dimension: str
    reason: str


@record(frozen=True, slots=True)
class Spec:
    """One design, checked and complete.

    ``currency`` is the one currency of all prices, or None when nothing has a price. ``goods`` and
    ``stocks`` hold every material the build can name, by name. ``assumed`` is sorted by path.
    ``stated`` is the set of dotted paths the maker wrote. ``shops`` tells what a delivery from each costs.
    When several materials are offered for one use, ``offered`` names those this design takes, and
    ``substitutes`` are the same design with the others, in the maker's order.
    """

    title: str
    units: Units
    wearer: Wearer
    shape: ShapeSpec
    build: Build
    load: tuple[Layer, ...]
    skirt_off_floor: float
    stocks: Mapping[str, Stock]
    goods: Mapping[str, Goods]
    allowances: Allowances
    limits: Limits
    workshop: Workshop
    currency: str | None
    assumed: tuple[Assumed, ...] = ()
    stated: frozenset[str] = frozenset()
    paths: Mapping[str, Path] = field(default_factory=dict)
    shops: Mapping[str, Decimal] = field(default_factory=dict)
    offered: tuple[str, ...] = ()
    substitutes: tuple[Spec, ...] = ()
    progress: Progress = Progress()
    fittings: tuple[Fitting, ...] = ()
