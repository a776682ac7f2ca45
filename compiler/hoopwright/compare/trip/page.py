"""The trip in print: who pays what, what to buy, which piece comes off which length."""

from __future__ import annotations

import math
from collections.abc import Iterator

from hoopwright.compare.trip.model import Design, Trip, TripLine
from hoopwright.plan.model import Plan
from hoopwright.render.escape import markdown_text
from hoopwright.render.figure import Figure
from hoopwright.render.quantities import Printer
from hoopwright.render.views.buying import amount_text, ask_for, price_text
from hoopwright.render.views.cutting import taken_text, washed_text
from hoopwright.render.words import counted, listed
from hoopwright.source.printed import share_text
from hoopwright.supply.model import ClothLayout, CutPack

TITLE = "One shopping trip"
RULE = (
    "How the cost is shared: of every material each design pays the same part of what that material would"
    " have cost it alone, so none pays more than alone; what nobody would have paid for alone is shared by"
    " the amount used. To buy alone means one design after the other, in this order, out of the same"
    " cupboard: what is on hand counts once, though several specs list it."
)


def trip_markdown(trip: Trip, figures: tuple[Figure, ...] = ()) -> str:
    """The page. ``figures`` are those that will lie in ``figures/`` beside it."""
    p = Printer.of(trip.designs[0].plan.spec)
    blocks = [
        f"# {TITLE}",
        _headline(trip, p),
        "## Who pays what",
        _shares(trip, p),
        RULE,
        "## What to buy",
        _buying(trip, p),
        _money(trip, p),
        _apart(trip),
        "## Which piece comes from which length",
        "The letter tells the design: write it on every piece.",
        _cutting(trip, p),
        _sure(trip),
        *(f"![{markdown_text(one.alt)}](figures/{one.name}.svg)" for one in figures),
        *_cloth(trip, p),
    ]
    return "\n\n".join(block for block in blocks if block) + "\n"


def _headline(trip: Trip, p: Printer) -> str:
    designs = counted(len(trip.designs), "design")
    if trip.currency is None:
        return f"{designs.capitalize()} bought together. The specs name no price."
    said = (
        f"{designs.capitalize()} together cost **{p.money(trip.total)}**; bought alone {p.money(trip.alone)}"
    )
    saved = f"the trip saves **{p.money(trip.saving)}**" if trip.saving else "the trip saves nothing"
    return f"{said}: {saved}. The reserves are not counted here."


def _table(head: tuple[str, ...], right: str, rows: Iterator[tuple[str, ...]]) -> str:
    """A Markdown table; ``right`` has an ``r`` for each column aligned to the right."""
    marks = ["---:" if side == "r" else "---" for side in right]
    lines = [f"| {' | '.join(head)} |", f"| {' | '.join(marks)} |"]
    lines += [f"| {' | '.join(row)} |" for row in rows]
    return "\n".join(lines)


def _shares(trip: Trip, p: Printer) -> str:
    def rows() -> Iterator[tuple[str, ...]]:
        for design in trip.designs:
            yield (
                f"**{design.letter}**",
                markdown_text(design.label),
                p.money(design.alone),
                p.money(design.pays),
                p.money(design.saves),
                _budget(design, p),
            )
        yield ("", "all", p.money(trip.alone), p.money(trip.total), p.money(trip.saving), "")

    return _table(("", "Design", "Alone", "Pays", "Saves", "Budget"), "llrrrl", rows())


def _budget(design: Design, p: Printer) -> str:
    """A design's budget against what it pays with its own reserve."""
    limit = design.plan.spec.limits.budget
    if limit is None:
        return "–"
    from hoopwright.supply.money import with_reserve

    spent = with_reserve(design.pays, design.plan.spec)
    return f"{p.money(limit)}, {'kept' if spent <= limit else 'passed'} with {p.money(spent)}"


def _buying(trip: Trip, p: Printer) -> str:
    def rows() -> Iterator[tuple[str, ...]]:
        for one in trip.lines:
            line = one.line
            ask = ask_for(line.item.rsplit(" (", 1)[0], _plan_of(trip, one), p)
            name = f"**{markdown_text(line.item)}**" + (f": {markdown_text(ask)}" if ask else "")
            yield (name, amount_text(line, p), price_text(line, p), p.money(line.cost), _paid(one, p))

    return _table(("Item", "Buy", "Each", "Cost", "Paid by"), "llrrl", rows())


def _plan_of(trip: Trip, one: TripLine) -> Plan:
    """A plan that knows the item: that of the first design it is for."""
    letters = {letter for letter, _ in one.pays} or {use.split(" ", 1)[0] for use in one.line.uses}
    return next((d.plan for d in trip.designs if d.letter in letters), trip.designs[0].plan)


def _paid(one: TripLine, p: Printer) -> str:
    if not one.pays:
        return "with the line above"
    return ", ".join(letter if part is None else f"{letter} {p.money(part)}" for letter, part in one.pays)


def _money(trip: Trip, p: Printer) -> str:
    said = f"Sum **{p.money(trip.total)}**." if trip.currency else ""
    if trip.missing:
        said += f" **The sum is too low by what has no price yet:** {markdown_text(listed(trip.missing))}."
    return said.strip()


def _apart(trip: Trip) -> str:
    if not trip.apart:
        return ""
    names = markdown_text(listed(trip.apart))
    return f"Bought apart, because the specs mean different goods by these names: {names}."


def _cutting(trip: Trip, p: Printer) -> str:
    return _table(
        ("From", "Cut, in this order", "Left over"),
        "llr",
        (_pack(pack, p) for pack in trip.packs if pack.pieces),
    )


def _pack(pack: CutPack, p: Printer) -> tuple[str, ...]:
    origin = "on hand" if pack.origin == "on hand" else "to buy"
    pieces = " · ".join(f"{markdown_text(piece.label)} {p.length(piece.length)}" for piece in pack.pieces)
    left = p.long(pack.left) if p.printed(pack.left) > 0 else "nothing"
    return (f"**{markdown_text(pack.material)}**, {p.long(pack.pack)}, {origin}{washed_text(pack, p)}", pieces, left)


def _sure(trip: Trip) -> str:
    if trip.proven:
        return "No way of cutting these pieces costs less."
    if trip.gap > 0:
        most = share_text(math.ceil(trip.gap * 1000) / 1000)
        return f"Another way of cutting might cost less, by {most} at most."
    return "Another way of cutting might cost less: not every mixture of packs was looked at."


def _cloth(trip: Trip, p: Printer) -> Iterator[str]:
    if trip.layouts:
        yield "## Cloth"
    for layout in trip.layouts:
        yield _layout(layout, p)


def _layout(layout: ClothLayout, p: Printer) -> str:
    head = f"**{markdown_text(layout.material)}**, {p.length(layout.width)} wide: {taken_text(layout, p)}"
    counts: dict[tuple[str, str], int] = {}
    for spot in layout.placements:
        short, long = sorted((spot.width, spot.height))
        key = (spot.part, f"{p.length(short)} × {p.length(long)}")
        counts[key] = counts.get(key, 0) + 1
    rows = [f"- {markdown_text(part)}: {counted(n, 'piece')} of {size}" for (part, size), n in counts.items()]
    return "\n".join((f"{head}.", "", *rows))
