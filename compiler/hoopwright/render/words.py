"""Small words of a page: lists, counts, runs of part ids, sides of the body."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

_COUNTS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
           "twelve")
_NUMBERED = re.compile(r"(.*?)(\d+)$")


def count_word(count: int) -> str:
    """``seven`` up to twelve, then figures."""
    return _COUNTS[count] if 0 <= count < len(_COUNTS) else str(count)


def counted(count: int, one: str, many: str = "") -> str:
    """``one hoop``, ``seven hoops``; ``many`` where more than one is no ``s`` longer, as templates say it."""
    return f"{count_word(count)} {one if count == 1 else many or one + 's'}"


def listed(words: Iterable[str], last: str = "and") -> str:
    """``a, b and c``."""
    said = list(words)
    return f" {last} ".join(filter(None, (", ".join(said[:-1]), said[-1]))) if said else ""


def ids_text(ids: Iterable[str]) -> str:
    """Part ids with runs drawn together: ``H1 to H5, H7``; three in a row make a run."""
    runs: list[list[str]] = []
    for id in dict.fromkeys(ids):
        if runs and _follows(runs[-1][-1], id):
            runs[-1].append(id)
        else:
            runs.append([id])
    said: list[str] = []
    for run in runs:
        said.extend([f"{run[0]} to {run[-1].rsplit(' ', 1)[-1]}"] if len(run) > 2 else run)
    return ", ".join(said)


def _follows(before: str, after: str) -> bool:
    first, second = _NUMBERED.match(before), _NUMBERED.match(after)
    return bool(first and second and first[1] == second[1] and int(second[2]) == int(first[2]) + 1)


def where(fraction: float) -> str:
    """Where a fraction of the girth lies, from centre front by the wearer's left: ``left front``."""
    f = fraction % 1.0
    for at, word in ((0.0, "centre front"), (0.25, "left side"), (0.5, "centre back"), (0.75, "right side"),
                     (1.0, "centre front")):
        if abs(f - at) < 1e-3:
            return word
    side = "left" if f < 0.5 else "right"
    away = min(f, 1 - f)
    end = "front" if away < 0.18 else "back" if away > 0.32 else "side"
    return f"{side} {end}"


def sentence(text: str) -> str:
    """Text with a capital first letter and a full stop."""
    said = closed(text)
    return said[:1].upper() + said[1:]


def closed(text: str) -> str:
    """Text with a full stop, its first letter as it is."""
    text = text.strip()
    return text if not text or text[-1] in ".!?" else f"{text}."


def plain_key(key: str) -> str:
    """A key as words: ``flux-fume`` is ``flux fume``."""
    return key.replace("-", " ").replace("_", " ")


def even(values: Sequence[str]) -> bool:
    """Whether all of them print the same."""
    return len(set(values)) <= 1
