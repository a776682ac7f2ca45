"""The stops of a cage or a hooped petticoat: what must be true, measured where it can be, and what to change when it is
not."""

from __future__ import annotations

from hoopwright.shape.model import Hoop
from hoopwright.supply.needs import waist_part
from hoopwright.work.bench import Bench
from hoopwright.work.model import Condition, Task
from hoopwright.work.stops import AT_WAIST, look, off_alone, skirt_clear, stop_task, waist_closed

_SAME_ALL_ROUND = (
    "off by the same all round: take it up or let it down at the waistband; off at one tape: move "
    "that tape's marks"
)
_PINNED = "off by the same all round: pin the waist so much higher or lower on the cloth; off at one place: only there"
_ON_CLOTH = (
    "off by the same all round: sew the waistband on so much higher or lower on the cloth; off at one "
    "place: only there"
)
_TURNED = "off by the same all round: turn the upper edge down so much more or less; off at one place: only there"
_HEM_POINTS = ("front", "side", "back")

SAME = 0.001
"""Width and depth of a hoop that differ by less are one, m: nobody measures finer."""


def body_stop(bench: Bench, needs: tuple[str, ...]) -> Task:
    """First stop: hoops clipped, ends clamped, on the body with the skirt on."""
    hem = bench.shape.hoops[-1]
    return stop_task(
        bench,
        "try-on-1",
        "try-on-body",
        "try it on: clipped, skirt on",
        needs,
        (
            waist_closed(bench),
            *_hem(bench, _PINNED),
            *_level(bench),
            *_drawn(bench),
            skirt_clear(bench),
            *_behind(bench),
            look(
                "waistband-at-waist",
                "waistband",
                AT_WAIST if bench.shape.petticoat is None else "tie it again where the waist is narrowest",
            ),
            look("no-contact", "cage", "lower the hoop that touches, or give it more girth"),
            look(
                "hangs-upright",
                "cage",
                _swings(bench),
            ),
            look("clamps-hold", hem.id, "clip and clamp again before anything is judged"),
            _smooth(bench, "one hoop shows: move only its marks, or change its girth at the lap"),
        ),
        ("fire", "escape"),
        clamped=True,
    )


def hem_stop(bench: Bench, needs: tuple[str, ...]) -> Task:
    """Second stop: joined and sewn but for the hem, petticoats and show shoes on."""
    return stop_task(
        bench,
        "try-on-2",
        "try-on-hem",
        "try it on: level the hem",
        needs,
        (
            waist_closed(bench),
            *_hem(bench, _TURNED if waist_part(bench.shape) == "drawstring" else _ON_CLOTH),
            skirt_clear(bench),
            look(
                "hangs-upright",
                "cage",
                _swings(bench),
            ),
            _smooth(bench, "one hoop shows: move only its marks"),
        ),
        ("fire",),
    )


def use_stop(bench: Bench, needs: tuple[str, ...]) -> Task:
    """Third stop: finished, and used - door, chair, stairs, off alone."""
    limits, hem = bench.spec.limits, bench.shape.hoops[-1]
    return stop_task(
        bench,
        "try-on-3",
        "try-on-use",
        "try it in use: door, chair, stairs, off alone",
        needs,
        (
            Condition(
                "door",
                "cage",
                limits.doorway,
                0.0,
                "press the hem hoop narrow at the sides, or go through sideways; if "
                "neither does, the hem is too wide or too stiff for this door",
            ),
            *_again(hem, limits.out_of_round),
            Condition(
                "hem-height-again",
                hem.id,
                bench.spec.shape.hem_off_floor,
                bench.spec.allowances.hem_tolerance,
                "a fixing has slipped: find it, set it back to its mark and sew it again"
                if bench.shape.petticoat is None else "a seam has given way: find it and sew it again",
            ),
            look("chair", "cage", "lift the back hoops on to the seat's edge before sitting; practise"),
            look("stairs", "cage", "lift the hem by hand; a cage that cannot be lifted is too low"),
            off_alone(),
        ),
        ("doors", "stairs", "vehicles", "fire", "escape"),
    )


def _again(hem: Hoop, share: float) -> tuple[Condition, ...]:
    """The hem hoop measured once more: across, or width and depth where they differ, or chord and reach."""
    width, depth = hem.plan.width, hem.plan.depth
    mend = "the hoop has taken a set: bend it back by hand, or take thinner or springier stock"
    if hem.closed and abs(width - depth) < SAME:
        return (Condition("round-again", hem.id, width, width * share, mend),)
    across, out = ("width-again", "depth-again") if hem.closed else ("chord-again", "out-again")
    return (Condition(across, hem.id, width, width * share, mend),
            Condition(out, hem.id, depth, depth * share, mend))


def _drawn(bench: Bench) -> tuple[Condition, ...]:
    """Width and depth of a hoop drawn by ties, and the chord and reach of the lowest half hoop."""
    tolerance = 2 * bench.spec.allowances.hoop_tolerance
    crossed = [tie.hoop for tie in bench.shape.ties if tie.kind == "cross"]
    found: list[Condition] = []
    if crossed:
        hoop = bench.shape.hoop(crossed[-1])
        mend = "let the ties out, or take them in, by as much as the hoop is off; the others in proportion"
        found += [Condition("oval-width", hoop.id, hoop.plan.width, tolerance, mend),
                  Condition("oval-depth", hoop.id, hoop.plan.depth, tolerance, mend)]
    held = [tie for tie in bench.shape.ties if tie.kind in ("chord", "lacing")]
    if held:
        tie, hoop = held[-1], bench.shape.hoop(held[-1].hoop)
        mend = "draw lacing or ties closer and it stands out further; let them out and it lies flatter"
        found += [Condition("chord-set", hoop.id, tie.span, tolerance, mend),
                  Condition("stands-out", hoop.id, hoop.plan.depth, tolerance, mend)]
    return tuple(found)


def _behind(bench: Bench) -> tuple[Condition, ...]:
    """What half hoops and open hoops have to do at once."""
    found: list[Condition] = []
    if any(hoop.plan.kind == "bow" for hoop in bench.shape.hoops):
        found.append(look("sitting", "cage", "a steel that digs in lies too low or too close: move it up, or"
                           " let its chord out"))
    if any(tie.kind == "strap" for tie in bench.shape.ties):
        found.append(look("steps-in", "cage", "open one hoop more, or move the straps' hooks to where the"
                           " hand finds them"))
    return tuple(found)


def _hem(bench: Bench, on_cloth: str) -> tuple[Condition, ...]:
    """The hem hoop's height; what is off is mended at the tapes, or ``on_cloth``."""
    hem, spec = bench.shape.hoops[-1], bench.spec
    return tuple(
        Condition(
            f"hem-height-{point}",
            hem.id,
            spec.shape.hem_off_floor,
            spec.allowances.hem_tolerance,
            _SAME_ALL_ROUND if bench.shape.petticoat is None else on_cloth,
        )
        for point in (_HEM_POINTS if hem.closed else _HEM_POINTS[1:])
    )


def _level(bench: Bench) -> tuple[Condition, ...]:
    """One hoop half-way down, measured at front, sides and back before the skirt goes on."""
    hoops = [hoop for hoop in bench.shape.hoops[:-1] if hoop.fixings]
    if not hoops:
        return ()
    middle = hoops[len(hoops) // 2]
    return (
        Condition(
            "hoop-level" if middle.closed or middle.plan.kind != "bow" else "half-level",
            middle.id,
            middle.height,
            bench.spec.allowances.hem_tolerance,
            "only this hoop is off: move only its marks",
        ),
    )


def _swings(bench: Bench) -> str:
    """What keeps it off the legs: only tapes can be sewn to the hips."""
    return f"a cage that swings on to the legs wants a pad{' or hip ties' if bench.shape.tapes else ''} at the back"


def _smooth(bench: Bench, mend: str) -> Condition:
    over = "one hoop shows: change its girth at the lap, or wear a petticoat over it"
    return look("line-smooth", "skirt", mend if bench.shape.petticoat is None else over)
