"""Everything to cut and to buy for one design, before it is judged."""

from __future__ import annotations

from dataclasses import dataclass

from hoopwright.shape.model import Shape
from hoopwright.source.diagnostic import Finding
from hoopwright.spec.model import Spec
from hoopwright.supply.cloths import Laid, lay_need
from hoopwright.supply.counts import count_line, count_needs
from hoopwright.supply.cutting.model import CuttingFailure
from hoopwright.supply.lengths import Cut, cut_need
from hoopwright.supply.model import ShoppingLine
from hoopwright.supply.needs import cloth_needs, length_needs
from hoopwright.supply.trouble import cloth_trouble, cutting_trouble, piece_warning


@dataclass(frozen=True, slots=True)
class Listing:
    """What is cut from lengths, what is laid on cloth, what is bought; and what stands in the way."""

    cuts: tuple[Cut, ...]
    laid: tuple[Laid, ...]
    lines: tuple[ShoppingLine, ...]
    said: tuple[Finding, ...]


def list_goods(spec: Spec, shape: Shape) -> Listing:
    """The listing of a design. With an error in ``said`` it is not complete."""
    cuts, lengths_said = _lengths(spec, shape)
    laid, cloth_said = _cloths(spec, shape)
    counted = [count_line(need) for need in count_needs(spec, shape)]
    lines = [line for cut in cuts for line in cut.lines]
    lines += [cloth.line for cloth in laid if cloth.line is not None]
    lines += [line for line in counted if line is not None]
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
