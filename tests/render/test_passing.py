"""Task cards, wearing sheet and label: one page a task, complete, in plain words, and printable in one go."""

from __future__ import annotations

import re
from dataclasses import replace
from html.parser import HTMLParser

import pytest
from markdown_it import MarkdownIt

from hoopwright.cli.words import card_words
from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan
from hoopwright.render.figures import draw_figures
from hoopwright.render.passing import passed_on
from hoopwright.render.printable import html
from hoopwright.render.views.cards import EVERYDAY, Word, spoken
from hoopwright.work.model import Order

SPEC = b"""
spec: 1
title: "Lamp <dress> & *all*"
units: inches
wearer: {name: "Ada <b>", stature: 5 ft 7 in, waist: 28 in}
shape: {hem: {girth: 110 in}}
build: {hem_band: {depth: 9 in}}
"""


@pytest.fixture(scope="module")
def plan() -> Plan:
    found = compile_spec(SPEC, "cage.yaml").plan
    assert found is not None
    return found


@pytest.fixture(scope="module")
def files(plan: Plan) -> dict[str, str]:
    return passed_on(plan, draw_figures(plan), card_words())


def cards(files: dict[str, str]) -> list[str]:
    return files["cards.md"].split("\n---\n\n")[1:]


def test_every_task_is_on_exactly_one_card(plan: Plan, files: dict[str, str]) -> None:
    numbers = [int(card.split(". ")[0].removeprefix("# ")) for card in cards(files)]
    assert numbers == list(range(1, len(numbers) + 1))
    for task in plan.work.tasks:
        if task.action in ("cut-hoop", "join-hoop", "sew-hoop", "clip-hoop"):
            assert sum(f"`{task.id}`" in card for card in cards(files)) == 1


def test_a_card_is_complete_by_itself(files: dict[str, str]) -> None:
    for card in cards(files):
        assert "As in step" not in card
        assert "Again take care" not in card
        assert re.search(r"Begin when cards? [\d, to]+ (is|are) checked off|You can begin at once", card)
        assert re.search(r"\*\*Check\*\*, by somebody who did not do it: \w.+ Name _+", card)


def test_a_card_begins_only_after_cards_before_it(files: dict[str, str]) -> None:
    for number, card in enumerate(cards(files), 1):
        for told in re.findall(r"Begin when cards? ([\d, to]+) ", card):
            assert max(int(one) for one in re.findall(r"\d+", told)) < number


def test_cards_of_cut_ends_say_how_they_are_finished_and_others_do_not(files: dict[str, str]) -> None:
    by_heading = {card.split("\n")[0].split(". ", 1)[1]: card for card in cards(files)}
    assert "**Ends.** File off the burr" in by_heading["Cut the hoops"]
    assert "**Ends.**" not in by_heading["Cut the waistband"]


def test_words_of_the_trade_are_explained_where_they_are_spoken(files: dict[str, str]) -> None:
    cut = next(card for card in cards(files) if ". Cut the hoops" in card)
    assert "*burr*: The sharp ridge" in cut
    assert "*casing*:" not in cut


def test_words_are_taken_whole_in_any_form_in_order_and_never_in_their_everyday_sense() -> None:
    words = (Word("tape", ("tape", "tapes"), "a band"), Word("gore", ("gore", "gores"), "a panel"),
             Word("set", ("set", "sets"), "a bend"), Word("burr", ("burr",), "an edge"))
    assert "set" in EVERYDAY
    said = spoken("Two gores, set beside TAPES and `burr`; no taper.", words)
    assert [word.name for word in said] == ["gore", "tape"]


def test_another_hand_checks(plan: Plan) -> None:
    order = Order("built-in", True, ("Ann", "Bea"), 1, 1, 1, 1, 0, 0)
    tasks = tuple(replace(task, hand="Ann") for task in plan.work.tasks)
    shared = replace(plan, work=replace(plan.work, tasks=tasks, order=order))
    card = cards(passed_on(shared, (), ()))[0]
    assert "done by **Ann**" in card
    assert "by Bea, who did not do it:" in card


def test_the_wearing_sheet_says_how_it_is_put_on_and_off_and_leads_back_to_the_plan(
    files: dict[str, str],
) -> None:
    sheet = files["wearing.md"]
    for words in ("On and off", "one pull", "Fire", "Washing", "Storing", "Label"):
        assert words in sheet
    assert "](#" not in sheet
    assert "](plan.md#cutting-plan)" in sheet


def test_the_printed_page_breaks_after_every_card_and_ends_with_the_label(
    plan: Plan, files: dict[str, str]
) -> None:
    page = files["pass-on.html"]
    assert page.count("<section") == len(cards(files)) + 3
    assert "section { break-after: page" in page
    assert "@page { size: letter" in page
    label = page[page.rindex("<section") :]
    assert "Ada &lt;b&gt;" in label
    assert "Made on" in label
    assert "<b>" not in page
    assert "<dress>" not in page


class Words(HTMLParser):
    """The text and the marked words of a page, blanks evened out."""

    def __init__(self) -> None:
        super().__init__()
        self.seen: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        kept = {"strong", "em", "code", "a", "img", "h1", "h2", "td", "th", "li", "blockquote"}
        if tag in kept:
            named = dict(attrs)
            where = named.get("href") or named.get("src") or ""
            self.seen.append(f"<{tag} {where} {named.get('alt') or ''}>")

    def handle_data(self, data: str) -> None:
        self.seen.extend(data.replace("☐", "[ ]").replace("☑", "[x]").split())


def words_of(page: str) -> list[str]:
    reader = Words()
    reader.feed(page)
    return reader.seen


def test_the_printed_page_says_what_the_markdown_says_to_another_reader(files: dict[str, str]) -> None:
    other = MarkdownIt("commonmark").enable("table")
    for page in (*files["cards.md"].split("\n---\n\n"), files["wearing.md"]):
        assert words_of(html(page)) == words_of(other.render(page))


@pytest.mark.parametrize(
    "text",
    ["a \\*b\\* **c *d* e** `f * g`", "x \\[y\\](z) [w](v.md#u)", "``a ` b`` & <i>", "**a\\** b",
     "> q\n>\n> - one\n> - two", "| a \\| b | c |\n| --- | ---: |\n| 1 | 2 |", "- [x] done\n- [ ] not"],
)
def test_each_piece_is_read_as_another_reader_reads_it(text: str) -> None:
    other = MarkdownIt("commonmark").enable("table").disable("html_inline")
    assert words_of(html(text)) == words_of(other.render(text))
