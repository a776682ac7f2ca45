"""A spec held against its schema: one finding for each cause, at the key or value that is wrong.

Unknown and missing keys, wrong types, unknown names and numbers out of range come from JSON Schema;
the quantities are read by the compiler itself, so that a missing unit is told from a wrong type.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from functools import cache
from typing import TYPE_CHECKING, Any

from hoopwright.source.diagnostic import Finding, Path, error
from hoopwright.spec.nearest import listed, nearest, offer
from hoopwright.spec.quantities import PARSERS, quantity_findings
from hoopwright.spec.schema import load_schema

if TYPE_CHECKING:
    from jsonschema import Draft202012Validator
    from jsonschema.exceptions import ValidationError

_SAID = {"object": "keys and values", "array": "a list", "string": "text", "integer": "a whole number",
         "number": "a number", "boolean": "true or false"}

_HELP_FOR_MISSING = {
    "count": "an offer says how it is sold: `{length, price}`, `{per, step, price}` or `{count, price}`",
    "waist": "add `waist`: girth of the waist over all that is worn beneath; or take a body `from` a file",
    "grade": "material for hoops has a `grade`; anything else has a `kind`",
}


def validate(value: object) -> tuple[Finding, ...]:
    """Everything the schema and the units have to say about a spec; empty when it is well formed."""
    schema = load_schema("spec")
    found = [*schema_findings(value), *quantity_findings(value, schema)]
    wrong_version = [finding for finding in found if finding.code == "spec-version"]
    if wrong_version:
        return tuple(wrong_version)
    return tuple(found)


def schema_findings(value: object) -> tuple[Finding, ...]:
    """What JSON Schema finds, with what merely follows from another mistake left out."""
    found = [finding for wrong in _validator().iter_errors(value) for finding in _translated(wrong)]
    near = {(finding.path[:-1], word) for finding in found if finding.code == "key-unknown"
            for word in _meant(finding)}
    return tuple(dict.fromkeys(finding for finding in found
                               if not (finding.code == "key-missing" and _follows(finding, near))))


@cache
def _validator() -> Draft202012Validator:
    from jsonschema import Draft202012Validator

    return Draft202012Validator(load_schema("spec"))


def _translated(wrong: ValidationError) -> Iterator[Finding]:
    """One jsonschema error in a maker's words."""
    path = tuple(wrong.absolute_path)
    node: Mapping[str, Any] = wrong.schema if isinstance(wrong.schema, Mapping) else {}
    rule, value = wrong.validator, wrong.instance
    bound: Any = wrong.validator_value
    if rule == "additionalProperties":
        yield from _unknown_keys(value, node, path)
    elif rule == "required":
        yield _missing(wrong, node, path)
    elif rule == "type" and not (node.get("title") in PARSERS and value is not None):
        yield _wrong_type(value, bound, path)
    elif rule == "const" and path == ("spec",) and not isinstance(value, str | Mapping | list):
        yield error("spec-version", path, f"this is version {value} of the language, and only version {bound}"
                                          " is known", f"write `spec: {bound}`")
    elif rule in ("enum", "const"):
        if value is None:
            yield error("value-wrong-type", path, f"{_name(path)} has no value",
                        "write one, or leave the key out", at_key=_keyed(path))
            return
        yield _unknown_value(value, [bound] if rule == "const" else bound, path)
    elif rule in ("minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum"):
        yield _out_of_range(value, node, path)
    elif rule in ("minItems", "minProperties", "minLength"):
        yield error("value-too-short", path, f"{_name(path)} holds too little",
                    f"it takes at least {bound} {_counted(rule, bound)}")
    elif rule in ("maxItems", "maxLength"):
        yield error("value-too-long", path, f"{_name(path)} holds too much",
                    f"it takes at most {bound} {_counted(rule, bound)}")


def _unknown_keys(value: Any, node: Mapping[str, Any], path: Path) -> Iterator[Finding]:
    known = node.get("properties", {})
    for key in value:
        if key not in known:
            home = "" if len(path) > 1 or nearest(key, known) else _home_of(key)
            yield error("key-unknown", (*path, key), f"no key `{key}` is known {_inside(path)}",
                        home or offer(key, known, "key"), at_key=True)


def _missing(wrong: ValidationError, node: Mapping[str, Any], path: Path) -> Finding:
    required: Any = wrong.validator_value
    key = next(name for name in required if f"'{name}'" in wrong.message)
    told = node.get("properties", {}).get(key, {}).get("description", "")
    mend = _HELP_FOR_MISSING.get(key) or f"add `{key}`: {_start(told)}"
    return error("key-missing", path, f"{_name(path)} has no `{key}`", mend, at_key=_keyed(path))


def _wrong_type(value: object, wanted: str | list[str], path: Path) -> Finding:
    names = [wanted] if isinstance(wanted, str) else wanted
    said = " or ".join(_SAID[name] for name in names)
    if value is None:
        return error("value-wrong-type", path, f"{_name(path)} has no value", f"it takes {said}",
                     at_key=_keyed(path))
    return error("value-wrong-type", path, f"{_name(path)} takes {said}, not {_SAID[_type_of(value)]}",
                 _type_help(value, names))


def _type_help(value: object, names: list[str]) -> str:
    if names == ["array"]:
        return "put it in square brackets, or on lines of its own that begin with `- `"
    if names == ["string"]:
        return "put it in quotes" if not isinstance(value, Mapping | list) else "write one piece of text"
    if names == ["boolean"]:
        return "write `true` or `false`"
    return "`hoopwright explain value-wrong-type` shows each form"


def _unknown_value(value: object, known: Iterable[object], path: Path) -> Finding:
    words = [str(word) for word in known]
    said = f"`{value}`" if isinstance(value, str | int | float) else "this"
    near = nearest(str(value), words)
    mend = f"the nearest is `{near[0]}`; it takes {listed(words)}" if near else f"it takes {listed(words)}"
    return error("value-unknown", path, f"{said} is no value of {_name(path)}", mend)


def _out_of_range(value: object, node: Mapping[str, Any], path: Path) -> Finding:
    parts = []
    for rule, words in (("minimum", "at least"), ("exclusiveMinimum", "more than"), ("maximum", "at most")):
        if rule in node:
            parts.append(f"{words} {node[rule]}")
    return error("number-out-of-range", path, f"{value} is out of range for {_name(path)}",
                 f"it takes a number of {' and '.join(parts)}")


def _meant(finding: Finding) -> tuple[str, ...]:
    """The key an unknown key probably stands for."""
    marks = finding.help.split("`")
    return (marks[1],) if finding.help.startswith("a key with a similar name") else ()


def _follows(finding: Finding, near: set[tuple[Path, str]]) -> bool:
    """Whether the missing key is only misspelt."""
    return (finding.path, finding.message.split("`")[-2]) in near


@cache
def _homes() -> dict[str, tuple[str, ...]]:
    """For each key of the language, the sections that hold it."""
    homes: dict[str, set[str]] = {}
    for section, node in load_schema("spec")["properties"].items():
        for key in node.get("properties", {}):
            homes.setdefault(key, set()).add(section)
            for inner in node["properties"][key].get("properties", {}):
                homes.setdefault(inner, set()).add(f"{section}.{key}")
    return {key: tuple(sorted(places)) for key, places in homes.items()}


def _home_of(key: str) -> str:
    places = _homes().get(key, ())
    return f"`{key}` goes under {listed(places)}" if places else ""


def _name(path: Path) -> str:
    """A path in words: its last key in quotes, which item of a list, or the whole spec."""
    if not path:
        return "the spec"
    if isinstance(path[-1], int):
        return f"item {path[-1] + 1} of {_name(path[:-1])}"
    return f"`{path[-1]}`"


def _keyed(path: Path) -> bool:
    """Whether the path ends at a key, which then can be pointed at."""
    return bool(path) and isinstance(path[-1], str)


def _inside(path: Path) -> str:
    return f"in {_name(path)}" if path else "at the top of a spec"


def _counted(rule: str, bound: int) -> str:
    what = {"L": "letter", "I": "item", "P": "key"}[rule[3]]
    return what if bound == 1 else f"{what}s"


def _start(text: str) -> str:
    """The first sentence of a description, without its full stop, ready to follow a colon."""
    first = text.split(". ")[0].rstrip(".")
    return first[:1].lower() + first[1:]


def _type_of(value: object) -> str:
    if isinstance(value, bool):
        return "boolean"
    if isinstance(value, int | float):
        return "number"
    if isinstance(value, str):
        return "string"
    return "array" if isinstance(value, list) else "object"
