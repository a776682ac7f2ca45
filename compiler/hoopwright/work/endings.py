"""Why a session ends where it does, in the maker's words: what lies safely until the next one."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from hoopwright.work.model import Task

_LEFT: Mapping[str, str] = {
    "wash": "the wash hangs up to dry",
    "press": "everything lies pressed and flat",
    "mark-tapes": "the marked tapes are rolled up, each with its name on it",
    "cut-tapes": "the tapes are cut and named",
    "cut-ties": "the ties are cut and named",
    "pin-ties": "the ties are pinned to the clipped hoops",
    "sew-ties": "the ties sewn so far are fast",
    "cut-panels": "the lacing panels are cut and marked",
    "sew-panels": "the lacing panels are sewn",
    "lace-for-now": "the half hoops hang laced for now",
    "sew-panels-on": "the lacing panels are sewn to the hoops",
    "set-eyelets": "the lacing is done",
    "cut-casings": "the casings are cut and named",
    "sew-casings": "the casings are sewn",
    "open-coil": "the coil is tied again in three places",
    "test-stock": "the coil is tested and tied again",
    "cut-hoop": "every cut hoop is named and its ends are tipped",
    "prove-join": "the proof join hangs under its load",
    "splice-hoop": "the spliced hoops hang together, ends tipped",
    "case-hoop": "the cased hoops hang together, ends taped",
    "mark-hoop": "the marked hoops hang together, ends taped",
    "cut-waistband": "the waistband is cut",
    "make-waistband": "the waistband is made and marked",
    "sew-fastening": "the waistband closes",
    "sew-tapes": "the tapes hang from the waistband",
    "cut-band": "the strips of the band are cut and named",
    "join-band": "the band is one long strip",
    "sew-channels": "the band has its channels",
    "cut-cloth": "the panels are cut and named",
    "mark-cloth": "every panel is marked",
    "sew-cloth": "the petticoat hangs together, one seam open",
    "sew-tucks": "the tucks are sewn",
    "sew-sample": "the sample is corded",
    "starch-sample": "the sample dries flat",
    "wash-sample": "the sample dries flat",
    "test-sample": "the sample's numbers are written down",
    "cut-breadths": "the breadths are cut and named",
    "cut-cords": "the cords are cut and bundled by group",
    "mark-rows": "every breadth is ruled",
    "sew-breadths": "the breadths hang together, one seam open",
    "sew-cords": "the cords sewn so far are fast",
    "close-round": "the petticoat is closed",
    "pin-gathers": "the petticoat hangs pinned",
    "starch": "the petticoat dries standing",
    "sew-hem": "the hem is sewn",
    "cut-strips": "the strips of the casings are cut and named",
    "apply-casings": "the casings are sewn on",
    "thread-hoop": "the hoops lie in their channels, ends clamped and taped",
    "pin-waist": "the petticoat hangs pinned",
    "close-seam": "the petticoat is closed",
    "set-waistband": "the petticoat hangs from its waistband",
    "set-drawstring": "the petticoat hangs from its drawstring",
    "cut-flounces": "the flounces are joined to rings",
    "sew-flounces": "the flounces are on",
    "cut-spokes": "the spokes are cut, tipped and marked",
    "mark-rings": "the rings are marked",
    "cut-roll": "the roll is cut",
    "stuff-roll": "the roll is stuffed and on the waistband",
    "bind-wheel": "the wheel hangs bound together",
    "set-wheel": "the wheel hangs from its waistband",
    "cut-cover": "the cover is cut",
    "sew-cover": "the cover is on",
    "cut-sides": "the panels are cut and marked",
    "tie-side": "the ties are tacked to the inner panel",
    "sew-side": "a side is sewn together",
    "thread-side": "the steels lie in their channels",
    "pin-side": "a side hangs pinned to the waistband",
    "set-sides": "both sides hang from the waistband",
    "thread-channel": "the hoops lie in the band, ends taped",
    "clip-hoop": "the clipped hoops hang from the waistband",
    "clamp-ends": "the clipped hoops hang from the waistband",
    "try-on-body-alone": "it has been tried on and the readings are written down",
    "try-on-body-helped": "it has been tried on and the readings are written down",
    "join-hoop": "the joins made so far are covered",
    "join-hoop-shielded": "the joins made so far are washed, dry and covered",
    "wash-joins": "every join is washed, dry and covered",
    "check-joins": "every join is checked and covered",
    "close-band": "the band is closed",
    "sew-hoop": "the hoops sewn so far are fast, the others still clipped",
    "try-on-hem-alone": "the hem is level and the readings are written down",
    "try-on-hem-helped": "the hem is level and the readings are written down",
    "trim-tapes": "every tape is finished",
    "try-on-use-alone": "it has been used and taken off alone",
    "try-on-use-helped": "it has been used and taken off alone",
    "sew-label": "the label is in",
    "hang-up": "the cage hangs in its place",
}

_OVERNIGHT: Mapping[str, str] = {
    "wash": "the wash dries over night",
    "cut-hoop": "the cane dries over night, tied to its curve",
    "starch-sample": "the starched sample dries over night",
    "wash-sample": "the washed sample dries over night",
    "starch": "the starched petticoat dries over night",
    "prove-join": "the proof join hangs over night",
}


def ending(done: Sequence[Task], more: bool) -> str:
    """What lies safely when a session ends, and what passes by itself until the next."""
    if not more:
        return "the cage is finished"
    waits = dict.fromkeys(_OVERNIGHT[task.action] for task in done if task.wait > 0)
    last = done[-1]
    words = [] if last.wait > 0 else [_LEFT[last.action]]
    return "; ".join((*words, *waits))
