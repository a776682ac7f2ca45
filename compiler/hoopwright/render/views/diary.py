"""What has been done, cut and found at fittings, and what it asks for: blank when nothing was noted."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.quantities import Printer
from hoopwright.shape.fit.read import least_move
from hoopwright.shape.model import Refit, Skirt
from hoopwright.source.record import record
from hoopwright.supply.model import Salvage
from hoopwright.work.model import Again


@record(frozen=True, slots=True)
class Round:
    """One fitting in words.

    ``found``: (tape, off); ``drawn_up``: (tape, how much); ``moved``: rows of a hoop and its new places by
    the tapes of ``moved_tapes``; ``said`` are sentences on the rest.
    """

    on: str
    right: bool
    found: tuple[tuple[str, str], ...]
    all_round: str
    drawn_up: tuple[tuple[str, str], ...]
    direction: str
    moved_tapes: tuple[str, ...]
    moved: tuple[tuple[str, ...], ...]
    said: tuple[str, ...]
    notes: str


@record(frozen=True, slots=True)
class Diary:
    """Progress and fittings. ``pieces``: (part, cut, what becomes of it); ``anew``: (part, length);
    ``again``: (words, id of the task, minutes)."""

    done: int
    tasks: int
    left: str
    pieces: tuple[tuple[str, str, str], ...]
    anew: tuple[tuple[str, str], ...]
    cost: str
    buys: bool
    rounds: tuple[Round, ...]
    again: tuple[tuple[str, str, str], ...]

    def __bool__(self) -> bool:
        """Whether there is anything to say."""
        return bool(self.done or self.pieces or self.rounds)


def diary_view(plan: Plan) -> Diary:
    """The diary of a plan."""
    p, work, mending = Printer.of(plan.spec), plan.work, plan.supply.mending
    rounds = tuple(_round(refit, said.notes, plan, p)
                   for refit, said in zip(plan.shape.refits, plan.spec.fittings, strict=True))
    return Diary(
        done=sum(task.done for task in work.tasks),
        tasks=len(work.tasks),
        left=p.minutes(work.minutes_left),
        pieces=tuple(_piece(piece, p) for piece in mending.pieces if piece.fate != "kept") if mending else (),
        anew=tuple((piece.part, p.length(piece.length)) for piece in mending.anew) if mending else (),
        cost=p.money(mending.cost) if mending else "",
        buys=bool(mending and mending.lines),
        rounds=rounds,
        again=tuple((_again(item), item.task, p.minutes(item.minutes)) for item in work.again),
    )


def _piece(piece: Salvage, p: Printer) -> tuple[str, str, str]:
    cut, need = p.length(piece.length), p.length(piece.need)
    if piece.fate == "recut":
        return piece.part, cut, f"{need} is wanted: cut {p.length(piece.length - piece.need)} off"
    if piece.fate == "becomes":
        return piece.part, cut, f"recut it to {need}: it becomes {piece.serves}"
    return piece.part, cut, "serves nowhere now: keep it as stock"


def _round(refit: Refit, notes: str, plan: Plan, p: Printer) -> Round:
    """One fitting; marks that move by less than is worth moving stay where they are."""
    least = least_move(plan.spec)
    at = {(mark.hoop, mark.tape): f"{p.length(mark.was)} → {p.length(mark.goes)}" for mark in refit.moved
          if abs(mark.goes - mark.was) > least and p.length(mark.was) != p.length(mark.goes)}
    tapes = tuple(tape.id for tape in plan.shape.tapes if any(name == tape.id for _, name in at))
    hoops = tuple(hoop.id for hoop in plan.shape.hoops if any(name == hoop.id for name, _ in at))
    return Round(
        on=refit.on,
        right=refit.right,
        found=tuple((tape, _off(low, p)) for tape, low in refit.low.items()),
        all_round=_off(refit.all_round, p) if refit.all_round else "",
        drawn_up=tuple((tape, p.length(abs(up))) for tape, up in refit.drawn_up.items()),
        direction="up" if refit.all_round > 0 else "down",
        moved_tapes=tapes,
        moved=tuple((hoop, *(at.get((hoop, tape), "stays") for tape in tapes)) for hoop in hoops),
        said=tuple(_said(refit, p)),
        notes=notes,
    )


def _off(low: float, p: Printer) -> str:
    if not p.printed(low):
        return "right"
    return f"{p.length(abs(low))} too {'low' if low > 0 else 'high'}"


def _said(refit: Refit, p: Printer) -> list[str]:
    said = [f"Hoop {hoop} hung {_off(low, p)}: its marks alone move." for hoop, low in refit.hoops.items()]
    said += [f"Hoop {hoop} was made {p.length(made)} round, drawn {p.length(drawn)}: its marks alone move, so"
             " that it keeps its height." for hoop, (drawn, made) in refit.girths.items()]
    if refit.waist is not None:
        drawn, closed = refit.waist
        said.append(f"The waistband closes at {p.length(closed)}, drawn {p.length(drawn)}: move the"
                    " fastening.")
    if refit.all_round:
        said.append(f"The waistline then lies {p.length(abs(refit.all_round))} "
                    f"{'lower' if refit.all_round > 0 else 'higher'} than it was measured; measure it again.")
    before, after = (_lengths(skirt, p) for skirt in refit.skirt)
    if before != after:
        said.append(f"The skirt over it: {after} (before: {before}).")
    elif not refit.right:
        said.append("The skirt over it stays as it is.")
    return said


def _lengths(skirt: Skirt, p: Printer) -> str:
    return (f"front {p.length(skirt.front)}, side {p.length(skirt.side)}, back {p.length(skirt.back)}, hem"
            f" {p.length(skirt.hem_girth)} round")


def _again(item: Again) -> str:
    first, *rest = item.parts
    at = ", ".join(rest)
    return {
        "draw-up": f"re-sew at the waistband, drawn up or let down as above: {', '.join(item.parts)}",
        "move-marks": f"draw the moved marks anew on {', '.join(item.parts)}",
        "clip": f"clip {first} at its new mark on {at}",
        "sew": f"unpick {first} at {at} and sew it at its new mark",
        "mark-hoop": f"mark the tapes anew on {first}",
        "fastening": "move the fastening",
        "try-on": "try it on again",
    }[item.key]
