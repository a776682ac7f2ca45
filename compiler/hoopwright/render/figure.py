"""One picture of a plan, as text."""

from __future__ import annotations

from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Figure:
    """A picture: ``name`` is its file name without ``.svg``, ``title`` its caption, ``alt`` what a reader
    who does not see it must know, ``svg`` a whole SVG 1.1 document."""

    name: str
    title: str
    alt: str
    svg: str
