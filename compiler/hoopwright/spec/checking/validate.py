"""A spec held against its schema: one finding for each cause, at the key or value that is wrong.

Unknown and missing keys, wrong types, unknown names and numbers out of range come from JSON Schema;
the quantities are read by the compiler itself, so that a missing unit is told from a wrong type.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache
from typing import TYPE_CHECKING, Any

from hoopwright.library.goods import GOODS
from hoopwright.source.diagnostic import Finding, Path, error
from hoopwright.source.slips import HARD, HARD_MEND, HARD_SPACE
from hoopwright.spec.checking.misfit import example_of, name_of, no_value, unknown_value, wrong_type
from hoopwright.spec.checking.nearest import listed, nearest, offer
from hoopwright.spec.checking.quantities import PARSERS, quantity_findings
from hoopwright.spec.checking.schema import load_schema, whole_schema
from hoopwright.spec.checking.uses import HOOP, use_of
from hoopwright.spec.reading.node import Node

if TYPE_CHECKING:
    from jsonschema import Draft202012Validator
    from jsonschema.exceptions import ValidationError

_HELP_FOR_MISSING = {
    "spec": "write `spec: 1` as its first line: it says which version of the language this is",
    "units": "write `units: inches` or `units: centimetres`: what the plan is printed in",
    "wearer": "write `wearer: {stature: 5 ft 6 in, waist: 28 in}` with your own measures",
    "shape": "write `shape: {hem: {girth: 104 in}}` with your own girth, or `shape: {line: {kind: drum}}` for a"
             " wheel",
    "count": "say how it is sold: `{length: 50 ft, price: 19.00 USD}` for packs, `{per: 1 yd, price: 0.60 USD}`"
             " for what is cut to measure, `{count: 20, price: 2.80 USD}` for pieces",
    "waist": "add `waist`, as in `waist: 28 in` or `waist: 72 cm`: its girth over all that is worn beneath; or"
             " take a body `from` a file",
    "grade": "write `grade: spring steel, tempered`, or another, for hoops; anything else has a `kind`, as in"
             " `kind: tape`, `braid`, `cloth`, `fastening` or `consumable`",
}

KINDLESS = "does not say what it is"


def validate(value: object) -> tuple[Finding, ...]:
    """Everything the schema and the units have to say about a spec; empty when it is well formed."""
    found = [*schema_findings(value), *quantity_findings(value, whole_schema("spec"))]
    wrong_version = [finding for finding in found if finding.code == "spec-version"]
    if wrong_version:
        return tuple(wrong_version)
    return tuple(found)


def schema_findings(value: object) -> tuple[Finding, ...]:
    """What JSON Schema finds, with what merely follows from another mistake left out."""
    found = [_by_use(finding, value) for wrong in _validator().iter_errors(value) for finding in _translated(wrong)]
    near = {(finding.path[:-1], word) for finding in found if finding.code == "key-unknown"
            for word in _meant(finding)}
    kindless = {finding.path for finding in found if finding.message.endswith(KINDLESS)}
    told: dict[tuple[str, Path, str], Finding] = {}
    for finding in found:
        if finding.code == "key-unknown" and finding.path[:-1] in kindless:
            continue  # its kind decides which keys it has
        if not (finding.code == "key-missing" and _follows(finding, near)):
            told.setdefault((finding.code, finding.path, finding.message), finding)
    return tuple(told.values())


@cache
def _validator() -> Draft202012Validator:
    from jsonschema import Draft202012Validator

    return Draft202012Validator(whole_schema("spec"))


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
        yield wrong_type(value, bound, node, path)
    elif rule == "const" and path == ("spec",) and not isinstance(value, str | Mapping | list):
        yield error("spec-version", path, f"this is version {value} of the language, and only version {bound}"
                                          " is known",
                    f"write `spec: {bound}` if it was written for that; one for a later version wants a later"
                    " Hoopwright")
    elif rule in ("enum", "const"):
        if value is None:
            words = listed([bound] if rule == "const" else bound)
            yield no_value(node, words, path)
            return
        yield unknown_value(value, [bound] if rule == "const" else bound, path)
    elif rule in ("minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum"):
        yield _out_of_range(value, node, path)
    elif rule in ("minItems", "minProperties", "minLength"):
        yield error("value-too-short", path, f"{name_of(path)} holds too little",
                    f"it takes at least {bound} {_counted(rule, bound)}")
    elif rule in ("maxItems", "maxLength"):
        yield error("value-too-long", path, f"{name_of(path)} holds too much",
                    f"it takes at most {bound} {_counted(rule, bound)}")


def _unknown_keys(value: Any, node: Mapping[str, Any], path: Path) -> Iterator[Finding]:
    known = node.get("properties", {})
    for key in value:
        if key not in known:
            begun, colon, rest = key.partition(":")
            if colon and rest and nearest(begun, known):
                yield error("key-unknown", (*path, key), "a `:` wants a space after it",
                            f"write `{nearest(begun, known)[0]}: {rest[:60]}`", at_key=True)
                continue
            if HARD in key:
                yield error("key-unknown", (*path, key), HARD_SPACE, HARD_MEND, at_key=True)
                continue
            home = "" if len(path) > 1 or nearest(key, known) else _home_of(key)
            yield error("key-unknown", (*path, key), f"no key `{key}` is known {_inside(path)}",
                        home or offer(key, known, "key"), at_key=True)


def _missing(wrong: ValidationError, node: Mapping[str, Any], path: Path) -> Finding:
    required: Any = wrong.validator_value
    key = next(name for name in required if f"'{name}'" in wrong.message)
    wanted = node.get("properties", {}).get(key, {})
    sample = example_of(wanted)
    told = f"add `{key}`{f', as in {sample}' if sample else ''}: {_start(wanted.get('description', ''))}"
    mend = _HELP_FOR_MISSING.get(key) or told
    said = f"{name_of(path)} has no `{key}`" if path else f"this spec has no `{key}`"
    return error("key-missing", path, said, mend, at_key=_keyed(path))


def _by_use(finding: Finding, value: object) -> Finding:
    """A material that does not say what it is, told by what it is used for; any other finding as it is."""
    if finding.code != "key-missing" or finding.path[:1] != ("materials",) or len(finding.path) != 2:
        return finding
    name, spec = str(finding.path[1]), Node(value)
    path, kinds = use_of(spec, name) or ((), (GOODS[name].kind,) if name in GOODS else ())
    said = spec["materials"][name]
    if not kinds or HOOP in kinds or said["kind"] or said["section"]:
        return finding
    first, *rest = sorted(kinds, key=lambda kind: kind != name)
    other = f", or {listed(rest)}" if rest else ""
    return error("key-missing", finding.path, f"`{name}` {KINDLESS}", f"write `kind: {first}`{other}",
                 at_key=True, related=((path, "used here"),) if path else ())


def _out_of_range(value: object, node: Mapping[str, Any], path: Path) -> Finding:
    parts = []
    for rule, words in (("minimum", "at least"), ("exclusiveMinimum", "more than"), ("maximum", "at most")):
        if rule in node:
            parts.append(f"{words} {node[rule]}")
    return error("number-out-of-range", path, f"{value} is out of range for {name_of(path)}",
                 f"it takes a number of {' and '.join(parts)}")


def _meant(finding: Finding) -> tuple[str, ...]:
    """The key an unknown key probably stands for."""
    meant = finding.help.split("`")[1:2]
    if finding.message.startswith("a `:`"):
        return (meant[0].partition(":")[0],)
    return tuple(meant) if finding.help.startswith("a key with a similar name") else ()


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


def _keyed(path: Path) -> bool:
    """Whether the path ends at a key, which then can be pointed at."""
    return bool(path) and isinstance(path[-1], str)


def _inside(path: Path) -> str:
    return f"in {name_of(path)}" if path else "at the top of a spec"


def _counted(rule: str, bound: int) -> str:
    what = {"L": "letter", "I": "item", "P": "key"}[rule[3]]
    return what if bound == 1 else f"{what}s"


def _start(text: str) -> str:
    """The first sentence of a description, without its full stop, ready to follow a colon."""
    first = text.split(". ")[0].rstrip(".")
    return first[:1].lower() + first[1:]
