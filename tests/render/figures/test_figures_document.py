"""Every picture is a sound, plain, deterministic SVG document that an outside library can render."""

from __future__ import annotations

import re
import struct
import zlib
from typing import Any
from xml.etree import ElementTree

import pytest
import resvg_py

from hoopwright.render.figures import draw_figures

SVG = "{http://www.w3.org/2000/svg}"
HOSTILE = "Crowd <script>alert('x')</script> & \"quotes\" | *stars* {{ 7*7 }} {% raw %} %%{init}%% ]]>"
PHONE = 360
PLAIN = {"svg", "title", "desc", "style", "defs", "pattern",
         "rect", "line", "path", "ellipse", "circle", "text"}


def _pixels(png: bytes) -> bytes:
    """The inflated image data of a PNG."""
    at, data = 8, b""
    while at < len(png):
        (long,), kind = struct.unpack(">I", png[at:at + 4]), png[at + 4:at + 8]
        data += png[at + 8:at + 8 + long] if kind == b"IDAT" else b""
        at += 12 + long
    return zlib.decompress(data)


def test_names_are_file_names_and_differ(cage: Any) -> None:
    names = [figure.name for figure in cage.figures]
    assert len(set(names)) == len(names)
    assert all(re.fullmatch(r"[a-z0-9-]+", name) for name in names)
    assert {"front", "side", "hem", "tapes", "coils", "gauge-1"} <= set(names)
    assert ("band" in names) == (cage.plan.shape.band is not None)
    others = [layout for layout in cage.plan.supply.layouts
              if "band" not in {placed.part for placed in layout.placements}]
    assert [name for name in names if name.startswith("cloth-")] == [
        f"cloth-{at}" for at in range(1, len(others) + 1)]


def test_every_main_action_of_the_work_has_its_sketch(harbour: Any) -> None:
    drawn = {figure.name for figure in harbour.figures}
    done = {task.action for task in harbour.plan.work.tasks}
    for action in ("cut-hoop", "mark-tapes", "case-hoop", "thread-channel", "sew-hoop", "prove-join"):
        assert action in done
        assert f"step-{action}" in drawn
    assert {name.removeprefix("step-") for name in drawn if name.startswith("step-")} <= done


def test_only_plain_elements_and_nothing_from_elsewhere(cage: Any) -> None:
    for figure in cage.figures:
        root = cage.tree(figure.name)
        assert {element.tag.removeprefix(SVG) for element in root.iter()} <= PLAIN
        assert "href" not in figure.svg
        assert "<script" not in figure.svg
        assert not re.search(r"\son\w+=", figure.svg)
        urls = re.findall(r"url\(#([^)]*)\)", figure.svg)
        ids = [element.attrib["id"] for element in root.iter() if "id" in element.attrib]
        assert set(urls) <= set(ids)
        assert len(set(ids)) == len(ids)
        assert all(each.startswith(f"{figure.name}-") for each in ids)


def test_says_what_it_is_to_those_who_do_not_see_it(cage: Any) -> None:
    for figure in cage.figures:
        root = cage.tree(figure.name)
        assert root.get("role") == "img"
        assert [child.tag.removeprefix(SVG) for child in root][:2] == ["title", "desc"]
        assert root[1].text == figure.alt
        assert len(figure.alt) > 20
        named = [root[0].get("id"), root[1].get("id")]
        assert (root.get("aria-labelledby") or "").split() == named


def test_numbers_are_short_and_finite(cage: Any) -> None:
    for figure in cage.figures:
        numbers = re.findall(r'(?<=[ ",(])-?\d+\.\d+', figure.svg.split("</desc>", 1)[1])
        assert all(len(number.split(".")[1]) <= 3 for number in numbers)
        assert not re.search(r"[\s\",]-0[\s\",]", figure.svg)
        assert not re.search(r"\b(nan|inf)\b", figure.svg)


def test_what_a_maker_wrote_is_printed_and_never_markup(crowded: Any) -> None:
    assert crowded.plan.spec.title == HOSTILE
    assert crowded.tree("front").findtext(f"{SVG}title") == f"Front view: {HOSTILE}"
    assert any("<script>" in text for text in crowded.texts("gauge-1"))
    names = " ".join(crowded.texts("coils"))
    assert '<b>&top"' in names
    assert "<i>hostile</i>" in names
    for figure in crowded.figures:
        assert "&lt;script&gt;" in figure.svg or HOSTILE not in figure.title


def test_the_same_plan_gives_the_same_bytes(cage: Any) -> None:
    assert [figure.svg for figure in draw_figures(cage.plan)] == [figure.svg for figure in cage.figures]


def test_renders_and_is_not_blank(cage: Any) -> None:
    for figure in cage.figures:
        png = bytes(resvg_py.svg_to_bytes(svg_string=figure.svg, dpi=96, width=240))
        shades = set(_pixels(png))
        assert len(shades) > 8, figure.name


def test_stays_legible_on_a_phone(cage: Any) -> None:
    for name, text in cage.all_texts():
        if name.startswith("gauge"):
            continue
        wide = float(cage.tree(name).attrib["viewBox"].split()[2])
        assert float(text.attrib["font-size"]) * min(1.0, PHONE / wide) >= 9.0, (name, text.text)


def test_told_apart_without_colour(cage: Any) -> None:
    for figure in cage.figures:
        for colour in re.findall(r'(?:fill|stroke)="(#[0-9a-f]+)"', figure.svg):
            red, green, blue = (colour[1:4] if len(colour) == 4 else re.findall("..", colour[1:]))
            assert red == green == blue, colour


@pytest.mark.parametrize("name", ["front", "gauge-1"])
def test_a_second_reader_agrees_that_it_is_xml(harbour: Any, name: str) -> None:
    svg = next(figure.svg for figure in harbour.figures if figure.name == name)
    parser = ElementTree.XMLPullParser(["start"])
    parser.feed(svg)
    parser.close()
    assert next(iter(parser.read_events()))[1].tag == f"{SVG}svg"
