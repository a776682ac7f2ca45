"""Texts joined: documents laid over one another, every value and key keeping the place where it was written.

Groups of keys merge key by key; lists and single values are replaced. A group whose ``kind`` or ``grade`` is
stated anew is replaced as a whole, since the rest of its keys belongs to what stood there; so is a wearer
who is taken ``from`` another file.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from hoopwright.source.diagnostic import Path, Span
from hoopwright.source.read import Document

_TELLS_APART: Mapping[Path, tuple[str, ...]] = {("wearer",): ("from",)}
_EVERYWHERE = ("kind", "grade")

Places = dict[Path, Span]


def merged(base: object, over: object, path: Path = ()) -> Any:
    """``over`` laid on ``base``, as plain values; neither is changed. ``path`` is where they stand."""
    if not isinstance(base, dict) or not isinstance(over, dict) or _apart(base, over, path):
        return over
    return {**base, **{key: merged(base.get(key), value, (*path, key)) for key, value in over.items()}}


def _apart(base: Mapping[str, object], over: Mapping[str, object], path: Path) -> bool:
    """Whether a key that says what a group is has another value in ``over``: it is another group then."""
    telling = (*_EVERYWHERE, *_TELLS_APART.get(path, ()))
    return any(key in over and over[key] != base.get(key) for key in telling)


def lay(base: Document, over: Document) -> Document:
    """``over`` laid on ``base``. A group that both hold keeps the place it has in ``base``."""
    spans, keys = dict(base.spans), dict(base.key_spans)
    for path in _replaced(base.value, over.value, ()):
        _drop(spans, path)
        _drop(keys, path)
        spans.update(_below(over.spans, path))
        keys.update(_below(over.key_spans, path))
    return replace(base, value=merged(base.value, over.value), spans=spans, key_spans=keys)


def _replaced(base: object, over: object, path: Path) -> list[Path]:
    """The paths whose value is that of ``over`` alone, outermost first."""
    if not isinstance(base, dict) or not isinstance(over, dict) or _apart(base, over, path):
        return [path]
    return [found for key, value in over.items()
            for found in (_replaced(base[key], value, (*path, key)) if key in base else [(*path, key)])]


def part(document: Document, path: Path) -> Document:
    """The group at a path as a document of its own. Raises KeyError when no group stands there."""
    value: Any = document.value
    for key in path:
        value = value[key]
    if not isinstance(value, dict):
        raise KeyError(path)
    size = len(path)
    return replace(document, value=value,
                   spans={at[size:]: span for at, span in _below(document.spans, path).items()},
                   key_spans={at[size:]: span for at, span in _below(document.key_spans, path).items()})


def put(document: Document, path: Path, inner: Document) -> Document:
    """``document`` with ``inner`` as the group at ``path``; groups on the way are there already."""
    spans, keys = dict(document.spans), dict(document.key_spans)
    own_key, own = keys.get(path), spans.get(path)
    _drop(spans, path)
    _drop(keys, path)
    spans.update({(*path, *at): span for at, span in inner.spans.items()})
    keys.update({(*path, *at): span for at, span in inner.key_spans.items()})
    if own_key is not None:
        keys[path] = own_key
    if own is not None:
        spans[path] = own
    return replace(document, value=_set(document.value, path, inner.value), spans=spans, key_spans=keys)


def without(document: Document, *keys: str) -> Document:
    """``document`` without some of its outermost keys."""
    return replace(
        document,
        value={key: value for key, value in document.value.items() if key not in keys},
        spans={path: span for path, span in document.spans.items() if path[:1] not in [(k,) for k in keys]},
        key_spans={path: span for path, span in document.key_spans.items()
                   if path[:1] not in [(k,) for k in keys]},
    )


def with_values(document: Document, values: Mapping[Path, object]) -> Document:
    """``document`` with some values exchanged in their places."""
    return replace(document, value=exchanged(document.value, values))


def exchanged(value: Any, values: Mapping[Path, object]) -> Any:
    """Plain ``value`` with some values exchanged in their places; it is not changed itself."""
    for path, new in values.items():
        value = _set(value, path, new)
    return value


def _set(value: Any, path: Path, new: object) -> Any:
    """A copy of ``value`` with ``new`` at ``path``; what lies beside the way is shared."""
    if not path:
        return new
    key, rest = path[0], path[1:]
    if isinstance(value, list) and isinstance(key, int):
        return [_set(item, rest, new) if index == key else item for index, item in enumerate(value)]
    inner = value.get(key) if isinstance(value, dict) else None
    return {**(value if isinstance(value, dict) else {}), key: _set(inner, rest, new)}


def _below(places: Mapping[Path, Span], path: Path) -> Places:
    size = len(path)
    return {at: span for at, span in places.items() if at[:size] == path}


def _drop(places: Places, path: Path) -> None:
    for at in _below(places, path):
        del places[at]
