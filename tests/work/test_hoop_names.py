"""Hoops may be called what a maker likes: no name is taken for another task, and the record knows every part."""

from __future__ import annotations

from pathlib import Path

import pytest

from hoopwright.compile import Compiled, compile_spec

STARTERS = Path(__file__).parents[2] / "specs" / "starters"
OVAL, SIDES, WHEEL = "thrown-back-cage-inches", "side-hoops-centimetres", "wheel-farthingale-inches"


def compiled(name: str, was: str = "", now: str = "", more: str = "") -> Compiled:
    text = (STARTERS / f"{name}.yaml").read_text(encoding="utf-8")
    assert was in text
    return compile_spec((text.replace(was, now, 1).rstrip() + f"\n{more}\n").encode(), "cage.yaml")


@pytest.mark.parametrize("name", ["band", "tapes", "label", "ties", "casings", "ties-H2", "join", "hem", "strips"])
def test_a_hoop_of_any_name_has_tasks_of_its_own(name: str) -> None:
    made = compiled(OVAL, "hoops: {count:", f"hoops: {{names: ['{name}'], count:")
    assert made.plan is not None, made.diagnostics
    tasks = [task.id for task in made.plan.work.tasks]
    assert len(set(tasks)) == len(tasks)
    cut = [task.id for task in made.plan.work.tasks if task.action == "cut-hoop" and task.parts == (name,)]
    assert cut == ["cut-hem"] if name == "hem" else len(cut) == 1


@pytest.mark.parametrize("name", ["band", "hem band", "H2-tie-1"])
def test_a_cage_stands_whatever_its_hoops_are_called(name: str) -> None:
    """The hem band of the solved cage and the ties across it have names too."""
    for starter in ("round-cage-inches", OVAL):
        made = compiled(starter, "hoops: {count:", f"hoops: {{names: ['{name}'], count:")
        assert made.plan is not None, made.diagnostics
        assert made.plan.assessment.verdict != "will not stand"


@pytest.mark.parametrize(("starter", "part"), [
    (SIDES, "L1"), (SIDES, "R3"), (WHEEL, "S2"), (WHEEL, "H1"), (WHEEL, "casing H1"),
    ("hooped-petticoat-centimetres", "drawstring"), ("corded-petticoat-centimetres", "C7"),
])
def test_the_length_cut_for_a_part_of_any_family_is_noted_by_the_name_it_has_in_the_plan(
    starter: str, part: str
) -> None:
    plan = compiled(starter).plan
    assert plan is not None
    pieces = {piece.part: piece.length for pack in plan.supply.cutting.packs for piece in pack.pieces}
    wanted = pieces.get(part)
    if wanted is None:  # bought by measure, not laid on lengths
        wanted = next(one.drawstring for one in (plan.shape.petticoat, plan.shape.corded) if one is not None)
    made = compiled(starter, more=f"progress: {{cut: {{{part}: {wanted * 1000:.4f} mm}}}}")
    told = [one.code for one in made.diagnostics]
    assert "part-unknown" not in told
    assert "cut-no-longer-fits" not in told


@pytest.mark.parametrize(("starter", "part"), [(SIDES, "H1"), (SIDES, "S1"), (OVAL, "L1")])
def test_a_part_of_another_family_is_no_part_of_this_one(starter: str, part: str) -> None:
    made = compiled(starter, more=f"progress: {{cut: {{{part}: 40 cm}}}}")
    assert [one.code for one in made.diagnostics if one.severity.value == "error"] == ["part-unknown"]


def test_a_piece_serves_its_own_part_before_one_as_long() -> None:
    made = compiled(SIDES, more="progress: {cut: {R1: 40 cm}}")
    told = next(one for one in made.diagnostics if one.code == "cut-no-longer-fits")
    assert told.message.startswith("R1 was cut 40 cm")
    assert "then note its new length" in told.help


@pytest.mark.parametrize("starter", [SIDES, WHEEL])
@pytest.mark.parametrize("key", ["hem_height: 70 cm", "hoop_height: {H1: 70 cm}", "hoop_girth: {H1: 60 cm}"])
def test_a_frame_is_not_measured_hoop_by_hoop(starter: str, key: str) -> None:
    """Neither bows nor spokes would follow a hoop of another girth."""
    made = compiled(starter, more=f"fittings:\n  - {{on: 2027-03-02, {key}}}")
    assert "carrier-clash" in [one.code for one in made.diagnostics]
