"""The commands as a maker meets them: what they print, what they write, and their exit codes."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from hoopwright.cli import main

ROOT = Path(__file__).resolve().parents[2]
FIVE = "spec: 1\nunits: centimetres\nwearer: {stature: 168 cm, waist: 72 cm}\nshape: {hem: {girth: 2.8 m}}\n"


@pytest.fixture
def spec(tmp_path: Path) -> Path:
    path = tmp_path / "cage.yaml"
    path.write_text(FIVE)
    return path


def _files(folder: Path) -> set[str]:
    return {path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file()}


def test_build_writes_a_plan_beside_its_spec(spec: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["build", str(spec)]) == 0
    written = _files(spec.parent)
    assert {"cage.yaml", "plan.md", "plan.json", "figures/front.svg", "figures/gauge-1.svg"} <= written
    assert json.loads((spec.parent / "plan.json").read_text())["plan"] == 1
    assert "wrote" in capsys.readouterr().err


def test_build_check_writes_nothing_and_tells_a_stale_plan(
    spec: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["build", "--check", str(spec)]) == 1
    assert _files(spec.parent) == {"cage.yaml"}
    assert "+++ plan.md (built now)" in capsys.readouterr().out
    main(["build", str(spec)])
    assert main(["build", "--check", str(spec)]) == 0
    spec.write_text(FIVE.replace("2.8 m", "2.7 m"))
    assert main(["build", "--check", str(spec)]) == 1


def test_check_writes_nothing(spec: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", str(spec)]) == 0
    assert main(["check", "--syntax", str(spec)]) == 0
    assert _files(spec.parent) == {"cage.yaml"}
    assert "the spec is in order" in capsys.readouterr().err


def test_an_error_in_the_spec_leaves_the_old_plan(spec: Path, capsys: pytest.CaptureFixture[str]) -> None:
    main(["build", str(spec)])
    before = (spec.parent / "plan.md").read_bytes()
    spec.write_text(FIVE.replace("72 cm", "72"))
    assert main(["build", str(spec)]) == 1
    assert (spec.parent / "plan.md").read_bytes() == before
    printed = capsys.readouterr()
    assert "unit-missing" in printed.out
    assert "cage.yaml:3:34" in printed.out
    assert "nothing written" in printed.err


def test_a_failed_check_still_writes_and_exits_1(spec: Path, capsys: pytest.CaptureFixture[str]) -> None:
    spec.write_text(FIVE + "limits: {weight: 100 g}\n")
    assert main(["build", str(spec)]) == 1
    assert json.loads((spec.parent / "plan.json").read_text())["checks"]
    assert "does not pass: weight" in capsys.readouterr().err


def test_one_bad_spec_does_not_keep_the_others_from_being_built(
    spec: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "bad.yaml").write_text("spec: 1\nwearer: {waist: 3}\n")
    assert main(["build", str(tmp_path), "-o", str(tmp_path / "out")]) == 1
    assert (tmp_path / "out" / "cage" / "plan.md").exists()
    assert not (tmp_path / "out" / "bad").exists()
    assert "[2/2]" in capsys.readouterr().err


def test_an_output_folder_that_is_a_file_is_wrong_use(spec: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (spec.parent / "out").write_text("mine")
    assert main(["build", str(spec), "-o", str(spec.parent / "out")]) == 2
    assert (spec.parent / "out").read_text() == "mine"
    assert "a file, not a folder" in capsys.readouterr().err


def test_formats_of_findings(spec: Path, capsys: pytest.CaptureFixture[str]) -> None:
    spec.write_text(FIVE.replace("72 cm", "72"))
    main(["check", "--format", "short", str(spec)])
    assert ": unit-missing " in capsys.readouterr().out
    main(["check", "--format", "jsonl", str(spec)])
    line = json.loads(capsys.readouterr().out.splitlines()[0])
    assert line["code"] == "unit-missing"


def test_new_gives_a_spec_that_builds_and_writes_over_nothing(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["new"]) == 0
    names = [line for line in capsys.readouterr().out.splitlines() if line and not line.startswith(" ")]
    for name in names:
        path = tmp_path / name / "cage.yaml"
        assert main(["new", name, "-o", str(path)]) == 0
        assert main(["check", str(path)]) == 0, capsys.readouterr().out
        fitted = tmp_path / name / "fitted.yaml"
        assert main(["new", name, "--stature", "5 ft 2 in", "--waist", "31 in", "-o", str(fitted)]) == 0
        assert main(["check", "--syntax", str(fitted)]) == 0, capsys.readouterr().out
        main(["build", str(fitted), "-o", str(tmp_path / name / "plan")])
        assert (tmp_path / name / "plan" / "plan.md").exists()
    path.write_text("mine")
    assert main(["new", names[0], "-o", str(path)]) == 2
    assert path.read_text() == "mine"
    assert main(["new", "no-such-starter"]) == 2


def test_explain_finds_codes_checks_and_words(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "unit-missing"]) == 0
    assert "unit" in capsys.readouterr().out
    assert main(["explain", "half", "hoop"]) == 0
    assert main(["explain"]) == 0
    assert "unit-missing" in capsys.readouterr().out
    assert main(["explain", "unit-mising"]) == 2
    assert "unit-missing" in capsys.readouterr().err


def test_schema_prints_what_is_shipped(capsys: pytest.CaptureFixture[str]) -> None:
    for which in ("spec", "plan"):
        assert main(["schema", which]) == 0
        assert capsys.readouterr().out == (ROOT / "schemas" / "v1" / f"{which}.schema.json").read_text()


def _run(*arguments: str, **environment: str) -> subprocess.CompletedProcess[bytes]:
    return subprocess.run(
        [sys.executable, "-m", "hoopwright", *arguments],
        capture_output=True,
        check=False,
        env=os.environ | environment,
    )


@pytest.mark.parametrize("command", [["--help"], ["explain", "hoop"], ["check", "--syntax", "SPEC"]])
def test_light_commands_load_no_numerical_library(spec: Path, command: list[str]) -> None:
    words = [str(spec) if word == "SPEC" else word for word in command]
    run = subprocess.run(
        [sys.executable, "-X", "importtime", "-m", "hoopwright", *words],
        capture_output=True,
        check=False,
        text=True,
    )
    loaded = {line.rsplit("|", 1)[-1].strip() for line in run.stderr.splitlines() if "import time:" in line}
    assert run.returncode == 0
    assert "hoopwright.cli" in loaded
    assert not loaded & {"numpy", "scipy", "networkx", "highspy"}


def test_two_hash_seeds_and_two_locales_give_the_same_bytes(spec: Path) -> None:
    def built(where: str, **environment: str) -> dict[str, bytes]:
        folder = spec.parent / where
        run = _run("build", str(spec), "-o", str(folder), **environment)
        assert run.returncode == 0, run.stderr
        return {name: (folder / name).read_bytes() for name in sorted(_files(folder))}

    first = built("a", PYTHONHASHSEED="1", LC_ALL="C")
    assert first == built("b", PYTHONHASHSEED="2", LC_ALL="C.UTF-8", TZ="Asia/Tokyo")


def test_a_closed_pipe_is_no_error(spec: Path) -> None:
    shell = f'"{sys.executable}" -m hoopwright explain | head -n 1'
    run = subprocess.run(["bash", "-c", shell], capture_output=True, check=False, text=True)
    assert run.stderr == ""
    assert len(run.stdout.splitlines()) == 1


def _unread(*words: str, stderr: int = subprocess.PIPE) -> tuple[int, str]:
    """Exit code and stderr of a command whose stdout nobody reads; ``stderr`` may go the same way."""
    hear, tell = os.pipe()
    os.close(hear)
    run = subprocess.run([sys.executable, "-m", "hoopwright", *words], stdout=tell, check=False, text=True,
                         stderr=tell if stderr == subprocess.STDOUT else stderr)
    os.close(tell)
    return run.returncode, run.stderr or ""


def test_a_page_that_nobody_read_to_the_end_is_not_told_as_whole() -> None:
    assert _unread("explain") == (141, "")


@pytest.mark.parametrize("stderr", [subprocess.PIPE, subprocess.STDOUT], ids=["findings", "all"])
def test_findings_that_nobody_reads_keep_no_plan_from_being_built(
    spec: Path, tmp_path: Path, stderr: int
) -> None:
    """The first spec has so much to say that it is printed before the second is built."""
    bad = tmp_path / "bad.yaml"
    bad.write_text("spec: 1\n" + "".join(f"strange{number}: 1\n" for number in range(300)))
    code, said = _unread("build", "-o", str(tmp_path / "out"), str(bad), str(spec), stderr=stderr)
    assert code == 1
    assert "Traceback" not in said
    assert "defect" not in said
    assert len(list((tmp_path / "out").glob("*/plan.md"))) == 1


def test_a_stale_plan_is_stale_when_nobody_reads_why(spec: Path, tmp_path: Path) -> None:
    folder = tmp_path / "out"
    assert _run("build", str(spec), "-o", str(folder)).returncode == 0
    (folder / "plan.md").write_text("# another\n")
    assert _unread("build", "--check", str(spec), "-o", str(folder))[0] == 1


@pytest.mark.parametrize(
    ("name", "data"),
    [
        ("latin", "spec: 1\ntitle: Crin\xe9line\n".encode("latin-1")),
        ("empty", b""),
        ("zero", b"spec: 1\x00"),
        ("python", b"spec: !!python/object/apply:os.system ['true']\n"),
    ],
)
def test_unreadable_text_ends_in_exit_1_with_no_output(tmp_path: Path, name: str, data: bytes) -> None:
    path = tmp_path / f"{name}.yaml"
    path.write_bytes(data)
    run = _run("build", str(path))
    assert run.returncode in (1, 2)
    assert b"Traceback" not in run.stderr + run.stdout
    assert _files(tmp_path) == {path.name}


def test_a_missing_file_is_wrong_use(tmp_path: Path) -> None:
    run = _run("build", str(tmp_path / "nothing.yaml"))
    assert run.returncode == 2
    assert b"file-missing" in run.stdout
