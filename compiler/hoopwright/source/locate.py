"""From a finding at a key path to a diagnostic at its place in the text: that of the spec, or of the file
the value was taken from."""

from __future__ import annotations

from hoopwright.source.diagnostic import Diagnostic, Finding, Label, Path, Span
from hoopwright.source.read import Document


def locate(finding: Finding, document: Document) -> Diagnostic:
    """The diagnostic for a finding: at its path's value, or its key, or the nearest key above that stands
    in the text."""
    span = place(finding.path, document, at_key=finding.at_key)
    labels = tuple(Label(place(path, document), words) for path, words in finding.related)
    return Diagnostic(finding.code, finding.severity, finding.message, span.file, span, labels,
                      finding.notes, finding.help)


def place(path: Path, document: Document, *, at_key: bool = False) -> Span:
    """The smallest span that shows a path.

    A group written over lines below its key is shown by its key; so is an empty value. A path that is not
    in the text is shown by the nearest one above it that is; the whole document by its first key.
    """
    value, key = document.spans.get(path), document.key_spans.get(path)
    if value is not None and path:
        if key is None:
            return value
        empty = (value.line, value.column) == (value.end_line, value.end_column)
        return key if at_key or empty or value.line != key.line else value
    if path:
        return place(path[:-1], document, at_key=True)
    own = [span for span in document.key_spans.values() if span.file == document.file]
    return min(own, default=document.spans[()])
