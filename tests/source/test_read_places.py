"""Texts that are nearly specs: a document whose places give its values back, or refusals that point into the text."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from hypothesis import example, given, settings
from hypothesis import strategies as st

from hoopwright.source.diagnostic import Path, Span
from hoopwright.source.read import read

PIECES = st.sampled_from([
    "spec: 1\n", "wearer:\n", "  waist: 70 cm\n", "{", "}", "[", "]", ", ", ": ", "- ", "\n", "  ", "'", '"',
    "|\n", ">-\n", "&a ", "*a", "!!int ", "<<: ", "# x\n", "---\n", "...\n", "%YAML 1.1\n", "? ", "\t", "a", "b: 1\n",
    "b: 2\n", "é", "\u202e", "𝕏", "\u00a0", "\u2028", "0x1F", "1e999", ".nan", "~", "5' 4\"", "\\u0000", "\r\n", "\r",
    "\ufeff",
])
TEXTS = st.one_of(st.lists(PIECES, max_size=14).map("".join), st.text(max_size=80))


def inside(span: Span, text: str) -> bool:
    """Whether a span begins and ends within a text."""
    lines = text.split("\n")
    return (1 <= span.line <= span.end_line <= len(lines) + 1 and span.column >= 1 and span.end_column >= 1
            and all(column <= (len(lines[line - 1]) if line <= len(lines) else 0) + 1
                    for line, column in ((span.line, span.column), (span.end_line, span.end_column))))


def plain(text: str) -> str:
    """A text as the reader counts it: plain line ends, no byte-order mark."""
    return text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")


def leaves(value: Any, path: Path = ()) -> Iterator[tuple[Path, Any]]:
    if isinstance(value, dict | list) and value:
        for key, item in value.items() if isinstance(value, dict) else enumerate(value):
            yield from leaves(item, (*path, key))
    else:
        yield path, value


@settings(deadline=None)
@given(TEXTS)
@example("a: |\n")
@example("&")
@example("a: [1,\n")
@example("a:\n  - b: 'x\n\n    y'\n")
@example('"\\u0000": 1\n')
@example("&a a: *a\n")
def test_every_place_lies_in_the_text(text: str) -> None:
    found, said = read(text.encode("utf-8", "surrogatepass"), "a.yaml")
    lines = plain(text)
    assert (found is None) == bool(said)
    for one in said:
        assert one.help, one.code
        assert one.code == "file-empty" or one.span is not None, one.code
        for span in (one.span, *(label.span for label in one.labels)):
            assert span is None or inside(span, lines), one
    if found is not None:
        assert all(inside(span, found.text) for span in (*found.spans.values(), *found.key_spans.values()))
        assert {path for path, _ in leaves(found.value)} <= set(found.spans)


@settings(deadline=None)
@given(st.recursive(st.text(max_size=9) | st.integers(-9, 99) | st.booleans() | st.none(),
                    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner, max_size=3),
                    max_leaves=9))
def test_each_value_alone_reads_as_it_did_in_its_document(value: Any) -> None:
    import json

    found, _ = read(json.dumps({"v": value}).encode(), "a.yaml")
    if found is None:
        return
    line = found.text
    for path, item in leaves(found.value):
        span = found.spans[path]
        again, said = read(f"v: {line[span.column - 1 : span.end_column - 1]}\n".encode(), "b.yaml")
        assert again is not None, said
        assert again.value == {"v": item}
