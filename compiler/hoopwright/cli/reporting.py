"""Findings of a run on many specs: printed as they come, or gathered into one document at the end."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from hoopwright.cli import say
from hoopwright.cli.formats import GATHERED
from hoopwright.cli.specs import SpecFile
from hoopwright.source.diagnostic import Diagnostic

if TYPE_CHECKING:
    from hoopwright.cli.made import Made
    from hoopwright.render.outcome import Outcome


class Report:
    """Takes what each spec came to; ``close`` prints what was gathered."""

    def __init__(self, how: str) -> None:
        self.how = how
        self.gathered: list[Outcome] = []

    @property
    def gathers(self) -> bool:
        """Whether stdout belongs to one document."""
        return self.how in GATHERED

    def problems(self, items: Sequence[Diagnostic], specs: Sequence[SpecFile]) -> None:
        """What kept specs from being read."""
        if not self.gathers:
            say.diagnostics(items, specs, self.how)
            return
        from hoopwright.render.outcome import Outcome

        for file in dict.fromkeys(item.file for item in items):
            self.gathered.append(Outcome(file, file, tuple(item for item in items if item.file == file)))

    def result(self, spec: SpecFile, result: Made) -> None:
        """What one spec came to."""
        if not self.gathers:
            say.diagnostics(result.diagnostics, [spec], self.how)
            if self.how == "text" and result.failing:
                say.findings(("\n" if result.diagnostics else "") + result.failing)
            return
        from hoopwright.render.outcome import Outcome

        self.gathered.append(Outcome(spec.shown, spec.label, result.diagnostics, result.plan))

    def more(self, spec: SpecFile, item: Diagnostic) -> None:
        """Something more about the spec told last."""
        if not self.gathers:
            say.diagnostics([item], [spec], self.how)
            return
        last = self.gathered[-1]
        self.gathered[-1] = replace(last, diagnostics=(*last.diagnostics, item))

    def close(self) -> None:
        """Print the document, when there is one, and see that all was printed."""
        say.findings(self._document() if self.gathers else "", last=True)

    def _document(self) -> str:
        if self.how == "sarif":
            from hoopwright.render.sarif import sarif

            return sarif(self.gathered, _described)
        if self.how == "junit":
            from hoopwright.render.junit import junit

            return junit(self.gathered)
        if self.how == "annotations":
            from hoopwright.render.annotations import workflow_lines

            return workflow_lines(self.gathered)
        from hoopwright.render.summary import summary

        return summary(self.gathered)


def _described(code: str) -> tuple[str, str]:
    """A code's or check's first sentence and page."""
    from hoopwright.explain.pages import find

    page = next(iter(find(code)), None)
    return (page.summary, page.text) if page is not None and page.slug == code else ("", "")
