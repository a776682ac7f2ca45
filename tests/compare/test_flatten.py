"""A spec as lines: the same for any order of keys and list items that have names, one line for one change."""

from __future__ import annotations

import json
import random
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from hoopwright.compare.flatten import flattened
from hoopwright.source.read import read

SPEC: dict[str, Any] = {
    "spec": 1, "title": "a: b #c", "load": [{"name": "skirt", "weight": "4 lb"}, {"name": "petticoat"}],
    "progress": {"done": ["wash", "cut-H1"]}, "materials": {"x.y": {"on_hand": ["1 m", "1 m"]}}, "empty": {},
}


def lines(value: Any) -> list[str]:
    document, said = read(json.dumps(value, indent=1).encode(), "x.yaml")
    assert document is not None, said
    return flattened(document).splitlines()


def test_items_go_by_what_names_them() -> None:
    assert "load[skirt].weight = 4 lb" in lines(SPEC)
    assert "progress.done[] = cut-H1" in lines(SPEC)
    assert 'materials."x.y".on_hand[] = 1 m' in lines(SPEC)
    assert "empty = {}" in lines(SPEC)
    assert lines(SPEC) == sorted(lines(SPEC))


def test_one_change_is_one_line() -> None:
    more = json.loads(json.dumps(SPEC))
    more["progress"]["done"].insert(0, "press")
    more["load"].reverse()
    assert set(lines(more)) ^ set(lines(SPEC)) == {"progress.done[] = press"}


@given(st.integers(0, 2**32))
def test_the_order_of_keys_means_nothing(seed: int) -> None:
    keys = list(SPEC)
    random.Random(seed).shuffle(keys)
    assert lines({key: SPEC[key] for key in keys}) == lines(SPEC)


@given(st.recursive(st.text(max_size=5) | st.integers() | st.booleans() | st.none(),
                    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(
                        st.text("ab", min_size=1, max_size=2), inner, max_size=3), max_leaves=8))
def test_every_value_has_its_line_and_no_line_breaks(value: Any) -> None:
    def count(item: Any) -> int:
        if isinstance(item, dict) and item:
            return sum(map(count, item.values()))
        return sum(map(count, item)) if isinstance(item, list) and item else 1

    document, _ = read(json.dumps({"v": value}).encode(), "x.yaml")
    if document is not None:
        assert len(flattened(document).split("\n")) - 1 == count(document.value["v"])
