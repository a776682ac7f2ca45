"""Checks of geometry: stride, hem width, floor, ankle, shelf, the body inside, stepping in."""

from __future__ import annotations

from collections.abc import Sequence
from math import pi

from hoopwright.shape.model import Contact, Hoop, Tape
from hoopwright.spec.check import Check, Result
from hoopwright.spec.model import Spec

STRIDE = 2.2
STEP = 0.41
HEM_OVER_STATURE = 2.0
ANKLE = 0.039
FLOOR = 0.0254
SHELF = pi / 4
_BODY_SOURCE = "ankle height over stature, median of ANSUR II women, NATICK/TR-15/007"


def clearance_checks(
    spec: Spec, hoops: Sequence[Hoop], tapes: Sequence[Tape], contacts: Sequence[Contact]
) -> tuple[Check, ...]:
    """All geometric checks of a shape, in the order a maker meets them."""
    return (
        _stride(spec),
        _hem_girth(spec),
        _floor(spec),
        _ankle(spec),
        _shelf(tapes),
        _body(hoops, contacts),
        _step_in(spec, hoops),
    )


def _stride(spec: Spec) -> Check:
    wearer = spec.wearer
    step = wearer.step
    if step is None and wearer.stature is not None:
        step = STEP * wearer.stature
    limit = None if step is None else STRIDE * step
    result: Result = (
        "not assessed" if limit is None else "holds" if spec.shape.hem_girth >= limit else "fails"
    )
    remedy = {
        "fails": "make the hem wider, or state a shorter step (wearer.step)",
        "not assessed": "state the wearer's stature or step",
    }.get(result, "")
    return Check(
        "stride",
        "hem",
        spec.shape.hem_girth,
        limit,
        "length",
        "at least",
        result,
        remedy,
        "our rule: hem girth 2.2 times the step, step 0.41 of stature",
        "the hem is wide enough to walk in",
    )


def _hem_girth(spec: Spec) -> Check:
    stature = spec.wearer.stature
    value = None if stature is None else spec.shape.hem_girth / stature
    result: Result = "not assessed" if value is None else "holds" if value <= HEM_OVER_STATURE else "marginal"
    remedy = {
        "marginal": "wider than surviving cages are for this stature: check doors, chairs and neighbours",
        "not assessed": "state the wearer's stature",
    }.get(result, "")
    return Check(
        "hem-girth",
        "hem",
        value,
        HEM_OVER_STATURE,
        "ratio",
        "at most",
        result,
        remedy,
        "our judgement from hem girths of surviving cages (95 to 114 in)",
        "the hem is of a usual width for this stature",
    )


def _floor(spec: Spec) -> Check:
    value = spec.shape.hem_off_floor
    result: Result = "holds" if value >= FLOOR else "marginal"
    remedy = (
        ""
        if result == "holds"
        else "raise the hem (shape.hem.off_floor): tapes stretch, and the hem hoop will drag"
    )
    return Check(
        "floor",
        "hem",
        value,
        FLOOR,
        "length",
        "at least",
        result,
        remedy,
        "our judgement: tape stretches about 2 %, an inch over a cage's length",
        "the hem hoop clears the floor",
    )


def _ankle(spec: Spec) -> Check:
    stature = spec.wearer.stature
    limit = None if stature is None else ANKLE * stature
    value = spec.shape.hem_off_floor
    result: Result = "not assessed" if limit is None else "holds" if value >= limit else "marginal"
    remedy = {
        "marginal": "the hem hoop hangs at the foot, where a shoe catches in it: raise shape.hem.off_floor above the ankle",
        "not assessed": "state the wearer's stature",
    }.get(result, "")
    return Check(
        "ankle",
        "hem",
        value,
        limit,
        "length",
        "at least",
        result,
        remedy,
        _BODY_SOURCE,
        "the hem hoop hangs above the ankle",
    )


def _shelf(tapes: Sequence[Tape]) -> Check:
    value, part = max(
        ((mark.lean, tape.id) for tape in tapes for mark in tape.marks), key=lambda pair: pair[0]
    )
    result: Result = "holds" if value <= SHELF else "marginal"
    remedy = (
        ""
        if result == "holds"
        else (
            "no fault: period work has shelves; a lower top hoop makes the tape steeper, "
            "and a pad under the shelf keeps it up"
        )
    )
    return Check(
        "shelf",
        part,
        value,
        SHELF,
        "angle",
        "at most",
        result,
        remedy,
        "the definition of a shelf: a stretch of tape more than 45 degrees from the vertical",
        "no stretch of tape leans so far that the skirt lies on a shelf",
    )


def _body(hoops: Sequence[Hoop], contacts: Sequence[Contact]) -> Check:
    names = {hoop.id for hoop in hoops}
    worst = max(contacts, key=lambda contact: (contact.part in names, contact.by), default=None)
    result: Result = "holds" if worst is None else "fails" if worst.part in names else "marginal"
    remedy = {
        "fails": "the body stands out beyond this hoop: make it larger, or move it",
        "marginal": "the tape lies on the body there: no fault, but mark it on the body",
    }.get(result, "")
    return Check(
        "body-contact",
        "" if worst is None else worst.part,
        0.0 if worst is None else worst.by,
        0.0,
        "length",
        "at most",
        result,
        remedy,
        "geometry: the body's hip rows as ovals",
        "the cage stands clear of the body",
    )


def _step_in(spec: Spec, hoops: Sequence[Hoop]) -> Check:
    least = min(hoops, key=lambda hoop: hoop.girth)
    result: Result = "holds" if least.girth >= spec.wearer.hip else "fails"
    remedy = "" if result == "holds" else "make this hoop as wide as the hips, or leave it open in front"
    return Check(
        "step-in",
        least.id,
        least.girth,
        spec.wearer.hip,
        "length",
        "at least",
        result,
        remedy,
        "geometry: a closed hoop passes over the hips",
        "the closed hoops pass over the hips",
    )
