"""Everything to cut and to buy for one design, before it is judged."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from hoopwright.shape.model import Shape
from hoopwright.source.diagnostic import Finding, failed
from hoopwright.source.record import record
from hoopwright.spec.model import Spec
from hoopwright.supply.cloths import Laid, lay_need
from hoopwright.supply.counts import count_line, count_needs
from hoopwright.supply.cutting.model import CuttingFailure
from hoopwright.supply.delivery import delivery_lines
from hoopwright.supply.lengths import Cut, cut_need
from hoopwright.supply.model import ShoppingLine, Splicing
from hoopwright.supply.needs import cloth_needs, length_needs
from hoopwright.supply.trouble import cloth_trouble, cutting_trouble, piece_warning


@record(frozen=True, slots=True)
class Listing:
    """What is cut from lengths, what is laid on cloth, what is bought; and what stands in the way."""

    cuts: tuple[Cut, ...]
    laid: tuple[Laid, ...]
    lines: tuple[ShoppingLine, ...]
    said: tuple[Finding, ...]

    @property
    def total(self) -> Decimal:
        """The sum of what has a price."""
        return sum((line.cost for line in self.lines if line.cost is not None), Decimal(0))

    @property
    def splicing(self) -> Splicing | None:
        """What splices do, when there are any."""
        return next((cut.splicing for cut in self.cuts if cut.splicing is not None), None)


def list_goods(spec: Spec, shape: Shape) -> Listing:
    """The listing of a design. With an error in ``said`` it is not complete.

    Splices are kept when the whole list is cheaper with them, the packs of small stuff they use up included,
    or when there is no other way.
    """
    found = _listed(spec, shape)
    told = found.splicing
    if told is None:
        return found
    hoops = replace(spec.build.hoops, splices=0)
    plain = _listed(replace(spec, build=replace(spec.build, hooped=hoops)), shape)
    if failed(plain.said):
        return found
    if plain.total <= found.total:
        return plain
    more = {line.item: line.cost for line in found.lines if line.cost is not None}
    before = {line.item: line.cost for line in plain.lines if line.cost is not None}
    small = {use.goods for use in spec.build.hoops.join.consumes}
    cost = sum(
        (more.get(item, Decimal(0)) - before.get(item, Decimal(0)) for item in sorted(small)), Decimal(0)
    )
    told = replace(told, saves=plain.total - found.total + cost, cost=cost)
    return replace(
        found, cuts=tuple(cut if cut.splicing is None else replace(cut, splicing=told) for cut in found.cuts)
    )


def _listed(spec: Spec, shape: Shape) -> Listing:
    cuts, lengths_said = _lengths(spec, shape)
    laid, cloth_said = _cloths(spec, shape)
    splices = sum(cut.splicing.count for cut in cuts if cut.splicing is not None)
    counted = [count_line(need) for need in count_needs(spec, shape, splices)]
    lines = [line for cut in cuts for line in cut.lines]
    lines += [cloth.line for cloth in laid if cloth.line is not None]
    lines += [line for line in counted if line is not None]
    lines += delivery_lines(lines, spec)
    return Listing(tuple(cuts), tuple(laid), tuple(lines), (*lengths_said, *cloth_said))


def _lengths(spec: Spec, shape: Shape) -> tuple[list[Cut], list[Finding]]:
    cuts: list[Cut] = []
    said: list[Finding] = []
    for need in length_needs(spec, shape):
        said.extend(piece_warning(need.item, need.sold))
        cut = cut_need(need, spec)
        if isinstance(cut, CuttingFailure):
            said.extend(cutting_trouble(need, cut, spec))
        else:
            cuts.append(cut)
    return cuts, said


def _cloths(spec: Spec, shape: Shape) -> tuple[list[Laid], list[Finding]]:
    laid: list[Laid] = []
    said: list[Finding] = []
    for need in cloth_needs(spec, shape):
        said.extend(piece_warning(need.goods.name, need.goods.sold))
        found = lay_need(need, spec)
        if isinstance(found, Laid):
            laid.append(found)
        else:
            said.extend(cloth_trouble(need, found, spec))
    return laid, said
