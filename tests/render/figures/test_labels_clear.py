"""Labels that lines used to run through, or that were cut short in their bars; a legend for every kind of line."""

from __future__ import annotations

import re
from collections.abc import Callable
from xml.etree import ElementTree

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.letters import Box, text_box
from hoopwright.render.figures import draw_figures

SVG = "{http://www.w3.org/2000/svg}"


def _svg(plan: Plan, name: str) -> str:
    return next(figure.svg for figure in draw_figures(plan) if figure.name == name)


def test_the_door_is_drawn_before_the_names_it_would_strike_through(committed: Callable[[str], Plan]) -> None:
    svg = _svg(committed("platform-two/crinolette.yaml"), "front")
    assert svg.index("door 28 in clear") < svg.index(">T2</text>")


def _box(text: ElementTree.Element) -> Box:
    """The room that a line of text takes."""
    x, y, size = (float(text.attrib[key]) for key in ("x", "y", "font-size"))
    return text_box(x, y, text.text or "", size, text.attrib["text-anchor"])


def test_the_grain_arrow_runs_through_no_words(committed: Callable[[str], Plan]) -> None:
    svg = _svg(committed("moon-masque/wheel.yaml"), "panel-1")
    texts = list(ElementTree.fromstring(svg).iter(f"{SVG}text"))
    (line,) = re.findall(r'd="M([\d.]+),([\d.]+) L([\d.]+),([\d.]+)"[^>]* stroke-width="1.2"', svg)
    x, low, _, high = map(float, line)
    assert "half of the hole" in {text.text for text in texts}
    assert not [text.text for text in texts if _box(text).meets(Box(x - 4, high, x + 4, low))]


def test_a_name_is_whole_in_its_bar_or_stands_only_below(committed: Callable[[str], Plan]) -> None:
    svg = _svg(committed("harbour-play/cage.yaml"), "coils")
    assert "…" not in svg
    assert svg.count(">waistband<") == 1


def test_each_broken_line_of_the_ties_has_its_legend(committed: Callable[[str], Plan]) -> None:
    words = " ".join(re.findall(r">([^<>\n]+)</text>", _svg(committed("platform-two/crinolette.yaml"), "ties")))
    assert "dashed and thin: the wished oval" in words
    assert "broken, from end to end: what the lacing holds" in words
    assert "so that the bar does not measure them" in words
