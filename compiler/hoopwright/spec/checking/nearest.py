"""Names near a misspelt one, worded for a ``help:`` line."""

from __future__ import annotations

from collections.abc import Iterable


def nearest(name: str, known: Iterable[str], count: int = 1) -> tuple[str, ...]:
    """Up to ``count`` known names most like ``name``, best first; case and blanks do not matter."""
    from difflib import get_close_matches

    plain = {_plain(word): word for word in sorted(known)}
    return tuple(plain[hit] for hit in get_close_matches(_plain(name), sorted(plain), n=count, cutoff=0.6))


def offer(name: str, known: Iterable[str], what: str) -> str:
    """The help for an unknown name: the nearest one, or all there are."""
    words = sorted(known)
    near = nearest(name, words)
    if near:
        return f"a {what} with a similar name exists: `{near[0]}`"
    return f"known here: {listed(words)}" if words else f"no {what} is known here"


def listed(words: Iterable[str], joint: str = "or") -> str:
    """`a`, `b` or `c`, in the order given; at most twelve, then how many more."""
    quoted = [f"`{word}`" for word in words]
    if len(quoted) > 12:
        return f"{', '.join(quoted[:12])} and {len(quoted) - 12} more"
    if len(quoted) < 2:
        return "".join(quoted)
    return f"{', '.join(quoted[:-1])} {joint} {quoted[-1]}"


def _plain(word: str) -> str:
    return " ".join(word.lower().replace("_", " ").replace("-", " ").split())
