"""Defects that damaged specs brought to light, each by its name."""

from __future__ import annotations

import pytest

from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan
from hoopwright.render.drawing import gauge
from hoopwright.source.read import read
from hoopwright.spec.check import Check
from hoopwright.strength import answer
from hoopwright.strength.cage import sparse


def planned(text: str) -> Plan:
    run = compile_spec(text.encode(), "cage.yaml")
    assert run.plan is not None, run.diagnostics
    return run.plan


def check(plan: Plan, code: str) -> Check:
    return next(one for one in plan.checks if one.code == code)


def worked(monkeypatch: pytest.MonkeyPatch) -> list[float]:
    """What is factored from now on: the unknowns of each matrix, and what setting it up costs."""
    done: list[float] = []
    factor = sparse.Pattern.factor

    def counting(self: sparse.Pattern, *given: object) -> object:
        done.append(sparse.cost(self.n))
        return factor(self, *given)

    monkeypatch.setattr(sparse.Pattern, "factor", counting)
    return done


@pytest.mark.parametrize("change", [("weight: 1.9 kg", "weight: 1000 kg"), ("girth: 110 in", "girth: 20 m")],
                         ids=["a tonne", "a hem of twenty metres"])
def test_a_cage_that_finds_no_rest_ends_within_the_work_allowed(
    change: tuple[str, str], harbour_text: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It took half a minute, and longer the more hoops there were."""
    monkeypatch.setattr(answer, "WORK", 4e5)
    monkeypatch.setattr(answer, "WORK_OF_TRIAL", 1e5)
    done = worked(monkeypatch)
    plan = planned(harbour_text.replace(*change))
    assert 4e5 < sum(done) < 4e5 + 6 * 1e5
    assert plan.assessment.verdict == "will not stand"
    said = check(plan, "equilibrium").remedy
    assert "in as many steps as a plan waits for" in said or "it carries at least" in said


def test_what_is_carried_more_is_left_open_when_the_work_allowed_ends(
    harbour_text: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Neither a number nor a pass is made up for a load that was not followed."""
    whole_cost = worked(monkeypatch)
    sound = check(planned(harbour_text), "buckling")
    assert (sound.result, sound.value) == ("holds", 3.0)
    monkeypatch.setattr(answer, "WORK", sum(whole_cost) * 0.6)
    found = check(planned(harbour_text), "buckling")
    assert (found.result, found.value) == ("not assessed", None)
    assert "it carries at least 1 times this load" in found.remedy


def test_a_sign_at_the_end_of_the_text_is_pointed_at_within_the_text() -> None:
    _, said = read(b"&", "cage.yaml")
    assert [(one.span.column, one.span.end_column) for one in said if one.span] == [(2, 2)]


@pytest.mark.parametrize(("where", "code"), [("casing", "material-unknown"), ("join", "join-unknown"),
                                             ("material", "material-unknown")])
def test_a_name_of_blanks_is_not_known(where: str, code: str) -> None:
    """It was passed over as if nothing were written, and then looked for."""
    text = ("spec: 1\nunits: inches\nwearer: {waist: 28 in}\nshape: {hem: {girth: 105 in}}\n"
            f'build: {{hoops: {{{where}: " "}}}}\n')
    run = compile_spec(text.encode(), "cage.yaml", syntax_only=True)
    assert [one.code for one in run.diagnostics if one.span and one.span.line == 5] == [code]


def test_a_petticoat_narrower_than_its_waist_ends_in_findings() -> None:
    """The root of a negative number was taken for the height of its edge."""
    text = ("spec: 1\nunits: centimetres\nwearer: {stature: 168 cm, waist: 7200 cm}\n"
            "shape: {hem: {girth: 2.7 m}, length: 90 cm}\n"
            "build: {carried_by: cords, cords: {groups: [{cords: 1}]}}\n")
    run = compile_spec(text.encode(), "cage.yaml", syntax_only=True)
    assert run.spec is None
    assert all(one.span is not None and one.help for one in run.diagnostics)


def test_the_gauges_of_a_hem_of_three_hundred_metres_look_at_each_stroke_once(
    monkeypatch: pytest.MonkeyPatch
) -> None:
    """Each stretch of tape went through the strokes of all before it: half a minute where there were two thousand."""
    monkeypatch.setattr(answer, "WORK", 4e4)
    monkeypatch.setattr(answer, "WORK_OF_TRIAL", 1e4)
    plan = planned("spec: 1\nunits: centimetres\nwearer: {stature: 168 cm, waist: 72 cm}\n"
                   "shape: {hem: {girth: 300 m}}\n")
    asked = 0
    shows = gauge.Stretch.shows

    def counting(self: gauge.Stretch, at: float) -> bool:
        nonlocal asked
        asked += 1
        return shows(self, at)

    monkeypatch.setattr(gauge.Stretch, "shows", counting)
    pages = gauge.draw_gauges(plan)
    assert len(pages) > 20
    assert asked < 2 * sum(page.svg.count("<path") + page.svg.count("<line") for page in pages)
