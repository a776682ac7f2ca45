"""The template environment: everything printed is escaped for Markdown unless it is marked as Markdown."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

from hoopwright.render.escape import (
    Md,
    code_text,
    markdown_text,
    mermaid_text,
    plain_or_quoted,
    prose_text,
    yaml_text,
)
from hoopwright.render.figure import Figure
from hoopwright.render.words import closed, counted, ids_text, listed, sentence

if TYPE_CHECKING:
    from jinja2 import Environment

FOLDER = Path(__file__).with_name("templates")
"""Where the templates are."""


@cache
def environment() -> Environment:
    """The environment over ``render/templates``. A missing value is an error, never a blank."""
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    from hoopwright.render.bytecode import KeptTemplates

    env = Environment(
        bytecode_cache=KeptTemplates(FOLDER),
        loader=FileSystemLoader(FOLDER, encoding="utf-8"),
        undefined=StrictUndefined,
        finalize=_printed,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
        auto_reload=False,
        cache_size=200,
    )
    env.filters.update(_FILTERS)
    env.globals["counted"] = counted
    return env


def _image(figure: Figure) -> Md:
    """A figure as a Markdown image: its alternative text, and its title as the caption on hovering."""
    return Md(f"![{markdown_text(figure.alt)}](figures/{figure.name}.svg)")


def _bare(length: str) -> str:
    """A printed length without its unit, for a column that names it."""
    return length.rsplit(" ", 1)[0]


def _printed(value: object) -> str:
    return markdown_text(value if isinstance(value, str) else str(value))


_FILTERS = {
    "bare": _bare,
    "closed": closed,
    "code": code_text,
    "counted": counted,
    "ids": ids_text,
    "image": _image,
    "listed": listed,
    "md": Md,
    "mermaid": mermaid_text,
    "prose": prose_text,
    "sentence": sentence,
    "yaml": yaml_text,
    "yamlkey": plain_or_quoted,
}
