"""What makers get wrong at the kitchen table, in otherwise whole specs: each is told by its cause, at its line, with
what to write instead, in words that need no programming. The snapshot holds each text as it is printed; read it aloud
before you accept a change."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from syrupy.assertion import SnapshotAssertion

from hoopwright.cli import main

FOLDER = Path(__file__).parents[1] / "bad" / "makers"
SPECS = sorted(FOLDER.glob("*.yaml"))
EXPECT = re.compile(r"\s*# expect: ([a-z-]+)$", re.MULTILINE)
HEAD = re.compile(r"^(error|warning|fails) ([a-z-]+)(?: [^\n]*?)? at (\S+?)(?::(\d+):(\d+))?$", re.MULTILINE)
PROGRAMMERS = re.compile(
    r"\b(schema|regex|null|none type|dict|mapping|token|enum|pars\w*|boolean|string|integer|float|array|object|scalar|"
    r"sequence|syntax error|exception|traceback|argument|instance|indent\w*|byte|node|invalid)\b", re.IGNORECASE)


def told(path: Path, capsys: pytest.CaptureFixture[str]) -> tuple[int, str]:
    """What `check` prints on a mistake, its mark taken out as a maker would not have it."""
    Path(path.name).write_text(EXPECT.sub("", path.read_text(encoding="utf-8")), encoding="utf-8")
    code = main(["check", path.name])
    printed = capsys.readouterr()
    return code, printed.out + printed.err


def test_there_are_many_mistakes() -> None:
    assert len(SPECS) >= 60


@pytest.mark.parametrize("path", SPECS, ids=lambda path: path.stem)
def test_a_mistake_is_told_by_its_cause_with_its_mend(
    path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str],
    snapshot: SnapshotAssertion,
) -> None:
    monkeypatch.chdir(tmp_path)
    wanted = [(number, code) for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1)
              for code in EXPECT.findall(line)]
    code, text = told(path, capsys)
    assert wanted
    heads = HEAD.findall(text)
    said = [(int(line or 0), name) for _, name, _, line, _ in heads]
    errors = [(int(line), name) for kind, name, _, line, _ in heads if kind == "error"]
    assert said[: len(wanted)] == wanted, "the cause comes first"
    assert errors in ([], wanted), "one mistake, one error"
    assert code == (0 if heads[0][0] == "warning" and "\nfails " not in text else 1)
    first = text.split("\n\n")[0]
    assert re.search(r"^    +\d+: .*\S", first, re.MULTILINE), "the maker's own line is shown"
    assert "^" in first
    assert "  help: " in first
    assert PROGRAMMERS.search(text.replace(path.name, "")) is None
    assert text == snapshot


MISUSE = {
    "no such file": ["check", "cgae.yaml"],
    "no such folder": ["check", "mine/cage.yaml"],
    "a plan for its spec": ["check", "plan.md"],
    "a plan away from its spec": ["check", "printed/plan.md"],
    "help as a command": ["help"],
    "no jobs": ["build", "cage.yaml", "--jobs", "0"],
    "a drawing for its spec": ["build", "figures/front.svg"],
    "a letter": ["check", "letter.docx"],
    "a folder without specs": ["build", "empty"],
    "a body by itself": ["check", "body.yaml"],
    "an unknown starter": ["new", "round-cage"],
    "a starter over a file": ["new", "round-cage-inches", "-o", "cage.yaml"],
    "a measure without unit": ["new", "round-cage-inches", "--waist", "28"],
    "an unknown variant": ["build", "cage.yaml", "--variant", "chep"],
    "a variant of a spec without": ["build", "cage.yaml", "--variant", "cane"],
    "an unknown topic": ["explain", "farthingail"],
    "a command as a topic": ["explain", "build"],
    "a file for a folder": ["build", "cage.yaml", "-o", "letter.docx"],
    "no place to write": ["build", "cage.yaml", "-o", "letter.docx/plans"],
    "a misspelt command": ["biuld", "cage.yaml"],
    "no command": [],
    "no spec": ["check"],
    "a misspelt option": ["check", "cage.yaml", "--formt", "short"],
    "an unknown format": ["check", "cage.yaml", "--format", "pdf"],
    "units cut short": ["build", "cage.yaml", "--units", "cm"],
    "an option without its value": ["build", "cage.yaml", "-o"],
    "one spec to tell apart": ["diff", "cage.yaml"],
    "a folder for a spec": ["values", "empty"],
    "nothing to shop for": ["shop", "empty"],
    "a test without its unit": ["bench", "--section", "10 x 1 mm", "--overhang", "45", "--drop", "17 cm"],
    "no test at all": ["bench"],
}
CAGE = "spec: 1\nunits: inches\nwearer: {stature: 5 ft 5 in, waist: 28 in}\nshape: {hem: {girth: 104 in}}\n"


@pytest.mark.parametrize("name", MISUSE)
def test_wrong_use_of_a_command_is_told_in_plain_words(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str],
    snapshot: SnapshotAssertion,
) -> None:
    monkeypatch.chdir(tmp_path)
    variants = "variants: {cheap: {build: {tapes: {count: 5}}}}\n" if name == "an unknown variant" else ""
    Path("cage.yaml").write_text(CAGE + variants)
    Path("plan.md").write_text("# Round cage\n\n**It stands.**\n")
    Path("letter.docx").write_bytes(b"PK\x03\x04\x00\x00")
    Path("body.yaml").write_text("body: 1\nwearer: {stature: 5 ft 5 in, waist: 28 in}\n")
    for folder in ("empty", "figures", "printed"):
        Path(folder).mkdir()
    Path("printed/plan.md").write_text("# Round cage\n\n| Label | |\n| --- | --- |\n| Spec | cage.yaml |\n")
    Path("figures/front.svg").write_text("<svg/>")
    before = sorted(path.as_posix() for path in Path().rglob("*"))
    try:
        code = main(MISUSE[name])
    except SystemExit as stop:
        code = int(stop.code or 0)
    printed = capsys.readouterr()
    assert code == (1 if "variant" in name else 2)
    assert sorted(path.as_posix() for path in Path().rglob("*")) == before
    text = f"$ hoopwright {' '.join(MISUSE[name])}\n{printed.out}{printed.err}"
    assert PROGRAMMERS.search(text) is None
    assert text == snapshot
