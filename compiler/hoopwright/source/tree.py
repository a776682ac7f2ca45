"""From the YAML reader's events to plain values and a span for every path.

Events are taken one by one on a stack of our own: depth, size and aliases are judged before anything is
built from them, so neither 300 nested brackets nor an alias bomb costs more than the reading of their text.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from typing import Any

from hoopwright.source.amount import comma_trouble
from hoopwright.source.diagnostic import Diagnostic, Label, Path, Span
from hoopwright.source.group import Anchored, Group, Value, copy_places
from hoopwright.source.scalars import scalar
from hoopwright.source.text import error_at, span_of, stray_in_value

DEEPEST = 50
"""How deep groups may nest."""
MOST_VALUES = 50_000
"""How many keys and values a spec may hold, each repeat by ``*name`` counted in full."""
_MOST_ERRORS = 50
_NUMBER_AND_COMMA = re.compile(r"(?<![^\s\[{,:])[0-9]+,$")


class Stop(Exception):
    """Reading cannot go on; the reason is the last diagnostic."""


class Tree:
    """What has been read so far."""

    def __init__(self, file: str, text: str) -> None:
        self.file, self.text = file, text
        self.value: Value = None
        self.spans: dict[Path, Span] = {}
        self.key_spans: dict[Path, Span] = {}
        self.errors: list[Diagnostic] = []
        self.stack: list[Group] = []
        self.anchors: dict[str, Anchored] = {}
        self.count = 0

    def refuse(self, code: str, span: Span, message: str, help: str, labels: tuple[Label, ...] = ()) -> None:
        """Note an error; too many of them end the reading."""
        self.errors.append(error_at(code, span, message, help, labels=labels))
        if len(self.errors) >= _MOST_ERRORS:
            raise Stop

    def take(self, events: Iterator[Any]) -> None:
        """Read one document. Raises Stop when it is refused as a whole."""
        for event in events:
            kind = type(event).__name__
            if kind == "ScalarEvent":
                self._scalar(event)
            elif kind in ("MappingStartEvent", "SequenceStartEvent"):
                self._open(event, {} if kind == "MappingStartEvent" else [])
            elif kind in ("MappingEndEvent", "SequenceEndEvent"):
                self._close(event)
            elif kind == "AliasEvent":
                self._alias(event)
            elif kind == "DocumentStartEvent" and () in self.spans:
                span = span_of(event.start_mark, event.end_mark, self.file)
                self.refuse("second-document", span, "a second document begins here",
                            "keep one design to a file; delete the `---`, or move the rest to its own file")
                raise Stop

    def _scalar(self, event: Any) -> None:
        """A key or a single value."""
        span = self._scalar_span(event)
        self._tag(event, span)
        plain = event.style is None
        value = scalar(event.value) if plain and event.tag is None else event.value
        if self._expects_key():
            self._comma_in_number(event)
            self._key(event.value, value, span)
            return
        self._add(1, span)
        if isinstance(value, float) and not math.isfinite(value):
            self.refuse("number-not-finite", span,
                        f"`{event.value[:40]}` is no number that could be measured",
                        "write a number and its unit, as in `28 in` or `28 cm`")
        if isinstance(value, str):
            self._stray(value, span)
        path = self._place(value, span)
        self._remember(event.anchor, path, value, 1, 0)

    def _scalar_span(self, event: Any) -> Span:
        """The span of a scalar; a block text ends where its last line ends."""
        start, end = event.start_mark, event.end_mark
        before = self.stack[-1].last if self.stack and not self._expects_key() else None
        if not event.value and event.style is None and before is not None:
            return Span(self.file, before.end_line, before.end_column, before.end_line, before.end_column)
        if event.style not in ("|", ">"):
            return span_of(start, end, self.file)
        body = self.text[start.index:end.index].rstrip()
        rows = body.split("\n")
        column = len(rows[-1]) + (start.column if len(rows) == 1 else 0)
        return Span(self.file, start.line + 1, start.column + 1, start.line + len(rows), column + 1)

    def _expects_key(self) -> bool:
        """Whether the next event is a key of the open mapping."""
        return bool(self.stack) and isinstance(self.stack[-1].value, dict) and self.stack[-1].key is None

    def _key(self, written: str, value: Value, span: Span) -> None:
        """Take a key: text, not used before."""
        group = self.stack[-1]
        self._add(1, span)
        key = written
        if not isinstance(value, str):
            said = f"`{written[:40]}`" if written else "a key with nothing before its `:`"
            self.refuse("key-not-text", span, f"{said} is no name for a key",
                        f"put it in quotes if it is a name, as in `\"{written[:40] or 'name'}\": ...`")
        elif written == "<<":
            self.refuse("merge-key", span, "`<<` does not merge groups here",
                        "repeat the keys, or repeat a whole group with `*name`")
        else:
            self._stray(written, span)
        path = (*group.path, key)
        if key in group.value:
            first = self.key_spans[path]
            self.refuse("duplicate-key", span, f"the key `{key[:40]}` stands here a second time",
                        "keep one of the two", (Label(first, "the first one is here"),))
        else:
            self.key_spans[path] = span
        group.key = key
        group.last = span

    def _comma_in_number(self, event: Any) -> None:
        """``{girth: 2,8 m}``: inside brackets the comma ended the value, and ``8 m`` looks like a key."""
        at = event.start_mark.index
        before = self.text[max(at - 20, 0) : at]
        number = _NUMBER_AND_COMMA.search(before)
        if event.value[:1].isdigit() and number is not None:
            trouble = comma_trouble(number[0] + event.value)
            assert trouble is not None
            start = event.start_mark.column + 1 - len(number[0])
            end = event.end_mark
            span = Span(self.file, end.line + 1, start, end.line + 1, end.column + 1)
            self.refuse("quantity-unreadable", span, trouble.message, trouble.help)
            raise Stop

    def _open(self, event: Any, value: dict[str, Value] | list[Value]) -> None:
        """A mapping or a list begins."""
        span = span_of(event.start_mark, event.end_mark, self.file)
        self._tag(event, span)
        if self._expects_key():
            self.refuse("key-not-text", span, "a group or list stands where a key is expected",
                        "write a name as the key; put text with `{`, `[` or `?` at its start in quotes")
            raise Stop
        before = self.count
        self._add(1, span)
        if len(self.stack) >= DEEPEST:
            self._too_deep(span)
        path = self._place(value, span)
        if event.anchor is not None:
            self.anchors.pop(event.anchor, None)
        self.stack.append(Group(path, value, event.start_mark, event.anchor, before))

    def _close(self, event: Any) -> None:
        """A mapping or a list ends; its span ends with its last value, not where the next line begins."""
        group = self.stack.pop()
        flow = event.end_mark.index > event.start_mark.index
        span = span_of(group.start, event.end_mark, self.file)
        if not flow and group.last is not None:
            span = Span(self.file, span.line, span.column, group.last.end_line, group.last.end_column)
        self.spans[group.path] = span
        self._remember(group.anchor, group.path, group.value, self.count - group.counted_before, group.height)
        if self.stack:
            parent = self.stack[-1]
            parent.last = span
            parent.height = max(parent.height, group.height + 1)

    def _alias(self, event: Any) -> None:
        """``*name``: the named value again. Counted in full before anything is copied."""
        span = span_of(event.start_mark, event.end_mark, self.file)
        name = event.anchor
        if self._expects_key():
            self.refuse("key-not-text", span, "a repeat by `*` stands where a key is expected",
                        "write the key out")
            raise Stop
        if any(group.anchor == name for group in self.stack):
            self.refuse("anchor-cycle", span, f"`*{name}` repeats the group it stands in",
                        "write out what is meant; a group cannot contain itself")
            raise Stop
        named = self.anchors.get(name)
        if named is None:
            self.refuse("anchor-unknown", span, f"nothing above is named `&{name}`",
                        "name the value before it is repeated; put a text that begins with `*` in quotes")
            raise Stop
        self._add(named.size, span)
        if len(self.stack) + named.height > DEEPEST:
            self._too_deep(span)
        path = self._place(named.value, span)
        copy_places(named, path, self.spans)
        copy_places(named, path, self.key_spans)
        if self.stack:
            self.stack[-1].height = max(self.stack[-1].height, named.height + 1)

    def _place(self, value: Value, span: Span) -> Path:
        """Put a value into the open group, or make it the whole document; returns its path."""
        if not self.stack:
            self.value = value
            self.spans[()] = span
            return ()
        group = self.stack[-1]
        group.last = span
        if isinstance(group.value, list):
            path = (*group.path, len(group.value))
            group.value.append(value)
        else:
            key = group.key
            assert isinstance(key, str)
            group.key = None
            path = (*group.path, key)
            if key in group.value:
                path = (*group.path, key, "second")
            else:
                group.value[key] = value
        self.spans[path] = span
        return path

    def _remember(self, anchor: str | None, path: Path, value: Value, count: int, height: int) -> None:
        """Keep a named value for its repeats."""
        if anchor is not None:
            self.anchors[anchor] = Anchored(path, value, count, height)

    def _add(self, values: int, span: Span) -> None:
        """Count values; too many end the reading."""
        self.count += values
        if self.count > MOST_VALUES:
            self.refuse("too-many-values", span, f"the spec grows past {MOST_VALUES:,} keys and values here",
                        "write only what the design needs; check what is repeated by `*`")
            raise Stop

    def _too_deep(self, span: Span) -> None:
        """More nested groups than any spec needs."""
        self.refuse("nesting-too-deep", span, f"groups nest more than {DEEPEST} deep here",
                    "check for brackets that are opened and never closed")
        raise Stop

    def _tag(self, event: Any, span: Span) -> None:
        """Any ``!tag`` is refused; nothing is ever built from one."""
        if event.tag is not None:
            self.refuse("yaml-tag", span, f"the tag `{_tag_text(event.tag)}` is not used in a spec",
                        "delete the tag; when the `!` belongs to a text, put the text in quotes")

    def _stray(self, value: str, span: Span) -> None:
        """Control characters brought in by an escape."""
        stray = stray_in_value(value, span)
        if stray is not None:
            self.errors.append(stray)


def _tag_text(tag: object) -> str:
    """A tag as it is written, shortened."""
    return str(tag).replace("tag:yaml.org,2002:", "!!")[:40]
