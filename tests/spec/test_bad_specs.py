"""Every spec in ``tests/bad/spec`` is told exactly what its ``# expect:`` comments say, at their lines."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from hoopwright.source.diagnostic import Diagnostic, Severity
from hoopwright.source.locate import locate
from hoopwright.source.read import read
from hoopwright.spec.resolve import resolve

FOLDER = Path(__file__).parents[1] / "bad" / "spec"
EXPECT = re.compile(r"# expect: ([a-z, -]+)$")
SPECS = sorted(FOLDER.glob("*.yaml"))


def diagnostics(path: Path) -> list[Diagnostic]:
    document, said = read(path.read_bytes(), path.name)
    assert document is not None, said
    return [locate(finding, document) for finding in resolve(document)[1]]


def test_there_are_bad_specs() -> None:
    assert len(SPECS) > 15


@pytest.mark.parametrize("path", SPECS, ids=lambda path: path.stem)
def test_it_is_told_what_is_expected_and_nothing_else(path: Path) -> None:
    wanted = sorted(
        (number, code.strip())
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1)
        if (found := EXPECT.search(line)) for code in found[1].split(","))
    said = diagnostics(path)
    got = sorted((one.span.line, one.code) for one in said if one.span and one.severity is not Severity.NOTE)
    assert got == wanted
    assert all(one.help for one in said)


@pytest.mark.parametrize("path", SPECS, ids=lambda path: path.stem)
def test_messages_are_short_and_plain(path: Path) -> None:
    """Lower case, no full stop, no question; what to do stands in the help only."""
    for one in diagnostics(path):
        first = one.message.lstrip("`")[:1]
        assert first == first.lower() or one.message.startswith("`"), one.message
        assert not one.message.endswith((".", "?", "!")), one.message
        assert not one.help.endswith((".", "?", "!")), one.help
        assert len(one.message) < 120


def test_the_joins_that_would_do_are_named() -> None:
    [missing] = diagnostics(FOLDER / "tool.yaml")
    assert "`lap bound`" in missing.help
    assert "`lap soldered`" not in missing.help
    assert "soldering iron" in missing.message
    assert [label.text for label in missing.labels] == ["the tools at hand"]


def test_a_second_price_points_at_the_first() -> None:
    [mixed] = [one for one in diagnostics(FOLDER / "money.yaml") if one.code == "currency-mixed"]
    assert [(label.span.line, label.text) for label in mixed.labels] == [(12, "a price in USD")]
