"""Damage to a spec's tree that knows the schema: other types, other branches, and amounts from one end of what is
valid to the other."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from functools import cache
from random import Random
from typing import Any

from hoopwright.source.units import BOUNDS, UNITS
from hoopwright.spec.checking.quantities import PARSERS
from hoopwright.spec.checking.schema import load_schema

Path = tuple[str | int, ...]
ODD: tuple[Any, ...] = (None, True, False, 0, -1, 1.5, 10**12, "", " ", "x" * 300, [], {}, [[]], [None], {"": 0}, "H1")
NAMES = ("strip", "cane", "calico", "twill", "tape", "braid", "H1", "H2", "T1", "lap soldered", "lap bound", "tube",
         "hook and bar", "rattan", "polyethylene", "music wire", "mild steel", "cut-H1", "file", "2027-03-02")
_DIMENSIONS = {"weight": "mass", "weight of cloth": "areal density", "weight for length": "linear density"}


def damaged(tree: Any, other: Any, dice: Random) -> Any:
    """A copy of ``tree`` changed in one to four places; ``other`` is a tree to take branches from."""
    tree = json.loads(json.dumps(tree))
    for _ in range(dice.choice((1, 1, 2, 2, 3, 4))):
        places = [(path, value) for path, value in walk(tree) if path]
        if not places:
            return tree
        path, value = dice.choice(places)
        _changed(tree, path, value, other, dice)
    return tree


def moved(tree: Any, dice: Random) -> Any:
    """A copy of ``tree`` with one to three of its numbers, quantities or words changed for others of their kind, so
    that most of them are still designs."""
    tree = json.loads(json.dumps(tree))
    for _ in range(dice.choice((1, 1, 2, 3))):
        places = [path for path, value in walk(tree) if path and isinstance(value, str | int | float)
                  and (not isinstance(value, str) or re.match(r"\d", value)) and path[0] not in ("spec", "variants")]
        if not places:
            return tree
        path = dice.choice(places)
        home = tree
        for key in path[:-1]:
            home = home[key]
        home[path[-1]] = _near(home[path[-1]], dice)
    return tree


def walk(value: Any, path: Path = ()) -> Iterator[tuple[Path, Any]]:
    """Every value of a tree with its path, the tree itself first."""
    yield path, value
    inner = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, item in inner:
        yield from walk(item, (*path, key))


def _changed(tree: Any, path: Path, value: Any, other: Any, dice: Random) -> None:
    home = tree
    for key in path[:-1]:
        home = home[key]
    last, way = path[-1], dice.random()
    if way < 0.45 and isinstance(value, str | int | float):
        home[last] = _near(value, dice)
    elif way < 0.52:
        del home[last]
    elif way < 0.60:
        home[last] = dice.choice(ODD)
    elif way < 0.68:
        same = [item for at, item in walk(other) if at and at[-1] == last]
        home[last] = json.loads(json.dumps(dice.choice(same))) if same else dice.choice(ODD)
    elif way < 0.75 and isinstance(home, list):
        home[last:last] = json.loads(json.dumps([value] * dice.choice((1, 1, 2, 30, 250))))
    elif way < 0.87:
        schemas = _schemas().get(last if isinstance(last, str) else "", ())
        home[last] = made(dice.choice(schemas), dice) if schemas else dice.choice(ODD)
    else:
        _key_added(value if isinstance(value, dict) else home, dice)


def _near(value: Any, dice: Random) -> Any:
    """A value of the same kind: a number or a quantity scaled, a word changed for another."""
    far = (0.0, 0.001, 0.01, 0.1, 0.3, 0.5, 0.8, 0.95, 1.05, 1.3, 2, 5, 10, 100, 1000)
    by = dice.choice(far) if dice.random() < 0.6 else dice.uniform(0.2, 3)
    if isinstance(value, bool):
        return not value
    if isinstance(value, int):
        return dice.choice((0, 1, 2, 3, value - 1, value + 1, value * 2, 4, 5, 8, 12, 30, 60, 200, int(value * by)))
    if isinstance(value, float):
        return value * by
    found = re.fullmatch(r"(\d+(?:\.\d+)?)(?: (\d+)/(\d+))?( ?[^\d\s].*)", value)
    if found:
        amount = float(found[1]) + (int(found[2]) / max(1, int(found[3])) if found[2] else 0.0)
        return f"{amount * by:.6g}{found[4]}"
    return dice.choice(NAMES)


def _key_added(home: Any, dice: Random) -> None:
    """A key that the schema knows for such a map, filled as the schema wants."""
    if not isinstance(home, dict):
        return
    fitting = [node for node in _objects() if set(home) <= set(node["properties"])] or list(_objects()[:1])
    node = dice.choice(fitting[:6])
    key = dice.choice(sorted(node["properties"]))
    home[key] = made(node["properties"][key], dice)


def made(node: dict[str, Any], dice: Random, depth: int = 0) -> Any:
    """A value that a schema takes, now and then an extreme one."""
    node = _whole(node, dice)
    if "const" in node:
        return node["const"]
    if "enum" in node:
        return dice.choice(node["enum"])
    if "title" in node and node["title"] in PARSERS:
        return quantity(node["title"], dice)
    kind = node.get("type", "object" if "properties" in node else "string")
    kind = dice.choice(kind) if isinstance(kind, list) else kind
    if kind == "boolean":
        return dice.random() < 0.5
    if kind in ("integer", "number"):
        return _number(node, kind, dice)
    if kind == "array":
        most = min(node.get("maxItems", 6), dice.choice((1, 2, 3, 3, 6, 40)))
        count = max(node.get("minItems", 0), dice.randint(0, most))
        return [made(node.get("items", {}), dice, depth + 1) for _ in range(count)]
    if kind == "object":
        return _object(node, dice, depth)
    return dice.choice(NAMES)


def _object(node: dict[str, Any], dice: Random, depth: int) -> dict[str, Any]:
    properties, wanted = node.get("properties", {}), node.get("required", ())
    share = 0.5 if depth < 3 else 0.1
    made_of = {key: made(inner, dice, depth + 1) for key, inner in properties.items()
               if key in wanted or dice.random() < share}
    others = node.get("additionalProperties")
    if isinstance(others, dict):
        made_of |= {dice.choice(NAMES): made(others, dice, depth + 1) for _ in range(dice.randint(0, 3))}
    return made_of


def _whole(node: dict[str, Any], dice: Random) -> dict[str, Any]:
    """A node with its references and one of its branches written out."""
    found = dict(node)
    while "$ref" in found:
        found = {**load_schema("spec")["$defs"][found.pop("$ref").rsplit("/", 1)[1]], **found}
    branches = [part for part in (found.pop("then", None), found.pop("else", None)) if part]
    several = [part["then"] for part in found.pop("allOf", ()) if "then" in part]
    for chosen in [dice.choice(group) for group in (branches, several) if group]:
        found = _joined(found, _whole(chosen, dice))
    return found


def _joined(one: dict[str, Any], more: dict[str, Any]) -> dict[str, Any]:
    properties = {**one.get("properties", {}), **more.get("properties", {})}
    required = [*one.get("required", ()), *more.get("required", ())]
    return {**one, **more, **({"properties": properties} if properties else {}),
            **({"required": required} if required else {})}


def _number(node: dict[str, Any], kind: str, dice: Random) -> int | float:
    least, most = node.get("minimum", node.get("exclusiveMinimum", 0)), node.get("maximum", 1000)
    if kind == "integer":
        return int(dice.choice((least, least + 1, most, dice.randint(int(least), int(most)), 5, 9)))
    return dice.choice((least, most, dice.uniform(least, most), least + (most - least) * 0.01))


def quantity(title: str, dice: Random) -> str:
    """A quantity of a kind: mostly of a size that makers use, sometimes from anywhere within its bounds."""
    title = title.removesuffix(", zero allowed")
    if title == "price":
        return f"{dice.choice(('0.01', '5', '19.90', '250', '999999.99', '1000000000'))} EUR"
    if title == "fraction of the girth":
        return dice.choice(("0", "1/12", "1/2", "0.9999", "0.25"))
    dimension = _DIMENSIONS.get(title, title)
    units = [unit for unit in UNITS.values() if unit.dimension == dimension]
    unit = dice.choice(units)
    least, most = (float(bound / unit.factor) for bound in BOUNDS[dimension])
    usual = dice.choice((0.5, 1, 2, 5, 10, 30, 70, 110, 300))
    amount = usual if dice.random() < 0.7 else least * (most / least) ** dice.random()
    return f"{min(max(amount, least * 1.01), most * 0.99):.5g} {unit.symbol}"


@cache
def _objects() -> tuple[dict[str, Any], ...]:
    """Every map of the schema that has keys of its own."""
    return tuple(node for _, node in walk(load_schema("spec"))
                 if isinstance(node, dict) and isinstance(node.get("properties"), dict) and "if" not in node)


@cache
def _schemas() -> dict[str, tuple[dict[str, Any], ...]]:
    """Every schema that a key may have anywhere."""
    found: dict[str, list[dict[str, Any]]] = {}
    for node in _objects():
        for key, inner in node["properties"].items():
            found.setdefault(key, []).append(inner)
    return {key: tuple(inner) for key, inner in found.items()}


def written(tree: Any) -> bytes:
    """A tree as YAML: keys on lines of their own, values as JSON."""
    return ("".join(_written(tree, "")) or "{}\n").encode("utf-8", "replace")


def _written(value: Any, indent: str) -> Iterator[str]:
    for key, item in value.items() if isinstance(value, dict) else ():
        name = key if re.fullmatch(r"[a-z][a-z_ ]*", key) else json.dumps(key, ensure_ascii=False)
        if isinstance(item, dict) and item:
            yield f"{indent}{name}:\n"
            yield from _written(item, indent + "  ")
        elif isinstance(item, list) and item:
            yield f"{indent}{name}:\n"
            yield from (f"{indent}  - {_plain(one)}\n" for one in item)
        else:
            yield f"{indent}{name}: {_plain(item)}\n"


def _plain(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False)
