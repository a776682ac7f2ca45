"""What single changes to a design would save: each is drawn, cut and bought anew."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal

from hoopwright.library.joins import JOINS, suits
from hoopwright.library.model import Stock
from hoopwright.shape.draw import draw
from hoopwright.source.diagnostic import failed
from hoopwright.source.record import record
from hoopwright.spec.model import Build, HoopBuild, Spec
from hoopwright.supply.listing import list_goods
from hoopwright.supply.model import ShoppingLine

SMALL_STUFF = ("fastening", "consumable")
"""Kinds of goods whose missing price still lets a list be judged."""

_FEWEST = 4
"""No cage is offered with fewer hoops than this: our judgement."""


@record(frozen=True, slots=True)
class Saving:
    """A change and what it saves on the list, before the reserve."""

    words: str
    amount: Decimal


def savings(spec: Spec, lines: tuple[ShoppingLine, ...]) -> tuple[Saving, ...]:
    """Every single change that makes the list ``lines`` of ``spec`` cheaper, in a fixed order.

    A change is left out when it cannot be drawn or provided, or brings in a main material without a price;
    small stuff it brings in without a price is named.
    """
    now = _total(lines)
    unpriced = {line.item for line in lines if line.cost is None}
    found = []
    for words, changed in _changes(spec):
        then = _lines(changed)
        if then is None:
            continue
        fresh = [line for line in then if line.cost is None and line.item not in unpriced]
        if any(line.kind not in SMALL_STUFF for line in fresh):
            continue
        saved = now - _total(then)
        if saved > 0:
            without = f" ({', '.join(line.item for line in fresh)} not counted)" if fresh else ""
            found.append(Saving(words + without, saved))
    return tuple(found)


def _total(lines: tuple[ShoppingLine, ...]) -> Decimal:
    return sum((line.cost for line in lines if line.cost is not None), Decimal(0))


def _lines(spec: Spec) -> tuple[ShoppingLine, ...] | None:
    """The shopping list of a changed design; None when it cannot be made."""
    shape, _ = draw(spec)
    if shape is None:
        return None
    listing = list_goods(spec, shape)
    return None if failed(listing.said) else listing.lines


def _changes(spec: Spec) -> Iterator[tuple[str, Spec]]:
    if spec.build.hooped is None:
        yield from _corded_changes(spec)
        return
    build = spec.build
    for name in sorted(spec.stocks):
        hoops = _of_stock(spec.stocks[name], build.hoops)
        if hoops is not None:
            join = "" if hoops.join == build.hoops.join else f", {hoops.join.name},"
            yield (
                f"hoops of `{name}`{join} if it is strong enough",
                _rebuilt(spec, replace(build, hooped=hoops)),
            )
    if not build.hoops.splices:
        spliced = replace(build, hooped=replace(build.hoops, splices=1))
        yield "one splice allowed in each hoop (`splices: 1`)", _rebuilt(spec, spliced)
    if spec.shape.count > _FEWEST and spec.shape.spacing != "listed":
        yield "one hoop fewer", replace(spec, shape=replace(spec.shape, count=spec.shape.count - 1))
    if build.hoops.casing is not None:
        bare = replace(build, hooped=replace(build.hoops, casing=None))
        yield f"bare hoops, without `{build.hoops.casing.name}`", _rebuilt(spec, bare)
    if build.band is not None:
        tapes = None if build.tapes is None else replace(build.tapes, to="hem")
        plain = replace(build, band=None, tapes=tapes)
        yield f"no hem band of `{build.band.material.name}`", _rebuilt(spec, plain)


def _corded_changes(spec: Spec) -> Iterator[tuple[str, Spec]]:
    """Other cloth and cord that is sold, tucks instead of two layers, and a group of rows fewer."""
    build, cords, panels = spec.build, spec.build.cords, spec.build.panels
    if cords is None or panels is None:
        return
    for name in sorted(spec.goods):
        goods = spec.goods[name]
        if goods.sold and goods.kind == "cord" and name != cords.material.name:
            yield f"cords of `{name}` if they are stiff enough", _rebuilt(
                spec, replace(build, cords=replace(cords, material=goods)))
        elif goods.sold and goods.kind == "cloth" and cords.facing is not None and name != cords.facing.name:
            yield f"an inner layer of `{name}`", _rebuilt(spec, replace(build, cords=replace(cords, facing=goods)))
    if cords.facing is not None:
        yield "tucks instead of two layers, if they are stiff enough", _rebuilt(
            spec, replace(build, cords=replace(cords, held="tuck", facing=None, take_up=None)))
    if len(cords.groups) > 1:
        yield "one group of cords fewer", _rebuilt(
            spec, replace(build, cords=replace(cords, groups=cords.groups[:-1])))


def _rebuilt(spec: Spec, build: Build) -> Spec:
    return replace(spec, build=build)


def _of_stock(stock: Stock, now: HoopBuild) -> HoopBuild | None:
    """The hoops of another stock that is sold, with the same join or the first that suits it."""
    if stock.name == now.material.name or not stock.sold:
        return None
    metal = stock.grade.metal
    if suits(now.join, stock.section, metal):
        return replace(now, material=stock)
    join = next((join for join in JOINS.values() if suits(join, stock.section, metal)), None)
    return None if join is None else replace(now, material=stock, join=join, lap=join.lap)
