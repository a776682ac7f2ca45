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
    yaml_text,
)
from hoopwright.render.figure import Figure
from hoopwright.render.words import counted, ids_text, listed, sentence

if TYPE_CHECKING:
    from jinja2 import Environment

FOLDER = Path(__file__).with_name("templates")


@cache
def environment() -> Environment:
    """The environment over ``render/templates``. A missing value is an error, never a blank."""
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    env = Environment(
        loader=FileSystemLoader(FOLDER, encoding="utf-8"),
        undefined=StrictUndefined,
        finalize=_printed,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
        auto_reload=False,
        cache_size=200,
    )
    env.filters.update(code=code_text, mermaid=mermaid_text, yaml=yaml_text, ids=ids_text, listed=listed,
                       sentence=sentence, counted=counted, md=Md, image=_image, yamlkey=plain_or_quoted)
    env.globals["counted"] = counted
    return env


def _image(figure: Figure) -> Md:
    """A figure as a Markdown image: its alternative text, and its title as the caption on hovering."""
    return Md(f"![{markdown_text(figure.alt)}](figures/{figure.name}.svg)")


def _printed(value: object) -> str:
    return markdown_text(value if isinstance(value, str) else str(value))
