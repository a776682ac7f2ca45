"""Plain scalars of YAML: the core schema of version 1.2, nothing else.

``no``, ``12:30`` and ``2027-03-02`` stay text; only ``null``, ``true``, ``false`` and numbers are not.
"""

from __future__ import annotations

import math
import re
from typing import Final

Scalar = str | int | float | bool | None

_NULL: Final = frozenset({"", "~", "null", "Null", "NULL"})
_BOOL: Final = {"true": True, "True": True, "TRUE": True, "false": False, "False": False, "FALSE": False}
_INT: Final = re.compile(r"[-+]?[0-9]+")
_OCTAL: Final = re.compile(r"0o[0-7]+")
_HEX: Final = re.compile(r"0x[0-9a-fA-F]+")
_FLOAT: Final = re.compile(r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?")
_ENDLESS: Final = re.compile(r"[-+]?\.(inf|Inf|INF)|\.(nan|NaN|NAN)")
_MOST_DIGITS: Final = 300


def scalar(text: str) -> Scalar:
    """The value of a plain scalar. An endless number or one too large for a float is ``math.inf`` or NaN."""
    if text in _NULL:
        return None
    if text in _BOOL:
        return _BOOL[text]
    if text[0] not in "+-.0123456789":
        return text
    if _ENDLESS.fullmatch(text):
        return math.nan if text[-1] in "nN" else math.inf
    return _number(text)


def _number(text: str) -> str | int | float:
    """An int or a float, or the text when it is neither."""
    for pattern, base in ((_INT, 10), (_OCTAL, 8), (_HEX, 16)):
        if pattern.fullmatch(text):
            digits = text if base == 10 else text[2:]
            return int(digits, base) if len(digits) <= _MOST_DIGITS else math.inf
    return float(text) if _FLOAT.fullmatch(text) else text
