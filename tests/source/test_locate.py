"""Findings at key paths land on the smallest place that explains them."""

from __future__ import annotations

import pytest

from hoopwright.source.diagnostic import Path, Span, error
from hoopwright.source.locate import locate
from hoopwright.source.read import read

TEXT = b"""spec: 1
shape:
  hem: {girth: 110, off_floor: 7 in}
  hoops:
    count: 7
load:
  - {name: skirt}
  - name: petticoat
    weight:
"""
DOCUMENT, _ = read(TEXT, "a.yaml")


@pytest.mark.parametrize(("path", "at_key", "place"), [
    (("shape", "hem", "girth"), False, (3, 16, 19)),
    (("shape", "hem", "girth"), True, (3, 9, 14)),
    (("shape", "hem"), False, (3, 8, 37)),
    (("shape", "hoops"), False, (4, 3, 8)),
    (("shape", "hoops", "spacing"), False, (4, 3, 8)),
    (("shape", "hem", "depth", "x"), False, (3, 3, 6)),
    (("load", 0, "weight"), False, (7, 5, 18)),
    (("load", 1, "weight"), False, (9, 5, 11)),
    (("load", 5), False, (6, 1, 5)),
    (("wearer",), False, (1, 1, 5)),
    ((), False, (1, 1, 5)),
])
def test_place(path: Path, at_key: bool, place: tuple[int, int, int]) -> None:
    assert DOCUMENT is not None
    found = locate(error("unit-missing", path, "no unit", "write one", at_key=at_key), DOCUMENT)
    line, column, end = place
    assert found.span == Span("a.yaml", line, column, line, end)
    assert (found.code, found.message, found.help) == ("unit-missing", "no unit", "write one")
    assert found.file == "a.yaml"


def test_related_paths_become_labels() -> None:
    assert DOCUMENT is not None
    related = ((("shape", "hoops", "count"), "than this"),)
    finding = error("x", ("shape", "hem", "girth"), "smaller", related=related)
    label = locate(finding, DOCUMENT).labels[0]
    assert (label.span.line, label.span.column, label.text) == (5, 12, "than this")
