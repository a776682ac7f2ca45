"""What is said of one kind of understructure stands in no plan of another."""

from __future__ import annotations

import re
from collections.abc import Callable

from hoopwright.plan.model import Plan
from hoopwright.render.markdown import plan_markdown
from hoopwright.render.outcome import check_name
from hoopwright.render.views.cutting import cutting_view


def test_side_hoops_close_with_their_fastening_and_nothing_is_tied(committed: Callable[[str], Plan]) -> None:
    page = plan_markdown(committed("pump-room/side-hoops.yaml"))
    assert "close the hook and bar in front" in page
    assert "open the waistband and take the pair off" in page
    assert not re.search(r"\bapron\b|\buntie\b|hold a lap while", page)


def test_no_caution_folds_the_hoops_of_a_wheel(committed: Callable[[str], Plan]) -> None:
    page = plan_markdown(committed("moon-masque/wheel.yaml"))
    assert "A wheel does not fold." in page
    assert "fold the hoops" not in page


def test_a_coil_is_opened_for_all_that_is_cut_from_it(committed: Callable[[str], Plan]) -> None:
    wheel, cage = plan_markdown(committed("moon-masque/wheel.yaml")), plan_markdown(committed("five-lines/cage.yaml"))
    assert "- [ ] coil opened, for H1 to H5, S1 to S10" in wheel
    assert "Open every further coil in the same way" in wheel
    assert "S1" not in next(line for line in cage.splitlines() if "coil opened" in line)


def test_what_a_join_uses_up_is_laid_ready_with_its_tools(committed: Callable[[str], Plan]) -> None:
    bound, soldered = (plan_markdown(committed(name)) for name in ("moon-masque/wheel.yaml", "harbour-play/cage.yaml"))
    assert bound.count("lay ready: thread, glue, sticky tape, scissors") == 2
    assert "lay ready: solder and flux, soldering iron, file, clamps" in soldered


def test_another_layout_is_told_only_where_it_takes_more_cloth(committed: Callable[[str], Plan]) -> None:
    told = {}
    for name in ("harbour-play/cage.yaml", "mill-pageant/cage.yaml"):
        plan = committed(name)
        (layout,), (row,) = plan.supply.layouts, cutting_view(plan, {}, {}).cloth
        assert layout.other_way is not None
        told[name] = (layout.other_way > layout.need, bool(row.other))
    assert sorted(told.values()) == [(False, False), (True, True)]


def test_a_check_of_the_whole_is_called_by_the_word_of_its_family(committed: Callable[[str], Plan]) -> None:
    plan = committed("pump-room/side-hoops.yaml")
    door = next(check for check in plan.checks if check.code == "door-width")
    assert check_name(door, plan) == "door-width pair"
