"""The shopping list, the tools and the money."""

from __future__ import annotations

from hoopwright.library.cautions import CAUTIONS
from hoopwright.library.tools import HOUSEHOLD
from hoopwright.plan.model import Plan
from hoopwright.render.quantities import Printer, exact_length
from hoopwright.render.views.substitutes import SubstituteRow, substitute_rows
from hoopwright.render.views.unit_price import unit_price
from hoopwright.render.words import count_word, counted, ids_text, listed
from hoopwright.source import quantity
from hoopwright.source.record import record
from hoopwright.supply.model import ShoppingLine

_CALLED = {"strip": "coil", "wire": "coil", "cane": "hank", "tube": "length", "rod": "length", "tape": "roll",
           "braid": "roll", "cord": "hank"}
"""What a pack of each kind is called in the shop."""

_BY_YARD = ("tape", "braid", "cord", "cloth")
"""Kinds a shop measures in yards."""


@record(frozen=True, slots=True)
class BuyRow:
    """A line of the list: ``ask`` is what to ask for, ``buy`` how many packs."""

    item: str
    ask: str
    buy: str
    price: str
    cost: str
    uses: str


@record(frozen=True, slots=True)
class Buying:
    """The list and what goes with it. ``total`` is blank when nothing has a price;
    ``burns``: the caution for who buys cloth, blank where none is bought."""

    rows: tuple[BuyRow, ...]
    on_hand: tuple[str, ...]
    total: str
    reserve: str
    both: str
    budget: str
    missing: str
    burns: str
    tools_have: str
    tools_missing: tuple[tuple[str, str], ...]
    tools_wanted: str
    substitutes: tuple[SubstituteRow, ...]


def buying_view(plan: Plan) -> Buying:
    """What to buy and to lay ready."""
    p, cost = Printer.of(plan.spec), plan.supply.cost
    have = plan.spec.workshop.tools
    return Buying(
        rows=tuple(_row(line, plan, p) for line in plan.supply.shopping),
        on_hand=_on_hand(plan, p),
        reserve=p.money(cost.reserve),
        both=p.money(cost.total + cost.reserve),
        total=p.money(cost.total) if cost.currency else "",
        budget=p.money(cost.budget) if cost.budget is not None else "",
        missing=listed(cost.missing),
        burns=CAUTIONS["flammability"].text if any(line.kind == "cloth" for line in plan.supply.shopping) else "",
        tools_have=listed(dict.fromkeys(_tools(plan) if have is None else (*have, *HOUSEHOLD))),
        tools_missing=tuple((listed(need.choices, "or"), need.purpose) for need in plan.supply.tools_missing),
        tools_wanted="" if have is not None else "no workshop is stated",
        substitutes=substitute_rows(plan, p),
    )


def _tools(plan: Plan) -> tuple[str, ...]:
    """Every tool a task names, sorted."""
    return tuple(sorted({tool for task in plan.work.tasks for tool in task.tools}))


def _row(line: ShoppingLine, plan: Plan, p: Printer) -> BuyRow:
    return BuyRow(
        item=line.item,
        ask=ask_for(line.item, plan, p),
        buy=amount_text(line, p),
        price=price_text(line, p),
        cost=p.money(line.cost),
        uses=ids_text(line.uses),
    )


def ask_for(item: str, plan: Plan, p: Printer) -> str:
    """What to say in the shop: grade and section, or width and weight."""
    stock, goods = plan.spec.stocks.get(item), plan.spec.goods.get(item)
    if stock is not None:
        section = stock.section.text or f"{stock.section.height * 1000:g} mm"
        grade = (stock.grade.name,) if stock.grade.name != stock.name else ()
        kind = () if stock.section.kind in section.split() else (stock.section.kind,)
        return ", ".join((*grade, *kind, section, *_from(stock.shop)))
    if goods is None:
        return ""
    said = []
    if goods.width and goods.kind in {"tape", "braid", "cloth"}:
        said.append(f"{p.length(goods.width)} wide")
    if goods.width and goods.kind == "cord":
        said.append(f"{exact_length(goods.width, p.units)} thick")
    if goods.areal_density and goods.kind == "cloth":
        said.append(quantity.areal_density_text(goods.areal_density, p.units))
    return ", ".join((*said, *_from(goods.shop)))


def _from(shop: str) -> tuple[str, ...]:
    return (f"from {shop}",) if shop else ()


def _measured(line: ShoppingLine) -> bool:
    """Whether the shop cuts it to measure: cloth, or many short steps."""
    return line.pack_length > 0 and (line.kind == "cloth" or line.pack_length < 1.0 + 1e-9)


def price_text(line: ShoppingLine, p: Printer) -> str:
    """The price of one, and what that is for a unit when one is not the unit itself."""
    each = p.money(line.price)
    if line.price is not None and _measured(line):
        each = f"{each} per {p.shop(line.pack_length)}"
    unit = unit_price(line, p)
    return f"{each} ({unit})" if unit else each


def amount_text(line: ShoppingLine, p: Printer) -> str:
    """How much to buy: ``one coil of 50 ft``, ``1 3/4 yd (5 ft 1 1/8 in once washed)``, ``two packs of 3``."""
    washed = "" if line.washed is None else f" ({p.long(line.washed)} once washed)"
    return f"{_amount(line, p)}{washed}"


def _amount(line: ShoppingLine, p: Printer) -> str:
    if _measured(line):
        return p.shop(line.packs * line.pack_length)
    if line.pack_length:
        length = (p.shop if line.kind in _BY_YARD else p.long)(line.pack_length)
        return f"{counted(line.packs, _CALLED.get(line.kind, 'pack'))} of {length}"
    if line.pack_count > 1:
        return f"{counted(line.packs, 'pack')} of {line.pack_count}"
    return count_word(line.packs)


def _on_hand(plan: Plan, p: Printer) -> tuple[str, ...]:
    """What is taken from the cupboard, each with its parts."""
    lengths = (
        f"{pack.material}, {p.long(pack.pack)}: {ids_text(piece.label for piece in pack.pieces)}"
        for pack in plan.supply.cutting.packs if pack.origin == "on hand" and pack.pieces)
    cloth = (
        f"{layout.material}, {p.long(layout.need)} of a piece {p.length(layout.width)} wide:"
        f" {ids_text(placed.part for placed in layout.placements)}"
        for layout in plan.supply.layouts if layout.buy <= 0)
    return (*lengths, *cloth)
