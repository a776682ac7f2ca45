"""Where a plan may be put, and what may stand there already: links, folders, pipes, a stranger's staging."""

from __future__ import annotations

import errno
import json
import os
import stat
import subprocess
from pathlib import Path

import pytest

from hoopwright.cli import moves
from hoopwright.cli.moves import second_name
from hoopwright.cli.output import Refused, put, seal
from hoopwright.cli.staging import PREFIX, change

NEW = {
    "plan.md": "# new\n",
    "plan.json": '{\n  "plan": 1,\n  "title": "new"\n}\n',
    "figures/hem.svg": "<svg/>\n",
}
SEALED = {name: seal(name, text) for name, text in NEW.items()}


def _state(folder: Path) -> dict[str, str]:
    return {
        path.relative_to(folder).as_posix(): path.read_text()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


@pytest.fixture
def outside(tmp_path: Path) -> Path:
    """A folder beside the output folder, with a file of the maker's."""
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "elsewhere" / "note.md").write_text("mine")
    return tmp_path / "elsewhere"


def test_a_link_to_a_folder_may_be_named(tmp_path: Path) -> None:
    (tmp_path / "real").mkdir()
    (tmp_path / "out").symlink_to(tmp_path / "real")
    put(tmp_path / "out", NEW)
    assert _state(tmp_path / "real") == SEALED
    assert (tmp_path / "out").is_symlink()


@pytest.mark.parametrize(
    ("target", "said"),
    [("nowhere", "a link that leads nowhere"), ("out", "a link that leads nowhere"), ("file", "this is a file")],
)
def test_other_links_are_refused(tmp_path: Path, target: str, said: str) -> None:
    (tmp_path / "file").write_text("mine")
    (tmp_path / "out").symlink_to(tmp_path / target)
    with pytest.raises(Refused, match=said):
        put(tmp_path / "out", NEW)
    assert sorted(path.name for path in tmp_path.iterdir()) == ["file", "out"]
    assert (tmp_path / "file").read_text() == "mine"


def test_a_folder_below_a_file_and_a_name_too_long_are_refused(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("mine")
    with pytest.raises(Refused, match="not a directory"):
        put(tmp_path / "file" / "out", NEW)
    with pytest.raises(Refused, match="name too long"):
        put(tmp_path / ("x" * 300), NEW)


def test_a_link_named_like_a_file_of_the_plan_is_kept_and_not_followed(tmp_path: Path, outside: Path) -> None:
    out = tmp_path / "out"
    (out / "figures").mkdir(parents=True)
    (out / "plan.md").symlink_to(outside / "note.md")
    (out / "plan.json").symlink_to(outside / "new.json")
    (out / "figures" / "hem.svg").symlink_to("/dev/zero")
    kept = put(out, NEW)
    assert {path.relative_to(out).as_posix(): os.readlink(path) for path in kept} == {
        "plan.yours-1.md": str(outside / "note.md"),
        "plan.yours-1.json": str(outside / "new.json"),
        "figures/hem.yours-1.svg": "/dev/zero",
    }
    assert {name: (out / name).read_text() for name in NEW} == SEALED
    assert _state(outside) == {"note.md": "mine"}


def test_a_link_where_a_copy_would_be_kept_is_not_followed(tmp_path: Path, outside: Path) -> None:
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / "plan.md").write_text("my own")
    (tmp_path / "out" / "plan.yours-1.md").symlink_to(outside / "new.md")
    assert [path.name for path in put(tmp_path / "out", NEW)] == ["plan.yours-2.md"]
    assert _state(outside) == {"note.md": "mine"}


@pytest.mark.parametrize("files", [NEW, {"shopping.md": "# trip\n"}], ids=["plan", "trip"])
def test_a_linked_figures_folder_is_refused_and_left_alone(
    tmp_path: Path, outside: Path, files: dict[str, str]
) -> None:
    (outside / "front.svg").write_text(seal("front.svg", "<svg/>\n"))
    before = _state(outside)
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / "figures").symlink_to(outside)
    with pytest.raises(Refused, match="leads elsewhere"):
        put(tmp_path / "out", files)
    assert _state(outside) == before


def test_a_file_with_a_second_name_elsewhere_keeps_its_text_there(tmp_path: Path, outside: Path) -> None:
    (tmp_path / "out").mkdir()
    os.link(outside / "note.md", tmp_path / "out" / "plan.md")
    kept = put(tmp_path / "out", NEW)
    assert (outside / "note.md").read_text() == "mine"
    assert [path.read_text() for path in kept] == ["mine"]


@pytest.mark.parametrize("name", ["plan.md", "figures/hem.svg"])
def test_a_folder_or_a_pipe_named_like_a_file_is_refused_before_anything_moves(tmp_path: Path, name: str) -> None:
    for number, make in enumerate((os.mkdir, os.mkfifo)):
        out = tmp_path / str(number)
        put(out, {"plan.json": NEW["plan.json"].replace("new", "old"), "figures/front.svg": "<svg/>\n"})
        make(out / name)
        before = {path: path.stat().st_mtime_ns for path in out.rglob("*") if path.is_file()}
        with pytest.raises(Refused, match=f"{name}.; what was there is as it was"):
            put(out, NEW)
        assert {path: path.stat().st_mtime_ns for path in out.rglob("*") if path.is_file()} == before


def test_figures_on_another_disk_are_refused_and_nothing_moves(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where the disk is not told apart beforehand, the moves made so far are taken back."""
    put(tmp_path, {"plan.md": "# old\n", "figures/hem.svg": "<svg>old</svg>\n", "figures/x.svg": "<svg/>\n"})
    before = _state(tmp_path)
    real = os.replace

    def replace(source: str, target: str) -> None:
        if str(target).endswith(".svg"):
            raise OSError(18, "Invalid cross-device link")
        real(source, target)

    monkeypatch.setattr(os, "replace", replace)
    with pytest.raises(Refused, match=r"cross-device link.; what was there is as it was"):
        put(tmp_path, {name: text for name, text in NEW.items() if name != "plan.json"} | {"figures/x.svg": "<svg/>\n"})
    assert _state(tmp_path) == before


@pytest.mark.parametrize("refusal", [errno.EPERM, errno.EOPNOTSUPP, None],
                         ids=["not allowed", "not known", "not built in"])
def test_where_files_cannot_have_two_names_a_copy_is_kept(
    refusal: int | None, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def link(*_: object, **__: object) -> None:
        assert refusal is not None, "not asked for where it is not built in"
        raise OSError(refusal, os.strerror(refusal))

    monkeypatch.setattr(os, "link", link)
    monkeypatch.setattr(moves, "_NAMES_LINKS", refusal is not None)
    put(tmp_path, {"plan.md": "# old\n"})
    (tmp_path / "plan.md").write_text("# ticked\n")
    put(tmp_path, NEW)
    assert _state(tmp_path)["plan.yours-1.md"] == "# ticked\n"
    assert set(_state(tmp_path)) == {*NEW, "plan.yours-1.md"}


@pytest.mark.parametrize("taken", [True, False], ids=["the name is taken", "the disk is broken"])
def test_a_second_name_is_never_written_over_another_file(
    taken: bool, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Only where files cannot have two names is a copy made: it would take the place of what stands there."""
    path, other = tmp_path / "plan.md", tmp_path / "plan.yours-1.md"
    path.write_text("# ticked\n")
    if taken:
        other.write_text("# mine too\n")
    else:
        def broken(*_: object, **__: object) -> None:
            raise OSError(errno.EIO, "input/output error")

        monkeypatch.setattr(os, "link", broken)
    with pytest.raises(OSError, match="exists" if taken else "input/output"):
        second_name(path, other)
    assert (other.read_text() if taken else "") == ("# mine too\n" if taken else "")
    assert other.exists() is taken


def test_a_file_named_figures_is_refused(tmp_path: Path) -> None:
    (tmp_path / "figures").write_text("mine")
    with pytest.raises(Refused, match="as it was"):
        put(tmp_path, NEW)
    assert _state(tmp_path) == {"figures": "mine"}


def test_files_of_the_same_names_that_were_never_ours_are_kept(tmp_path: Path) -> None:
    (tmp_path / "figures").mkdir()
    (tmp_path / "plan.md").write_bytes(b"my \xff project plan")
    (tmp_path / "plan.json").write_text('{"plan": 1, "of": "mine"}')
    (tmp_path / "figures" / "hem.svg").write_text("<svg>a photo</svg>")
    put(tmp_path, NEW)
    assert (tmp_path / "plan.yours-1.md").read_bytes() == b"my \xff project plan"
    assert (tmp_path / "plan.yours-1.json").read_text() == '{"plan": 1, "of": "mine"}'
    assert (tmp_path / "figures" / "hem.yours-1.svg").read_text() == "<svg>a photo</svg>"


def test_who_may_read_a_plan_stays_as_it_was(tmp_path: Path) -> None:
    put(tmp_path, NEW)
    (tmp_path / "plan.md").chmod(0o600)
    put(tmp_path, NEW | {"plan.md": "# newer\n"})
    assert stat.S_IMODE((tmp_path / "plan.md").stat().st_mode) == 0o600


@pytest.mark.parametrize(
    "name",
    ["../plan.md", "/tmp/plan.md", "figures/../../x.svg", ".git/config", "figures/.x.svg", "cage.yaml", "a/b/c.md",
     "figures", "plan.md\n", "pl\0an.md", "", "plan.md/"],
)
def test_a_name_that_could_lead_out_of_the_folder_is_never_written(tmp_path: Path, name: str) -> None:
    for files, removed in (({name: "x"}, []), ({}, [name])):
        with pytest.raises(ValueError, match="no name for a file of a plan"):
            change(tmp_path, files, removed)
    assert list(tmp_path.iterdir()) == []


def _stage(folder: Path, ready: object, files: dict[str, str], part: str = "new") -> Path:
    stage = folder / f"{PREFIX}stranger"
    for name, text in files.items():
        (stage / part / name).parent.mkdir(parents=True, exist_ok=True)
        (stage / part / name).write_text(text)
    stage.mkdir(exist_ok=True)
    (stage / "ready").write_text(ready if isinstance(ready, str) else json.dumps(ready))
    return stage


@pytest.mark.parametrize(
    "ready",
    [
        {"put": {}, "removed": ["../elsewhere/note.md"], "was": {}},
        {"put": {}, "removed": ["figures/../../elsewhere/note.md"], "was": {}},
        {"put": {"../elsewhere/note.md": ""}, "removed": [], "was": {}},
        {"put": {"cage.yaml": "", ".git/hooks/x.md": ""}, "removed": ["cage.yaml"], "was": {"cage.yaml": ""}},
        {"put": [["cage.yaml", ""]], "removed": "cage.yaml", "was": []},
        {"put": {}, "removed": [], "was": {"../elsewhere/note.md": ""}},
        {"put": 3}, [], "[" * 50_000, "\0", "../elsewhere/note.md\ncage.yaml\n",
    ],
    ids=range(11),
)  # fmt: skip
def test_a_staging_folder_that_came_with_a_strangers_files_reaches_nothing(
    tmp_path: Path, outside: Path, ready: object
) -> None:
    out = tmp_path / "out"
    out.mkdir()
    (out / "cage.yaml").write_text("spec: 1\n")
    _stage(out, ready, {"cage.yaml": "theirs", "x.md": "theirs", "plan.md": "theirs"})
    put(out, NEW)
    assert _state(outside) == {"note.md": "mine"}
    assert (out / "cage.yaml").read_text() == "spec: 1\n"
    assert {name: (out / name).read_text() for name in NEW} == SEALED
    assert not (out / ".git").exists()


@pytest.mark.parametrize("known", ["", "0" * 64])
def test_a_staging_folder_that_came_with_a_strangers_files_costs_nobody_a_change(tmp_path: Path, known: str) -> None:
    """It may hold another plan, under a plan's own names; what the maker wrote there is kept all the same."""
    (tmp_path / "plan.md").write_text("my ticks")
    (tmp_path / "plan.json").symlink_to("note.json")
    ready = {"put": {"plan.md": known, "plan.json": known}, "removed": ["wearing.md"], "was": {}}
    _stage(tmp_path, ready, NEW)
    (tmp_path / "wearing.md").write_text("my own page")
    put(tmp_path, NEW)
    left = _state(tmp_path)
    assert {name: left[name] for name in NEW} == SEALED
    assert {"my ticks", "my own page"} <= set(left.values())
    assert "note.json" in [os.readlink(path) for path in tmp_path.iterdir() if path.is_symlink()]


@pytest.mark.parametrize("linked", ["", "ready", "new", "old", "new/figures"])
def test_a_staging_folder_made_of_links_is_not_followed(tmp_path: Path, outside: Path, linked: str) -> None:
    out = tmp_path / "out"
    put(out, NEW)
    (outside / "hem.svg").write_text("theirs")
    ready = {"put": {"figures/hem.svg": ""}, "removed": ["plan.json"], "was": {}}
    stage = _stage(out, ready, {"figures/hem.svg": "theirs"})
    place = stage / linked if linked else stage
    if place.exists():
        place.rename(outside / "aside")
    place.symlink_to(outside / "aside" if (outside / "aside").exists() else outside)
    before = _state(outside)
    put(out, NEW)
    assert _state(outside) == before
    assert {name: (out / name).read_text() for name in NEW} == SEALED


def test_a_folder_of_the_makers_that_is_named_like_staging_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / f"{PREFIX}notes").mkdir()
    (tmp_path / f"{PREFIX}notes" / "diary.txt").write_text("mine")
    put(tmp_path, NEW)
    assert (tmp_path / f"{PREFIX}notes" / "diary.txt").read_text() == "mine"


def test_in_a_git_work_tree_with_changes_only_the_plan_changes(tmp_path: Path) -> None:
    """Staged, changed, untracked and ignored files stay as they are; ticks made by hand are kept."""

    def git(*words: str) -> str:
        own = {"GIT_CONFIG_GLOBAL": os.devnull, "GIT_CONFIG_NOSYSTEM": "1"}
        run = subprocess.run(
            ["git", "-c", "user.name=A", "-c", "user.email=a@b.invalid", *words],
            cwd=tmp_path, env=os.environ | own, check=True, capture_output=True, text=True,
        )  # fmt: skip
        return run.stdout

    git("init", "-q")
    (tmp_path / ".gitignore").write_text("*.tmp\n")
    (tmp_path / "cage.yaml").write_text("spec: 1\n")
    put(tmp_path, {"plan.md": "# old\n", "figures/front.svg": "<svg/>\n", "figures/side.svg": "<svg/>\n"})
    git("add", "-A")
    git("commit", "-q", "-m", "The plan")
    mine = {
        "cage.yaml": "spec: 1\ntitle: changed, not committed\n",
        "staged.md": "staged", "untracked.md": "new", "ignored.tmp": "ignored",
        "figures/side.svg": "<svg>drawn on by hand</svg>", "figures/photo.svg": "<svg>mine</svg>",
        ".gitignore": "*.tmp\n*.bak\n",
    }  # fmt: skip
    for name, text in mine.items():
        (tmp_path / name).write_text(text)
    git("add", "staged.md")
    ticked = (tmp_path / "plan.md").read_text().replace("old", "old, ticked")
    (tmp_path / "plan.md").write_text(ticked)
    index = git("ls-files", "--stage")
    put(tmp_path, NEW)
    assert git("ls-files", "--stage") == index
    assert {name: (tmp_path / name).read_text() for name in mine} == mine
    assert (tmp_path / "plan.yours-1.md").read_text() == ticked
    assert set(git("status", "--porcelain", "-uall").splitlines()) == {
        " M .gitignore", " M cage.yaml", " M plan.md", " D figures/front.svg", " M figures/side.svg",
        "A  staged.md", "?? figures/hem.svg", "?? figures/photo.svg", "?? plan.json", "?? plan.yours-1.md",
        "?? untracked.md",
    }  # fmt: skip
