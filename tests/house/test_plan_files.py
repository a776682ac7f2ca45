"""Every plan under ``specs``, read by others' programs: its JSON by its schema, its Markdown, its drawings."""

from __future__ import annotations

import json
import re
from pathlib import Path
from xml.etree import ElementTree

import pytest
import resvg_py
from jsonschema import Draft202012Validator
from markdown_it import MarkdownIt
from markdown_it.token import Token

ROOT = Path(__file__).resolve().parents[2]
FOLDERS = sorted(path.parent for path in (ROOT / "specs").rglob("plan.json"))
SCHEMA = json.loads((ROOT / "schemas" / "v1" / "plan.schema.json").read_text())
MADE = re.compile(r"<!-- made by hoopwright, sum [0-9a-f]{16} -->\n?")
each = pytest.mark.parametrize("folder", FOLDERS, ids=lambda path: path.relative_to(ROOT / "specs").as_posix())


def _tokens(folder: Path) -> list[Token]:
    """All tokens of a plan's Markdown, those within lines too."""
    blocks = MarkdownIt("commonmark").enable("table").parse((folder / "plan.md").read_text())
    return [token for block in blocks for token in (block, *(block.children or ()))]


def test_there_are_plans() -> None:
    assert FOLDERS


@each
def test_its_json_is_what_the_schema_says(folder: Path) -> None:
    plan = json.loads((folder / "plan.json").read_text())
    assert [wrong.message for wrong in Draft202012Validator(SCHEMA).iter_errors(plan)] == []


@each
def test_its_markdown_shows_drawings_that_are_there_and_no_html(folder: Path) -> None:
    tokens = _tokens(folder)
    shown = [str(token.attrs["src"]) for token in tokens if token.type == "image"]
    linked = [str(token.attrs["href"]) for token in tokens if token.type == "link_open"]
    drawings = shown + [address for address in linked if address.endswith(".svg")]
    assert "figures/front.svg" in drawings
    assert [name for name in drawings if not (folder / name).is_file()] == []
    html = [token.content for token in tokens if token.type in ("html_block", "html_inline")]
    assert [text for text in html if not MADE.fullmatch(text)] == []
    assert len(html) == 1


@each
def test_its_drawings_are_well_formed_and_a_library_draws_them(folder: Path) -> None:
    for path in sorted((folder / "figures").glob("*.svg")):
        text = path.read_text()
        assert ElementTree.fromstring(text).tag == "{http://www.w3.org/2000/svg}svg", path.name
        assert bytes(resvg_py.svg_to_bytes(svg_string=text, dpi=96, width=240)).startswith(b"\x89PNG"), path.name
