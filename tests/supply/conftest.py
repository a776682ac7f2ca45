"""Specs as a maker writes them, taken as far as their shape."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from types import SimpleNamespace

import pytest

from hoopwright.shape.draw import draw
from hoopwright.source.read import read
from hoopwright.spec.resolve import resolve


def through(text: str) -> SimpleNamespace:
    """The spec and the shape of a text without errors."""
    document, said = read(text.encode(), "cage.yaml")
    assert document is not None, said
    spec, found = resolve(document)
    assert spec is not None, found
    shape, told = draw(spec)
    assert shape is not None, told
    return SimpleNamespace(spec=spec, shape=shape)


@pytest.fixture(scope="session")
def drawn() -> Callable[[str], SimpleNamespace]:
    """``drawn(text)`` has ``spec`` and ``shape``."""
    return through


@pytest.fixture(scope="session")
def harbour_text() -> str:
    """The worked example as it stands in the repository."""
    return (Path(__file__).parents[2] / "specs" / "harbour-play" / "cage.yaml").read_text()
