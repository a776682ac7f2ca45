"""The wearer: what was measured, and what is filled in from the body's proportions."""

from __future__ import annotations

from itertools import pairwise

from hoopwright.library import body
from hoopwright.source.diagnostic import error
from hoopwright.spec.model import HipRow, Sitting, Wearer
from hoopwright.spec.reading.node import Node, Notebook

Heights = tuple[float, float, float, float]


def read_wearer(node: Node, notes: Notebook) -> Wearer | None:
    """The wearer, or None when no height of the waist can be had."""
    stature = node["stature"].length()
    waist = node["waist"].length() or 0.0
    heights = _waist_heights(node, stature, notes)
    if heights is None:
        return None
    front, left, right, back = heights
    waist_to_hip = _waist_to_hip(node, stature, notes)
    hip = notes.length(node["hip"], waist / body.WAIST_OVER_HIP.median,
                       f"waist / {body.WAIST_OVER_HIP.median}, the median of {body.SOURCE}")
    oval = notes.ratio(node["waist_oval"], body.DEFAULT_WAIST_OVAL,
                       f"near the median {body.WAIST_OVAL.median} of {body.SOURCE}")
    step = node["step"].length()
    if step is None and stature is not None:
        step = notes.assume("wearer.step", body.STEP * stature, "length",
                            f"{body.STEP} x stature, our rule")
    rows = _hip_rows(node["hip_rows"], waist, oval, hip, waist_to_hip, notes)
    tall = stature or (left + right) / 2 / body.WAIST_HEIGHT.median
    return Wearer(node["name"].text() or "", stature, waist, oval, hip, waist_to_hip,
                  front, left, right, back, rows, step, _sitting(node["sitting"], tall, notes))


def _sitting(node: Node, stature: float, notes: Notebook) -> Sitting:
    """The wearer on a chair."""
    def measure(key: str, share: float) -> float:
        return notes.length(node[key], share * stature, f"{share:.2f} x stature, our estimate")

    return Sitting(measure("waist", body.WAIST_OVER_SEAT), measure("thigh", body.THIGH),
                   measure("knee", body.SEAT_TO_KNEE))


def _waist_to_hip(node: Node, stature: float | None, notes: Notebook) -> float:
    stated = node["waist_to_hip"].length()
    if stated is not None:
        return stated
    if stature is None:
        return notes.assume("wearer.waist_to_hip", body.WAIST_TO_HIP.median, "length",
                            f"the median of {body.SOURCE}")
    share = body.WAIST_HEIGHT.median - body.HIP_HEIGHT.median
    return notes.assume("wearer.waist_to_hip", share * stature, "length",
                        f"{share:.3f} x stature: median waist height less median hip height, {body.SOURCE}")


def _waist_heights(node: Node, stature: float | None, notes: Notebook) -> Heights | None:
    """Front, left, right, back, m."""
    stated = node["waist_height"]
    if isinstance(stated.value, dict):
        return _heights_by_side(stated, notes)
    height = stated.length()
    if height is None:
        if stature is None:
            notes.tell(error("waist-height-missing", ("wearer",),
                             "neither the waist's height nor the stature is known",
                             "measure from the floor to the waistline in the shoes worn and write it as"
                             " `waist_height`, or write `stature`", at_key=True))
            return None
        height = notes.assume(
            "wearer.waist_height", body.WAIST_HEIGHT.median * stature, "length",
            f"{body.WAIST_HEIGHT.median:.3f} x stature, the median of {body.SOURCE}; measure it in the shoes"
            " worn, which raise it by their heels")
    return height, height, height, height


def _heights_by_side(stated: Node, notes: Notebook) -> Heights | None:
    front, back = stated["front"].length(), stated["back"].length()
    side, left, right = stated["side"].length(), stated["left"].length(), stated["right"].length()
    if side is not None and not (left is None and right is None):
        other = "left" if left is not None else "right"
        notes.tell(error("keys-clash", stated["side"].path, f"`side` and `{other}` both say the same height",
                         "keep `side` when both sides agree, else `left` and `right`", at_key=True,
                         related=((stated[other].path, "said here too"),)))
        return None
    left = side if left is None else left
    right = side if right is None else right
    if left is None and right is not None:
        left = notes.assume(f"{stated.dotted}.left", right, "length", "taken as on the right side")
    elif right is None and left is not None:
        right = notes.assume(f"{stated.dotted}.right", left, "length", "taken as on the left side")
    if left is None or right is None:
        ends = [height for height in (front, back) if height is not None]
        left = right = notes.assume(f"{stated.dotted}.side", sum(ends) / len(ends), "length",
                                    "the mean of front and back" if len(ends) == 2 else "as the other one")
    mean = (left + right) / 2
    if front is None:
        front = notes.assume(f"{stated.dotted}.front", mean, "length", "taken as at the side")
    if back is None:
        back = notes.assume(f"{stated.dotted}.back", mean, "length", "taken as at the side")
    return front, left, right, back


def _hip_rows(node: Node, waist: float, waist_oval: float, hip: float, waist_to_hip: float,
              notes: Notebook) -> tuple[HipRow, ...]:
    """The body's rows from the top down."""
    ends = (HipRow(0.0, waist, waist_oval), HipRow(waist_to_hip, hip, body.DEFAULT_HIP_OVAL))
    if not node:
        notes.assume("wearer.hip_rows", "waist at the waistline, hip below it, even between;"
                     f" oval of {body.DEFAULT_HIP_OVAL} at the hip", "text", "no rows were measured")
        return ends
    rows = []
    for item in node.items():
        depth = item["below_waist"].length() or 0.0
        share = min(depth / waist_to_hip, 1.0)
        between = waist_oval + (body.DEFAULT_HIP_OVAL - waist_oval) * share
        rows.append(HipRow(depth, item["girth"].length() or 0.0, item["oval"].number() or between))
    for index, (above, below) in enumerate(pairwise(rows)):
        if below.below_waist <= above.below_waist:
            notes.tell(error("rows-not-ordered", (*node.path, index + 1, "below_waist"),
                             "this row is not below the row before it",
                             "write the rows from the top down, each deeper than the last",
                             related=(((*node.path, index, "below_waist"), "the row before"),)))
    return tuple(rows)
