"""Many specs at once: the same bytes, messages and exit code as one after the other, and nothing lost when a
worker is."""

from __future__ import annotations

import errno
import os
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from hoopwright.cli import jobs as crews
from hoopwright.cli import made, main
from hoopwright.cli.defect import Defect
from hoopwright.cli.jobs import several

SPECS = Path(__file__).resolve().parents[2] / "specs"
KILLED = "__import__('os').kill(__import__('os').getpid(), 9)"
BROKEN = "spec: 1\nwearer: {waist: 3}\nshape: {hem: {girth: 2 m}}\n"
FIVE = "spec: 1\nunits: centimetres\nwearer: {stature: 168 cm, waist: 72 cm}\nshape: {hem: {girth: 2.8 m}}\n"


@pytest.fixture
def some(tmp_path: Path) -> Path:
    """A folder with a wheel, side hoops, a spec that fails a check and a broken one."""
    folder = tmp_path / "specs"
    for name in ("moon-masque", "pump-room"):
        shutil.copytree(SPECS / name, folder / name)
    (folder / "bad.yaml").write_text(BROKEN)
    (folder / "heavy.yaml").write_text(FIVE + "limits: {weight: 100 g}\n")
    return folder


def _ran(folder: Path, *words: str) -> tuple[int, str, str]:
    run = subprocess.run([sys.executable, "-m", "hoopwright", *words], cwd=folder, capture_output=True,
                         check=False, text=True)
    return run.returncode, run.stdout, run.stderr


def _state(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes()
            for path in sorted(folder.rglob("*")) if path.is_file()}


def test_three_jobs_write_and_say_what_one_does(some: Path) -> None:
    other = some.with_name("others")
    shutil.copytree(some, other)
    one, three = _ran(some, "build", "."), _ran(other, "build", ".", "--jobs", "3")
    assert one[0] == 1
    assert "unit-missing" in one[1]
    assert three == one
    assert _state(other) == _state(some)
    assert len(_state(some)) > 60
    (some / "pump-room" / "plan.json").write_text("{}")
    (other / "pump-room" / "plan.json").write_text("{}")
    held = _ran(some, "build", "--check", ".", "--format", "sarif")
    assert "plan-stale" in held[1]
    assert _ran(other, "build", "--check", ".", "--format", "sarif", "-j3") == held


@pytest.mark.parametrize("command", [
    ["check", "--format", "junit"], ["compare", "--format", "json"], ["shop"],
])
def test_every_command_with_jobs_says_the_same(some: Path, command: list[str]) -> None:
    names = ["moon-masque", "heavy.yaml", "bad.yaml"]
    one = _ran(some, *command, *names)
    assert one[0] == 1
    assert _ran(some, *command, *names, "--jobs", "2") == one


def test_specs_that_share_a_folder_are_written_in_their_order(tmp_path: Path) -> None:
    for name, girth in (("first", "2.8 m"), ("last", "2.4 m")):
        (tmp_path / name / "a").mkdir(parents=True)
        (tmp_path / name / "a" / "cage.yaml").write_text(FIVE.replace("2.8 m", girth))
    names = ["first/a/cage.yaml", "last/a/cage.yaml", "-o", "out"]
    assert _ran(tmp_path, "build", *names)[0] == 0
    one = _state(tmp_path / "out")
    shutil.rmtree(tmp_path / "out")
    assert _ran(tmp_path, "build", *names, "-j", "2")[0] == 0
    assert _state(tmp_path / "out") == one


def test_a_killed_worker_takes_only_its_own_item_with_it() -> None:
    found = list(several(eval, ["2 + 2", KILLED, "1 / 0", "3 * 3", "lambda: 0", "[5]"], 2))
    assert [found[at] for at in (0, 3, 5)] == [4, 9, [5]]
    lost = [found[at] for at in (1, 2, 4)]
    assert all(isinstance(one, Defect) for one in lost)
    assert [one.said.split(":")[0] for one in lost] == [
        "the process that worked on this spec was stopped by SIGKILL before it was done",
        "ZeroDivisionError", lost[2].said.split(":")[0]]
    assert "division by zero (<string>:1)" in lost[1].said
    assert "pickle" in lost[2].said  # a result that cannot travel


def test_results_keep_their_order_and_few_wait_for_theirs() -> None:
    slow_first = ["__import__('time').sleep(0.5)", *(str(at) for at in range(40))]
    assert list(several(eval, slow_first, 2)) == [None, *range(40)]


def test_a_closed_run_leaves_no_worker() -> None:
    pids = several(eval, ["__import__('os').getpid()"] * 4, 2)
    first = next(pids)
    pids.close()
    assert isinstance(first, int)
    with pytest.raises(ProcessLookupError):
        os.kill(first, 0)


def test_a_defect_in_one_spec_is_told_and_the_others_are_built(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    for name in ("a", "b"):
        (tmp_path / f"{name}.yaml").write_text(FIVE)
    whole = made._made

    def half(result: made.Compiled, *rest: object) -> made.Made:
        if result.file.endswith("a.yaml"):
            raise KeyError("rod")
        return whole(result, *rest)

    monkeypatch.setattr(made, "_made", half)
    assert main(["build", str(tmp_path), "--format", "short"]) == 70
    printed = capsys.readouterr()
    assert "a.yaml: compiler-defect a defect in hoopwright itself: KeyError: 'rod' (test_jobs.py:" in printed.out
    assert "a.yaml: a defect in hoopwright itself; nothing written" in printed.err
    assert (tmp_path / "b" / "plan.md").exists()
    assert not (tmp_path / "a").exists()


def test_an_interrupt_ends_the_run_and_its_workers(some: Path) -> None:
    for k in range(8):
        shutil.copytree(SPECS / "moon-masque", some / f"wheel-{k}")
    words = [sys.executable, "-m", "hoopwright", "build", ".", "-o", "out", "--jobs", "2"]
    run = subprocess.Popen(words, cwd=some, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True,
                           start_new_session=True)
    assert run.stderr is not None
    run.stderr.readline()
    time.sleep(0.3)
    os.killpg(run.pid, signal.SIGINT)
    _, said = run.communicate(timeout=60)  # ends only when no worker holds the pipes any more
    assert run.returncode == 130
    assert "Traceback" not in said


@pytest.mark.parametrize("jobs", ["0", "-1", "many", "1000"])
def test_a_number_of_jobs_that_makes_no_sense_is_wrong_use(jobs: str) -> None:
    with pytest.raises(SystemExit) as ending:
        main(["check", "--jobs", jobs, "a.yaml"])
    assert ending.value.code == 2


def test_auto_takes_the_processors_there_are(tmp_path: Path) -> None:
    (tmp_path / "a.yaml").write_text(FIVE)
    assert main(["check", "--syntax", "--jobs", "auto", str(tmp_path / "a.yaml")]) == 0


def test_where_no_more_processes_may_be_started_those_there_are_do_the_work(monkeypatch: pytest.MonkeyPatch) -> None:
    """Sixty-four jobs on a machine that grants two; nothing of the third stays open."""
    start, started = crews.BaseProcess.start, list[str]()

    def scarce(process: crews.BaseProcess) -> None:
        if len(started) == 2:
            raise OSError(errno.EAGAIN, os.strerror(errno.EAGAIN))
        started.append(process.name)
        start(process)

    assert list(several(abs, [-9], 1)) == [9]  # what the first worker of all leaves open is open
    open_before = len(os.listdir("/proc/self/fd"))
    monkeypatch.setattr(crews.BaseProcess, "start", scarce)
    assert list(several(abs, range(-9, 0), 64)) == [9, 8, 7, 6, 5, 4, 3, 2, 1]
    assert len(started) == 2
    assert len(os.listdir("/proc/self/fd")) == open_before


def test_where_no_process_at_all_may_be_started_the_run_works_alone(monkeypatch: pytest.MonkeyPatch) -> None:
    """The system's limit on processes is reached: the first worker is refused, or what keeps count of them."""
    def refused(*_: object) -> None:
        raise OSError(errno.EAGAIN, os.strerror(errno.EAGAIN))

    for owner, call in ((crews.BaseProcess, "start"), (crews.resource_tracker, "ensure_running")):
        with monkeypatch.context() as patch:
            patch.setattr(owner, call, refused)
            assert list(several(abs, range(-9, 0), 4)) == [9, 8, 7, 6, 5, 4, 3, 2, 1]


def test_where_workers_end_and_no_other_may_be_started_the_run_works_on_alone(monkeypatch: pytest.MonkeyPatch) -> None:
    start, started = crews.BaseProcess.start, list[str]()

    def scarce(process: crews.BaseProcess) -> None:
        if started:
            raise OSError(errno.EAGAIN, os.strerror(errno.EAGAIN))
        started.append(process.name)
        start(process)

    monkeypatch.setattr(crews.BaseProcess, "start", scarce)
    killed, *rest = several(_killed_unless_asked_here, [os.getpid()] * 4, 2)
    assert isinstance(killed, Defect)
    assert rest == ["here"] * 3


def _killed_unless_asked_here(process: int) -> str:
    if os.getpid() != process:
        os.kill(os.getpid(), signal.SIGKILL)
    return "here"
