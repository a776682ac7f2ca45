"""The source stage's one door: bytes in, a document or diagnostics out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from hoopwright.source.diagnostic import Diagnostic, Path, Severity, Span
from hoopwright.source.record import record
from hoopwright.source.syntax import reader_error, syntax_error
from hoopwright.source.text import decode, directive, error_at, stray_characters
from hoopwright.source.tree import Stop, Tree


@record(frozen=True, slots=True)
class Document:
    """A spec's text as plain values, with the place of every value and every key.

    ``value`` is made of dict, list, str, int, float, bool and None. ``spans`` gives the place of the value
    at a path, ``key_spans`` that of its key. A value repeated by ``*name`` is placed at the repeat, and
    what lies inside it at the original.
    """

    file: str
    text: str
    value: dict[str, Any]
    spans: Mapping[Path, Span]
    key_spans: Mapping[Path, Span]


def read(data: bytes, file: str) -> tuple[Document | None, tuple[Diagnostic, ...]]:
    """Read one spec. ``file`` is the name diagnostics show.

    Returns the document, or None and at least one error. Raises nothing for any bytes.
    """
    text = decode(data, file)
    if isinstance(text, Diagnostic):
        return None, (text,)
    refused = stray_characters(text, file)
    ruled = directive(text, file)
    if ruled is not None:
        refused.append(ruled)
    if refused:
        return None, tuple(sorted(refused, key=Diagnostic.sort_key))
    tree = Tree(file, text)
    _fill(tree)
    if not tree.errors:
        _refuse_odd_top(tree)
    if tree.errors:
        return None, tuple(sorted(tree.errors, key=Diagnostic.sort_key))
    return Document(file, text, tree.value, tree.spans, tree.key_spans), ()


def _fill(tree: Tree) -> None:
    """Run the YAML reader over the text."""
    from ruamel.yaml.error import MarkedYAMLError, YAMLError

    events = _events(tree.text)
    try:
        tree.take(events)
    except Stop:
        return
    except MarkedYAMLError as failure:
        tree.errors.append(syntax_error(failure, tree.file, tree.text))
    except (YAMLError, ValueError, OverflowError) as failure:
        tree.errors.append(reader_error(failure, tree.file, tree.text))


def _events(text: str) -> Iterator[Any]:
    """The events of ruamel.yaml's pure-Python reader."""
    from ruamel.yaml import YAML

    events: Iterator[Any] = YAML(typ="safe", pure=True).parse(text)
    return events


def _refuse_odd_top(tree: Tree) -> None:
    """An empty file, and a file whose top is no group of keys."""
    if tree.value is None:
        tree.errors.append(Diagnostic(
            "file-empty", Severity.ERROR, "the file holds no spec", tree.file,
            help="write a spec, or let `hoopwright new` begin one"))
    elif not isinstance(tree.value, dict):
        span = tree.spans[()]
        kind = "a list" if isinstance(tree.value, list) else "a single value"
        tree.errors.append(error_at("top-not-keys", span, f"the file holds {kind}, not keys with values",
                                    "begin with the keys of a spec: `spec: 1`, `units: ...`, `wearer: ...`"))
