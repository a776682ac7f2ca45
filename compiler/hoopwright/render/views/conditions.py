"""What must be true at a stop, in a maker's words."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from hoopwright.render.quantities import Printer
from hoopwright.render.words import sentence
from hoopwright.source.record import record
from hoopwright.work.model import Condition

PHRASES: dict[str, str] = {
    "waist-closed": "the waistband closes, measured round as closed",
    "waist-tied": "the waist, measured round as the tape or drawstring is tied",
    "hem-height-front": "lower edge of the hem hoop above the floor, in front",
    "hem-height-side": "the same at the left and at the right",
    "hem-height-back": "the same behind",
    "hoop-level": "middle of hoop {part} above the floor: in front, left, behind, right",
    "half-level": "middle of hoop {part} above the floor: at both ends and behind",
    "skirt-off-floor": "hem of the skirt above the floor, all round",
    "waistband-at-waist": "the waistband sits on the waistline; it neither rides up nor tips",
    "no-contact": "no hoop rests on the body, standing and in a long step",
    "hangs-upright": "the cage hangs upright and does not swing against the legs",
    "oval-width": "width of hoop {part}, side to side, its ties pinned",
    "oval-depth": "depth of the same hoop, front to back",
    "chord-set": "straight from end to end of the half hoop {part}",
    "stands-out": "from that line to the middle of the same half hoop",
    "sitting": "sits down with the skirt on, and rises; the steels fold up, nothing digs in, they come back",
    "rim-front": "rim of the bare wheel above the floor, in front",
    "rim-sides": "the same at the left and at the right",
    "rim-back": "the same behind",
    "rim-front-again": "rim above the floor in front, after door and stool",
    "rim-back-again": "the same behind",
    "rim-loaded": "under the skirt's weight, hung all round, the rim goes down as the fitting sheet says",
    "wheel-on-roll": "the wheel lies on the roll all round and does not turn about the waist",
    "side-out": "from the hip to the outside of {part}, the lowest hoop",
    "side-drop": "the same hoop straight below the waistline",
    "half-door": "from the body's middle to the outside, standing in the doorway: no more than half of it",
    "side-sits": "sits down on a chair: this side folds up or lies on the seat, and comes back",
    "pocket": "a hand goes in through the slit and comes out again",
    "across-both": "over both sides without the skirt, measured with a stick held against each",
    "across-worn": "the same with the skirt on",
    "steps-in": "steps into the open hoops and hooks every strap alone",
    "clamps-hold": "no clip has slipped from its mark, no end of a hoop from its line",
    "edge-front": "the petticoat's edge above the floor, in front",
    "edge-side": "the same at the left and at the right",
    "edge-back": "the same behind",
    "edge-again": "the petticoat's edge above the floor, after door and chair",
    "hem-across": "across the hem with the skirt on, side to side and front to back",
    "band-stands": "the corded band stands out round; it neither rolls over nor falls into folds",
    "line-even": "the skirt falls in a smooth line; no group of cords shows through",
    "chair-corded": "sits down and gets up unaided; the band folds up and comes out again",
    "line-smooth": "the skirt falls in a smooth line; no hoop shows through",
    "door": "walks through a doorway this wide and nothing catches",
    "round-again": "width of the hem hoop after door and chair, side to side and front to back",
    "width-again": "width of the hem hoop after door and chair, side to side",
    "depth-again": "depth of the same hoop, front to back",
    "chord-again": "straight from end to end of half hoop {part}, after door and chair",
    "out-again": "from that line to the middle of the same half hoop",
    "hem-height-again": "lower edge of the hem hoop above the floor, after door and chair",
    "chair": "sits down and gets up unaided; the hoops fold up and come back",
    "stool": "sits down on a stool and gets up unaided; no spoke bends, no binding slips",
    "stairs": "goes up and down a step, hem lifted by hand",
    "off-alone": "takes it off alone, with one pull, three times over",
}
"""One phrase to every condition key; ``{part}`` is the part it is about."""

ALONE = {"hem-height-side": "lower edge of the lowest hoop above the floor, at the left and at the right"}
"""What is said instead of "the same ..." when nothing was said in front, where half hoops do not go."""


@record(frozen=True, slots=True)
class ConditionView:
    """``must`` be true; ``wanted`` is the value with its tolerance, or blank when one only looks."""

    must: str
    wanted: str
    mend: str


def condition_views(conditions: Iterable[Condition], printer: Printer) -> tuple[ConditionView, ...]:
    """The conditions of a stop; a mend that repeats the one before it says ``as above``."""
    found: list[ConditionView] = []
    told, mend = "", ""
    for condition in conditions:
        view = condition_view(condition, printer)
        if condition.key in ALONE and told != "hem-height-front":
            view = replace(view, must=ALONE[condition.key])
        found.append(replace(view, mend="as above") if view.mend == mend else view)
        told, mend = condition.key, view.mend
    return tuple(found)


def condition_view(condition: Condition, printer: Printer) -> ConditionView:
    """One condition, printed."""
    wanted = ""
    if condition.value is not None:
        wanted = printer.length(condition.value)
        if condition.tolerance:
            wanted += f", within {printer.length(condition.tolerance)}"
    return ConditionView(
        must=PHRASES[condition.key].format(part=condition.part),
        wanted=wanted,
        mend=sentence(condition.mend),
    )
