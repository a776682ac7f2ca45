"""Text that must print as it stands: escapes for Markdown, for Mermaid labels and for YAML scalars.

Everything a maker may write into a spec (titles, names, materials) goes through one of these before it
reaches a page. Text known to be Markdown already is marked :class:`Md`; the template environment
escapes whatever is not.
"""

from __future__ import annotations

import json
import re
import unicodedata


class Md(str):
    """Text that is Markdown already and is printed unchanged."""

    __slots__ = ()


_SPECIAL = str.maketrans({mark: f"\\{mark}" for mark in "\\`*_{}[]<>#|~&$"})
_LINE_START = re.compile(r"^( ?)(?:([-+=])|(\d{1,9})([.)])(?=\s|$))")
_AUTOLINK = re.compile(r"(?i)\b(https?|ftp|mailto|xmpp)(:)|\b(www)(\.)")
_PLAIN = re.compile(r"[\w ,.:'/×-]")


def printable(text: str) -> str:
    """One line of visible text: a run of blanks and line breaks becomes one space, controls and marks that
    turn the direction of writing are dropped, lone surrogates become U+FFFD."""
    if text.isprintable() and "  " not in text:
        return text
    kept: list[str] = []
    for char in re.sub(r"\s+", " ", text):
        kind = unicodedata.category(char)
        if kind == "Cs":
            kept.append("\N{REPLACEMENT CHARACTER}")
        elif kind not in {"Cc", "Cf"}:
            kept.append(char)
    return "".join(kept)


def markdown_text(text: str) -> Md:
    """``text`` as inline Markdown or as a table cell that shows exactly ``text``.

    Backslash escapes are those of CommonMark 0.31 section 2.4; the bar is escaped for tables; addresses
    are broken up so that no reader makes them links.
    """
    if isinstance(text, Md):
        return text
    if text.isalnum():
        return Md(text)
    escaped = printable(text).translate(_SPECIAL)
    if ":" in escaped or "." in escaped:
        escaped = _AUTOLINK.sub(lambda m: f"{m[1] or m[3]}\\{m[2] or m[4]}", escaped)
    start = _LINE_START.match(escaped)
    if start:
        escaped = f"{start[1]}{start[3] or ''}\\{start[2] or start[4]}{escaped[start.end():]}"
    return Md(escaped)


def code_text(text: str) -> Md:
    """``text`` as a code span, fenced longer than any run of backticks within; a bar becomes a broken bar,
    which a table cannot take for its own."""
    shown = printable(text).strip().replace("|", "¦")
    if not shown:
        return Md("")
    fence = "`" * (max((len(run) for run in re.findall(r"`+", shown)), default=0) + 1)
    pad = " " if shown.startswith("`") or shown.endswith("`") else ""
    return Md(f"{fence}{pad}{shown}{pad}{fence}")


def prose_text(text: str) -> Md:
    """Text of a stage, in which `words` between backticks are words of the spec: those become code spans,
    the rest is escaped. With an odd number of backticks all of it is escaped."""
    if isinstance(text, Md):
        return text
    parts = text.split("`")
    if len(parts) % 2 == 0:
        return markdown_text(text)
    escaped = (code_text(part) if i % 2 else markdown_text(part) for i, part in enumerate(parts) if part)
    return Md("".join(escaped))


def mermaid_text(text: str) -> Md:
    """``text`` for use inside a quoted Mermaid label: letters, digits and plain marks stay, every other
    character becomes a numbered entity (``#35;``), so that nothing can end the label, open a tag, start a
    directive or close the fence around the drawing."""
    return Md("".join(char if _PLAIN.match(char) else f"#{ord(char)};" for char in printable(text).strip()))


def yaml_text(text: str) -> Md:
    """``text`` as a double-quoted YAML scalar on one line, safe inside a code fence of tildes."""
    return Md(json.dumps(printable(text).strip(), ensure_ascii=False).replace("~", "\\x7E"))


def plain_or_quoted(text: str) -> Md:
    """``text`` as a YAML key or value: bare when it is a plain word, else quoted."""
    plain = re.fullmatch(r"[A-Za-z][\w-]*( [\w-]+)*", text) and text.lower() not in {"true", "false", "null"}
    return Md(text) if plain else yaml_text(text)
