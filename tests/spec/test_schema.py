"""The schema is the editor's help and the compiler's first check: complete, closed, and self-contained."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from hoopwright.spec.checking.quantities import PARSERS
from hoopwright.spec.checking.schema import load_schema, schema_text

SCHEMA = load_schema("spec")


def nodes(node: Any, at: str = "#") -> Iterator[tuple[str, dict[str, Any]]]:
    """Every mapping in the schema that is itself a schema, with where it stands."""
    if not isinstance(node, dict):
        return
    yield at, node
    for word in ("properties", "$defs"):
        for key, inner in node.get(word, {}).items():
            yield from nodes(inner, f"{at}/{word}/{key}")
    for word in ("items", "additionalProperties", "then", "else"):
        yield from nodes(node.get(word), f"{at}/{word}")
    for index, inner in enumerate(node.get("allOf", ())):
        yield from nodes(inner, f"{at}/allOf/{index}")


ALL = dict(nodes(SCHEMA))


def test_it_is_a_schema_of_its_draft() -> None:
    assert SCHEMA["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    Draft202012Validator.check_schema(SCHEMA)


def test_every_key_has_a_description() -> None:
    keys = {at: node for at, node in ALL.items() if at.split("/")[-2:-1] == ["properties"]}
    assert len(keys) > 150
    bare = [at for at, node in keys.items() if len(node.get("description", "")) < 10]
    assert bare == []


def test_descriptions_end_as_sentences() -> None:
    for at, node in ALL.items():
        told = node.get("description", ".")
        assert told.endswith((".", "`)")), at


def test_every_object_is_closed() -> None:
    """An object lists its keys, or what its free names hold; branches do so in each branch."""
    free = {f"#/$defs/variant/properties/{key}" for key in
            ("wearer", "shape", "build", "skirt", "allowances", "limits", "workshop", "materials")}
    for at, node in ALL.items():
        if node.get("type") == "object" and "allOf" not in node and "if" not in node and at not in free:
            assert "additionalProperties" in node, at
            assert node["additionalProperties"] is False or isinstance(node["additionalProperties"], dict), at


def test_references_stay_within_the_file() -> None:
    for at, node in ALL.items():
        if "$ref" in node:
            assert node["$ref"].startswith("#/$defs/"), at
            assert node["$ref"].rsplit("/", 1)[1] in SCHEMA["$defs"], at
    for word in ('"oneOf"', '"anyOf"', '"pattern"'):
        assert word not in schema_text("spec")


def test_every_quantity_has_a_reader_and_its_examples_can_be_read() -> None:
    quantities = [node for node in SCHEMA["$defs"].values() if node.get("title") in PARSERS]
    assert {node["title"] for node in quantities} == set(PARSERS)
    for node in quantities:
        for example in node["examples"]:
            PARSERS[node["title"]](example)


def test_an_unknown_schema_is_an_error() -> None:
    with pytest.raises(FileNotFoundError):
        schema_text("pattern")
