"""The vocabulary of actions and conditions: complete, and spoken by no more than the tasks need."""

from __future__ import annotations

from hoopwright.work.actions import ACTIONS
from hoopwright.work.conditions import CONDITIONS
from hoopwright.work.endings import _LEFT

SETUPS = {"water", "table", "metal", "joining", "machine", "hand", "body"}


def test_every_action_is_keyed_by_itself_and_has_a_meaning_and_a_known_set_up() -> None:
    for key, action in ACTIONS.items():
        assert action.key == key
        assert action.meaning
        assert action.setup in SETUPS


def test_every_condition_is_keyed_by_itself_and_says_what_it_measures() -> None:
    assert all(key == condition.key and condition.meaning for key, condition in CONDITIONS.items())
    assert sum(1 for condition in CONDITIONS.values() if condition.value) >= 6


def test_a_session_may_end_after_any_action() -> None:
    assert set(_LEFT) == set(ACTIONS)
