"""A spec opens no door: no network, no shell, no pickle, nothing written outside the output folder, nothing read
outside the spec's project and the installation; its words are printed, never obeyed."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from collections.abc import Callable
from html.parser import HTMLParser
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest
from markdown_it import MarkdownIt

import hoopwright

FORMATS = ("text", "short", "jsonl", "sarif", "junit", "annotations", "summary")
BAD = (
    "</text></style><script>alert(1)</script><img src=x onerror=alert(1)> ![i](http://h.invalid/) [y](javascript:x)"
    " {{ 7*7 }}{% include '/etc/passwd' %} $(id) ::error::x ]]> &#60;"
)
SYSTEM = ("/proc/", "/sys/", "/dev/null", "/dev/urandom", "/usr/", "/lib", "/etc/ld", "/etc/localtime")


def _hostile() -> str:
    """A spec in which every text of the maker's own is hostile, and each another."""

    def bad(mark: str) -> str:
        return json.dumps(f"{mark}{BAD}")

    short = json.dumps("../../<b>|`*\u202e")
    strip = "{grade: 'spring steel, tempered', section: {kind: flat, width: 10 mm, thickness: 1 mm}"
    return f"""
spec: 1
title: {bad("t")}
units: centimetres
wearer: {{name: {bad("w")}, stature: 168 cm, waist: 72 cm}}
shape: {{hem: {{girth: 280 cm}}, hoops: {{count: 3, names: [{short}, "/etc/x%0A", "a.b ::warning::"]}}}}
build:
  hoops: {{material: {bad("m")}, casing: {bad("b")}}}
  tapes: {{count: 6, material: {bad("p")}}}
load: [{{name: {bad("l")}, weight: 1 kg}}]
materials:
  {bad("m")}: {strip}, sold: [{{length: 20 m, price: 9 EUR}}], from: {bad("s")}}}
  {bad("b")}: {{kind: braid, sold: [{{per: 1 m, price: 1 EUR}}]}}
  {bad("p")}: {{kind: tape, width: 2.5 cm, sold: [{{length: 10 m, price: 3 EUR}}]}}
shops: {{{bad("s")}: 4 EUR}}
workshop: {{tools: [{bad("o")}], hands: [{{name: {short}}}, {{name: "Bea"}}]}}
limits: {{weight: 300 g}}
fittings: [{{on: 2027-03-02, notes: {bad("n")}}}]
variants: {{{bad("v")}: {{shape: {{hem: {{girth: 260 cm}}}}}}}}
"""


def watched(commands: list[list[str]], folder: Path) -> list[dict[str, Any]]:
    """Each command's exit code, what it printed, and what it opened, wrote and tried."""
    run = subprocess.run(
        [sys.executable, str(Path(__file__).with_name("watched.py")), json.dumps(commands)],
        capture_output=True, text=True, check=False, cwd=folder, env=os.environ | {"PYTHONDONTWRITEBYTECODE": "1"},
    )  # fmt: skip
    assert run.returncode == 0, run.stderr[-2000:]
    found: list[dict[str, Any]] = json.loads(run.stdout)
    return found


@pytest.fixture(scope="module")
def project(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A project with the hostile spec, and a secret beside the project."""
    top = tmp_path_factory.mktemp("hostile")
    (top / "project" / ".git").mkdir(parents=True)
    (top / "elsewhere").mkdir()
    (top / "project" / "cage.yaml").write_text(_hostile())
    (top / "secret.yaml").write_text("body: 1\nwearer: {name: SECRET, stature: 168 cm, waist: 70 cm}\n")
    return top / "project"


@pytest.fixture(scope="module")
def runs(project: Path) -> dict[str, dict[str, Any]]:
    """Every command on the hostile spec, by its first word and format."""
    spec, out = str(project / "cage.yaml"), str(project / "out")
    commands = [
        ["build", spec, "-o", out, "--cards"],
        ["build", spec, "-o", out, "--check", "--cards", "--format", "text"],
        ["diff", spec, "--variant", f"v{BAD}"],
        ["compare", spec],
        ["shop", spec, "-o", str(project / "trip")],
        *(["check", spec, "--syntax", "--format", how] for how in FORMATS),
        ["check", spec, "--format", "sarif"],
        ["values", spec],
        ["bench", "--section", "10 mm x 1 mm", "--around", "10 cm", "--then", "springs back"],
        ["new", "round-cage-inches", "--title", BAD, "-o", str(project / "new" / "cage.yaml")],
        ["explain", "../../etc/passwd"],
        ["explain", "hoop"],
        ["schema"],
    ]
    found = watched(commands, project.parent / "elsewhere")
    names = [" ".join(word for word in words if word[0] not in "/v<")[:60] for words in commands]
    return dict(zip(names, found, strict=True))


def test_every_command_ends_well(runs: dict[str, dict[str, Any]]) -> None:
    assert len(runs) == 19
    for words, one in runs.items():
        assert one["code"] in (0, 1, 2), (words, one["err"])
        assert "defect" not in one["err"], words
        assert one["code"] < 2 or words.startswith("explain ../"), (words, one["err"])


def test_nothing_is_called_unpickled_or_compiled(runs: dict[str, dict[str, Any]]) -> None:
    assert {words: one["blocked"] for words, one in runs.items() if "blocked" in one} == {}


def test_nothing_is_written_outside_the_output_folder(project: Path, runs: dict[str, dict[str, Any]]) -> None:
    outputs = [str(project / name) for name in ("out", "trip", "new")]
    for words, one in runs.items():
        strange = [p for p in one.get("written", ()) if not any(p == o or p.startswith(f"{o}/") for o in outputs)]
        assert [path for path in strange if path != "/dev/null"] == [], words
        assert words.startswith(("build", "shop", "new")) or not one.get("written"), words
    assert list((project.parent / "elsewhere").iterdir()) == []
    assert sorted(path.name for path in project.iterdir()) == [".git", "cage.yaml", "new", "out", "trip"]
    assert {path.name for path in project.parent.iterdir()} == {"elsewhere", "project", "secret.yaml"}


def test_nothing_is_read_outside_the_project_and_the_installation(
    project: Path, runs: dict[str, dict[str, Any]]
) -> None:
    paths = [os.path.abspath(path) for path in (*sys.path, sys.prefix, sys.base_prefix) if path]
    homes = (f"{project}/", *paths, str(Path(hoopwright.__file__).parents[2]), str(Path(__file__).parent))
    for words, one in runs.items():
        assert [path for path in one.get("read", ()) if not path.startswith(homes + SYSTEM)] == [], words
        assert not any("passwd" in path or "secret.yaml" in path for path in one.get("read", ())), words


def test_the_plan_shows_the_words_and_obeys_none(project: Path, runs: dict[str, dict[str, Any]]) -> None:
    for page in ("out/plan.md", "out/cards.md", "out/wearing.md", "trip/shopping.md"):
        text = (project / page).read_text()
        assert "alert" in text, page
        assert "49" not in text.split("alert", 1)[0][-200:], page
        tokens = MarkdownIt("commonmark").enable("table").parse(text)
        every = [token for block in tokens for token in (block, *(block.children or ()))]
        html = [token.content for token in every if token.type in ("html_block", "html_inline")]
        assert [text for text in html if not re.fullmatch(r"<!-- made by hoopwright, sum \w+ -->\n?", text)] == []
        places = [str(t.attrs.get("src", t.attrs.get("href"))) for t in every if t.type in ("image", "link_open")]
        assert [p for p in places if not re.match(r"(?:figures/[\w-]+\.svg|#|plan\.md|pass-on\.html)", p)] == [], page


def test_drawings_are_drawings_and_nothing_else(project: Path, runs: dict[str, dict[str, Any]]) -> None:
    names = ("svg", "title", "desc", "style", "defs", "pattern", "rect", "line", "path", "ellipse", "circle", "text")
    drawn = [*(project / "out" / "figures").iterdir(), *(project / "trip" / "figures").iterdir()]
    assert len(drawn) > 8
    for path in drawn:
        assert re.fullmatch(r"[a-z0-9-]+\.svg", path.name)
        for node in ElementTree.fromstring(path.read_text()).iter():
            assert node.tag.removeprefix("{http://www.w3.org/2000/svg}") in names, path.name
            for key, value in node.attrib.items():
                assert not key.lower().startswith("on"), path.name
                assert "href" not in key, path.name
                assert "alert" not in value, path.name
                assert not value.startswith("url(") or re.fullmatch(r"url\(#[\w-]+\)", value), path.name
            assert "alert" not in (node.text or "") or node.tag.rsplit("}")[-1] in ("title", "desc", "text")


class _Tags(HTMLParser):
    """The tags and attributes of a page as a browser finds them."""

    def __init__(self) -> None:
        super().__init__()
        self.found: set[tuple[str, str, str]] = set()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found |= {(tag, key, value or "") for key, value in attrs} or {(tag, "", "")}


def test_the_page_for_the_printer_has_only_our_own_tags(project: Path, runs: dict[str, dict[str, Any]]) -> None:
    page = _Tags()
    page.feed((project / "out" / "pass-on.html").read_text())
    ours = "html head meta title style body section h1 h2 h3 h4 p ul li strong em code table tr th td hr blockquote"
    assert {tag for tag, _, _ in page.found} <= {*ours.split(), "a", "img"}
    assert {key for _, key, _ in page.found} <= {"", "lang", "charset", "class", "src", "alt", "href"}
    places = [value for _, key, value in page.found if key in ("src", "href")]
    assert [place for place in places if not re.match(r"(?:figures/[\w-]+\.svg$|plan\.md#|#)", place)] == []


def test_no_line_that_is_printed_is_a_runners_command(runs: dict[str, dict[str, Any]]) -> None:
    for words, one in runs.items():
        for line in (one["out"] + one["err"]).splitlines():
            assert not line.lstrip().startswith("::") or re.match(r"::(?:error|warning|notice) file=", line), words
        assert not set(one["out"] + one["err"]) & set("\x1b\x07\x9b\u202e"), words


def test_findings_in_other_forms_hold_no_link_and_no_tag(runs: dict[str, dict[str, Any]]) -> None:
    sarif = json.loads(next(one["out"] for words, one in runs.items() if words == "check --format sarif"))
    messages = [result["message"]["text"] for result in sarif["runs"][0]["results"]]
    assert any("javascript" in message for message in messages)
    for message in messages:
        assert not re.search(r"(?<!\\)\[[^\[\]]*\]\(", message)
    summary = next(one["out"] for words, one in runs.items() if words.endswith("--format summary"))
    html = MarkdownIt("commonmark").enable("table").render(summary)
    assert not re.search(r"<(?:script|img|a|b)\b", html)


BODIES: dict[str, Callable[[Path], object]] = {
    "../secret.yaml": lambda _: None,
    "x/../../secret.yaml": lambda _: None,
    "ABSOLUTE": lambda _: None,
    "link.yaml": lambda folder: (folder / "link.yaml").symlink_to(folder.parent / "secret.yaml"),
    "dir/secret.yaml": lambda folder: (folder / "dir").symlink_to(folder.parent),
    "loop.yaml": lambda folder: (folder / "loop.yaml").symlink_to("loop.yaml"),
    "pipe.yaml": lambda folder: os.mkfifo(folder / "pipe.yaml"),
    "device.yaml": lambda folder: (folder / "device.yaml").symlink_to("/dev/zero"),
    "/dev/stdin": lambda _: None,
    "~/secret.yaml": lambda _: None,
    "file:///etc/passwd": lambda _: None,
    "http://h.invalid/body.yaml": lambda _: None,
    "a\0b": lambda _: None,
    "x" * 190: lambda _: None,
    ".": lambda _: None,
}


def test_a_body_from_outside_the_project_is_refused_whatever_way_it_is_named(project: Path) -> None:
    commands = []
    for number, (name, prepare) in enumerate(BODIES.items()):
        folder = project.parent / f"bodies-{number}"
        (folder / ".git").mkdir(parents=True)
        prepare(folder)
        named = json.dumps(str(project.parent / "secret.yaml") if name == "ABSOLUTE" else name)
        (folder / "cage.yaml").write_text(
            f"spec: 1\nunits: centimetres\nwearer: {{from: {named}}}\nshape: {{hem: {{girth: 280 cm}}}}\n"
        )
        cast = folder / "cast.yaml"
        cast.write_text(f"cast:\n  - {{spec: {named}}}\n  - {{spec: cage.yaml, wearer: {named}}}\n")
        commands += [["check", "--syntax", str(folder / "cage.yaml")], ["check", "--syntax", str(cast)]]
    for words, one in zip(commands, watched(commands, project.parent / "elsewhere"), strict=True):
        assert one["code"] == 1, (words, one)
        assert re.search(r"path-outside-project|file-missing|file-unreadable|control-character", one["out"]), one
        assert "SECRET" not in one["out"] + one["err"]
        assert "blocked" not in one
        read = {Path(path).resolve() for path in one.get("read", ())}
        outside = [path for path in read if not path.is_relative_to(Path(words[-1]).parent)]
        assert [path for path in outside if path.name in ("secret.yaml", "passwd", "zero")] == [], words
        assert "pipe.yaml" not in {path.name for path in read}
