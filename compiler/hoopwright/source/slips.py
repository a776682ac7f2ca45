"""Slips of the pen that leave a text unreadable, told by the line they stand in.

The YAML reader stumbles where it can go on no longer, often a line too late. A slip names the line and
the sign that is wrong there, and writes the mended line out.
"""

from __future__ import annotations

import re
from typing import Any

from hoopwright.source.record import record

# Patterns stand as text: they are compiled only where a text could not be read.
_KEY = r"(?P<indent>\s*)(?P<dash>(?:- +)*)(?P<key>[^\s\"'#{}\[\]:,][^\"'#{}\[\]:,]*):(?P<rest>.*)"
HARD = "\u00a0"
HARD_SPACE = "a hard space, as word processors set it, stands here"
HARD_MEND = "type ordinary spaces in its place, as many as the keys beside it have"
_CURLY = "[“”„‘’]"
_WORD_BEFORE = r"(?P<gap>[;\s]\s*)(?P<word>[A-Za-z_][\w ]*?)\s*$"
_NO_COLON = r"(?P<indent>\s*)(?P<dash>(?:- +)*)(?P<key>[a-z][a-z_]*) +(?P<rest>[^\s#:][^:]*)"
_DASH = r"\s*-(?P<rest>[^\s-].*)"
_INCHES = r"(?P<number>[0-9][0-9 /.½¼¾]*)(?P<marks>\"\"|'')"


@record(frozen=True, slots=True)
class Slip:
    """Line and column count from 0; ``length`` signs are wrong there."""

    line: int
    column: int
    length: int
    message: str
    help: str


def slip_in(problem: str, at: Any, began: Any, text: str) -> Slip | None:
    """The slip behind a failure of the YAML reader, when it is one of those that are known.

    ``at`` is the mark where the reader stopped, ``began`` where the unfinished thing began; either may be
    None.
    """
    lines = text.split("\n")
    if at is None or at.line >= len(lines):
        return _inch_marks(lines, began) if began is not None and "end of stream" in problem else None
    if (hard := _hard_space(lines, at.line)) is not None:
        return hard
    if "could not find expected ':'" in problem and began is not None:
        return _no_space(lines, began.line) or _no_colon(lines, began.line)
    if "mapping values are not allowed" in problem:
        return _colon(lines, at.line, at.column)
    if "expected ',' or" in problem and began is not None:
        return _bracket(lines, at, began)
    if "unexpected end of stream" in problem and began is not None:
        return _inch_marks(lines, began)
    return None


def _hard_space(lines: list[str], stopped: int) -> Slip | None:
    """A hard space among those a line begins with, in the line where the reader stopped or one just above."""
    for number in range(max(0, stopped - 2), stopped + 1):
        begins = lines[number][: len(lines[number]) - len(lines[number].lstrip())]
        if HARD in begins:
            return Slip(number, begins.index(HARD), begins.count(HARD), HARD_SPACE, HARD_MEND)
    return None


def _no_space(lines: list[str], number: int) -> Slip | None:
    """``waist:28 in``: no space after the colon."""
    found = re.fullmatch(_KEY, lines[number])
    if found is None or not found["rest"] or found["rest"][0] == " ":
        return None
    at = found.start("rest") - 1
    return Slip(number, at, 1, "a `:` wants a space after it",
                f"write `{found['key']}: {_short(found['rest'].strip())}`")


def _colon(lines: list[str], number: int, column: int) -> Slip | None:
    """A second colon in a line, or the first one of a line that stands too far in."""
    line = lines[number]
    if (item := re.fullmatch(_DASH, line)) and column > item.start("rest"):
        return Slip(number, item.start("rest") - 1, 1, "a `-` that begins an item wants a space after it",
                    f"write `- {_short(item['rest'])}`")
    found = re.fullmatch(_KEY, line)
    if found is None or not 0 <= column < len(line):
        return None
    if found.start("rest") - 1 == column:
        return _no_space_above(lines, number) or _too_far_in(lines, number, found)
    value = found["rest"].partition(" #")[0].strip()
    if not value or value[0] in "\"'{[&*|>!%@`":
        return None
    curly = re.search(_CURLY, value)
    plain = re.sub(_CURLY, "", value).replace('"', "'")
    mend = f"write `{found['key'].strip()}: \"{_short(plain)}\"`"
    if curly is not None:
        first = found.start("rest") + found["rest"].index(curly[0])
        return Slip(number, first, 1, "curly quotation marks do not count as quotes here",
                    f"type straight ones: {mend}")
    return Slip(number, column, 1, "a text with a `:` in it must stand in quotes", mend)


def _too_far_in(lines: list[str], number: int, found: re.Match[str]) -> Slip | None:
    """A key further in than the key above, which has its value already."""
    above = next((lines[n] for n in range(number - 1, -1, -1) if _filled(lines[n])), "")
    other = re.fullmatch(_KEY, above)
    if other is None or not other["rest"].partition("#")[0].strip():
        return None
    wanted, has = len(other["indent"]) + len(other["dash"]), len(found["indent"])
    if has <= wanted:
        return None
    spaces = f"{wanted} space{'s' if wanted != 1 else ''}" if wanted else "no space"
    return Slip(number, 0, has, "this line stands further in than the line above it",
                f"give it {spaces} before `{found['key'].strip()}`, as `{other['key'].strip()}` has; or leave"
                f" nothing after `{other['key'].strip()}:` if it belongs to it")


def _no_space_above(lines: list[str], number: int) -> Slip | None:
    """The line above lacks the space after its colon, and this line was read as going on with it."""
    above = next((n for n in range(number - 1, -1, -1) if _filled(lines[n])), None)
    return None if above is None else _no_space(lines, above) or _no_colon(lines, above)


def _no_colon(lines: list[str], number: int) -> Slip | None:
    """``waist 28 in``: no colon after the key."""
    found = re.fullmatch(_NO_COLON, lines[number].partition(" #")[0].rstrip())
    if found is None:
        return None
    return Slip(number, found.end("key"), 1, f"the `:` after `{found['key']}` is missing",
                f"write `{found['key']}: {_short(found['rest'])}`")


def _bracket(lines: list[str], at: Any, began: Any) -> Slip | None:
    """A bracket that is not closed in its line, or two entries with no comma between."""
    opened = lines[began.line][began.column:began.column + 1]
    close = {"{": "}", "[": "]"}.get(opened)
    if close is None:
        return None
    before = lines[at.line][:at.column]
    if at.line > began.line and re.fullmatch(r"\s*[\w ]*", before):
        return Slip(began.line, began.column, 1, f"the `{opened}` opened here is never closed",
                    f"write `{close}` at the end of what belongs together, here most likely at the end of line"
                    f" {at.line}")
    word = re.search(_WORD_BEFORE, before)
    if lines[at.line][at.column:at.column + 1] != ":" or word is None or opened != "{":
        return None
    name = word["word"].split(" ")[-1]
    start = at.column - len(name)
    if ";" in before:
        semicolon = before.rindex(";")
        return Slip(at.line, semicolon, 1, "entries are parted by `,`, not by `;`", "write `,` for each `;`")
    return Slip(at.line, start, len(name), f"a `,` is missing before `{name}`", f"write `, {name}: ...`")


def _inch_marks(lines: list[str], began: Any) -> Slip | None:
    """``"28""``: inch marks inside quotes."""
    if began.line >= len(lines):
        return None
    found = re.search(_INCHES, lines[began.line])
    if found is None or not found.end() - 2 <= began.column <= found.end():
        return None
    unit = "in" if '"' in found["marks"] else "ft"
    return Slip(began.line, found.end() - 2, 2, "an inch mark inside quotes ends them",
                f"write the unit in letters, without quotes: `{found['number'].strip()} {unit}`")


def _filled(line: str) -> bool:
    return bool(line.strip()) and not line.lstrip().startswith("#")


def _short(text: str) -> str:
    return text if len(text) <= 60 else f"{text[:56]} ..."
