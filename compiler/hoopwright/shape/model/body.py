"""The body under it, and where it is touched; metres."""

from __future__ import annotations

from hoopwright.source.record import record


@record(frozen=True, slots=True)
class BodyRow:
    """The body's oval at a height: ``width``, ``depth`` m."""

    height: float
    width: float
    depth: float


@record(frozen=True, slots=True)
class Contact:
    """A tape or hoop that touches the body, and how far the body stands beyond it, m."""

    part: str
    height: float
    by: float
