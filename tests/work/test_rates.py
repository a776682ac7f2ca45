"""Minutes from named rates: each has a source and a key, the sums add up, a workshop's own hold."""

from __future__ import annotations

from collections.abc import Callable
from types import SimpleNamespace

import pytest

from hoopwright.spec.checking.schema import load_schema
from hoopwright.work.model import Work
from hoopwright.work.rates import JOIN, OWN, PRACTICE, RATES, with_own

Worked = Callable[[str], tuple[SimpleNamespace, Work]]


def with_rates(text: str, rates: str) -> str:
    return text.replace("helper: false}", f"helper: false, rates: {{{rates}}}}}")


def test_every_rate_has_a_source_and_a_key_that_tells_its_default() -> None:
    keys = load_schema("spec")["properties"]["workshop"]["properties"]["rates"]["properties"]
    assert set(keys) == set(RATES) | {JOIN}
    for name, rate in RATES.items():
        assert rate.source
        assert PRACTICE in rate.source or any(sign.isdigit() for sign in rate.source)
        assert keys[name]["description"].endswith(f"Default {rate.minutes:g} min.")


def test_what_the_rates_were_counted_for_adds_up_to_the_minutes_of_the_work(
    worked: Worked, harbour_text: str
) -> None:
    _, work = worked(harbour_text)
    total = sum(spent.minutes * spent.count for spent in work.spent)
    assert total == pytest.approx(work.minutes, abs=len(work.tasks) / 2)
    counted = {spent.rate: spent.count for spent in work.spent}
    assert counted["sew fixing"] == 42
    assert counted["cut hoop"] == 7
    assert counted[JOIN] == 8  # seven hoops and the proof


def test_a_workshops_own_rate_holds_and_no_other_moves(worked: Worked, harbour_text: str) -> None:
    _, usual = worked(harbour_text)
    _, slow = worked(with_rates(harbour_text, "sew fixing: 9 min"))
    assert slow.minutes - usual.minutes == pytest.approx(42 * 4.5)
    assert {spent.rate: spent.source for spent in slow.spent}["sew fixing"] == OWN
    assert [spent.rate for spent in slow.spent] == [spent.rate for spent in usual.spent]


def test_the_minutes_of_a_join_can_be_her_own(worked: Worked, harbour_text: str) -> None:
    usual = {task.id: task.minutes for task in worked(harbour_text)[1].tasks}
    quick = {task.id: task.minutes for task in worked(with_rates(harbour_text, "join: 2 min"))[1].tasks}
    changed = {name: usual[name] - quick[name] for name in usual if usual[name] != quick[name]}
    assert changed == dict.fromkeys(("prove-join", *(f"join-H{k}" for k in range(1, 8))), 10)


def test_own_rates_keep_what_they_are_counted_by() -> None:
    rates = with_own({"hand seam": 20.0, JOIN: 3.0})
    assert (rates["hand seam"].per, rates["hand seam"].minutes) == ("m", 20.0)
    assert rates[JOIN].per == "piece"
    assert rates["wash"] == RATES["wash"]
