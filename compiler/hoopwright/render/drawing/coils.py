"""Cut lengths on their coils: a bar to scale for each coil, hank or offcut, its pieces in cutting order."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.letters import clip, text_width
from hoopwright.render.drawing.marks import PAGE, SMALL, TEXT, heading, scale_bar
from hoopwright.render.drawing.sheet import GREY, PAPER, Sheet
from hoopwright.render.drawing.spread import spread
from hoopwright.render.figure import Figure
from hoopwright.source.quantity import length_text, long_length_text
from hoopwright.source.record import record
from hoopwright.spec.model import Units
from hoopwright.supply.model import CutPack

LEFT = 14.0
ROOM = PAGE - 28.0
BAR = 26.0
LINE = 15.0
NARROWEST = 26.0
FOLDS = 6


@record(frozen=True, slots=True)
class Stretch:
    """A stretch of a pack from ``start`` to ``end``, m: a piece, or what is left when ``part`` is empty.

    ``named`` tells that this stretch, of those a piece is folded into, carries its label.
    """

    part: str
    length: float
    start: float
    end: float
    named: bool


def draw_coils(plan: Plan) -> Figure:
    """Every pack of every material cut in lengths; each material has one scale of its own."""
    return draw_packs(plan.supply.cutting.packs, plan.spec.units, plan.spec.title)


def draw_packs(packs: tuple[CutPack, ...], units: Units, of: str = "") -> Figure:
    """Packs as bars; ``of`` is the title of the design or the trip they belong to."""
    height = 66.0
    for material in dict.fromkeys(pack.material for pack in packs):
        mine = [pack for pack in packs if pack.material == material]
        height += sum(_height(pack, _scale(mine)) for pack in mine) + 46
    sheet = Sheet("coils", PAGE, height + 22)
    heading(sheet, "Where each length is cut", "bars to scale; cut from the left; a long bar goes on below")
    y = 66.0
    for material in dict.fromkeys(pack.material for pack in packs):
        mine = [pack for pack in packs if pack.material == material]
        for pack in mine:
            y = _draw(sheet, units, pack, y, _scale(mine))
        scale_bar(sheet, LEFT + 4, y, _scale(mine), units)
        y += 46
    _key(sheet, y + 4)
    alt = " ".join(_told(units, pack) for pack in packs)
    title = f"Where each length is cut: {of}" if of else "Where each length is cut"
    return Figure("coils", "Where each length is cut", alt, sheet.svg(title, alt))


def _scale(packs: list[CutPack]) -> float:
    """User units a metre for one material: its longest pack across the page, or folded into so many lines
    that the shortest piece can still be named."""
    across = ROOM / max(pack.washed for pack in packs)
    shortest = min(piece.length for pack in packs for piece in pack.pieces)
    return min(max(across, NARROWEST / shortest), FOLDS * across)


def _lines(pack: CutPack, scale: float) -> list[list[Stretch]]:
    """The pack folded into lines as wide as the page, in m from the line's own start."""
    room = ROOM / scale + 1e-9
    lines: list[list[Stretch]] = [[]]
    x = 0.0
    rest = pack.washed - sum(piece.length for piece in pack.pieces)
    for part, length in [*((piece.label, piece.length) for piece in pack.pieces), ("", rest)]:
        todo, runs = length, list[float]()
        at = x
        while todo > 1e-9:
            run = min(todo, room - at)
            runs.append(run)
            todo, at = todo - run, 0.0
        for index, run in enumerate(runs):
            if x + run > room or x > room - 2e-9:
                lines.append([])
                x = 0.0
            lines[-1].append(Stretch(part, length, x, x + run, index == runs.index(max(runs))))
            x += run
    return [line for line in lines if line]


def _rows(line: list[Stretch]) -> int:
    """Lines of labels under a line of the bar."""
    width = sum(text_width(run.part, SMALL, bold=True) + 86 for run in line if run.part and run.named)
    return -(-int(width) // int(ROOM))


def _height(pack: CutPack, scale: float) -> float:
    """Height of the pack's heading, bars and labels."""
    return 20 + sum(BAR + 12 + LINE * _rows(line) for line in _lines(pack, scale)) + 12


def _draw(sheet: Sheet, units: Units, pack: CutPack, y: float, scale: float) -> float:
    """One pack: what it is, its bar, its pieces and what is left of it; gives back the y below it."""
    words = f"{long_length_text(pack.pack, units)}, {pack.origin}{_washed(units, pack)}"
    name = clip(pack.material, ROOM - text_width(words, TEXT) - 12, TEXT, bold=True)
    sheet.text(LEFT, y + 10, name, size=TEXT, bold=True)
    sheet.text(LEFT + text_width(name, TEXT, bold=True) + 8, y + 10, words, size=TEXT)
    top = y + 20
    for line in _lines(pack, scale):
        for run in line:
            _run(sheet, units, pack, run, top, scale)
        _lengths(sheet, units, line, top + BAR, scale)
        top += BAR + 12 + LINE * _rows(line)
    return top + 12


def _run(sheet: Sheet, units: Units, pack: CutPack, run: Stretch, top: float, scale: float) -> None:
    """One stretch of the bar, with its name in it where the whole of it has room; it stands below in any case."""
    x, wide = LEFT + run.start * scale, (run.end - run.start) * scale
    if not run.part:
        sheet.rect(x, top, wide, BAR, fill=sheet.pattern("hatch"), kind="left")
        rest = f"{long_length_text(pack.left, units)} left"
        if run.named and text_width(rest, SMALL) + 6 < wide:
            sheet.text(x + wide / 2, top + 17.5, rest, size=SMALL, anchor="middle", halo=True)
        return
    bought = pack.origin == "bought"
    sheet.rect(x, top, wide, BAR, fill=PAPER if bought else sheet.pattern("dots"), kind="piece")
    short = run.part.removeprefix("casing ")
    if run.named and text_width(short, SMALL, bold=True) <= wide - 4:
        sheet.text(x + wide / 2, top + 17.5, short, size=SMALL, anchor="middle", bold=True, halo=not bought)


def _lengths(sheet: Sheet, units: Units, line: list[Stretch], y: float, scale: float) -> None:
    """Each piece's name and length under its place, in as many rows as keep them apart."""
    told = [run for run in line if run.part and run.named]
    rows = _rows(line)
    for row in range(rows):
        mine = told[row::rows]
        names = [clip(run.part, ROOM - 96, SMALL, bold=True) for run in mine]
        values = [length_text(run.length, units) for run in mine]
        widths = [text_width(name, SMALL, bold=True) + text_width(value, SMALL) + 19
                  for name, value in zip(names, values, strict=True)]
        wanted = [LEFT + (run.start + run.end) / 2 * scale for run in mine]
        base = y + 16 + LINE * row
        for name, value, centre, width in zip(names, values, spread(wanted, widths, LEFT - 6, PAGE - 8),
                                              widths, strict=True):
            start = centre - width / 2 + 6
            sheet.text(start, base, name, size=SMALL, bold=True)
            sheet.text(start + text_width(name, SMALL, bold=True) + 5, base, value, size=SMALL)


def _key(sheet: Sheet, y: float) -> None:
    """What the patterns mean, in words."""
    x = LEFT
    for kind, words in (("", "bought"), ("dots", "on hand"), ("hatch", "left over")):
        sheet.rect(x, y - 11, 22, 13, fill=sheet.pattern(kind) if kind else PAPER)
        sheet.text(x + 28, y, words, size=SMALL, fill=GREY)
        x += 44 + text_width(words, SMALL)


def _washed(units: Units, pack: CutPack) -> str:
    """What the bar shows of a pack that shrinks in its first wash."""
    return f", {long_length_text(pack.washed, units)} once washed" if pack.shrinks else ""


def _told(units: Units, pack: CutPack) -> str:
    """A pack in words."""
    pieces = ", ".join(f"{piece.label} {length_text(piece.length, units)}" for piece in pack.pieces)
    return (f"{pack.material}, {long_length_text(pack.pack, units)}, {pack.origin}{_washed(units, pack)}: {pieces}; "
            f"{long_length_text(pack.left, units)} left.")
