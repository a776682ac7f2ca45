"""A record behaves as the frozen dataclass it is written as, from before its first value is made."""

from __future__ import annotations

import pickle
from dataclasses import dataclass, field, fields, is_dataclass, replace
from typing import Any

import pytest

from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Strip:
    """A strip of steel, mm."""

    width: float
    thickness: float = 1.0
    joins: tuple[str, ...] = ()
    marks: dict[str, float] = field(default_factory=dict)


@record(frozen=True, slots=True)
class Curved(Strip):
    """One with a bend in it, mm."""

    radius: float = 300.0


@record(frozen=True, slots=True)
class Untouched:
    """Asked for its fields before any value is made."""

    one: int
    two: int = 2


@dataclass(frozen=True)
class Model:
    """What a strip is held against."""

    width: float
    thickness: float = 1.0


def test_fields_are_there_before_the_first_value() -> None:
    assert is_dataclass(Untouched)
    assert [item.name for item in fields(Untouched)] == ["one", "two"]
    assert Untouched(1) == Untouched(1, 2)


def test_a_record_that_builds_on_one_has_its_fields_first() -> None:
    bent = Curved(10.0, radius=250.0)
    assert [item.name for item in fields(Curved)] == ["width", "thickness", "joins", "marks", "radius"]
    assert (bent.width, bent.thickness, bent.radius) == (10.0, 1.0, 250.0)
    assert replace(bent, width=12.0) == Curved(12.0, radius=250.0)


def test_values_are_told_apart_by_class_and_by_what_they_hold() -> None:
    assert Strip(10.0) == Strip(10.0) != Strip(11.0)
    assert Strip(10.0) != Curved(10.0) != Model(10.0)
    assert hash(Untouched(1)) == hash(Untouched(1))
    assert Strip(10.0).marks is not Strip(10.0).marks


def test_it_prints_as_a_dataclass_does() -> None:
    assert repr(Strip(10.0)).replace(", joins=(), marks={}", "") == repr(Model(10.0)).replace("Model", "Strip")


def test_wrong_arguments_are_refused_at_the_first_value_and_after() -> None:
    @record(frozen=True, slots=True)
    class Fresh:
        width: float

    fresh: Any = Fresh
    for wrong in ((), (), (1.0, 2.0)):
        with pytest.raises(TypeError, match=r"width|positional"):
            fresh(*wrong)
    assert fresh(1.0).width == 1.0


def test_a_value_from_another_process_is_whole_where_none_was_made_yet() -> None:
    """A pickle makes its values without ``__init__``."""

    @record(frozen=True, slots=True)
    class Sent:
        width: float
        thickness: float = 1.0

    value = object.__new__(Sent)
    value.__dict__.update(width=10.0, thickness=0.5)
    assert replace(value, width=11.0) == Sent(11.0, 0.5)
    assert Strip(10.0) == pickle.loads(pickle.dumps(Strip(10.0)))
