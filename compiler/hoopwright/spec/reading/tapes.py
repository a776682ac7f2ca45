"""The tapes: how many, and where they start on the waistband and end on the hem."""

from __future__ import annotations

from itertools import pairwise
from typing import Literal

from hoopwright.library.model import Goods
from hoopwright.source.diagnostic import error
from hoopwright.spec.model import TapeBuild
from hoopwright.spec.reading.node import Node, Notebook

Behind = Literal["no", "only", "with full hoops"]
DEFAULT_COUNT = 6
FEWEST = 3
MOST = 24
"""More tapes than this are no cage anybody would sew: our judgement."""


def equal_places(count: int) -> tuple[float, ...]:
    """Equal fractions of a girth, the first half a spacing from centre front.

    >>> equal_places(4)
    (0.125, 0.375, 0.625, 0.875)
    """
    return tuple((index + 0.5) / count for index in range(count))


def places_beside_gap(count: int, gap: float) -> tuple[float, ...]:
    """Fractions of the waist when a share ``gap`` straddling centre front stays open.

    The tapes divide the rest equally; the first and the last stand at the gap's edges.

    >>> [round(f, 3) for f in places_beside_gap(5, 9 / 25)]
    [0.18, 0.34, 0.5, 0.66, 0.82]
    """
    spacing = (1 - gap) / (count - 1)
    return tuple(gap / 2 + index * spacing for index in range(count))


def places_behind(count: int, behind: Behind) -> tuple[float, ...]:
    """Fractions round the back for half hoops, first and last at their ends; with full hoops below, one more
    tape on each side of centre front.

    >>> places_behind(5, "only")
    (0.25, 0.375, 0.5, 0.625, 0.75)
    >>> places_behind(5, "with full hoops")
    (0.125, 0.25, 0.5, 0.75, 0.875)
    """
    if behind == "with full hoops" and count >= 5:
        return (0.125, *places_behind(count - 2, "only"), 0.875)
    return tuple(0.25 + 0.5 * index / (count - 1) for index in range(count))


def read_tapes(node: Node, waist: float, material: Goods, notes: Notebook,
               behind: Behind = "no") -> TapeBuild:
    """The tapes; what is wrong with their number and places is told in ``notes``."""
    at_waist = tuple(item.fraction() or 0.0 for item in node["waist"].items())
    at_hem = tuple(item.fraction() or 0.0 for item in node["hem"].items())
    count = _count(node, len(at_waist) or len(at_hem), notes, behind)
    gap = node["front_gap"].length()
    fits = _count_fits(node, count, gap, waist, material.width, bool(at_waist), notes)
    if at_waist and gap is not None:
        notes.tell(error("keys-clash", node["front_gap"].path,
                         "`front_gap` and `waist` both say where the tapes start",
                         "keep one of the two", at_key=True,
                         related=((node["waist"].path, "said here too"),)))
    for places in (node["waist"], node["hem"]):
        _check_places(places, count, notes)
    if behind != "no" and gap is not None:
        notes.tell(error("gap-with-half-hoops", node["front_gap"].path,
                         "half hoops have no tapes in front to leave a gap between",
                         "leave `front_gap` out; places of your own go under `waist` and `hem`", at_key=True,
                         related=((("shape", "ground_plan"), "half hoops"),)))
    if behind != "no" and fits:
        at_waist = at_waist or places_behind(count, behind)
        at_hem = at_hem or places_behind(count, behind)
    if not at_waist and fits:
        at_waist = equal_places(count) if gap is None else places_beside_gap(count, gap / waist)
    if not at_hem and fits:
        at_hem = equal_places(count)
    to = node["to"].text() or notes.assume("build.tapes.to", "hem", "text", "tapes run to the hem hoop")
    return TapeBuild(material, count, gap, "band" if to == "band" else "hem", at_waist, at_hem)


def _count(node: Node, listed: int, notes: Notebook, behind: Behind) -> int:
    stated = node["count"].whole()
    if stated is not None:
        return stated
    if listed:
        return listed
    if behind != "no":
        count = 5 if behind == "only" else 7
        notes.assume("build.tapes.count", count, "count", "five carry half hoops level; our choice")
        return count
    notes.assume("build.tapes.count", DEFAULT_COUNT, "count", "6 or 7 are usual; common practice, no source")
    return DEFAULT_COUNT


def _count_fits(node: Node, count: int, gap: float | None, waist: float, width: float, placed: bool,
                notes: Notebook) -> bool:
    """Whether so many tapes can start from the waist, and leave the gap open."""
    at = node["count"].path if node["count"] else node.path
    if count < FEWEST:
        notes.tell(error("tapes-too-few", at,
                         f"{count} {'tape' if count == 1 else 'tapes'} cannot hold a hoop level",
                         f"take at least {FEWEST}; 6 or 7 are usual"))
        return False
    if count > MOST:
        notes.tell(error("tapes-too-many", at, f"{count} tapes are too many to sew to one waistband",
                         f"take at most {MOST}; 6 or 7 are usual"))
        return False
    if gap is not None and gap >= waist:
        notes.tell(error("front-gap-too-wide", node["front_gap"].path,
                         "the front gap is as wide as the waist or wider",
                         "the gap is measured along the waistband; a quarter to a third of the waist is usual",
                         related=((("wearer", "waist"), "the waist"),)))
        return False
    spacing = waist / count if gap is None else (waist - gap) / (count - 1)
    if not placed and spacing < width:
        notes.tell(error("tapes-too-many", at,
                         f"{count} tapes of this width do not fit side by side on the waistband",
                         "take fewer tapes, narrower ones, or a narrower front gap"))
        return False
    return True


def _check_places(node: Node, count: int, notes: Notebook) -> None:
    """A list of places has one place for each tape, ascending."""
    places = [(item.path, item.fraction() or 0.0) for item in node.items()]
    if places and len(places) != count:
        notes.tell(error("tape-places-mismatch", node.path,
                         f"`{node.path[-1]}` lists {len(places)} places for {count} tapes",
                         "list one place for each tape, or change `count`"))
    for (before, low), (path, high) in pairwise(places):
        if high <= low:
            notes.tell(error("places-not-ascending", path, "this place does not lie beyond the one before it",
                             "go round from centre front by the wearer's left: 0 front, 1/4 left, 1/2 back",
                             related=((before, "the place before"),)))
            return
