"""Names of files and folders: as text that is the same in every locale, and safe to print and to make.

The system's names are bytes. Where the locale cannot spell them Python hands out stand-ins; here they become text by
UTF-8 whatever the locale, and are turned back only to open a file.
"""

from __future__ import annotations

import os
import re
import unicodedata
from pathlib import Path

_LONGEST = 80
"""Bytes of a folder's name made from words; file systems take 255, with what is added to it."""

_RESERVED = re.compile(r"(?:con|prn|aux|nul|conin\$|conout\$|(?:com|lpt)[0-9¹²³])(?:\..*)?", re.IGNORECASE)
"""Names that one common system keeps for devices."""


def text_of(name: str) -> str:
    """A name or word as the system gave it, as text; bytes that are no UTF-8 stay stand-ins, and text stays as
    it is."""
    try:
        return name.encode("utf-8", "surrogateescape").decode("utf-8", "surrogateescape")
    except UnicodeEncodeError:  # half a character that a spec spelled out
        return name


def path_of(text: str) -> Path:
    """The path that ``text`` names, to be opened. Raises ValueError for what no path can hold."""
    try:
        os.fsencode(text)
    except UnicodeEncodeError:
        return Path(os.fsdecode(text.encode("utf-8", "surrogateescape")))
    return Path(text)


def shown(path: Path) -> str:
    """A path as findings show it. One that a CI runner would take for a command begins with ``./``."""
    text = text_of(path.as_posix())
    return f"./{text}" if text.lstrip().startswith("::") else text


def visible(line: str) -> str:
    """One line for a terminal: no line ends, nothing that it would obey, nothing that is no text."""
    return "".join(sign if sign.isprintable() else "\N{REPLACEMENT CHARACTER}" for sign in line)


def visible_lines(text: str) -> str:
    """Lines for a terminal, each as :func:`visible`."""
    return "".join(f"{visible(line)}\n" for line in text.removesuffix("\n").split("\n"))


def slug(words: str) -> str:
    """Words as the name of a folder: letters and digits, hyphens between; the same for the same words in whatever
    form and case they are written, and no name that a system keeps for itself. Blank when nothing is left."""
    plain = unicodedata.normalize("NFKC", unicodedata.normalize("NFKC", words).casefold())
    name = "-".join(re.findall(r"[^\W_]+", plain))
    short = name.encode()[:_LONGEST].decode(errors="ignore").rstrip("-")
    return f"{short}-plan" if _RESERVED.fullmatch(short) else short


def folder_name(stem: str) -> str:
    """A file's name without its ending, as the name of a folder: never one that leads elsewhere."""
    return f"{stem}-plan" if not stem.strip(". ") or _RESERVED.fullmatch(stem) else stem


def one_of_a_kind(name: str, taken: set[str]) -> str:
    """``name``, numbered when it is taken, however it is spelled; it is added to ``taken``."""
    number, found = 2, name
    while (key := unicodedata.normalize("NFKC", found).casefold()) in taken:
        found, number = f"{name}-{number}", number + 1
    taken.add(key)
    return found
