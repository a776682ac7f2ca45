"""The Markdown of our own pages as HTML for printing.

Knows what our templates write and no more: headings, paragraphs, lists and check boxes, quotes, tables,
rules, images, links, bold, italic, code spans and backslash escapes. Everything else is shown as text; no
HTML passes through.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from html import escape

_HEADING = re.compile(r"(#{1,6}) (.*)")
_ITEM = re.compile(r"- (?:\[([ x])\] )?(.*)")
_RULE = re.compile(r"-{3,}\s*\Z")
_HEADS = re.compile(r"\|(?:\s*:?-+:?\s*\|)+\s*\Z")
_CELL = re.compile(r"(?<!\\)\|")
_INLINE = re.compile(
    r"\\(?P<escaped>[!-/:-@\[-`{-~])"
    r"|(?P<ticks>`+)(?P<code>.+?)(?<!`)(?P=ticks)(?!`)"
    r"|!\[(?P<alt>(?:\\.|[^\]\\])*)\]\((?P<src>[^)\s]+)\)"
    r"|\[(?P<words>(?:\\.|[^\]\\])*)\]\((?P<to>[^)\s]+)\)"
    r"|\*\*(?P<bold>(?:\\.|[^\\])+?)\*\*"
    r"|\*(?P<slant>(?:\\.|[^*\\])+)\*"
)
_BOXES = {" ": "☐ ", "x": "☑ "}


def html(markdown: str) -> str:
    """HTML blocks of a page of ours, without ``<html>`` around them."""
    return "\n".join(_blocks(markdown.split("\n")))


def inline(text: str) -> str:
    """A line of Markdown as HTML."""
    out, at = [], 0
    for found in _INLINE.finditer(text):
        out += [escape(text[at : found.start()], quote=False), _marked(found)]
        at = found.end()
    return "".join((*out, escape(text[at:], quote=False)))


def _marked(found: re.Match[str]) -> str:
    """One piece of inline Markdown."""
    if found["escaped"]:
        return escape(found["escaped"], quote=False)
    if found["code"] is not None:
        code = found["code"]
        padded = code.startswith(" ") and code.endswith(" ") and code.strip()
        return f"<code>{escape(code[1:-1] if padded else code, quote=False)}</code>"
    if found["src"]:
        return f'<img src="{escape(found["src"])}" alt="{escape(_plain(found["alt"]))}">'
    if found["to"]:
        return f'<a href="{escape(found["to"])}">{inline(found["words"])}</a>'
    if found["bold"]:
        return f"<strong>{inline(found['bold'])}</strong>"
    return f"<em>{inline(found['slant'])}</em>"


def _plain(text: str) -> str:
    return re.sub(r"\\([!-/:-@\[-`{-~])", r"\1", text)


def _blocks(lines: list[str]) -> Iterator[str]:
    """Each block of lines in turn."""
    at = 0
    while at < len(lines):
        line = lines[at]
        if not line.strip():
            at += 1
            continue
        end = _end(lines, at)
        yield _block(lines[at:end])
        at = end


def _end(lines: list[str], at: int) -> int:
    """Where the block that begins at a line ends."""
    kind = _kind(lines[at])
    end = at + 1
    if kind in ("heading", "rule"):
        return end
    while end < len(lines) and lines[end].strip():
        following = _kind(lines[end])
        if following != kind and not (kind == "text" and following == "table"):
            break
        end += 1
    return end


def _kind(line: str) -> str:
    if _HEADING.match(line):
        return "heading"
    if _RULE.match(line):
        return "rule"
    if line.startswith(">"):
        return "quote"
    if line.startswith("|"):
        return "table"
    return "list" if _ITEM.match(line) else "text"


def _block(lines: list[str]) -> str:
    kind = _kind(lines[0])
    if kind == "heading":
        found = _HEADING.match(lines[0])
        marks, words = found.groups() if found else ("#", "")
        return f"<h{len(marks)}>{inline(words)}</h{len(marks)}>"
    if kind == "rule":
        return "<hr>"
    if kind == "quote":
        inner = [line.removeprefix(">").removeprefix(" ") for line in lines]
        return "<blockquote>\n" + "\n".join(_blocks(inner)) + "\n</blockquote>"
    if kind == "table" and len(lines) > 1 and _HEADS.match(lines[1]):
        return _table(lines)
    if kind == "list":
        return "<ul>\n" + "\n".join(_item(line) for line in lines) + "\n</ul>"
    return f"<p>{inline(' '.join(line.strip() for line in lines))}</p>"


def _item(line: str) -> str:
    found = _ITEM.match(line)
    box, words = found.groups() if found else (None, line)
    return f'<li class="box">{_BOXES[box]}{inline(words)}</li>' if box else f"<li>{inline(words)}</li>"


def _table(lines: list[str]) -> str:
    heads = "".join(f"<th>{inline(cell)}</th>" for cell in _cells(lines[0]))
    rows = "\n".join(
        "<tr>" + "".join(f"<td>{inline(cell)}</td>" for cell in _cells(line)) + "</tr>" for line in lines[2:]
    )
    return f"<table>\n<tr>{heads}</tr>\n{rows}\n</table>"


def _cells(line: str) -> list[str]:
    return [cell.strip() for cell in _CELL.split(line.strip())[1:-1]]
