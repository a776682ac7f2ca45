"""Everyday things to test a sample with: what they weigh, how wide they are.

Coins have the masses their mints state (from memory); the rest are typical figures of our own. Weigh
or measure yours when it matters.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from types import MappingProxyType

WEIGHTS: Mapping[str, float] = MappingProxyType({
    "half-litre bottle of water": 0.520,
    "litre bottle of water": 1.030,
    "pint of milk": 0.595,
    "drink can": 0.350,
    "food tin": 0.460,
    "bag of sugar": 1.010,
    "pack of butter": 0.252,
    "stick of butter": 0.114,
    "bar of chocolate": 0.103,
    "aa battery": 0.023,
    "ream of paper": 2.500,
    "euro": 0.0075,
    "quarter": 0.00567,
    "nickel": 0.0050,
    "pound coin": 0.00875,
})
"""Full things by name, kg."""

WIDTHS: Mapping[str, float] = MappingProxyType({
    "drink can": 0.066,
    "half-litre bottle": 0.065,
    "wine bottle": 0.075,
    "food tin": 0.074,
    "large food tin": 0.099,
    "jam jar": 0.070,
    "coffee tin": 0.130,
    "broom handle": 0.024,
    "pencil": 0.0072,
    "roll of tape": 0.100,
    "saucepan": 0.180,
    "bucket": 0.280,
    "dinner plate": 0.270,
})
"""Round things by name, diameter in m."""

SOURCE = "typical figures of our own; coins as their mints state (from memory)"
_COUNTS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
           "twelve")
_FILLER = {"a", "an", "the", "full", "of", "water", "new"}
_SAME = {"liter": "litre", "cans": "can", "soda": "drink", "tinned": "food", "coke": "drink", "cola": "drink"}
_KINDS = {"beer can": "drink can", "soup tin": "food tin", "bean tin": "food tin", "can": "drink can",
          "bottle": "half-litre bottle", "tin": "food tin", "plate": "dinner plate",
          "butter": "pack of butter", "broomstick": "broom handle", "sugar bag": "bag of sugar"}


def everyday(text: str, things: Mapping[str, float]) -> float | None:
    """The size of an everyday thing, ``two full half-litre bottles`` counted; None when it is not known.

    >>> everyday("a full half-litre bottle", WEIGHTS)
    0.52
    >>> everyday("ten nickels", WEIGHTS)
    0.05
    """
    count, name = _counted(text)
    sizes = {_plain(known): size for known, size in things.items()}
    size = sizes.get(name, sizes.get(_plain(_KINDS.get(name, ""))))
    return None if size is None or not count else round(count * size, 9)


def near(text: str, things: Mapping[str, float]) -> tuple[str, ...]:
    """Up to three known names that look like ``text``."""
    from difflib import get_close_matches

    names = {_plain(name): name for name in things}
    return tuple(names[found] for found in get_close_matches(_counted(text)[1], names, n=3, cutoff=0.5))


def _counted(text: str) -> tuple[int, str]:
    """(how many, the plain name) of ``3 quarters`` or ``a drink can``."""
    words = re.findall(r"[a-z0-9]+(?:-[a-z]+)*", text.lower())
    count = 1
    if words and (words[0].isdigit() or words[0] in _COUNTS):
        count = int(words[0]) if words[0].isdigit() else _COUNTS.index(words[0])
        words = [word[:-1] if word.endswith("s") and not word.endswith("ss") else word for word in words[1:]]
    return count, _plain(" ".join(words))


def _plain(name: str) -> str:
    words = re.findall(r"[a-z0-9]+", name.lower().replace("half a litre", "half-litre"))
    return " ".join(_SAME.get(word, word) for word in words if word not in _FILLER)
