"""One place decides by which word a page speaks of a design, and the committed pages keep to it."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from hoopwright.compile import compile_spec
from hoopwright.spec.family import FULL, Family, family_of

SPECS = Path(__file__).parents[2] / "specs"
WORDS: dict[str, Family] = {
    "dye-works/petticoat": "petticoat",
    "harbour-play/cage": "cage",
    "ferry-crossing/cage": "cage",
    "moon-masque/wheel": "wheel",
    "night-tour/bustle": "bustle cage",
    "platform-two/crinolette": "crinolette",
    "pump-room/side-hoops": "pair",
    "quay-market/petticoat": "petticoat",
    "salt-masque/farthingale": "farthingale",
    "starters/bustle-centimetres": "bustle cage",
    "starters/cone-farthingale-inches": "farthingale",
    "starters/corded-petticoat-centimetres": "petticoat",
    "starters/crinolette-inches": "crinolette",
    "starters/hooped-petticoat-centimetres": "petticoat",
    "starters/side-hoops-centimetres": "pair",
    "starters/thrown-back-cage-inches": "cage",
    "starters/wheel-farthingale-inches": "wheel",
}


@pytest.mark.parametrize(("name", "word"), WORDS.items(), ids=list(WORDS))
def test_each_design_has_the_word_of_its_family(name: str, word: Family) -> None:
    """The word follows from what carries the hoops, the ground plan and the cut of the cloth."""
    spec = compile_spec((SPECS / f"{name}.yaml").read_bytes(), name, syntax_only=True).spec
    assert spec is not None
    assert family_of(spec) == word
    assert word in FULL


@pytest.mark.parametrize("name", [name for name in WORDS if not name.startswith("starters")])
def test_a_page_speaks_of_what_it_is_about(name: str) -> None:
    """Before the annex no page but a cage's calls it a cage, and every page calls it by its own word."""
    page = (SPECS / name).with_name("plan.md").read_text("utf-8").partition("\n# Annex")[0]
    said, word = re.sub(r"\b(?:bustle cage|[\w-]+\.yaml)\b", "", page), WORDS[name]
    assert word == "cage" or not re.search(r"\bcages?\b", said)
    for phrase in (f"the finished {word} will be washed", f"the {word} alone", f"the {word} is finished",
                   f"For this {word} that is"):
        assert phrase in page
