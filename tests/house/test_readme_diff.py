"""The README's difference is what the command says."""

from __future__ import annotations

from pathlib import Path

import pytest

from hoopwright.cli import main

ROOT = Path(__file__).resolve().parents[2]


def test_the_difference_ends_as_the_readme_says(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(ROOT)
    readme = (ROOT / "README.md").read_text()
    shown = readme.split("<!-- diff:start -->")[1].split("<!-- diff:end -->")[0].strip().strip("`").strip()
    assert main(["diff", "specs/mill-fair/design.yaml", "--variant", "thin strip"]) == 0
    assert "Done work that no longer holds" in shown
    assert capsys.readouterr().out.strip().endswith(shown)
