"""Checks of geometry: stride, hem width, floor, ankle, shelf, the body inside, stepping in."""

from __future__ import annotations

from collections.abc import Sequence

from hoopwright.shape.judge import judged
from hoopwright.shape.model import Contact, Hoop, Tape
from hoopwright.shape.shelf import shelf_check
from hoopwright.spec.check import Check
from hoopwright.spec.model import Spec

STRIDE = 2.2
STEP = 0.41
HEM_OVER_STATURE = 2.0
ANKLE = 0.039
FLOOR = 0.0254


def clearance_checks(
    spec: Spec, hoops: Sequence[Hoop], tapes: Sequence[Tape], contacts: Sequence[Contact]
) -> tuple[Check, ...]:
    """All geometric checks of a shape, in the order a maker meets them."""
    closed = any(hoop.closed for hoop in hoops)
    round_hem = (_stride(spec), _hem_girth(spec)) if hoops[-1].closed else ()
    return (
        *round_hem, _floor(spec), _ankle(spec), *((shelf_check(tapes, hoops),) if tapes else ()),
        _body(hoops, contacts), *((_step_in(spec, hoops),) if closed else ()),
    )


def hem_checks(spec: Spec) -> tuple[Check, ...]:
    """Whether a skirt of the hem's girth lets its wearer walk, and is of a usual width."""
    return (_stride(spec), _hem_girth(spec))


def edge_checks(spec: Spec) -> tuple[Check, ...]:
    """Whether one can walk in a petticoat without hoops, and how its edge hangs."""
    off = judged(
        "floor", "hem", spec.shape.hem_off_floor, FLOOR, "length", "at least", soft=True,
        says="the petticoat's edge clears the floor",
        source="our judgement: cloth drops about an inch in wear",
        remedy="make it shorter (shape.length, or raise shape.hem.off_floor): the edge will drag and wear through",
    )
    return (*hem_checks(spec), off)


def door_check(spec: Spec, across: float, remedy: str) -> Check:
    """Whether what does not fold passes the door as it is; soft where no door was stated."""
    return judged(
        "door-width", "cage", across, spec.limits.doorway, "length", "at most",
        soft=spec.limits.door is None,
        says="it passes the door as it is",
        source="geometry" if spec.limits.door is not None
        else "geometry; 32 in clear: 2010 ADA Standards for Accessible Design, 404.2.3", remedy=remedy)


def _stride(spec: Spec) -> Check:
    wearer = spec.wearer
    step = wearer.step
    if step is None and wearer.stature is not None:
        step = STEP * wearer.stature
    return judged(
        "stride", "hem", spec.shape.hem_girth, None if step is None else STRIDE * step, "length", "at least",
        says="the hem is wide enough to walk in",
        source="our rule: hem girth 2.2 times the step, step 0.41 of stature",
        remedy="make the hem wider (shape.hem.girth), or state a shorter step (wearer.step)",
        unknown="state the wearer's stature or step",
    )


def _hem_girth(spec: Spec) -> Check:
    stature = spec.wearer.stature
    value = None if stature is None else spec.shape.hem_girth / stature
    return judged(
        "hem-girth", "hem", value, HEM_OVER_STATURE, "ratio", "at most", soft=True,
        says="the hem is of a usual width for this stature",
        source="our judgement from hem girths of surviving cages (95 to 114 in: Philadelphia Museum of Art "
        "1950-59-7 and 1967-105-3, Historic Deerfield HD 2011.26)",
        remedy="wider than surviving cages are for this stature: check doors, chairs and neighbours",
        unknown="state the wearer's stature",
    )


def _floor(spec: Spec) -> Check:
    return judged(
        "floor", "hem", spec.shape.hem_off_floor, FLOOR, "length", "at least", soft=True,
        says="the hem hoop clears the floor",
        source="our judgement: tape stretches about 2 %, an inch over a cage's length",
        remedy="raise the hem (shape.hem.off_floor): tapes stretch, and the hem hoop will drag",
    )


def _ankle(spec: Spec) -> Check:
    stature = spec.wearer.stature
    limit = None if stature is None else ANKLE * stature
    return judged(
        "ankle", "hem", spec.shape.hem_off_floor, limit, "length", "at least", soft=True,
        says="the hem hoop hangs above the ankle",
        source="ankle height 0.039 of stature: women of ANSUR II, NATICK/TR-15/007",
        remedy="the hem hoop hangs at the foot, where a shoe catches in it: raise shape.hem.off_floor",
        unknown="state the wearer's stature",
    )


def _body(hoops: Sequence[Hoop], contacts: Sequence[Contact]) -> Check:
    names = {hoop.id for hoop in hoops if hoop.closed}
    ends = {hoop.id for hoop in hoops if not hoop.closed}
    deepest = max(contacts, key=lambda contact: (contact.part in names, contact.by), default=None)
    on_hoop = deepest is not None and deepest.part in names
    return judged(
        "body-contact", deepest.part if deepest else "", deepest.by if deepest else 0.0, 0.0, "length", "at most",
        soft=not on_hoop,
        says="the cage stands clear of the body",
        source="geometry: the body's hip rows as ovals under the waist's centre",
        remedy="the body stands out beyond this hoop: make it larger, or move it" if on_hoop
        else "the open hoop lies on the body near its ends: no fault, but pad the ends and tip them well"
        if deepest is not None and deepest.part in ends
        else "no fault: the tape goes over the body there, and its marks are measured so; when it is marked, lay it on"
        " the wearer or a padded form to see",
    )


def _step_in(spec: Spec, hoops: Sequence[Hoop]) -> Check:
    least = min((hoop for hoop in hoops if hoop.closed), key=lambda hoop: hoop.girth)
    return judged(
        "step-in", least.id, least.girth, spec.wearer.hip, "length", "at least",
        says="the closed hoops pass over the hips",
        source="geometry: a closed hoop passes over the hips when its girth is no less than theirs",
        remedy="make this hoop as wide as the hips; on tapes it may be open in front instead: `opening` under `shape`",
    )
