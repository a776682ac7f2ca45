"""Whatever stands in the text fields of a spec - title, names, notes, materials, tools - is text in every file of a
plan: no HTML, no link, no picture, no template, no element of a drawing comes of it."""

from __future__ import annotations

import json
from collections.abc import Callable
from functools import cache
from html.parser import HTMLParser
from typing import Any
from xml.etree import ElementTree

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from markdown_it import MarkdownIt

from hoopwright.cli.files import rendered
from hoopwright.compile import compile_spec

NASTY = (
    "<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "</title></svg><svg onload=alert(1)>", "]]><!--",
    "-->", "{{ 1234 * 1000 }}", "{% include '/etc/passwd' %}", "{# gone #}", "[x](javascript:alert(1))",
    "![x](//x.example/i.png)", "<http://x.example>", "www.x.example", "```\n# h\n```", "~~~", "| a | b |", "\\", "`",
    "``x`", "&lt;b&gt; &#60;", "a\n\n# b", '"]; end; %%{init}%%', "click n1 call alert()", "$(id) ${HOME} `id`",
    "\u202edlog", "</style><style>*{}", "''", '"', "- [x] done", "1. one", "=====", "\U0001f9f5", "\u00ad",
    "a" * 59,
)
TEXT = st.one_of(st.sampled_from(NASTY), st.lists(st.sampled_from(NASTY), min_size=2, max_size=3).map(" ".join),
                 st.text(min_size=1, max_size=40))


def spec_with(carrier: str, say: Callable[[str], str]) -> bytes:
    """A cage on tapes, or a petticoat with channels, whose every text field holds what ``say`` gives for its name."""
    strip, cloth, tape, cord, hook, shop = (say(name) for name in ("strip", "cloth", "tape", "cord", "hook", "shop"))
    build: dict[str, Any] = {
        "carried_by": carrier, "hoops": {"material": strip, "join": "lap bound", "casing": "none"},
        "waistband": {"material": tape, "fastening": hook}}
    if carrier == "channels":
        build |= {"panels": {"material": cloth, "cord": cord}, "channels": {"material": tape}}
    else:
        build |= {"tapes": {"count": 6, "material": tape}, "hem_band": {"depth": "15 cm", "material": cloth}}
    layers = [{"name": say("skirt"), "weight": "1 kg"}, {"name": say("overskirt"), "material": cloth, "area": "3 m2"}]
    goods: dict[str, Any] = {
        strip: {"grade": "spring steel, tempered", "section": {"kind": "flat", "width": "10 mm", "thickness": "1 mm"},
                "sold": [{"length": "50 m", "price": "30 EUR"}], "from": shop},
        cloth: {"kind": "cloth", "weight": "140 g/m2", "width": "150 cm", "sold": [{"per": "1 m", "price": "5 EUR"}]},
        tape: {"kind": "tape", "width": "25 mm", "sold": [{"length": "50 m", "price": "6 EUR"}]},
        cord: {"kind": "tape", "width": "4 mm", "sold": [{"length": "5 m", "price": "2 EUR"}]},
        hook: {"kind": "fastening", "sold": [{"count": 3, "price": "2 EUR"}]},
    }
    tree = {
        "spec": 1, "title": say("title"), "units": "centimetres",
        "wearer": {"name": say("wearer"), "stature": "168 cm", "waist": "72 cm"},
        "shape": {"hem": {"girth": "230 cm"},
                  "hoops": {"count": 4, "names": [say("first hoop"), say("second hoop")]}},
        "build": build, "load": layers, "shops": {shop: "4.00 EUR"}, "materials": goods,
        "workshop": {"hands": [{"name": say("one hand")}, {"name": say("other hand")}]},
        "fittings": [{"on": "2027-03-02", "notes": say("notes")}],
    }
    return json.dumps(tree, ensure_ascii=False).encode("utf-8", "replace")


CARRIERS = ("tapes", "channels")
FIELDS = ("strip", "cloth", "tape", "cord", "hook", "shop", "title", "wearer", "first hoop", "second hoop", "skirt",
          "overskirt", "one hand", "other hand", "notes")


def files_of(data: bytes) -> dict[str, str]:
    """Every file of the plan, cards too; empty when the spec is refused, with its reason."""
    run = compile_spec(data, "cage.yaml")
    assert run.plan is not None or run.diagnostics
    return {} if run.plan is None else rendered(run.plan, cards=True)


@cache
def tame(carrier: str) -> dict[str, str]:
    """The same plan with harmless words."""
    found = files_of(spec_with(carrier, lambda name: name))
    assert {"plan.md", "plan.json", "cards.md", "wearing.md", "pass-on.html"} <= set(found)
    return found


def _markup(page: str) -> set[str]:
    """HTML, links and pictures of a Markdown page, as a reader sees them."""
    tokens = MarkdownIt("commonmark", {"html": True}).enable(["table", "strikethrough"]).parse(page)
    every = [child for token in tokens for child in (token, *(token.children or ()))]
    marks = {f"{one.type} {one.content}" for one in every if one.type in ("html_block", "html_inline")}
    return marks | {f"{one.tag} {one.attrGet('href') or one.attrGet('src')}" for one in every
                    if one.type in ("link_open", "image")}


class _Tags(HTMLParser):
    """The elements of a page of HTML with the names of their attributes."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.found: set[str] = set()
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.add(f"{tag} {sorted(name for name, _ in attrs)}")


def _elements(drawing: str) -> set[str]:
    return {f"{one.tag} {name}" for one in ElementTree.fromstring(drawing).iter() for name in ("", *one.attrib)}


def _all_elements(files: dict[str, str]) -> set[str]:
    return set().union(*(_elements(text) for name, text in files.items() if name.endswith(".svg")))


@settings(max_examples=10, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.sampled_from(CARRIERS), st.lists(TEXT, min_size=len(FIELDS), max_size=len(FIELDS), unique=True))
def test_any_text_in_every_field_is_text_in_every_file(carrier: str, words: list[str]) -> None:
    said = dict(zip(FIELDS, words, strict=True))
    _hold(carrier, files_of(spec_with(carrier, lambda name: said[name])))


@pytest.mark.parametrize("carrier", CARRIERS)
@pytest.mark.parametrize("turn", [0, 7, 14, 21, 28])
def test_hostile_texts_in_every_field(carrier: str, turn: int) -> None:
    said = {name: f"{NASTY[(k + turn) % len(NASTY)]}{turn}{k}"[-60:] for k, name in enumerate(FIELDS)}
    files = files_of(spec_with(carrier, lambda name: said[name]))
    assert files
    _hold(carrier, files)


def _hold(carrier: str, files: dict[str, str]) -> None:
    """No file has any markup that it has not with harmless words; a refused spec has no files."""
    if not files:
        return
    harmless = tame(carrier)
    for name in ("plan.md", "cards.md", "wearing.md"):
        assert _markup(files[name]) <= _markup(harmless[name]), name
    assert _Tags(files["pass-on.html"]).found <= _Tags(harmless["pass-on.html"]).found
    assert _all_elements(files) <= _all_elements(harmless)
    assert not any("1234000" in text for text in files.values())
    json.loads(files["plan.json"])
