"""Names of files and folders: the same in every locale, on every system, and nothing a terminal would obey."""

from __future__ import annotations

import os
import subprocess
import sys
import unicodedata
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.cli import main
from hoopwright.cli.names import folder_name, one_of_a_kind, path_of, shown, slug, text_of, visible
from hoopwright.cli.places import plan_folders
from hoopwright.cli.specs import code_of_problems, gather

SPEC = "spec: 1\nunits: centimetres\nwearer: {stature: 168 cm, waist: 72 cm}\nshape: {hem: {girth: 280 cm}}\n"


def _spec(path: Path, text: str = SPEC) -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
    return path


@given(st.text())
def test_a_slug_is_one_plain_folder_name(words: str) -> None:
    name = slug(words)
    assert not set(name) & set('/\\:*?"<>|.\0\n ')
    assert len(name.encode()) <= 90
    assert slug(name) == name
    assert slug(unicodedata.normalize("NFD", words)) == slug(unicodedata.normalize("NFC", words))


@pytest.mark.parametrize(
    ("words", "name"),
    [
        ("../../up", "up"), ("/etc/passwd", "etc-passwd"), ("..", ""), ("a\0b", "a-b"), ("CON", "con-plan"),
        ("com1", "com1-plan"), ("lpt²", "lpt2-plan"), ("aux.md", "aux-md"), ("Zoë", "zoë"), ("Zoe\u0308", "zoë"),
        ("STRASSE", "strasse"), ("Straße", "strasse"), ("İstanbul", "i-stanbul"), ("x" * 300, "x" * 80),
        ("木" * 100, "木" * 26), ("ﬁne", "fine"),
    ],
)  # fmt: skip
def test_hostile_and_odd_words_as_folder_names(words: str, name: str) -> None:
    assert slug(words) == name


@pytest.mark.parametrize(("stem", "name"), [("..", "..-plan"), (".", ".-plan"), ("nul", "nul-plan"), ("a", "a")])
def test_a_files_name_without_its_ending_leads_nowhere_else(stem: str, name: str) -> None:
    assert folder_name(stem) == name


def test_no_two_names_are_the_same_to_a_system_that_folds_case_or_form() -> None:
    taken: set[str] = set()
    words = ["Cage", "cage", "CAGE", "zo\u00eb", "zoe\u0308", "cage-2"]
    found = [one_of_a_kind(word, taken) for word in words]
    assert found == ["Cage", "cage-2", "CAGE-3", "zo\u00eb", "zoe\u0308-2", "cage-2-2"]


@given(st.binary(max_size=40))
def test_any_name_of_a_file_is_text_and_leads_back_to_the_file(name: bytes) -> None:
    path = os.fsdecode(name)
    assert os.fsencode(str(path_of(text_of(path)))) == os.fsencode(str(Path(path)))


@given(st.text())
def test_a_line_for_the_terminal_is_one_line_and_all_visible(line: str) -> None:
    assert visible(line).isprintable()
    assert len(visible(line)) == len(line)


def test_a_name_that_reads_like_a_runners_command_is_shown_below_the_folder() -> None:
    assert shown(Path("::error::x.yaml")) == "./::error::x.yaml"
    assert shown(Path(" ::x/c.yaml")) == "./ ::x/c.yaml"


def test_hostile_names_of_files_print_as_names(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    for name in ("::error ::a.yaml", "b\x1b[31m\n::warning::c.yaml", os.fsdecode(b"d\xff.yaml")):
        _spec(tmp_path / name, SPEC.replace("72 cm", "72"))
    monkeypatch.chdir(tmp_path)
    for how in ("text", "short", "jsonl", "annotations", "summary", "sarif", "junit"):
        assert main(["check", ".", "nowhere\x1b[0m\n::error::x.yaml", "--format", how]) == 2
        printed = capsys.readouterr()
        for stream in printed:
            assert stream.replace("\n", "").replace("\udcff", "").isprintable()
            commands = [line for line in stream.splitlines() if line.lstrip().startswith("::")]
            assert how == "annotations" or commands == []
            assert all(line.startswith("::error file=") for line in commands)


def test_a_stale_plan_is_shown_without_what_a_terminal_would_obey(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    spec = _spec(tmp_path / "cage.yaml")
    (tmp_path / "plan.md").write_text("\x1b[2J\x9b31m\x07 gone\r\n")
    assert main(["build", "--check", str(spec)]) == 1
    printed = capsys.readouterr()
    assert not set(printed.out) & set("\x1b\x9b\x07\r")


def _folders(names: list[Path], output: Path | None) -> list[str]:
    specs, problems = gather([str(name) for name in names])
    assert problems == []
    return [folder.as_posix() for folder in plan_folders(specs, str(output) if output else None)]


def test_no_two_specs_of_one_run_share_a_folder(tmp_path: Path) -> None:
    places = ["a/x/cage.yaml", "b/x/cage.yaml", "c/x/cage.yml", "d/Cage.yaml", "e/x-cage.yaml", "f/...yaml"]
    names = [_spec(tmp_path / place) for place in places]
    cast = "cast:\n  - {spec: a/x/cage.yaml, title: x cage}\n"
    names += [_spec(tmp_path / "one.yaml", cast), _spec(tmp_path / "two.yaml", cast)]
    found = _folders(names, Path("out"))
    assert len({name.casefold() for name in found}) == len(names)
    assert all(Path(name).parent == Path("out") for name in found)
    assert not any(".." in Path(name).parts for name in found)


def test_specs_of_one_name_in_one_folder_do_not_share_a_plan(tmp_path: Path) -> None:
    names = [_spec(tmp_path / "cage.yaml"), _spec(tmp_path / "cage.yml"), _spec(tmp_path / "other.yaml")]
    found = _folders(names, None)
    assert [Path(name).name for name in found] == ["cage", "cage-yml", "other"]


def test_a_link_that_leads_out_of_a_folder_of_specs_is_told_and_not_read(tmp_path: Path) -> None:
    (tmp_path / "project" / ".git").mkdir(parents=True)
    _spec(tmp_path / "secret.yaml")
    real = _spec(tmp_path / "project" / "a" / "cage.yaml")
    (tmp_path / "project" / "a" / "out.yaml").symlink_to(tmp_path / "secret.yaml")
    (tmp_path / "project" / "a" / "loop.yaml").symlink_to("loop.yaml")
    (tmp_path / "project" / "a" / "in.yaml").symlink_to("cage.yaml")
    specs, problems = gather([str(tmp_path / "project")])
    assert [spec.path for spec in specs] == [real]
    assert [(problem.code, Path(problem.file).name) for problem in problems][-1] == ("path-outside-project", "out.yaml")
    assert code_of_problems(problems) == 0
    assert not any(problem.code == "path-outside-project" for problem in gather([str(tmp_path / "secret.yaml")])[1])


def test_names_of_other_scripts_give_the_same_in_an_ascii_locale(tmp_path: Path) -> None:
    body = "body: 1\nwearer: {stature: 168 cm, waist: 72 cm}\n"
    text = SPEC.replace("{stature: 168 cm, waist: 72 cm}", "{from: zoë.yaml}")
    _spec(tmp_path / "p" / "zoë.yaml", body)
    _spec(tmp_path / "p" / "Ärmel.yaml", text + "variants: {größer: {shape: {hem: {girth: 300 cm}}}}\n")
    _spec(tmp_path / "p" / "Besetzung.yaml", "cast:\n  - {spec: Ärmel.yaml, title: Zoë}\n  - {spec: fehlt-ö.yaml}\n")
    ascii_only = {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}
    said = []
    for number, settings in enumerate((ascii_only, {"LC_ALL": "C.UTF-8"})):
        runs = [
            subprocess.run(
                [sys.executable, "-m", "hoopwright", *words], cwd=tmp_path / "p", capture_output=True, check=False,
                env=os.environ | settings,
            )
            for words in (
                ["build", "Ärmel.yaml", "--variant", "größer", "-o", f"../{number}/ä"],
                ["build", "Besetzung.yaml", "-o", f"../{number}/ö", "--format", "short"],
                ["new", "round-cage-inches", "--title", "Zoë", "-o", f"../{number}/é.yaml"],
            )
        ]  # fmt: skip
        said.append([(run.returncode, (run.stdout + run.stderr).replace(b"../%d/" % number, b"")) for run in runs])
    assert said[0] == said[1]
    assert "fehlt-ö.yaml".encode() in said[0][1][1]
    trees = [
        {os.fsencode(p.relative_to(tmp_path / str(n))): p.read_bytes() for p in (tmp_path / str(n)).rglob("*.*")}
        for n in (0, 1)
    ]
    assert trees[0] == trees[1]
    assert "ö/zoë/plan.md".encode() in trees[0]
