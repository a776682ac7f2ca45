"""Whatever call to the file system fails or is the last one made: the old plan whole, or the new one."""

from __future__ import annotations

import errno
import os
import resource
import signal
from collections.abc import Callable, Iterator
from itertools import product
from pathlib import Path
from typing import Any

import pytest

from hoopwright.cli import writing
from hoopwright.cli.holding import alone
from hoopwright.cli.moves import Moves
from hoopwright.cli.output import Refused, put, seal
from hoopwright.cli.staging import finish

OLD = {
    "plan.md": "# old\n",
    "plan.json": '{\n  "plan": 1,\n  "title": "old"\n}\n',
    "figures/front.svg": "<svg/>\n",
    "figures/side.svg": "<svg/>\n",
}
NEW = {
    "plan.md": "# new\n",
    "plan.json": '{\n  "plan": 1,\n  "title": "new"\n}\n',
    "figures/front.svg": "<svg id='f'/>\n",
    "figures/hem.svg": "<svg id='h'/>\n",
}
CALLS = ("mkdir", "open", "write", "fsync", "close", "link", "replace", "unlink", "chmod", "rmdir", "fork")
TICKED = "# old, ticked by hand\n"


def _state(folder: Path) -> dict[str, str]:
    """Every file of the plan, the maker's kept copies under the text they keep."""
    return {
        path.relative_to(folder).as_posix(): path.read_text()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and not path.relative_to(folder).parts[0].startswith(".")
    }


def _sealed(files: dict[str, str]) -> dict[str, str]:
    return {name: seal(name, text) for name, text in files.items()}


BEFORE = _sealed(OLD) | {"plan.md": TICKED}
AFTER = _sealed(NEW) | {"plan.yours-1.md": TICKED}


@pytest.fixture(autouse=True)
def _in_one_order(monkeypatch: pytest.MonkeyPatch) -> None:
    """One thread writes, so that a call has its number; and nobody waits for a real disk's flushing."""
    monkeypatch.setattr(writing, "AT_ONCE", 1)
    monkeypatch.setattr(os, "fsync", lambda handle: None)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A folder with the old plan, its Markdown changed by hand."""
    return _fresh(tmp_path / "out")


def _fresh(folder: Path) -> Path:
    for name, text in BEFORE.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text)
    return folder


class Trouble:
    """Does ``what`` instead of the call numbered ``at`` (from 1) to the file system, of that numbered ``again``, and
    of all later ones when it is ``lasting``; counts the calls."""

    def __init__(
        self, patch: pytest.MonkeyPatch, at: int, what: Callable[[], None], lasting: bool = False, again: int = 0
    ) -> None:
        self.count, self.at, self.what, self.lasting, self.again = 0, at, what, lasting, again
        for name in CALLS:
            patch.setattr(os, name, self._instead(getattr(os, name), name))

    def _instead(self, real: Callable[..., Any], name: str) -> Callable[..., Any]:
        def call(*arguments: Any, **named: Any) -> Any:
            self.count += 1
            if self.count in (self.at, self.again) or (self.lasting and self.count > self.at):
                if name == "close":  # closed all the same
                    real(*arguments)
                self.what()
            return real(*arguments, **named)

        return call


def _raise(code: int) -> Callable[[], None]:
    def what() -> None:
        raise OSError(code, os.strerror(code))

    return what


def _calls(folder: Path) -> int:
    """How many calls a whole change makes, in this process and in its child together."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(os, "fork", _raise(errno.EAGAIN))
        trouble = Trouble(patch, 0, _raise(errno.EIO))
        put(folder, NEW)
    assert _state(folder) == AFTER
    return trouble.count


def _build(folder: Path) -> None:
    """The new plan, moved by this process itself: as when no more processes may be started."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(os, "fork", _raise(errno.EAGAIN))
        put(folder, NEW)


@pytest.mark.parametrize("lasting", [False, True], ids=["once", "lasting"])
@pytest.mark.parametrize("code", ["ENOSPC", "EIO", "EACCES"])
def test_every_call_that_can_fail_leaves_a_whole_plan(tmp_path: Path, code: str, lasting: bool) -> None:
    """Each call in turn fails, in the build or in the child that moves; nothing is lost and the message is true."""
    refused = 0
    total = _calls(_fresh(tmp_path / "count"))
    for at in range(1, total + 1):
        folder, said = _fresh(tmp_path / str(at)), ""
        with pytest.MonkeyPatch.context() as patch:
            Trouble(patch, at, _raise(getattr(errno, code)), lasting)
            try:
                put(folder, NEW)
            except Refused as problem:
                said = str(problem)
        left = _state(folder)
        if not said:
            assert left == AFTER, at
        elif "only a part" in said:
            assert lasting, at
            assert TICKED in left.values(), at
        else:
            assert left == BEFORE, (at, said)
            assert os.strerror(getattr(errno, code)).lower() in said
            assert "what was there is as it was" in said
        refused += bool(said)
        _build(folder)
        assert _state(folder) == AFTER, at
        assert [path.name for path in folder.iterdir() if path.name.startswith(".")] == []
    assert refused > total // 4


def test_wherever_all_of_it_is_killed_the_next_run_makes_one_whole_plan(tmp_path: Path) -> None:
    """The build and the child that moves both die at the same call: what no single kill can do, but a power cut."""
    found = {"old": 0, "new": 0}
    for at in range(1, _calls(_fresh(tmp_path / "count")) + 1):
        folder = _fresh(tmp_path / str(at))
        _die_at(at, folder)
        assert TICKED in _state(folder).values()
        with alone(folder):
            finish(folder)
        left = _state(folder)
        assert left in (BEFORE, AFTER), at
        found["new" if left == AFTER else "old"] += 1
        _build(folder)
        assert _state(folder) == AFTER
    assert min(found.values()) > 3


def _die_at(at: int, folder: Path) -> None:
    """Run a build in a process of its own and kill it, moving all by itself, instead of its call ``at``."""
    child = os.fork()
    if child == 0:
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(os, "fork", _raise(errno.EAGAIN))
            Trouble(patch, at, lambda: os.kill(os.getpid(), signal.SIGKILL))
            put(folder, NEW)
        os._exit(0)
    os.waitpid(child, 0)


def test_ticks_made_between_a_power_cut_and_the_next_build_are_kept(tmp_path: Path) -> None:
    """The plan was half moved, and the maker works on with what is there."""
    for at in range(1, _calls(_fresh(tmp_path / "count")) + 1, 2):
        folder = _fresh(tmp_path / str(at))
        _die_at(at, folder)
        (folder / "plan.md").write_text("# new ticks\n")
        _build(folder)
        left = _state(folder)
        assert "# new ticks\n" in left.values(), at
        assert {name: left[name] for name in NEW} == _sealed(NEW)


def test_what_did_not_reach_the_disk_before_a_power_cut_is_taken_back(tmp_path: Path) -> None:
    """A file that was staged, or moved already, is found empty."""
    tried = 0
    for at in range(1, _calls(_fresh(tmp_path / "count")) + 1):
        folder = _fresh(tmp_path / str(at))
        _die_at(at, folder)
        ready = list(folder.glob(".hoopwright-stage-*/ready"))
        moved = _state(folder).get("figures/hem.svg")
        if ready and moved is None:
            (ready[0].parent / "new" / "figures" / "hem.svg").write_bytes(b"")
        elif ready:
            (folder / "figures" / "hem.svg").write_bytes(b"")
        with alone(folder):
            finish(folder)
        if ready:
            assert _state(folder) == BEFORE
        tried += bool(ready)
    assert tried > 10


def test_a_move_and_then_its_taking_back_fail_and_the_next_run_mends_it(tmp_path: Path) -> None:
    """Two calls fail, wherever the first is: what could neither be finished nor taken back is made whole next time."""
    half = 0
    for at, later in product(range(1, _calls(_fresh(tmp_path / "count")) + 1), range(1, 8)):
        folder, said = _fresh(tmp_path / f"{at}-{later}"), ""
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(os, "fork", _raise(errno.EAGAIN))
            Trouble(patch, at, _raise(errno.EIO), again=at + later)
            try:
                put(folder, NEW)
            except Refused as problem:
                said = str(problem)
        half += "only a part" in said
        assert TICKED in _state(folder).values(), (at, later)
        with alone(folder):
            finish(folder)
        assert _state(folder) in (BEFORE, AFTER), (at, later)
        _build(folder)
        assert _state(folder) == AFTER, (at, later)
    assert half > 5


def test_a_power_cut_while_it_is_taken_back_is_made_good_by_the_next_run(tmp_path: Path) -> None:
    """A staged file did not reach the disk; taking the change back is stopped at each call in turn."""
    for at in range(1, 80):
        folder = _half_moved(tmp_path / str(at))
        child = os.fork()
        if child == 0:
            with pytest.MonkeyPatch.context() as patch:
                patch.setattr(os, "fork", _raise(errno.EAGAIN))
                Trouble(patch, at, lambda: os.kill(os.getpid(), signal.SIGKILL))
                with alone(folder):
                    finish(folder)
            os._exit(0)
        _, status = os.waitpid(child, 0)
        with alone(folder):
            finish(folder)
        assert _state(folder) == BEFORE, at
        if os.WIFEXITED(status):
            break
    assert at > 10


def _half_moved(folder: Path) -> Path:
    """All of a change is moved, its stage is still there, and one of its files is found empty."""
    _fresh(folder)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(os, "fork", _raise(errno.EAGAIN))
        patch.setattr(Moves, "discard", lambda self: None)
        put(folder, NEW)
    assert _state(folder) == AFTER
    (folder / "figures" / "hem.svg").write_bytes(b"")
    return folder


@pytest.mark.parametrize("limit", [0, 20, 60, 200])
def test_a_real_limit_on_what_may_be_written_leaves_the_old_plan(folder: Path, limit: int) -> None:
    """The system itself refuses to write more than so many bytes to a file."""
    said = _in_a_child(folder, lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (limit, limit)))
    assert said.startswith("the plan cannot be written here (file too large)")
    assert _state(folder) == BEFORE


def test_a_real_folder_that_may_not_be_written_leaves_the_old_plan(request: pytest.FixtureRequest) -> None:
    """Permissions do not bind the superuser: the build is then run as nobody."""
    import shutil
    import tempfile

    folder = Path(tempfile.mkdtemp())  # where nobody may look, unlike the tests' own folders
    request.addfinalizer(lambda: shutil.rmtree(folder))
    _fresh(folder / "out")
    for path in (folder, *folder.rglob("*")):
        path.chmod(0o555 if path.is_dir() else 0o444)
    try:
        said = _in_a_child(folder / "out", _nobody)
        new = _in_a_child(folder / "other", _nobody)
    finally:
        for path in (folder, folder / "out", folder / "out" / "figures"):
            path.chmod(0o755)
    assert said == "the plan cannot be written here (permission denied); what was there is as it was"
    assert new.startswith("the plan cannot be written here (permission denied")
    assert _state(folder / "out") == BEFORE


def _nobody() -> None:
    if os.geteuid() == 0:
        os.setgroups([])
        os.setgid(65534)
        os.setuid(65534)


def _in_a_child(folder: Path, prepare: Callable[[], None]) -> str:
    """What a build in a process of its own was refused with, after ``prepare``."""
    read, write = os.pipe()
    child = os.fork()
    if child == 0:
        said = "it was written"
        try:
            signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
            prepare()
            put(folder, NEW)
        except Refused as problem:
            said = str(problem)
        except BaseException as problem:
            said = repr(problem)
        finally:
            os.write(write, said.encode())
            os._exit(0)
    os.close(write)
    said = b"".join(_pieces(read)).decode()
    os.waitpid(child, 0)
    return said


def _pieces(handle: int) -> Iterator[bytes]:
    while piece := os.read(handle, 4096):
        yield piece
    os.close(handle)
