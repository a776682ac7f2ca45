"""Each page of a code of this stage shows a spec that fails with that code alone, and its mended twin."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

import hoopwright
from hoopwright.explain.pages import Page, pages
from hoopwright.source.diagnostic import Finding
from hoopwright.source.read import read
from hoopwright.spec.resolve import resolve

SOURCES = Path(hoopwright.__file__).parent / "spec"
EMITTED = re.compile(r"\b(?P<severity>error|warning|note)\(\s*\"(?P<code>[a-z-]+)\"")
CODES = {found["code"]: found["severity"] for path in SOURCES.rglob("*.py")
         for found in EMITTED.finditer(path.read_text(encoding="utf-8"))}
PAGES = {page.slug: page for page in pages() if page.kind == "codes"}


def said(text: str) -> list[Finding]:
    document, wrong = read(text.encode(), "example.yaml")
    assert document is not None, wrong
    return list(resolve(document)[1])


def test_the_codes_are_found_in_the_sources() -> None:
    assert len(CODES) > 40
    assert CODES["key-unknown"] == "error"
    assert CODES["tool-unknown"] == "warning"


@pytest.mark.parametrize("code", sorted(CODES))
def test_every_code_has_a_page_that_fails_with_it_and_is_mended(code: str) -> None:
    page: Page = PAGES[code]
    assert page.fields["severity"] == CODES[code]
    language, fails = page.example("Fails")
    assert language == "yaml"
    assert [(finding.code, finding.severity.value) for finding in said(fails)] == [(code, CODES[code])]
    _, mended = page.example("Mended")
    assert said(mended) == []
