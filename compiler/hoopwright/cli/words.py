"""The words of the trade as cards explain them, from the pages of ``explain``."""

from __future__ import annotations

from hoopwright.explain.pages import pages
from hoopwright.render.views.cards import Word


def card_words() -> tuple[Word, ...]:
    """Every word with the forms it may stand in and its first sentence."""
    found = []
    for page in pages():
        if page.kind == "words":
            names = [page.title.lower(), *(name.strip() for name in page.fields.get("also", "").split(","))]
            forms = {form for name in names if name for form in (name, f"{name}s")}
            found.append(Word(page.title, tuple(sorted(forms)), page.summary))
    return tuple(found)
