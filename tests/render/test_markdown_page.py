"""plan.md as a document: it parses, its tables are whole, its links and figures lead somewhere."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

import pytest
from markdown_it import MarkdownIt
from markdown_it.token import Token

from hoopwright.plan.model import Plan
from hoopwright.render.figure import Figure
from hoopwright.render.markdown import plan_markdown, tidy

NAMES = (
    "front",
    "side",
    "hem",
    "tapes",
    "coils",
    "band",
    "step-cut-hoop",
    "step-unused",
    "gauge-1",
    "gauge-2",
)
FIGURES = tuple(Figure(name, f"Title of {name}", f"What {name} | shows [here]", "<svg/>") for name in NAMES)
UNITS = ("inches", "centimetres")


def _parser() -> MarkdownIt:
    return MarkdownIt("commonmark").enable("table")


@pytest.fixture(scope="module", params=UNITS)
def page(request: pytest.FixtureRequest, make_plan: Callable[..., Plan]) -> str:
    """The page in both systems of units."""
    return plan_markdown(make_plan(units=request.param), FIGURES)


def _walk(tokens: list[Token]) -> Iterator[Token]:
    for token in tokens:
        yield token
        yield from token.children or []


def _slug(heading: str) -> str:
    """The anchor a forge gives a heading."""
    return re.sub(r"[^\w\- ]", "", heading.lower()).replace(" ", "-")


def _headings(page: str) -> list[tuple[str, str]]:
    tokens = _parser().parse(page)
    return [
        (token.tag, "".join(child.content for child in tokens[i + 1].children or []))
        for i, token in enumerate(tokens)
        if token.type == "heading_open"
    ]


def test_the_page_begins_with_the_title_and_ends_with_one_line_end(page: str) -> None:
    assert page.startswith("# Harbour play, act two\n")
    assert page.endswith("\n")
    assert not page.endswith("\n\n")
    assert "\n\n\n" not in page
    assert not re.search(r"[ \t]+$", page, re.MULTILINE)


def test_chapters_stand_in_order(page: str) -> None:
    chapters = [text for tag, text in _headings(page) if tag in {"h1", "h2"}]
    assert chapters == [
        "Harbour play, act two",
        "At a glance",
        "What to buy",
        "Cutting plan",
        "Tape marking chart",
        "Steps",
        "Fitting sheet",
        "Wearing and care",
        "Annex",
        "Checks",
        "Strength",
        "Spring-back",
        "The whole cage",
        "Assumed values",
        "Findings",
        "Cautions and their sources",
        "Which step waits for which",
        "More figures",
        "How good the order of work is",
    ]


def test_every_table_row_has_as_many_cells_as_its_head(page: str) -> None:
    rows = [line.removeprefix("> ") for line in page.split("\n") if line.removeprefix("> ").startswith("|")]
    blocks: list[list[int]] = []
    previous = -2
    for at, line in enumerate(page.split("\n")):
        bare = line.removeprefix("> ")
        if not bare.startswith("|"):
            continue
        cells = len(re.findall(r"(?<!\\)\|", bare)) - 1
        if at != previous + 1:
            blocks.append([])
        blocks[-1].append(cells)
        previous = at
    assert len(rows) > 60
    assert all(len(set(block)) == 1 for block in blocks)
    assert all(len(block) >= 3 for block in blocks)


def test_every_table_is_read_as_a_table(page: str) -> None:
    heads = len(re.findall(r"^(?:> )?\| :?-{3}", page, re.MULTILINE))
    tokens = _parser().parse(page)
    assert sum(token.type == "table_open" for token in tokens) == heads > 15
    assert not any(token.type == "inline" and token.content.startswith("|") for token in tokens)


def test_figures_and_links_lead_somewhere(page: str) -> None:
    anchors = {_slug(text) for _, text in _headings(page)}
    files = {f"figures/{figure.name}.svg" for figure in FIGURES}
    shown, linked = set(), set()
    for token in _walk(_parser().parse(page)):
        if token.type == "image":
            shown.add(token.attrs["src"])
        if token.type == "link_open":
            linked.add(str(token.attrs["href"]))
    assert shown == files - {"figures/gauge-1.svg", "figures/gauge-2.svg"}
    assert {link for link in linked if not link.startswith("#")} == files - shown
    assert {link[1:] for link in linked if link.startswith("#")} <= anchors


def test_alternative_text_is_kept_whole(page: str) -> None:
    images = [token for token in _walk(_parser().parse(page)) if token.type == "image"]
    assert {token.content.replace("\\", "") for token in images} == {
        figure.alt for figure in FIGURES if not figure.name.startswith("gauge")
    }


def test_without_figures_nothing_refers_to_one(plan: Plan) -> None:
    page = plan_markdown(plan)
    assert "figures/" not in page
    assert "More figures" not in page


def test_units_are_never_mixed_in_what_is_measured(make_plan: Callable[..., Plan]) -> None:
    page = plan_markdown(make_plan(units="centimetres"))
    measured = page.split("## What to buy")[1].split("## Steps")[0].replace("3/8 in x 0.042 in", "")
    assert not re.search(r"\d (in|ft|yd)\b", measured)
    inches = plan_markdown(make_plan(units="inches")).split("## What to buy")[1].split("## Steps")[0]
    assert not re.search(r"\d (cm|m)\b", inches)


def test_no_number_carries_the_noise_of_binary_fractions(page: str) -> None:
    assert not re.search(r"\d\.\d{4,}", page)
    assert not re.search(r"(?<![\w-])-0(?:\.0+)?(?![\w./-])", page)


def test_inches_are_never_decimal(make_plan: Callable[..., Plan]) -> None:
    page = plan_markdown(make_plan(units="inches")).replace("0.042 in", "").replace("0.025 in", "")
    assert not re.search(r"\d\.\d+ in\b", page)


def test_the_same_plan_gives_the_same_page(make_plan: Callable[..., Plan]) -> None:
    assert plan_markdown(make_plan(), FIGURES) == plan_markdown(make_plan(), FIGURES)


def test_every_check_box_is_a_list_item(page: str) -> None:
    boxes = page.count("[ ]")
    assert boxes == len(re.findall(r"^- \[ \] \S", page, re.MULTILINE)) > 60


def test_tidy_keeps_one_blank_line() -> None:
    assert tidy("\n\na  \n\n\n\nb\n \n\n") == "a\n\nb\n"
