"""What is damaged: every spec, starter, body and cast of the repository, and the specs on the pages of ``explain``."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[3]


@dataclass(frozen=True)
class Seed:
    """Files that belong together by their relative names, the one to damage and the one a command is given."""

    files: dict[str, bytes]
    damaged: str
    asked: str

    @property
    def text(self) -> bytes:
        """The text of the file to damage."""
        return self.files[self.damaged]


@cache
def seeds() -> tuple[Seed, ...]:
    """Every file that can be damaged, in order of name; those of the repository before those of the pages."""
    return (*_committed(), *_explained())


@cache
def committed() -> tuple[Seed, ...]:
    """Only the specs themselves, of which a whole plan can be built."""
    return tuple(seed for seed in _committed() if re.search(rb"^spec:", seed.text, re.MULTILINE))


def _committed() -> tuple[Seed, ...]:
    found = []
    for folder in sorted(path for path in (ROOT / "specs").iterdir() if path.is_dir()):
        texts = {path.relative_to(folder).as_posix(): path.read_bytes() for path in sorted(folder.rglob("*.yaml"))}
        bodies = {name: text for name, text in texts.items() if name.startswith("bodies/")}
        for name, text in texts.items():
            if name in bodies:
                found.append(Seed(texts, name, "design.yaml"))
            elif name.startswith("cast"):
                found.append(Seed(texts, name, name))
            else:
                found.append(Seed({name: text} | bodies, name, name))
    return tuple(found)


def _explained() -> tuple[Seed, ...]:
    pages = sorted((ROOT / "compiler" / "hoopwright" / "explain").rglob("*.md"))
    texts = [text for page in pages for text in re.findall(r"^```yaml\n(.*?)^```", page.read_text(), re.S | re.M)]
    return tuple(Seed({"cage.yaml": text.encode()}, "cage.yaml", "cage.yaml")
                 for text in dict.fromkeys(texts) if text.startswith("spec:"))
