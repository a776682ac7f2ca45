"""Differences of designs whose amounts were moved about: none from itself, the same from both sides, always told."""

from __future__ import annotations

import json
from functools import cache
from random import Random

import pytest
from fuzzing import structural
from fuzzing.cases import tree_of
from fuzzing.corpus import ROOT

from hoopwright.compare.difference import difference
from hoopwright.compare.flatten import flattened
from hoopwright.compare.machine import difference_json
from hoopwright.compare.markdown import markdown
from hoopwright.compare.words import text
from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan
from hoopwright.render.quantities import Printer
from hoopwright.source.read import read

QUICK = ("moon-masque/wheel.yaml", "pump-room/side-hoops.yaml", "dye-works/petticoat.yaml")
"""Designs whose hoops need no solving."""


@cache
def planned(data: bytes) -> Plan | None:
    run = compile_spec(data, "cage.yaml")
    assert run.plan is not None or run.diagnostics
    return run.plan


@pytest.mark.parametrize("number", range(15))
def test_a_design_and_its_like(number: int) -> None:
    name = QUICK[number % len(QUICK)]
    origin = (ROOT / "specs" / name).read_bytes()
    like = planned(structural.written(structural.moved(tree_of(origin), Random(f"like-{number}"))))
    before = planned(origin)
    assert before is not None
    if like is None:
        return
    there, back = difference(before, like), difference(like, before)
    assert tuple(change.mirrored() for change in there.changes) == back.changes
    assert difference(like, like).empty
    printer = Printer.of(like.spec)
    for found in (there, back):
        assert json.loads(difference_json(found, ("a", "b")))["diff"] == 1
        assert text(found, ("a", "b"), printer).strip()
        assert markdown(found, ("a", "b"), printer).strip()


@pytest.mark.parametrize("number", range(40))
def test_the_lines_of_values_stand_for_every_value(number: int) -> None:
    """As many lines as values, each ending in its value, and the same whatever the order of keys."""
    dice = Random(f"values-{number}")
    origin = (ROOT / "specs" / dice.choice(QUICK)).read_bytes()
    tree = structural.damaged(tree_of(origin), {}, dice)
    document, _ = read(structural.written(tree), "cage.yaml")
    if document is None:
        return
    lines = flattened(document).splitlines()
    values = [value for _, value in structural.walk(document.value)
              if value in ({}, []) or not isinstance(value, dict | list)]
    assert len(lines) == len(values)
    said = sorted(line.partition(" = ")[2] for line in lines)
    assert said == sorted(_said(value) for value in values)
    turned, _ = read(structural.written(_turned(document.value)), "cage.yaml")
    assert turned is not None
    assert flattened(turned).splitlines() == lines


def _said(value: object) -> str:
    plain = isinstance(value, str) and value.isprintable() and value == value.strip() and value
    return str(value) if plain else json.dumps(value, ensure_ascii=False)


def _turned(value: object) -> object:
    """The same with the keys of every map in the opposite order."""
    if isinstance(value, dict):
        return {key: _turned(value[key]) for key in reversed(value)}
    return [_turned(item) for item in value] if isinstance(value, list) else value
