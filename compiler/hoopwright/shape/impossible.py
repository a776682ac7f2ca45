"""How a room of the shape stage says that a wished shape cannot be."""

from __future__ import annotations

from hoopwright.source.diagnostic import Finding


class Impossible(Exception):
    """A shape that cannot be; carries the finding. It never leaves this package."""

    def __init__(self, finding: Finding) -> None:
        super().__init__(finding.message)
        self.finding = finding
