"""What a file is, told from its name and its first bytes before it is read as YAML."""

from __future__ import annotations

import re
from pathlib import Path

from hoopwright.cli.include import MOST

SUFFIXES = (".yaml", ".yml")


def _begun_by(key: bytes) -> re.Pattern[bytes]:
    return re.compile(rb"^(?:\xef\xbb\xbf)?" + key + rb"[ \t]*:", re.MULTILINE)


IS_SPEC = _begun_by(b"spec")
IS_CAST = _begun_by(b"cast")
IS_BODY = _begun_by(b"body")


def first_bytes(path: Path) -> bytes:
    """The file, or its first bytes when it is larger than the source stage takes. Raises OSError."""
    with path.open("rb") as stream:
        return stream.read(MOST + 1)


def is_spec(path: Path, *also: re.Pattern[bytes]) -> bool:
    """Whether a file holds a spec, or what ``also`` says; one that cannot be read is taken for one, so that reading it
    says why."""
    try:
        data = first_bytes(path) if path.is_file() else b""
        return any(kind.search(data) for kind in (IS_SPEC, *also))
    except OSError:
        return True
