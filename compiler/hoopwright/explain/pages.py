"""Finding the page for a code, a check or a word, and offering the nearest when there is none."""

from __future__ import annotations

import re
from difflib import get_close_matches
from functools import cache
from pathlib import Path
from typing import Literal

from hoopwright.source.record import record

Kind = Literal["codes", "checks", "words"]

KINDS: tuple[Kind, ...] = ("codes", "checks", "words")
_TITLES: dict[Kind, str] = {
    "codes": "What the compiler may say about a spec",
    "checks": "What a plan is judged by",
    "words": "Words of the trade",
}
_ROOT = Path(__file__).parent
_FENCED = re.compile(r"```([a-z]+)\n(.*?)```", re.DOTALL)


@record(frozen=True, slots=True)
class Page:
    """One page. ``fields`` are the ``- name: value`` lines below its title, ``text`` is the whole page."""

    kind: Kind
    slug: str
    text: str
    fields: dict[str, str]

    @property
    def title(self) -> str:
        """The heading."""
        return self.text.split("\n", 1)[0].removeprefix("# ").strip()

    @property
    def summary(self) -> str:
        """The first sentence."""
        words = " ".join(self._paragraphs()[0].split()) if self._paragraphs() else ""
        quoted = re.sub(r"`[^`]*`", lambda found: "`" * len(found[0]), words)
        end = re.search(r"[.:] ", quoted)
        return words[: end.start()] if end else words.rstrip(".:")

    def example(self, section: str) -> tuple[str, str]:
        """The language and the text of the fenced block below ``## section``; empty when there is none."""
        _, _, below = self.text.partition(f"\n## {section}\n")
        block = _FENCED.search(below.split("\n## ")[0])
        return (block[1], block[2]) if block else ("", "")

    def _paragraphs(self) -> list[str]:
        """The paragraphs of plain words."""
        parts = [part.strip() for part in self.text.split("\n\n")]
        return [part for part in parts if part and not part.startswith(("#", "- ", "```", "|", "1."))]


@cache
def pages() -> tuple[Page, ...]:
    """All pages: codes, checks, words, each by name."""
    return tuple(
        _page(kind, path)
        for kind in KINDS
        for path in sorted((_ROOT / kind).glob("*.md"))
    )


def find(topic: str) -> tuple[Page, ...]:
    """The pages for what someone typed: a code, a check or a word, in any case, with spaces or hyphens,
    in the plural or by another name. A code and a check of one name are both returned."""
    wanted = slug(topic)
    singular = [wanted, wanted.removesuffix("s"), wanted.removesuffix("es")]
    for name in singular:
        found = tuple(page for page in pages() if name in _names(page))
        if found:
            return found
    return ()


def nearest(topic: str) -> tuple[str, ...]:
    """Up to three names that look like ``topic``, the most alike first."""
    names = sorted({name for page in pages() for name in _names(page)})
    return tuple(get_close_matches(slug(topic), names, n=3, cutoff=0.55))


def listing() -> str:
    """Every page by kind, a line each: its name and its first sentence."""
    out = []
    for kind in KINDS:
        listed = [page for page in pages() if page.kind == kind]
        width = max((len(page.slug) for page in listed), default=0)
        out += [_TITLES[kind], ""]
        out += [f"  {page.slug:<{width}}  {page.summary}" for page in listed]
        out.append("")
    return "\n".join(out)


def slug(topic: str) -> str:
    """``Lap join`` as ``lap-join``: the form of file names and codes."""
    return "-".join(re.findall(r"[a-z0-9]+", topic.lower()))


def _names(page: Page) -> tuple[str, ...]:
    """All names a page answers to."""
    also = page.fields.get("also", "")
    return (page.slug, *(slug(name) for name in also.split(",") if name.strip()))


def _page(kind: Kind, path: Path) -> Page:
    """A page from its file."""
    text = path.read_text(encoding="utf-8")
    head = text.split("\n## ")[0]
    fields = dict(re.findall(r"^- ([a-z]+): (.+)$", head, re.MULTILINE))
    return Page(kind, path.stem, text, fields)
