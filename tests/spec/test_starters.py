"""Starters are good specs as they stand, and stay so when they are fitted to a wearer."""

from __future__ import annotations

import re
from math import pi

import pytest

from hoopwright.shape.draw import draw
from hoopwright.source.diagnostic import failed
from hoopwright.source.quantity import QuantityError
from hoopwright.source.read import read
from hoopwright.spec.model import Spec
from hoopwright.spec.resolve import resolve
from hoopwright.spec.starters import starter, starters
from hoopwright.supply.provide import provide

INCH = 0.0254
NAMES = [name for name, _ in starters()]


def spec_of(text: str) -> Spec:
    document, said = read(text.encode(), "starter.yaml")
    assert document is not None, said
    spec, found = resolve(document)
    assert spec is not None, found
    assert found == ()
    return spec


def test_there_is_one_for_each_system_of_units() -> None:
    assert {spec_of(starter(name, {})).units for name in NAMES} == {"inches", "centimetres"}


def test_each_says_when_and_for_whom() -> None:
    for name, about in starters():
        assert re.search(r"of about 1[5-9]\d\d", about), name
        assert "wearer" in about
        assert "skirt" in about
        assert "#" not in about


@pytest.mark.parametrize("name", NAMES)
def test_comments_survive_and_the_plain_starter_is_unchanged(name: str) -> None:
    plain = starter(name, {})
    fitted = starter(name, {"stature": "5 ft 1 in", "waist": "25 in"})
    assert plain.count("#") == fitted.count("#") > 20
    assert plain.startswith("# A ")
    pairs = zip(plain.splitlines(), fitted.splitlines(), strict=True)
    changed = [line for line, other in pairs if line != other]
    assert 4 <= len(changed) <= 9


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("stature", ["4 ft 8 in", "150 cm", "6 ft 1 in", "5' 6\""])
def test_proportions_follow_the_stature(name: str, stature: str) -> None:
    plain, fitted = spec_of(starter(name, {})), spec_of(starter(name, {"stature": stature}))
    ratio = fitted.wearer.stature / plain.wearer.stature
    for was, now in ((plain.shape.hem_girth, fitted.shape.hem_girth),
                     (plain.shape.hem_off_floor, fitted.shape.hem_off_floor)):
        rounds = 0.0033 * (pi if plain.build.wheel is not None else 1.0)  # of a wheel the width is rounded
        assert now == pytest.approx(was * ratio, abs=rounds)
    if plain.build.wheel is not None and fitted.build.wheel is not None:
        assert fitted.build.wheel.set_back == pytest.approx(plain.build.wheel.set_back * ratio, abs=0.0033)
    pair, other = plain.shape.ground_plan.pair, fitted.shape.ground_plan.pair
    if pair is not None and other is not None:
        for before, after in zip(pair.hoops, other.hoops, strict=True):
            assert after.drop == pytest.approx(before.drop * ratio, abs=0.0033)
            assert after.reach == pytest.approx(before.reach * ratio, abs=0.0033)
    assert fitted.wearer.side == pytest.approx(0.630 * fitted.wearer.stature)


@pytest.mark.parametrize("name", NAMES)
def test_a_hip_is_worked_out_unless_it_is_given(name: str) -> None:
    assert spec_of(starter(name, {"waist": "80 cm"})).wearer.hip == pytest.approx(0.80 / 0.837, abs=0.0033)
    assert spec_of(starter(name, {"waist": "80 cm", "hip": "110 cm"})).wearer.hip == pytest.approx(1.10)


@pytest.mark.parametrize("title", [
    'A: "b" #c', "{{ 1 }} <b> `x`", "- [x]", "*x &y !z %", "ünï\tcode \\n", "null",
])
def test_any_title_is_taken_as_text(title: str) -> None:
    assert spec_of(starter(NAMES[0], {"title": title})).title == title


def test_bad_answers_are_errors() -> None:
    with pytest.raises(QuantityError) as bare:
        starter(NAMES[0], {"waist": "28"})
    assert bare.value.code == "unit-missing"
    with pytest.raises(QuantityError):
        starter(NAMES[0], {"title": "x" * 201})
    with pytest.raises(KeyError):
        starter("no such starter", {})


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("body", [("142 cm", "52 cm", "70 cm"), ("186 cm", "88 cm", "118 cm"),
                                  ("193 cm", "120 cm", "140 cm")])
def test_small_and_large_bodies_are_drawn_and_their_stock_is_found(name: str, body: tuple[str, str, str]) -> None:
    """A corded petticoat's two breadths were once wider than its cloth."""
    spec = spec_of(starter(name, dict(zip(("stature", "waist", "hip"), body, strict=True))))
    shape, said = draw(spec)
    assert shape is not None
    supply, more = provide(spec, shape)
    assert supply is not None
    assert not failed((*said, *more))
