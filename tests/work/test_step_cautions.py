"""Every step warns of what can hurt there, lays ready what guards against it, and of nothing else."""

from __future__ import annotations

from collections.abc import Callable
from types import SimpleNamespace

from hoopwright.work.model import Task, Work

Worked = Callable[[str], tuple[SimpleNamespace, Work]]

CRIMPED = ("join: lap soldered, casing: braid", "join: sleeve crimped, casing: braid")


def doing(work: Work, action: str) -> Task:
    """The first task of an action."""
    return next(task for task in work.tasks if task.action == action)


def test_soldering_beside_cloth_is_shielded_and_acid_flux_is_washed_off(
    harbour: tuple[SimpleNamespace, Work],
) -> None:
    _, work = harbour
    joins = [task for task in work.tasks if task.action.startswith("join-hoop")]
    assert {task.action for task in joins} == {"join-hoop-shielded"}
    assert all({"hot-iron", "acid-flux", "flux-fume", "no-torch"} <= set(task.cautions) for task in joins)
    assert doing(work, "wash-joins").cautions == ("acid-flux",)


def test_cold_joins_want_no_shield(worked: Worked, harbour_text: str) -> None:
    _, work = worked(harbour_text.replace(*CRIMPED).replace("clamps, sewing", "clamps, pliers, sewing"))
    actions = {task.action for task in work.tasks}
    assert "join-hoop" in actions
    assert not actions & {"join-hoop-shielded", "wash-joins"}


def test_opening_the_coil_and_cutting_carry_their_cautions(harbour: tuple[SimpleNamespace, Work]) -> None:
    _, work = harbour
    assert "coil-lash" in doing(work, "open-coil").cautions
    assert {"gloves", "goggles", "string"} <= set(doing(work, "open-coil").tools)
    cut = doing(work, "cut-hoop")
    assert {"flying-ends", "cut-ends", "cutting-hard-strip"} <= set(cut.cautions)
    assert cut.tools == ("bolt cutters", "file", "sticky tape", "tape measure", "pencil", "goggles")


def test_the_iron_is_warned_of_where_cloth_is_pressed(harbour: tuple[SimpleNamespace, Work]) -> None:
    (press,) = [task for task in harbour[1].tasks if task.action == "press"]
    assert press.cautions == ("pressing",)


def test_thin_strip_flies_as_thick_does_and_snips_cut_it(worked: Worked, harbour_text: str) -> None:
    _, work = worked(harbour_text.replace("thickness: 0.042 in", "thickness: 0.02 in"))
    cautions = set(doing(work, "cut-hoop").cautions)
    assert "flying-ends" in cautions
    assert "cutting-hard-strip" not in cautions


def test_springs_held_by_clamps_are_warned_of_until_they_are_joined(harbour: tuple[SimpleNamespace, Work]) -> None:
    _, work = harbour
    held = [task for task in work.tasks if task.action == "clip-hoop" or task.id == "try-on-1"]
    assert len(held) == 8
    assert all("clamped-hoop" in task.cautions and "goggles" in task.tools for task in held)
    bent = [task for task in work.tasks if task.action in ("test-stock", "mark-hoop", "thread-channel",
                                                           "join-hoop-shielded")]
    assert all("recoil" in task.cautions and "goggles" in task.tools for task in bent)
    assert not {"clamped-hoop", "recoil"} & set(next(task for task in work.tasks if task.id == "try-on-2").cautions)
