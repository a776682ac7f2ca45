"""Compiled templates are kept as Python keeps compiled modules, and change nothing that is printed."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest
from jinja2 import DictLoader, Environment

from hoopwright.render.bytecode import KeptTemplates


def _render(folder: Path, text: str = "{{ 1 + 1 }}") -> str:
    return (
        Environment(loader=DictLoader({"t": text}), bytecode_cache=KeptTemplates(folder))
        .get_template("t")
        .render()
    )


@pytest.fixture(autouse=True)
def writing(monkeypatch: pytest.MonkeyPatch) -> None:
    """Python may write compiled files, in the usual place."""
    monkeypatch.setattr(sys, "dont_write_bytecode", False)
    monkeypatch.setattr(sys, "pycache_prefix", None)


def test_a_template_is_kept_and_used_again(tmp_path: Path) -> None:
    assert _render(tmp_path) == "2"
    (kept,) = (tmp_path / "__pycache__").iterdir()
    before = kept.read_bytes()
    assert _render(tmp_path) == "2"
    assert kept.read_bytes() == before


def test_a_changed_template_is_compiled_anew(tmp_path: Path) -> None:
    assert _render(tmp_path) == "2"
    assert _render(tmp_path, "{{ 2 + 2 }}") == "4"
    assert _render(tmp_path) == "2"


@pytest.mark.parametrize("spoilt", [b"", b"nonsense", b"j2"])
def test_a_spoilt_file_is_made_again(tmp_path: Path, spoilt: bytes) -> None:
    _render(tmp_path)
    (kept,) = (tmp_path / "__pycache__").iterdir()
    whole = kept.read_bytes()
    kept.write_bytes(spoilt)
    assert _render(tmp_path) == "2"
    assert kept.read_bytes() == whole


def test_half_a_file_is_made_again(tmp_path: Path) -> None:
    _render(tmp_path)
    (kept,) = (tmp_path / "__pycache__").iterdir()
    kept.write_bytes(kept.read_bytes()[:-40])
    assert _render(tmp_path) == "2"


def test_nothing_is_written_when_python_writes_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys, "dont_write_bytecode", True)
    assert _render(tmp_path) == "2"
    assert list(tmp_path.iterdir()) == []


def test_a_folder_that_cannot_be_made_is_no_error(tmp_path: Path) -> None:
    (tmp_path / "__pycache__").write_text("a file in the way")
    assert _render(tmp_path) == "2"


def test_the_prefix_of_python_is_respected(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "pycache_prefix", str(tmp_path / "far"))
    assert _render(tmp_path / "near") == "2"
    assert not (tmp_path / "near").exists()
    assert len(list((tmp_path / "far").rglob("*.bin"))) == 1
