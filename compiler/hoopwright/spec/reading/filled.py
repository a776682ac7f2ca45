"""A material with the list of what was assumed about it."""

from __future__ import annotations

from hoopwright.library.model import Goods, Stock
from hoopwright.source.record import record
from hoopwright.spec.model import Assumed


@record(frozen=True, slots=True)
class FilledStock:
    """Material for hoops and what was assumed about it, to be listed if the build uses it."""

    stock: Stock
    assumed: tuple[Assumed, ...]


@record(frozen=True, slots=True)
class FilledGoods:
    """An article and what was assumed about it, to be listed if the build uses it."""

    goods: Goods
    assumed: tuple[Assumed, ...]
