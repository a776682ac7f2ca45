"""Starter specs: commented specs to begin from, fitted to a few measurements and otherwise left as written.

A starter is an ordinary spec. Answers replace values at their places in its text, so that every comment
stays; lengths the maker did not give move with her stature or waist.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

from hoopwright.library.body import WAIST_OVER_HIP
from hoopwright.source.diagnostic import Path as KeyPath
from hoopwright.source.quantity import QuantityError, length_text, parse_length
from hoopwright.source.read import Document, read
from hoopwright.spec.reading.node import Node

LONGEST_TITLE = 200
_PLAIN = re.compile(r"[0-9A-Za-z ./]+")
_EDITOR = "# yaml-language-server:"
_BY_STATURE: tuple[KeyPath, ...] = (
    ("shape", "top_hoop", "below_waist"),
    ("shape", "hem", "girth"),
    ("shape", "hem", "off_floor"),
    ("build", "hem_band", "depth"),
    ("build", "wheel", "width"),
    ("build", "wheel", "set_back"),
    ("shape", "ground_plan", "front_to_back"),
    *(("shape", "ground_plan", "hoops", index, key) for index in range(9) for key in ("drop", "reach")),
    ("shape", "hoops", "every"),
    ("build", "panels", "placket"),
    ("build", "flounce", "depth"),
    *(("shape", "ground_plan", key, end) for key in ("set_back", "chord", "reach") for end in ("top", "hem")),
)
_BY_WAIST: tuple[KeyPath, ...] = (("build", "tapes", "front_gap"), ("build", "panels", "top"),
                                  ("build", "wheel", "roll", "length"), ("build", "side_hoops", "on_band"))
_STEPS = {"inches": 0.0254 / 4, "centimetres": 0.005}


def starters() -> tuple[tuple[str, str], ...]:
    """Every starter: its name, and a paragraph on its date, the body and the skirt it suits."""
    return tuple((path.name.removesuffix(".yaml"), _about(path.read_text(encoding="utf-8")))
                 for path in sorted(_folder().iterdir(), key=lambda path: path.name)
                 if path.name.endswith(".yaml"))


def starter(name: str, answers: Mapping[str, str]) -> str:
    """The text of a starter with ``title``, ``stature``, ``waist`` and ``hip`` as answered, if answered.

    Raises KeyError for an unknown starter, QuantityError for an answer that is no length.
    """
    if name not in dict(starters()):
        raise KeyError(name)
    text = (_folder() / f"{name}.yaml").read_text(encoding="utf-8")
    document, said = read(text.encode(), name)
    if document is None:
        raise ValueError(said[0].message)
    return _without_editor_line(_replaced(document, _values(Node(document.value), answers)))


def _without_editor_line(text: str) -> str:
    """The text without the line that ties it to the schema beside it, and what blank follows it."""
    lines = text.splitlines(keepends=True)
    if lines and lines[0].startswith(_EDITOR):
        lines = lines[2:] if lines[1].strip() == "#" else lines[1:]
    return "".join(lines)


def _about(text: str) -> str:
    """The first paragraph of the comment that opens a starter."""
    said: list[str] = []
    for line in _without_editor_line(text).splitlines():
        words = line.removeprefix("#").strip()
        if not line.startswith("#") or (said and not words):
            break
        said.append(words)
    return " ".join(said)


def _values(spec: Node, answers: Mapping[str, str]) -> dict[KeyPath, str]:
    """The new text for each place that changes."""
    units = "inches" if spec["units"].text() == "inches" else "centimetres"
    changed: dict[KeyPath, str] = {}
    given = {key: parse_length(answers[key]) for key in ("stature", "waist", "hip") if key in answers}
    for key in given:
        said = answers[key].strip()
        changed["wearer", key] = said if _PLAIN.fullmatch(said) else json.dumps(said, ensure_ascii=False)
    if "waist" in given and "hip" not in given:
        changed["wearer", "hip"] = _rounded(given["waist"] / WAIST_OVER_HIP.median, units)
    for key, paths in (("stature", _BY_STATURE), ("waist", _BY_WAIST)):
        if key in given:
            ratio = given[key] / (spec["wearer"][key].length() or given[key])
            for path in paths:
                node = _at(spec, path)
                old = node.length() if isinstance(node.value, str) else None
                if old is not None:
                    changed[path] = _rounded(old * ratio, units)
    title = answers.get("title", "").strip()
    if len(title) > LONGEST_TITLE:
        raise QuantityError("value-too-long", "this title is too long",
                            f"take at most {LONGEST_TITLE} letters")
    if title:
        changed["title",] = json.dumps(title, ensure_ascii=False)
    return changed


def _at(node: Node, path: KeyPath) -> Node:
    for key in path:
        node = node[key]
    return node


def _rounded(metres: float, units: str) -> str:
    """A length to the quarter inch or half centimetre, as a maker would write it."""
    step = _STEPS[units]
    return length_text(round(metres / step) * step, "inches" if units == "inches" else "centimetres")


def _replaced(document: Document, changed: Mapping[KeyPath, str]) -> str:
    """The document's text with the values at those paths replaced, last first."""
    lines = document.text.splitlines(keepends=True)
    spans = sorted(((document.spans[path], text) for path, text in changed.items()), reverse=True)
    for span, text in spans:
        line = lines[span.line - 1]
        old = line[span.column - 1:span.end_column - 1]
        rest = line[span.end_column - 1:]
        if rest.startswith("  ") and rest.lstrip().startswith("#"):
            rest = " " * max(2, len(old) + len(rest) - len(rest.lstrip(" ")) - len(text)) + rest.lstrip(" ")
        lines[span.line - 1] = line[:span.column - 1] + text + rest
    return "".join(lines)


def _folder() -> Traversable:
    """The installed starters, else the checkout's."""
    package = files("hoopwright")
    installed = package / "specs" / "starters"
    if installed.is_dir():
        return installed
    return Path(str(package)).parents[1] / "specs" / "starters"
