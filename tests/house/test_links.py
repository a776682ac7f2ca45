"""Whatever a page of the repository leads to is there: files, figures and headings."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path
from urllib.parse import unquote

import pytest
from markdown_it import MarkdownIt

ROOT = Path(__file__).resolve().parents[2]
PAGES = [ROOT / "README.md", ROOT / "DEVELOPERS.md", *sorted((ROOT / "specs").rglob("*.md"))]


@cache
def addresses(page: Path) -> tuple[tuple[str, ...], frozenset[str]]:
    """What a page links to and shows, and the anchors of its headings as hosts of Markdown make them."""
    found: list[str] = []
    anchors: set[str] = set()
    tokens = MarkdownIt("commonmark").enable("table").parse(page.read_text(encoding="utf-8"))
    for at, token in enumerate(tokens):
        for inner in token.children or ():
            found += [str(inner.attrs[key]) for key in ("href", "src") if key in inner.attrs]
        if token.type == "heading_open":
            words = "".join(part.content for part in tokens[at + 1].children or ())
            name = re.sub(r"[^\w\- ]", "", words.lower()).replace(" ", "-")
            while name in anchors:
                name += "-1"
            anchors.add(name)
    return tuple(found), frozenset(anchors)


def test_there_are_pages_and_links() -> None:
    assert len(PAGES) > 10
    assert sum(len(addresses(page)[0]) for page in PAGES) > 100


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.relative_to(ROOT).as_posix())
def test_every_link_and_figure_is_there(page: Path) -> None:
    lost = []
    for address in addresses(page)[0]:
        if re.match(r"[a-z]+:", address):
            continue
        name, _, anchor = unquote(address).partition("#")
        target = (page.parent / name).resolve() if name else page
        if not target.exists() or (anchor and anchor not in addresses(target)[1]):
            lost.append(address)
    assert lost == []


@pytest.mark.parametrize("spec", sorted((ROOT / "specs").rglob("*.yaml")),
                         ids=lambda spec: spec.relative_to(ROOT).as_posix())
def test_the_schema_a_spec_names_for_editors_is_there(spec: Path) -> None:
    for name in re.findall(r"^# yaml-language-server: \$schema=(\S+)", spec.read_text(), re.MULTILINE):
        assert (spec.parent / name).is_file()


def test_the_programs_developers_are_told_of_are_there_with_their_options() -> None:
    text = (ROOT / "DEVELOPERS.md").read_text()
    named = re.findall(r"`(?:python|pytest) (tests/\S+?\.py)([^`]*)`", text)
    assert len(named) >= 8
    for name, options in named:
        program = (ROOT / name).read_text()
        assert [word for word in re.findall(r"--[a-z-]+", options) if word not in program] == [], name
