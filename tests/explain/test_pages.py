"""Pages are found by what a maker types, and say what they are in their first line."""

from __future__ import annotations

import pytest

from hoopwright.explain.pages import KINDS, Page, find, listing, nearest, pages

TRADE = """
    hoop, steel, tape, waistband, casing, channel, hem band, tuck, gore, breadth, placket, selvage, grain,
    bias, ease, turning, whip stitch, butt join, lap join, ferrule, clamp, tip, set, temper, spring-back,
    coil set, camber, burr, flare, cone, dome, bell, drum, fan, train, dip, bents, baleen, cane, half hoop,
    crinolette, splice, remnant, nap, kerf
"""
WORDS = [word.strip() for word in TRADE.split(",")]


@pytest.mark.parametrize("word", WORDS)
def test_every_word_of_the_trade_is_defined_in_one_line(word: str) -> None:
    found = [page for page in find(word) if page.kind == "words"]
    assert len(found) == 1
    assert found[0].title == word
    first = found[0].text.split("\n\n")[2 if "also" in found[0].fields else 1]
    assert "\n" not in first
    assert first.endswith(".")
    assert len(first) <= 110
    assert word not in first.lower().split()[:2], "a word is not defined by itself"


@pytest.mark.parametrize(("typed", "slug"), [
    ("Lap join", "lap-join"), ("lap joins", "lap-join"), ("SELVEDGE", "selvage"), ("bag", "hem-band"),
    ("spring back", "spring-back"), ("turnings", "turning"), ("unit-missing", "unit-missing"),
    ("Unit Missing", "unit-missing"), ("bents", "bents"),
])
def test_a_page_is_found_by_what_is_typed(typed: str, slug: str) -> None:
    assert slug in {page.slug for page in find(typed)}


@pytest.mark.parametrize(("typed", "offered"), [
    ("unit-mising", "unit-missing"), ("ferule", "ferrule"), ("crinolete", "crinolette"),
    ("placet", "placket"),
])
def test_a_near_name_is_offered(typed: str, offered: str) -> None:
    assert find(typed) == ()
    assert nearest(typed)[0] == offered


@pytest.mark.parametrize("typed", ["", "   ", "qqqqqq", "../../etc/passwd", "\x00", "é" * 500])
def test_nonsense_finds_nothing(typed: str) -> None:
    assert find(typed) == ()
    assert nearest(typed) == ()


@pytest.mark.parametrize("page", pages(), ids=lambda page: f"{page.kind}/{page.slug}")
def test_every_page_has_a_title_and_a_first_sentence(page: Page) -> None:
    assert page.text.startswith("# ")
    assert page.text.endswith("\n")
    assert page.summary
    assert page.summary.count("`") % 2 == 0
    assert len(page.summary) <= 200
    if page.kind == "codes":
        assert page.title == page.slug


def test_the_listing_names_every_page_once_under_its_kind() -> None:
    lines = listing().splitlines()
    listed = [line.split()[0] for line in lines if line.startswith("  ")]
    assert listed == [page.slug for kind in KINDS for page in pages() if page.kind == kind]
    assert len([line for line in lines if line and not line.startswith(" ")]) == len(KINDS)
