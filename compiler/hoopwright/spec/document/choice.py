"""Which of a spec's many designs is meant: a variant of it, another wearer, proportions or sizes kept."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

from hoopwright.source.diagnostic import Span
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Choice:
    """What is laid over a spec before it is resolved; a blank leaves it as written.

    ``variant`` names one of its ``variants``. ``wearer`` is the path of a body file as written in the file
    ``file``; ``title`` and ``regrade`` take the place of the spec's. ``places`` tells where ``variant`` and
    ``wearer`` were written, when that was in a file.
    """

    variant: str = ""
    wearer: str = ""
    title: str = ""
    regrade: str = ""
    file: str = ""
    places: Mapping[str, Span] = field(default_factory=dict)

    @property
    def label(self) -> str:
        """What tells it from the spec as written, in a few words; blank for the spec as written."""
        body = self.wearer.replace("\\", "/").rpartition("/")[2].rpartition(".")[0]
        return self.title or ", ".join(word for word in (body, self.variant) if word)


AS_WRITTEN = Choice()
"""The spec as it is written."""
