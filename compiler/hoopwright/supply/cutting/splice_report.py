"""From groups of linked lengths to a cutting plan with spliced pieces."""

from __future__ import annotations

from dataclasses import replace

from hoopwright.source.record import record
from hoopwright.supply.cutting.chains import Chained, Group, Item, Laid, SpliceUnits, group_cap, lay_on_chain
from hoopwright.supply.cutting.completion import Budget
from hoopwright.supply.cutting.exchange import improve
from hoopwright.supply.cutting.model import (
    Bought,
    CutPack,
    CutPiece,
    CuttingOrder,
    CuttingPlan,
    Pack,
    Piece,
    Source,
    SpliceReport,
    SpliceRule,
)
from hoopwright.supply.cutting.packing import Fill
from hoopwright.supply.cutting.report import left_of, natural, plan_of
from hoopwright.supply.cutting.stock import Stock, up
from hoopwright.supply.cutting.tidy import Bench, best_packing

_LAY_STEPS = 4_000


@record(frozen=True, slots=True)
class _Length:
    """A real length behind a capacity: its metres, and the offer it is bought from (None: on hand)."""

    metres: float
    offer: Pack | None


def spliced_plan(
    order: CuttingOrder, stock: Stock, tried: Chained, plain: CuttingPlan | None
) -> CuttingPlan | None:
    """The plan, or None when a chain could not be laid with one splice at every joint."""
    rule = order.rules.splice
    if rule is None:
        return None
    bench = _bench(stock, tried.groups)
    first = _lay_all(order, stock, tried, tried.fills, rule)
    better = best_packing(bench, stock.counts, Budget(20_000)) or improve(bench, tried.fills, Budget(20_000))
    packs = _lay_all(order, stock, tried, better, rule) or first
    if packs is None:
        return None
    return _plan(order, stock, tried, packs, rule, plain)


def _bench(stock: Stock, groups: tuple[Group, ...]) -> Bench:
    caps = tuple(group_cap(g, stock.splice_loss) for g in groups)
    return Bench(stock.sizes, caps, caps, (False,) * len(groups), stock.kerf, stock.useful)


def _lay_all(
    order: CuttingOrder, stock: Stock, tried: Chained, fills: list[Fill], rule: SpliceRule
) -> tuple[CutPack, ...] | None:
    """Every group's pieces laid on its lengths; chains take the pieces that may be spliced first."""
    units = SpliceUnits(stock.kerf, stock.splice_loss - stock.kerf, stock.splice_shortest, rule.most)
    waiting = _waiting(order, stock)
    lengths = _lengths(order, stock, tried)
    budget = Budget(_LAY_STEPS)
    packs: list[CutPack] = []
    ordered = sorted(zip(tried.groups, fills, strict=True), key=lambda gf: (-len(gf[0]), gf[0], gf[1]))
    for group, fill in ordered:
        pieces = [waiting[i].pop(0) for i, n in enumerate(fill) for _ in range(n)]
        items = tuple(Item(k, up(p.length) // stock.grain, p.spliceable) for k, p in enumerate(pieces))
        found: tuple[Group, Laid] | None = (group, [[(i.key, i.length) for i in items]])
        if len(group) > 1:
            found = lay_on_chain(group, items, units, budget)
        if found is None:
            return None
        packs += _cut(order, found, pieces, lengths, rule, stock.unit)
    return tuple(sorted((p for p in packs if p.pieces), key=_pack_order))


def _cut(
    order: CuttingOrder,
    found: tuple[Group, Laid],
    pieces: list[Piece],
    lengths: dict[int, list[_Length]],
    rule: SpliceRule,
    unit: float,
) -> list[CutPack]:
    """Real lengths for one chain; the last part of a spliced piece takes what its rounded parts leave."""
    caps, laid = found
    shares = {k: sum(1 for here in laid for key, _ in here if key == k) for k in range(len(pieces))}
    given = {k: [0.0, 0.0] for k in range(len(pieces))}
    packs = []
    for cap, here in zip(caps, laid, strict=True):
        real = lengths[cap].pop(0)
        cuts = []
        for key, part in here:
            piece, n = pieces[key], shares[key]
            given[key][0] += 1
            last = int(given[key][0]) == n
            length = piece.length + (n - 1) * rule.lap - given[key][1] if last else part * unit
            given[key][1] += length
            cuts.append(CutPiece(piece.part, round(length, 9) if n > 1 else length, int(given[key][0]), n))
        done = tuple(cuts)
        source: Source = "on hand" if real.offer is None else "bought"
        packs.append(CutPack(real.metres, source, done, left_of(order, real.metres, done), real.offer))
    return packs


def _plan(
    order: CuttingOrder,
    stock: Stock,
    tried: Chained,
    packs: tuple[CutPack, ...],
    rule: SpliceRule,
    plain: CuttingPlan | None,
) -> CuttingPlan:
    spliced = sorted({c.part for p in packs for c in p.pieces if c.shares > 1}, key=natural)
    count = sum(1 for p in packs for c in p.pieces if c.share > 1)
    made = plan_of(order, stock, packs, _bought(stock, packs), (tried.lower, tried.cost))
    saves = None
    if plain is not None and plain.cost is not None and made.cost is not None:
        saves = plain.cost - made.cost
    splices = SpliceReport(count, tuple(spliced), saves, rule.cost * count, rule.minutes * count)
    return replace(made, method="splices", steps=tried.steps, splices=splices)


def _bought(stock: Stock, packs: tuple[CutPack, ...]) -> tuple[Bought, ...]:
    found = []
    for offer in dict.fromkeys(stock.packs):
        count = sum(1 for p in packs if p.offer == offer)
        if count:
            found.append(Bought(offer, count, None if offer.price is None else offer.price * count))
    return tuple(found)


def _waiting(order: CuttingOrder, stock: Stock) -> list[list[Piece]]:
    index = {s: i for i, s in enumerate(stock.sizes)}
    waiting: list[list[Piece]] = [[] for _ in stock.sizes]
    for piece in sorted(order.pieces, key=lambda p: (not p.spliceable, natural(p.part))):
        waiting[index[stock.size_of(piece.length)]].append(piece)
    return waiting


def _lengths(order: CuttingOrder, stock: Stock, tried: Chained) -> dict[int, list[_Length]]:
    """Real lengths by capacity, on hand first."""
    lengths: dict[int, list[_Length]] = {}
    for cap, index in zip(stock.hand, stock.hand_index, strict=True):
        lengths.setdefault(cap, []).append(_Length(order.on_hand[index], None))
    for cap, pack, n in zip(stock.caps, stock.packs, tried.mix, strict=True):
        lengths.setdefault(cap, []).extend([_Length(pack.length, pack)] * n)
    return lengths


def _pack_order(pack: CutPack) -> tuple[bool, float, tuple[float, ...]]:
    return (pack.source == "bought", pack.length, tuple(-c.length for c in pack.pieces))
