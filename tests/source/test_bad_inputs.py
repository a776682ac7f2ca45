"""Every bad spec in ``tests/bad`` ends in the diagnostics written on its own lines, and in no plan.

A line says what it must give in a remark at its end, ``# expect: code`` or ``# expect: code, code``. All
errors must be expected; warnings and notes may come besides. Inputs that are no text are made here.
"""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path

import pytest

from hoopwright.compile import compile_spec
from hoopwright.source.diagnostic import Diagnostic, Severity

FILES = sorted((Path(__file__).parents[1] / "bad").glob("*.yaml"))
EXPECT = re.compile(r"# expect: ([a-z0-9, -]+)$")
GOOD = b"spec: 1\nunits: inches\nwearer: {stature: 5 ft 7 in, waist: 28 in}\nshape: {hem: {girth: 110 in}}\n"


def expected(text: str) -> Counter[tuple[int, str]]:
    """Line and code of everything a file says it must give."""
    found: Counter[tuple[int, str]] = Counter()
    for number, line in enumerate(text.splitlines(), 1):
        remark = EXPECT.search(line)
        if remark:
            found.update((number, code.strip()) for code in remark[1].split(","))
    return found


def places(said: tuple[Diagnostic, ...]) -> Counter[tuple[int, str]]:
    """Line and code of diagnostics."""
    return Counter((found.span.line if found.span else 0, found.code) for found in said)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_bad_spec_gives_what_its_lines_say(path: Path) -> None:
    data = path.read_bytes()
    wanted = expected(data.decode())
    assert wanted, "a bad spec says on its lines what it must give"
    compiled = compile_spec(data, path.name)
    errors = tuple(found for found in compiled.diagnostics if found.severity is Severity.ERROR)
    assert places(errors) <= wanted, errors
    assert wanted <= places(compiled.diagnostics), compiled.diagnostics
    assert compiled.plan is None or not errors


def test_there_are_bad_specs_to_try() -> None:
    assert len(FILES) > 25


@pytest.mark.parametrize(("data", "code", "line"), [
    (b"", "file-empty", 0),
    (b"\n\n   \n# nothing yet\n", "file-empty", 0),
    (b"\xef\xbb\xbf", "file-empty", 0),
    (b"#" * (1024 * 1024 + 1), "file-too-large", 0),
    (GOOD + b"title: caf\xe9\n", "text-not-utf8", 5),
    (GOOD.decode().encode("utf-16"), "text-not-utf8", 1),
    (GOOD + b"title: Har\x00bour\n", "control-character", 5),
    (GOOD + b"title: Har\x1bbour\n", "control-character", 5),
    (GOOD + "title: Har\u2028bour\n".encode(), "control-character", 5),
    (GOOD.replace(b"\n", b"\r\n") + b"spec: 1\r\n", "duplicate-key", 5),
    (b"\x89PNG\r\n\x1a\n\x00\x00", "text-not-utf8", 1),
    (b"just some words\n", "top-not-keys", 1),
])
def test_bytes_that_are_no_spec(data: bytes, code: str, line: int) -> None:
    compiled = compile_spec(data, "bad.yaml")
    assert (line, code) in places(compiled.diagnostics)
    assert compiled.plan is None


@pytest.mark.parametrize("mark", [b"\xef\xbb\xbf", b"---\n", b"# a remark first\n"])
def test_marks_before_a_good_spec_do_not_matter(mark: bytes) -> None:
    compiled = compile_spec(mark + GOOD, "good.yaml", syntax_only=True)
    assert [found for found in compiled.diagnostics if found.severity is Severity.ERROR] == []
    assert compiled.spec is not None
