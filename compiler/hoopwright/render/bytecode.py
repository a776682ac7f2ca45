"""Compiled templates kept beside the templates, as Python keeps compiled modules.

Compiling the templates costs more than all other rendering. A kept file is used only when it was made from the
same text by the same versions; it is read as Python reads its own, never unpickled as Jinja would. Nothing is
written when Python itself is told not to write compiled files, and a folder that cannot be written is no error. What
is printed never depends on whether a kept file was found.
"""

from __future__ import annotations

import marshal
import sys
from contextlib import suppress
from pathlib import Path
from tempfile import NamedTemporaryFile
from types import CodeType

import jinja2
from jinja2.bccache import Bucket, BytecodeCache

from hoopwright import __version__

OPTIONS = "1"
"""To be raised when an option of the environment changes that changes compiled code."""


class KeptTemplates(BytecodeCache):
    """Keeps compiled templates where Python keeps compiled modules: in ``__pycache__`` under ``folder``, or
    under Python's own prefix for such files when one is set."""

    def __init__(self, folder: Path) -> None:
        prefix = sys.pycache_prefix
        self.folder = Path(prefix, *folder.parts[1:]) if prefix else folder / "__pycache__"
        self.suffix = f".{sys.implementation.cache_tag}-{jinja2.__version__}-{__version__}-{OPTIONS}.bin"

    def load_bytecode(self, bucket: Bucket) -> None:
        """Fill the bucket from its file; it stays empty when there is none or it is not its own."""
        with suppress(OSError, EOFError, ValueError, TypeError):
            head, _, code = self._path(bucket).read_bytes().partition(b"\n")
            found = marshal.loads(code) if head == _head(bucket) else None
            bucket.code = found if isinstance(found, CodeType) else None

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Write the bucket's file whole or not at all."""
        if sys.dont_write_bytecode or bucket.code is None:
            return
        with suppress(OSError):
            self.folder.mkdir(parents=True, exist_ok=True)
            with NamedTemporaryFile(dir=self.folder, suffix=".part", delete=False) as file:
                file.write(_head(bucket) + b"\n" + marshal.dumps(bucket.code))
            Path(file.name).replace(self._path(bucket))

    def _path(self, bucket: Bucket) -> Path:
        return self.folder / f"{bucket.key}{self.suffix}"


def _head(bucket: Bucket) -> bytes:
    """The first line of a kept file: it holds for this Python and this text only."""
    return f"{sys.version_info[:3]} {sys.implementation.cache_tag} {bucket.checksum}".encode()
