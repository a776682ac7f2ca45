"""What is unlikely: measures of the body, sections and tests that look like a slip of the unit or the pen."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator

from hoopwright.library import body
from hoopwright.library.grades import grade_for
from hoopwright.library.model import Droop, Stock, Weigh, Wrap
from hoopwright.source.diagnostic import Finding, Path, error, warning
from hoopwright.source.quantity import QuantityError, parse_length
from hoopwright.spec.model import Wearer
from hoopwright.spec.reading.node import Node

OVERRIDE = 5.0
"""A maker's own figure further from the grade's than this factor is a slip of the unit: our judgement."""
WEIGHING = 2.0
THICKEST_STRIP = 0.006
THICKEST_ROD = 0.060
STEEPEST_CLAMP = math.radians(45)
"""A droop test is clamped about level: our judgement."""
LARGEST_TILT = 0.08
"""Waist heights at front, sides and back further apart than this are asked again, m: our judgement."""


def body_findings(wearer: Wearer, node: Node) -> tuple[Finding, ...]:
    """Warnings about the body; only measures the maker took are doubted."""
    return (*_sizes(wearer, node), *_proportions(wearer, node), *_tilt(wearer, node))


def _sizes(wearer: Wearer, node: Node) -> Iterator[Finding]:
    for key, value, (low, high) in (("stature", wearer.stature, body.STATURE_RANGE),
                                    ("waist", wearer.waist, body.WAIST_RANGE),
                                    ("hip", wearer.hip, body.HIP_RANGE)):
        if node[key] and value is not None and not low <= value <= high:
            yield warning("measure-unlikely", node[key].path, f"this is an unlikely {key} for a grown person",
                          _in_another_unit(node[key], low, high))


def _in_another_unit(node: Node, low: float, high: float) -> str:
    """The mend of an unlikely length: the same number in the unit that would make it likely."""
    text = node.text() or ""
    for unit in ("mm", "cm", "in", "ft", "m"):
        other = re.sub("[A-Za-z]+$", unit, text)
        try:
            likely = low <= parse_length(other) <= high
        except QuantityError:
            continue
        if likely and other != text:
            return f"check the number and its unit; perhaps `{other}` is meant"
    return "check the number and its unit"


def _proportions(wearer: Wearer, node: Node) -> Iterator[Finding]:
    if node["hip"] and not body.WAIST_OVER_HIP.low <= wearer.waist / wearer.hip <= body.WAIST_OVER_HIP.high:
        yield warning("hip-unlikely", node["hip"].path,
                      f"the waist is {wearer.waist / wearer.hip:.2f} of the hips round; from"
                      f" {body.WAIST_OVER_HIP.low:.2f} to {body.WAIST_OVER_HIP.high:.2f} is usual, corsets"
                      " included",
                      "measure both again, over all that is worn beneath", related=(
                          (node["waist"].path, "the waist"),), notes=(body.SOURCE, body.CORSET))
    if wearer.stature is None or not node["waist_height"]:
        return
    heels = body.HEEL / wearer.stature
    ratio = wearer.side / wearer.stature
    if not body.WAIST_HEIGHT.low <= ratio <= body.WAIST_HEIGHT.high + heels:
        yield warning("waist-height-unlikely", node["waist_height"].path,
                      f"the waist stands at {ratio:.3f} of the stature; from {body.WAIST_HEIGHT.low} to"
                      f" {body.WAIST_HEIGHT.high} is usual, and heels raise it",
                      "measure from the floor to the waistline in the shoes worn", related=(
                          (node["stature"].path, "the stature"),), notes=(body.SOURCE,))
        return
    hip = (wearer.side - wearer.waist_to_hip) / wearer.stature
    if node["waist_to_hip"] and not body.HIP_HEIGHT.low <= hip <= body.HIP_HEIGHT.high + heels:
        yield warning("hip-height-unlikely", node["waist_to_hip"].path,
                      f"the hip stands at {hip:.3f} of the stature; from {body.HIP_HEIGHT.low} to"
                      f" {body.HIP_HEIGHT.high} is usual, and heels raise it",
                      "measure straight down from the waistline to the fullest hip", notes=(body.SOURCE,))


def _tilt(wearer: Wearer, node: Node) -> Iterator[Finding]:
    heights = wearer.waist_heights
    if max(heights) - min(heights) > LARGEST_TILT:
        yield warning("waist-tilt-unlikely", node["waist_height"].path,
                      "the waistline rises or falls by more than 8 cm (3 in) round the body",
                      "measure each height from the floor again")


def stock_findings(stock: Stock, node: Node) -> tuple[Finding, ...]:
    """What cannot be, or is unlikely, about a material for hoops."""
    impossible = list(_section(stock, node["section"]))
    if impossible:
        return tuple(impossible)
    return (*_overrides(stock, node), *_untold(node), *_tests(stock, node["bench"]))


def _untold(node: Node) -> Iterator[Finding]:
    """Tests that are read with a section nobody stated."""
    if node["bench"] and not node["section"]:
        yield warning("bench-section-assumed", node["bench"].path,
                      "these tests are read with a section that is only assumed",
                      "measure width and thickness, or the diameter, and write them as `section`; the elastic"
                      " limit and the own weight of the sample hang on them")


def _section(stock: Stock, node: Node) -> Iterator[Finding]:
    section = stock.section
    if section.kind == "flat" and section.thickness > section.width:
        yield error("section-impossible", node["thickness"].path, "the strip is thicker than it is wide",
                    "the width is the larger side and stands upright; change the two",
                    related=((node["width"].path, "the width"),))
    elif section.kind == "tube" and section.wall * 2 >= section.diameter:
        yield error("section-impossible", node["wall"].path, "the wall fills the tube",
                    "the wall is less than half the diameter; a full section is `kind: round`",
                    related=((node["diameter"].path, "the diameter"),))
    elif stock.grade.name == "music wire" and section.kind != "round":
        yield error("section-impossible", node["kind"].path, "music wire is round",
                    "write `kind: round` and its diameter; for strip take `spring steel, tempered`")
    elif section.depth > (THICKEST_STRIP if section.kind == "flat" else THICKEST_ROD):
        key = "thickness" if section.kind == "flat" else "diameter"
        yield warning("section-unlikely", node[key].path, f"this is a very large {key} for a hoop",
                      _in_another_unit(node[key], 0.0002, THICKEST_STRIP if key == "thickness" else 0.015))


def _overrides(stock: Stock, node: Node) -> Iterator[Finding]:
    usual = grade_for(stock.grade.name, stock.section)
    for key, own, known in (("modulus", stock.grade.e, usual.e),
                            ("elastic_limit", stock.grade.elastic_limit, usual.elastic_limit),
                            ("density", stock.grade.density, usual.density)):
        if node[key] and not 1 / OVERRIDE <= own / known <= OVERRIDE:
            yield error("material-value-unlikely", node[key].path,
                        f"this is {_times(own / known)} of what `{usual.name}` has",
                        "check the unit (`MPa` or `GPa`), or take another grade")


def _times(ratio: float) -> str:
    return f"{ratio:.3g} times" if ratio >= 1 else f"1/{1 / ratio:.3g}"


def _tests(stock: Stock, node: Node) -> Iterator[Finding]:
    for test, item in zip(stock.bench, node.items(), strict=True):
        if isinstance(test, Droop):
            yield from droop_findings(test, item)
        elif isinstance(test, Wrap):
            yield from _wrap(test, item)
        elif isinstance(test, Weigh):
            yield from _weighing(stock, test, item)


def droop_findings(test: Droop, item: Node) -> Iterator[Finding]:
    """What cannot be about a droop test, or says little."""
    wrong = _droop(test, item)
    if wrong is not None:
        yield wrong
    elif not 0.03 <= test.drop / test.overhang <= 0.85:
        yield warning("bench-weak", item["drop"].path, "this droop says little about the stiffness",
                      "choose overhang and weight so that the end drops by a tenth to a half of the"
                      " overhang")


def _droop(test: Droop, item: Node) -> Finding | None:
    """What cannot be about a droop test."""
    faces = [("drop", test.drop)] + ([("turned", test.turned)] if test.turned is not None else [])
    for key, drop in faces:
        if drop >= test.overhang:
            return error("bench-impossible", item[key].path, "the end drops by more than the strip is long",
                         "drop and overhang are measured from the clamp: one down, one along the strip",
                         related=((item["overhang"].path, "the overhang"),))
    if abs(test.angle) > STEEPEST_CLAMP:
        return error("bench-impossible", item["clamp_angle"].path, "a clamp so steep makes no droop test",
                     "clamp the strip level, and state only the few degrees it is off")
    if test.mean_drop <= math.sin(test.angle) * test.overhang:
        return error("bench-impossible", item["drop"].path,
                     "the end drops by less than a stiff rod in this clamp",
                     "measure the clamp's angle again; it is below the level, or above it with a minus sign",
                     related=((item["clamp_angle"].path, "the clamp's angle"),))
    return None


def _wrap(test: Wrap, item: Node) -> Iterator[Finding]:
    path: Path = item["keeps"].path
    if test.keeps is not None and test.springs_back:
        yield error("keys-clash", path, "a sample that springs back keeps no curve",
                    "write `result: takes a set`, or leave `keeps` out", at_key=True,
                    related=((item["result"].path, "springs back"),))
    elif test.keeps is not None and test.keeps <= test.around:
        yield error("bench-impossible", path, "the sample keeps a tighter curve than it was bent to",
                    "`keeps` is the diameter after letting go, and is the larger",
                    related=((item["around"].path, "bent round this"),))


def _weighing(stock: Stock, test: Weigh, item: Node) -> Iterator[Finding]:
    bare = Stock(stock.name, stock.grade, stock.section).linear_density
    ratio = test.mass / test.length / bare
    if not 1 / WEIGHING <= ratio <= WEIGHING:
        yield error("bench-impossible", item["weight"].path,
                    f"the sample weighs {_times(ratio)} of what its section and grade say",
                    "measure length, section and weight again, and check their units")
