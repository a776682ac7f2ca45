"""Values of the wrong form, and the mend spelled out with the maker's own words.

``hem: 104 in`` wants `hem: {girth: 104 in}`, ``tools: file, clamps`` wants brackets, ``helper: yes`` wants
`true`: the schema knows the form, the text knows what was meant.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import Any

from hoopwright.source.diagnostic import Finding, Path, error
from hoopwright.source.quantity import QuantityError
from hoopwright.spec.checking.nearest import listed, nearest
from hoopwright.spec.checking.quantities import PARSERS

_SAID = MappingProxyType({"object": "a group of keys", "array": "a list", "string": "text",
                          "integer": "a whole number", "number": "a number", "boolean": "`true` or `false`"})
_FIGURES = MappingProxyType({"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7,
                             "eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "a": 1, "an": 1})
_YES, _NO = frozenset({"yes", "y", "on", "1"}), frozenset({"no", "n", "off", "0"})
_NOTHING = frozenset({"none", "nothing", "no", "-", "nil", "0"})
_SHORT = MappingProxyType({"cm": "centimetres", "centimeters": "centimetres", "centimeter": "centimetres",
                           "metric": "centimetres", "mm": "centimetres", "m": "centimetres", "in": "inches",
                           "inch": "inches", "ft": "inches", "imperial": "inches", "steel": "strip",
                           "circle": "round", "circular": "round", "even": "by tape", "evenly": "by tape"})
_SECTION = (r"(?P<width>[0-9][0-9 /.]*?)\s*(?P<unit>[a-z]+)?\s*[x×*]\s*"
            r"(?P<thin>[0-9][0-9 /.]*?)\s*(?P<last>[a-z]+)")
_LONGEST = 90
"""The longest mend that is written out, letters; a longer one is described."""


def wrong_type(value: object, wanted: str | list[str], node: Mapping[str, Any], path: Path) -> Finding:
    """A value that is not of the form its key takes."""
    names = [wanted] if isinstance(wanted, str) else wanted
    said = " or ".join(_SAID[name] for name in names)
    if value is None:
        return no_value(node, said, path)
    return error("value-wrong-type", path, f"{name_of(path)} takes {said}, not {_called(value)}",
                 _mend(value, names, node, path))


def no_value(node: Mapping[str, Any], said: str, path: Path) -> Finding:
    """A key with nothing after its ``:``."""
    sample = example_of(node)
    mend = f"write one, as in {sample}, or leave the key out" if sample else (
        f"it takes {said}; write it, or leave the key out" if said else "write one, or leave the key out")
    return error("value-wrong-type", path, f"{name_of(path)} has no value", mend,
                 at_key=bool(path) and isinstance(path[-1], str))


def unknown_value(value: object, known: Iterable[object], path: Path) -> Finding:
    """A word that is none of those a key takes."""
    words = [str(word) for word in known]
    said = f"`{value}`" if isinstance(value, str | int | float) else "this"
    meant = _SHORT.get(str(value).lower().strip(" .\"'"), "")
    near = (meant,) if meant in words else nearest(str(value), words)
    mend = f"the nearest is `{near[0]}`; it takes {listed(words)}" if near else f"it takes {listed(words)}"
    return error("value-unknown", path, f"{said} is no value of {name_of(path)}", mend)


def example_of(node: Mapping[str, Any]) -> str:
    """How a quantity is written here: `` `28 in` or `28 cm` ``; empty for anything else."""
    parser = PARSERS.get(node.get("title", ""))
    if parser is None:
        return ""
    try:
        parser("")
    except QuantityError as told:
        return told.help.partition("as in ")[2]
    return ""


def name_of(path: Path) -> str:
    """A path in words: its last key in quotes, which item of a list, or the whole spec."""
    if not path:
        return "the spec"
    if isinstance(path[-1], int):
        return f"item {path[-1] + 1} of {name_of(path[:-1])}"
    return f"`{path[-1]}`"


def _mend(value: object, names: list[str], node: Mapping[str, Any], path: Path) -> str:
    """What to write instead."""
    key = f"{path[-1]}: " if path and isinstance(path[-1], str) else ""
    if "array" in names:
        return _list_mend(value, key)
    if names == ["object"]:
        return _group_mend(value, node, key)
    if names == ["boolean"]:
        word = str(value).lower()
        meant = "true" if word in _YES else "false" if word in _NO else ""
        return f"write `{key}{meant}`" if meant else "write `true` or `false`"
    if names[0] in ("integer", "number"):
        return _number_mend(value, names, key)
    if isinstance(value, Mapping | list):
        return f"write one piece of text after `{key.strip()}`" if key else "write one piece of text"
    return f"put it in quotes: `{key}\"{str(value).lower() if isinstance(value, bool) else value}\"`"


def _list_mend(value: object, key: str) -> str:
    if isinstance(value, Mapping):
        inner = flow_text(value)
        if inner and len(inner) <= _LONGEST:
            return f"write `{key}[{inner}]`: square brackets round it make it a list"
        return "put `[` before it and `]` after it, or begin each item on a line of its own with `- `"
    word = str(value).strip()
    if word.lower() in _NOTHING:
        return f"write `{key}[]` for none"
    if len(word) <= _LONGEST:
        return f"write `{key}[{word}]`: square brackets round it make it a list"
    return "put it in square brackets, or on lines of its own that begin with `- `"


def _group_mend(value: object, node: Mapping[str, Any], key: str) -> str:
    known: Mapping[str, Any] = node.get("properties", {})
    keys = f"its keys are {listed(known, 'and')}" if known else "write its keys on lines of their own below it"
    if isinstance(value, list):
        return f"{keys}; a list with `-` or `[` does not belong here"
    word = str(value).strip()
    if key == "section: ":
        return f"write `section: {_section(word)}`"
    meant = "" if len(word) > _LONGEST else next((name for name in known if _takes(known[name], value)), "")
    if not meant:
        return keys
    return f"write `{key}{{{meant}: {word}}}`; {keys}" if len(known) > 1 else f"write `{key}{{{meant}: {word}}}`"


def _section(word: str) -> str:
    """A section written as one text, as a group of keys."""
    if flat := re.fullmatch(_SECTION, word):
        unit = flat["unit"] or flat["last"]
        return f"{{kind: flat, width: {flat['width']} {unit}, thickness: {flat['thin']} {flat['last']}}}"
    if _takes({"title": "length"}, word):
        return f"{{kind: round, diameter: {word}}}"
    return "{kind: flat, width: 3/8 in, thickness: 0.042 in}` for strip, `{kind: round, diameter: 6 mm}"


def _takes(node: Mapping[str, Any], value: object) -> bool:
    """Whether a key takes this value as it stands."""
    if "enum" in node:
        return value in node["enum"]
    parser = PARSERS.get(node.get("title", ""))
    if parser is None and isinstance(value, int) and not isinstance(value, bool):
        return bool(node.get("type") == "integer")
    if parser is None or not isinstance(value, str):
        return False
    try:
        parser(value)
    except QuantityError:
        return False
    return True


def _number_mend(value: object, names: list[str], key: str) -> str:
    figure = _FIGURES.get(str(value).lower())
    if figure is not None:
        return f"write it in figures: `{key}{figure}`"
    if isinstance(value, float) and "integer" in names:
        return f"write `{key}{int(value)}` or `{key}{int(value) + 1}`"
    first = str(value).split(" ")[0]
    if first.isdigit() and len(first) < 7:
        return f"write the number alone: `{key}{first}`"
    return f"write figures alone, as in `{key}{6 if names[0] == 'integer' else 1.3}`"


def _called(value: object) -> str:
    """What stands there instead, in words or as it is."""
    if isinstance(value, bool):
        return f"`{str(value).lower()}`"
    if isinstance(value, int | float):
        return f"`{value}`"
    if isinstance(value, str):
        return f"`{value}`" if len(value) <= 40 else "a text"
    return "a list" if isinstance(value, list) else "a group of keys"


def flow_text(value: Mapping[str, Any]) -> str:
    """A group as it is written between braces; empty when it holds more than words and numbers."""
    plain = {key: item for key, item in value.items() if isinstance(item, str | int | float)}
    if len(plain) < len(value) or any(set(str(item)) & set(",[]{}") for item in plain.values()):
        return ""
    return "{" + ", ".join(f"{key}: {item}" for key, item in plain.items()) + "}"
