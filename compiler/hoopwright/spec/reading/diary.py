"""What has happened to the cage since it was planned: work done, lengths cut, fittings."""

from __future__ import annotations

import re
from collections.abc import Mapping

from hoopwright.source.diagnostic import Finding, Path, error
from hoopwright.spec.checking.nearest import listed, nearest
from hoopwright.spec.model import Fitting, Progress, ShapeSpec, TapeBuild, Wearer
from hoopwright.spec.reading.node import Node, Notebook

_DATE = re.compile(r"(\d{4})-(\d{2})-(\d{2})\Z")
_MONTHS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
_NUMBERED = re.compile(r"(?:(?:casing )?H|[TCS]|sample cords )[1-9][0-9]*\Z")
_OF_PAIR = re.compile(r"[LRT][1-9][0-9]*\Z")


def hoop_names(shape: ShapeSpec) -> tuple[str, ...]:
    """The hoops' ids from the top; of side hoops those of the wearer's left, then of her right."""
    if shape.ground_plan.pair is not None:
        return tuple(f"{side}{k + 1}" for side in "LR" for k in range(shape.count))
    return tuple(shape.names[k] if k < len(shape.names) and shape.names[k] else f"H{k + 1}"
                 for k in range(shape.count))


def read_progress(node: Node, shape: ShapeSpec, notes: Notebook) -> Progress:
    """Tasks done and lengths cut. Whether a task exists is the work stage's to say.

    A numbered hoop, tape, row or spoke that the design no longer has is kept: its piece may serve elsewhere.
    """
    hoops, pair = hoop_names(shape), shape.ground_plan.pair is not None
    known = (*hoops, *(f"casing {name}" for name in hoops), "waistband", "drawstring", "sample cords")
    numbered = _OF_PAIR if pair else _NUMBERED
    cut: dict[str, float] = {}
    for name in node["cut"].names():
        item = node["cut"][name]
        if name not in known and numbered.match(name) is None:
            near = nearest(name, known)
            notes.tell(error("part-unknown", item.path, f"no part to be cut is called `{name[:60]}`",
                             f"a part with a similar name exists: `{near[0]}`" if near else
                             "lengths are cut for L1, R1 and `waistband`" if pair else
                             "lengths are cut for H1, T1, `casing H1`, C1 (a cord), S1 (a spoke) and `waistband`",
                             at_key=True))
        cut[name] = item.length() or 0.0
    done = tuple(item.text() or "" for item in node["done"].items())
    return Progress(done, cut)


def read_fittings(node: Node, wearer: Wearer, shape: ShapeSpec, tapes: TapeBuild | None,
                  notes: Notebook) -> tuple[Fitting, ...]:
    """The fittings in order, with what cannot be told as errors."""
    ids = tuple(f"T{k + 1}" for k in range(len(tapes.waist_fractions) if tapes is not None else 0))
    found: list[Fitting] = []
    last: tuple[str, Path] | None = None
    for item in node.items():
        on = item["on"].text() or ""
        wrong = _date_trouble(on, item["on"].path, last)
        if wrong is not None:
            notes.tell(wrong)
        last = (on, item["on"].path)
        found.append(Fitting(
            on, _hem(item["hem_height"], ids, notes), isinstance(item["hem_height"].value, str),
            _named(item["hoop_height"], hoop_names(shape), "hoop", notes),
            _named(item["hoop_girth"], hoop_names(shape), "hoop", notes),
            item["waist"].length(), item["notes"].text() or "", item.path))
        notes.tell(*_above_waist(item, wearer))
    return tuple(found)


def _hem(node: Node, ids: tuple[str, ...], notes: Notebook) -> Mapping[str, float]:
    """Heights by tape; one length stands for all of them."""
    if isinstance(node.value, str):
        return dict.fromkeys(ids, node.length() or 0.0)
    return _named(node, ids, "tape", notes)


def _named(node: Node, known: tuple[str, ...], what: str, notes: Notebook) -> Mapping[str, float]:
    """Lengths by the id of a tape or hoop, in the order of the ids."""
    for name in node.names():
        if name not in known:
            near = nearest(name, known)
            mend = f"a {what} with a similar name exists: `{near[0]}`; there are " if near else "there are "
            notes.tell(error("fitting-part-unknown", node[name].path,
                             f"no {what} is called `{name[:60]}`",
                             f"{mend}{listed(known, 'and')}", at_key=True))
    return {name: node[name].length() or 0.0 for name in known if node[name]}


def _date_trouble(on: str, path: Path, last: tuple[str, Path] | None) -> Finding | None:
    """A date that is none, or one before the fitting written above it."""
    if not is_date(on):
        return error("fitting-date", path, f"`{on[:40]}` is no date",
                     "write year, month and day with hyphens, as in `2027-03-02`")
    if last is not None and is_date(last[0]) and on < last[0]:
        return error("fitting-order", path, "this fitting was before the one written above it",
                     "write the fittings in the order they were held",
                     related=((last[1], "the one above"),))
    return None


def is_date(text: str) -> bool:
    """Whether the text is a day of the calendar, as 2027-03-02."""
    found = _DATE.match(text)
    if found is None:
        return False
    year, month, day = (int(part) for part in found.groups())
    leap = month == 2 and (year % 400 == 0 or (year % 4 == 0 and year % 100 != 0))
    return 1 <= month <= 12 and 1 <= day <= _MONTHS[month - 1] + leap


def _above_waist(item: Node, wearer: Wearer) -> list[Finding]:
    """Heights at or above the waist: no hem and no hoop hangs there."""
    lowest = min(wearer.waist_heights)
    hem = item["hem_height"]
    nodes = [hem] if isinstance(hem.value, str) else [hem[name] for name in hem.names()]
    nodes += [item["hoop_height"][name] for name in item["hoop_height"].names()]
    return [error("height-above-waist", node.path, "this height is at or above the waist",
                  "measure from the floor up, and look at the unit",
                  related=((("wearer",), "the wearer's waist"),))
            for node in nodes if (node.length() or 0.0) >= lowest]
