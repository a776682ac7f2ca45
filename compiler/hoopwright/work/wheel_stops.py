"""The stops of a wheel: the bare wheel for its tilt, the skirt's hem, its use."""

from __future__ import annotations

from hoopwright.shape.model import Wheel
from hoopwright.work.bench import Bench
from hoopwright.work.model import Condition, Task
from hoopwright.work.stops import AT_WAIST, look, off_alone, skirt_clear, stop_task, waist_closed

_TILT = (
    "too low behind or too high in front: a thicker roll behind, or hold the front down with a tape to the"
    " corset; too high behind: a thinner one"
)
_TOLERANCE = 2.0
"""Times the hem's tolerance by which the rim may lie off: a roll gives (our judgement)."""


def tilt_stop(bench: Bench, wheel: Wheel, needs: tuple[str, ...]) -> Task:
    """First stop: the bare wheel on the body."""
    rim, off = bench.shape.hoops[-1].id, _TOLERANCE * bench.spec.allowances.hem_tolerance
    heights = [
        Condition(key, rim, wheel.rim[k].height, off, _TILT)
        for key, k in (("rim-front", 0), ("rim-sides", 2), ("rim-back", 4))
    ]
    return stop_task(
        bench,
        "try-on-1",
        "try-on-body",
        "try on the bare wheel: its tilt",
        needs,
        (
            waist_closed(bench),
            *heights,
            look(
                "rim-loaded",
                rim,
                "more spokes, a stiffer strip for them stood on edge, or a tape from the rim over"
                " the shoulder",
            ),
            look(
                "wheel-on-roll",
                "roll",
                "sew the roll to the waistband where it slips, stuff it where it is thin",
            ),
            look(
                "waistband-at-waist",
                "waistband",
                AT_WAIST,
            ),
        ),
        ("fire", "escape"),
    )


def skirt_stop(bench: Bench, after: str) -> Task:
    """Second stop: covered, with the skirt on."""
    return stop_task(
        bench,
        "try-on-2",
        "try-on-hem",
        "try it on: level the skirt's hem",
        (after,),
        (
            waist_closed(bench),
            skirt_clear(bench),
            look(
                "line-smooth",
                "skirt",
                "a ring or the edge of the rim shows: a frill of the skirt's own cloth over"
                " the cover hides it",
            ),
        ),
        ("fire",),
    )


def use_stop(bench: Bench, wheel: Wheel, after: str) -> Task:
    """Third stop: in use."""
    rim, off = bench.shape.hoops[-1].id, _TOLERANCE * bench.spec.allowances.hem_tolerance
    slipped = "a binding has slipped or a spoke has bent: find it, straighten it and bind it again"
    again = [
        Condition(key, rim, wheel.rim[k].height, off, slipped)
        for key, k in (("rim-front-again", 0), ("rim-back-again", 4))
    ]
    return stop_task(
        bench,
        "try-on-3",
        "try-on-use",
        "try it in use: door, chair, stairs, off alone",
        (after,),
        (
            Condition(
                "door",
                "cage",
                bench.spec.limits.doorway,
                0.0,
                "tip the wheel up on one side with both hands; if it does not pass so,"
                " choose another way or another width",
            ),
            *again,
            look("stool", "cage", "take one without arms and sit on its edge, the wheel lifted behind; practise"),
            look("stairs", "cage", "somebody goes before on stairs: the wearer does not see her feet"),
            off_alone(),
        ),
        ("doors", "stairs", "vehicles", "fire", "escape"),
    )
