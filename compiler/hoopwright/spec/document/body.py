"""Bodies in files of their own: ``wearer: {from: ../bodies/hand.yaml}``.

A body file holds ``body: 1`` and ``wearer`` with the keys a spec's wearer has; it may itself take a body
``from`` another file. Keys beside ``from`` outrank those of the file.
"""

from __future__ import annotations

from hoopwright.source.diagnostic import Diagnostic, Label, Severity, Span, failed
from hoopwright.source.fetch import Fetch, Unread
from hoopwright.source.locate import place
from hoopwright.source.overlay import lay, part, put, without
from hoopwright.source.read import Document, read
from hoopwright.spec.checking.nearest import nearest

WEARER = "wearer"
FROM = "from"
_KEYS = ("body", "wearer")
_START = "begin it with `body: 1` and write the measures under `wearer`"


class NoBody(Exception):
    """A body cannot be had; ``diagnostics`` say why."""

    def __init__(self, *diagnostics: Diagnostic) -> None:
        super().__init__(diagnostics)
        self.diagnostics = diagnostics


def with_body(document: Document, fetch: Fetch, read_so_far: tuple[str, ...] = ()) -> Document:
    """``document`` with the body its wearer takes ``from`` a file put in its place. Raises NoBody."""
    wearer = document.value.get(WEARER)
    if not isinstance(wearer, dict) or not isinstance(wearer.get(FROM), str):
        return document
    at = place((WEARER, FROM), document)
    body = body_file(wearer[FROM], at, fetch, (*read_so_far, document.file))
    own = without(part(document, (WEARER,)), FROM)
    return put(document, (WEARER,), lay(part(body, (WEARER,)), own))


def body_file(name: str, at: Span, fetch: Fetch, readers: tuple[str, ...]) -> Document:
    """A body file read and joined with the body it is itself taken from. ``at`` is where it is named,
    ``readers`` are the files that led here. Raises NoBody."""
    got = fetch(name, at.file)
    if isinstance(got, Unread):
        raise NoBody(_error(got.code, at, got.message, got.help))
    document, said = read(got.data, got.file)
    if document is None or failed(said):
        raise NoBody(*said)
    _judge(document, at)
    if got.file in readers:
        way = " -> ".join(f"`{file}`" for file in (*readers[readers.index(got.file):], got.file))
        raise NoBody(_error("include-cycle", at, "this body is taken from itself in the end",
                            f"let one of the files hold the measures itself: {way}"))
    return with_body(document, fetch, readers)


def _judge(document: Document, at: Span) -> None:
    """Raise NoBody for a file that is no body."""
    value = document.value
    named = (Label(at, "named here"),)
    if "spec" in value or "shape" in value:
        key = "spec" if "spec" in value else "shape"
        raise NoBody(_error("wearer-file-is-spec", at, "the wearer is taken from a whole spec",
                            "move that spec's `wearer` into a file of its own that begins with `body: 1`, and"
                            " name that file in both",
                            (Label(place((key,), document, at_key=True), "a spec's key"),)))
    wrong = next((key for key in value if key not in _KEYS), None)
    if wrong is not None:
        near = nearest(wrong, _KEYS)
        raise NoBody(_error("wearer-file-unlike", place((wrong,), document, at_key=True),
                            f"no key `{wrong[:40]}` is known in a body file",
                            f"a key with a similar name exists: `{near[0]}`" if near else
                            "a body file holds `body` and `wearer`; measures go under `wearer`", named))
    if value.get("body") != 1 or isinstance(value.get("body"), bool):
        raise NoBody(_error("wearer-file-unlike", place(("body",), document),
                            "this file does not say that it is a body", _START, named))
    if not isinstance(value.get(WEARER), dict):
        raise NoBody(_error("wearer-file-unlike", place((WEARER,), document),
                            "this body file holds no measures", _START, named))


def _error(code: str, span: Span, message: str, help: str, labels: tuple[Label, ...] = ()) -> Diagnostic:
    return Diagnostic(code, Severity.ERROR, message, span.file, span, labels, (), help)
