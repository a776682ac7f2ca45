"""Documents laid over one another: merged as plain values are, every value at the place it was written."""

from __future__ import annotations

from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from hoopwright.source.overlay import exchanged, lay, merged, part, put, without
from hoopwright.source.read import Document, read

KEYS = st.sampled_from(["a", "b", "kind", "from", "list"])
LEAVES = st.sampled_from(["x", "y", 1, 2, True])
VALUES = st.recursive(LEAVES | st.lists(LEAVES, max_size=3),
                      lambda inner: st.dictionaries(KEYS, inner, max_size=4), max_leaves=12)
GROUPS = st.dictionaries(KEYS, VALUES, min_size=1, max_size=4)


def document(value: Any, file: str) -> Document:
    import json

    found, said = read(json.dumps(value, indent=1).replace("\t", " ").encode(), file)
    assert found is not None, said
    return found


def leaves(value: Any, path: tuple[str | int, ...] = ()) -> dict[tuple[str | int, ...], Any]:
    if isinstance(value, dict):
        return {at: item for key, inner in value.items() for at, item in leaves(inner, (*path, key)).items()}
    if isinstance(value, list):
        return {at: item for i, inner in enumerate(value) for at, item in leaves(inner, (*path, i)).items()}
    return {path: value}


@given(GROUPS, GROUPS)
def test_every_value_stands_where_it_was_written(base: Any, over: Any) -> None:
    laid = lay(document(base, "base.yaml"), document(over, "over.yaml"))
    assert laid.value == merged(base, over)
    texts = {"base.yaml": document(base, "base.yaml").text, "over.yaml": document(over, "over.yaml").text}
    for path, value in leaves(laid.value).items():
        span = laid.spans[path]
        written = texts[span.file].split("\n")[span.line - 1][span.column - 1 : span.end_column - 1]
        assert written.strip('"') == (str(value).lower() if isinstance(value, bool) else str(value))
    assert all(laid.spans[at].file == "over.yaml" for at in leaves(over))


@given(GROUPS, GROUPS)
def test_laying_twice_is_laying_once(base: Any, over: Any) -> None:
    once = lay(document(base, "a"), document(over, "b"))
    assert lay(once, document(over, "b")) == once
    assert merged(base, base) == base


@given(GROUPS)
def test_a_part_put_back_is_where_it_was(value: Any) -> None:
    whole = document({"outer": value, "beside": 1}, "a")
    assert put(whole, ("outer",), part(whole, ("outer",))) == whole
    assert without(whole, "beside").value == {"outer": value}
    assert all(path[:1] != ("beside",) for path in without(whole, "beside").spans)


def test_exchanging_a_value_leaves_the_original_alone() -> None:
    value = {"a": [{"b": 1}, 2]}
    assert exchanged(value, {("a", 0, "b"): 3}) == {"a": [{"b": 3}, 2]}
    assert value == {"a": [{"b": 1}, 2]}


def test_a_group_of_another_kind_or_file_is_replaced_whole() -> None:
    base = {"line": {"kind": "dome", "swell": 2}, "wearer": {"waist": 1, "from": "a"}, "l": [1, 2]}
    assert merged(base, {"line": {"kind": "cone"}, "wearer": {"from": "b"}, "l": [3]}) == {
        "line": {"kind": "cone"}, "wearer": {"from": "b"}, "l": [3]}
    assert merged(base, {"line": {"swell": 3}})["line"] == {"kind": "dome", "swell": 3}
    assert merged({"materials": {"m": {"from": "a", "on_hand": 1}}}, {"materials": {"m": {"from": "b"}}}) == {
        "materials": {"m": {"from": "b", "on_hand": 1}}}
