"""Every stop of every committed plan can be judged: measured conditions, tolerances, what to change; and every plan
says how it is put on and off."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PAGES = sorted((ROOT / "specs").glob("*/plan.md"))
STOP = re.compile(r"^#### \d+\. (Stop: [^\n]*)\n(.*?)(?=^#{2,4} )", re.DOTALL | re.MULTILINE)
PUT_ON = {
    "night-tour": "Lay it round the body from behind",
    "platform-two": "Step into it",
    "pump-room": "Lay the waistband round the waist",
    "moon-masque": "Put it on overhead or step into it",
    "harbour-play": "Step into it",
    "salt-masque": "Step into it",
    "dye-works": "Step into it",
}
each = pytest.mark.parametrize("page", PAGES, ids=lambda page: page.parent.name)


@each
def test_a_stop_names_two_measures_and_a_mend_for_everything(page: Path) -> None:
    """Two measured conditions at least have a tolerance; nothing in the box lacks what to change."""
    stops = STOP.findall(page.read_text("utf-8"))
    assert len(stops) >= 2
    for title, body in stops:
        rows = [line.removeprefix("> ") for line in body.split("\n") if line.startswith("> |") and "____" in line]
        cells = [[cell.strip() for cell in re.split(r"(?<!\\)\|", row)[1:-1]] for row in rows]
        assert sum("within" in wanted for _, wanted, _, _ in cells) >= 2, title
        assert all(must and wanted and mend for must, wanted, _, mend in cells), title
        assert cells[0][3] != "as above", title


@each
def test_a_plan_says_how_it_is_put_on_and_what_frees_the_wearer(page: Path) -> None:
    found = re.search(r"^\*\*On and off\.\*\* (.*)$", page.read_text("utf-8"), re.MULTILINE)
    assert found is not None
    assert found[1].startswith(PUT_ON.get(page.parent.name, ("Step into it", "Put it on overhead")))
    assert " last" in found[1]
    assert "one pull" in found[1]
