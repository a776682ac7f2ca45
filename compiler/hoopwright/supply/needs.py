"""What a design needs in lengths and in cloth, before anything is bought.

Goods of one name are pooled: tapes and a waistband of the same tape come off the same roll.
"""

from __future__ import annotations

import math
from dataclasses import replace

from hoopwright.library.model import Goods, Offer
from hoopwright.shape.model import Hoop, Shape
from hoopwright.shape.model import Panel as ShapedPanel
from hoopwright.shape.tying.lacing import cord_length
from hoopwright.source.record import record
from hoopwright.spec.model import CordBuild, Spec
from hoopwright.supply.cloth.model import Band, ClothPart, Gore, Grain, Panel
from hoopwright.supply.cutting.model import SpliceRule
from hoopwright.supply.cutting.stock import UNIT, down
from hoopwright.supply.model import CutPiece
from hoopwright.supply.splices import splice_rule

_EVEN = 1e-9
SAMPLE_CORDS = "sample cords"
"""The part that the cords of a sample are cut for, in one length."""


@record(frozen=True, slots=True)
class LengthNeed:
    """Pieces to be cut from one material that comes in lengths, m. ``kerf`` is lost at each cut (0 for
    shears), ``trim`` at the end of each length. What is bought loses the share ``shrinkage`` in the first
    wash; what is on hand is washed. ``splice`` allows splices."""

    item: str
    kind: str
    pieces: tuple[CutPiece, ...]
    kerf: float
    sold: tuple[Offer, ...]
    on_hand: tuple[float, ...]
    shrinkage: float = 0.0
    trim: float = 0.0
    splice: SpliceRule | None = None

    @property
    def total(self) -> float:
        """All pieces end to end, m."""
        return sum(piece.length for piece in self.pieces)


@record(frozen=True, slots=True)
class ClothNeed:
    """Parts to be cut from one cloth."""

    goods: Goods
    parts: tuple[ClothPart, ...]


def ways(need: ClothNeed, spec: Spec) -> tuple[ClothNeed, ...]:
    """The same parts with the hem band cut across the cloth and along it, as far as its grain allows.

    Strips cut across end in selvages, which are butted; strips cut along end in raw edges, which want two
    seam allowances at each join.
    """
    band = next((part for part in need.parts if isinstance(part, Band) and part.part == "band"), None)
    if band is None:
        return (need,)
    seamed = max(band.join, 2 * spec.allowances.seam)
    cut = {
        "across": replace(band, grain="across"),
        "along": replace(band, grain="along", join=seamed),
    }
    return tuple(
        ClothNeed(need.goods, tuple(cut[grain] if part is band else part for part in need.parts))
        for grain in cut
        if band.grain in ("either", grain)
    )


def hoop_need(spec: Spec, shape: Shape) -> LengthNeed:
    """The hoops and a wheel's spokes, cut from the spec's stock."""
    stock = spec.build.hoops.material
    pieces = tuple(CutPiece(hoop.id, hoop.cut) for hoop in shape.hoops)
    if shape.wheel is not None:
        pieces += tuple(CutPiece(spoke.id, spoke.cut) for spoke in shape.wheel.spokes)
    return LengthNeed(
        stock.name,
        stock.form,
        pieces,
        spec.allowances.kerf,
        stock.sold,
        stock.on_hand,
        trim=spec.allowances.end_trim,
        splice=splice_rule(spec),
    )


def length_needs(spec: Spec, shape: Shape) -> tuple[LengthNeed, ...]:
    """Everything cut in lengths: the hoops first, then cords, tapes, waistband and casings pooled by goods."""
    pooled: dict[str, tuple[Goods, list[CutPiece]]] = {}

    def add(goods: Goods, part: str, length: float) -> None:
        pooled.setdefault(goods.name, (goods, []))[1].append(CutPiece(part, length))

    rows = spec.build.cords
    if rows is not None and shape.corded is not None:
        for row in shape.corded.rows:
            add(rows.material, row.id, row.cut)
        for part, length in _sample_cords(rows, shape.corded.rows[0].cut):
            add(rows.material, part, length)
    carriers = spec.build.tapes
    if carriers is not None:
        for tape in shape.tapes:
            add(carriers.material, tape.id, tape.cut)
    for tie in shape.ties:
        if tie.cut > 0:
            add(spec.goods[tie.material], tie.id, tie.cut)
    cord = cord_length(spec, shape.panels)
    if spec.build.lacing is not None and cord > 0:
        add(spec.build.lacing.cord, "lacing cord", cord)
    if spec.build.waistband.material.kind != "cloth":
        add(spec.build.waistband.material, waist_part(shape), shape.waistband.cut)
    cloth = shape.petticoat
    if cloth is not None and cloth.casing and spec.goods[cloth.casing].kind != "cloth":
        for channel in cloth.channels:
            add(spec.goods[cloth.casing], f"casing {channel.hoop}", channel.strip)
    casing = spec.build.hooped.casing if spec.build.hooped is not None else None
    if casing is not None:
        for hoop in cased(shape):
            add(casing, casing_part(hoop), hoop.casing)
    return (
        *((hoop_need(spec, shape),) if spec.build.hooped is not None else ()),
        *(
            LengthNeed(name, goods.kind, tuple(pieces), 0.0, goods.sold, goods.on_hand, goods.shrinkage)
            for name, (goods, pieces) in pooled.items()
        ),
    )


def _sample_cords(cords: CordBuild, longest: float) -> tuple[tuple[str, float], ...]:
    """The cords of the sample, in one length where that is no longer than a row's."""
    each = cords.sample.length * (1 + cords.reserve)
    together = max(1, min(cords.sample.cords, int(longest / each)))
    counts = [min(together, cords.sample.cords - k) for k in range(0, cords.sample.cords, together)]
    return tuple((SAMPLE_CORDS if k == 0 else f"{SAMPLE_CORDS} {k + 1}", count * each)
                 for k, count in enumerate(counts))


def cloth_needs(spec: Spec, shape: Shape) -> tuple[ClothNeed, ...]:
    """Everything cut from cloth, pooled by cloth: the hem band, a cloth waistband, and the cloth of
    layers to be bought."""
    pooled: dict[str, tuple[Goods, list[ClothPart]]] = {}

    def add(goods: Goods, part: ClothPart) -> None:
        pooled.setdefault(goods.name, (goods, []))[1].append(part)

    if shape.band is not None and spec.build.band is not None:
        add(
            spec.build.band.material,
            Band(
                "band",
                shape.band.length - spec.allowances.band_join,
                shape.band.height,
                join=spec.allowances.band_join,
                ring=True,
                grain=shape.band.grain,
            ),
        )
    for piece in shape.panels:
        add(spec.goods[piece.material], panel_part(piece))
    for strip_of, strip in petticoat_strips(spec, shape):
        add(strip_of, strip)
    waistband = spec.build.waistband.material
    if waistband.kind == "cloth":
        add(
            waistband,
            Band(
                "waistband",
                shape.waistband.cut,
                2 * (shape.waistband.width + spec.allowances.seam),
                join=2 * spec.allowances.seam,
            ),
        )
    for layer in spec.load:
        if layer.buy and layer.cloth is not None and layer.area is not None and layer.cloth.width > 0:
            add(layer.cloth, _breadths(layer.name, layer.cloth, layer.area, shape.skirt.side))
    return tuple(ClothNeed(goods, tuple(parts)) for goods, parts in pooled.values())


def panel_part(piece: ShapedPanel) -> Panel | Gore:
    """A panel as it is laid on the cloth: a trapezoid that narrows upward head to tail, else its box."""
    if piece.grain == "up" and len(piece.outline) == 4:
        (x0, y0), (x1, y1), (x2, y2), (x3, y3) = piece.outline
        even = abs(y0 - y1) + abs(y2 - y3) + abs(x0 + x1 - x2 - x3) < _EVEN
        if even and abs(abs(x2 - x3) - abs(x1 - x0)) > _EVEN:
            return Gore(piece.part, abs(x2 - x3), abs(x1 - x0), piece.height, piece.count)
    grain: Grain = "across" if piece.grain == "across" else "along"
    return Panel(piece.part, piece.width, piece.height, grain, piece.count)


def waist_part(shape: Shape) -> str:
    """The label of what closes the waist."""
    cloth = shape.petticoat or shape.corded
    return "drawstring" if cloth is not None and cloth.drawstring else "waistband"


def petticoat_strips(spec: Spec, shape: Shape) -> tuple[tuple[Goods, Band], ...]:
    """Casings of cloth and flounces of a petticoat, with their cloths; strips go across it, selvage to
    selvage, and are seamed."""
    cloth, join = shape.petticoat, 2 * spec.allowances.seam
    if cloth is None:
        return ()
    found: list[tuple[Goods, Band]] = []
    if cloth.casing and spec.goods[cloth.casing].kind == "cloth":
        found += [(spec.goods[cloth.casing],
                   Band(f"casing {one.hoop}", one.strip, one.height, join=join, grain="across"))
                  for one in cloth.channels]
    found += [(spec.goods[one.material],
               Band(one.id, one.length, one.height, join=join, ring=True, grain="across"))
              for one in cloth.flounces]
    return tuple(found)


def cased(shape: Shape) -> tuple[Hoop, ...]:
    """The hoops that wear a casing of their own."""
    return tuple(hoop for hoop in shape.hoops if hoop.cased and hoop.casing > 0)


def closed(shape: Shape) -> tuple[Hoop, ...]:
    """The hoops that go all round and are joined; a hoop open in front has two ends and no join."""
    return tuple(hoop for hoop in shape.hoops if hoop.plan.arc >= 2 * math.pi - 1e-9)


def casing_part(hoop: Hoop) -> str:
    """The label of a hoop's casing in cut lists."""
    return f"casing {hoop.id}"


def _breadths(name: str, cloth: Goods, area: float, length: float) -> Panel:
    """A layer that is known by its area only: equal breadths of whole cloth, none longer than the skirt."""
    width = down(cloth.washed_width) * UNIT
    run = area / width
    count = max(1, math.ceil(run / length - 1e-9))
    return Panel(name, width, run / count, count=count)
