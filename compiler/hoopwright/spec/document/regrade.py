"""A design on another body: its sizes kept, or its proportions.

``sizes`` (the default) leaves every length as written. ``proportions`` draws the same figure larger or
smaller: each length written under ``shape``, and the hem band's depth, is multiplied by the new wearer's
waist height at the side over that of the wearer the design was written for. What is not written follows the
new body by its own default; counts, ratios, stock, allowances and limits stay. The waist is never scaled: it
is the body's.
"""

from __future__ import annotations

from hoopwright.source.diagnostic import Finding, Path, Severity
from hoopwright.source.overlay import with_values
from hoopwright.source.quantity import QuantityError, parse_length
from hoopwright.source.read import Document
from hoopwright.spec.checking.schema import whole_schema
from hoopwright.spec.checking.walk import titled
from hoopwright.spec.reading.node import Node, Notebook
from hoopwright.spec.reading.wearer import read_wearer

REGRADE = "regrade"
_SCALED = (("shape",), ("build", "hem_band", "depth"))
_LENGTHS = ("length", "length, zero allowed")
_SAME = 1e-9


def regraded(document: Document, old: Document) -> tuple[Document, tuple[Finding, ...]]:
    """``document`` with its lengths in proportion to its wearer, when it says ``regrade: proportions`` and
    the wearer of ``old`` has another waist height; else as it is."""
    if document.value.get(REGRADE) != "proportions":
        return document, ()
    was, now = _waist_height(old), _waist_height(document)
    if was is None or now is None or abs(now / was - 1) < _SAME:
        return document, ()
    ratio = now / was
    told = Finding("regraded", Severity.NOTE, (REGRADE,),
                   f"the shape's lengths are {ratio:.3f} times what is written",
                   "write `regrade: sizes` to keep them as written",
                   ("the wearer's waist height at the side over that of the wearer it was written for",),
                   at_key=True)
    return with_values(document, dict(_scaled(document.value, ratio))), (told,)


def _scaled(value: object, ratio: float) -> list[tuple[Path, object]]:
    found: list[tuple[Path, object]] = []
    for path, title, item in titled(value, whole_schema("spec")):
        if title in _LENGTHS and any(path[:len(start)] == start for start in _SCALED):
            try:
                found.append((path, f"{parse_length(item, zero=True) * ratio * 1000:.6f} mm"))
            except QuantityError:
                continue  # told by the check of the spec
    return found


def _waist_height(document: Document) -> float | None:
    """The waist height at the side, m, or None when the wearer cannot be read; that is told elsewhere."""
    try:
        wearer = read_wearer(Node(document.value)["wearer"], Notebook())
    except QuantityError:
        return None
    return wearer.side if wearer is not None else None
