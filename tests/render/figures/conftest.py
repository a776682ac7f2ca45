"""Plans compiled from specs as makers write them, drawn once, and each picture read back as XML."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from xml.etree import ElementTree

import pytest

from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan
from hoopwright.render.figure import Figure
from hoopwright.render.figures import draw_figures

SVG = "{http://www.w3.org/2000/svg}"
SPECS = Path(__file__).parents[3] / "specs"
HOSTILE = "Crowd <script>alert('x')</script> & \"quotes\" | *stars* {{ 7*7 }} {% raw %} %%{init}%% ]]>"

CROWDED = f"""
spec: 1
title: {json.dumps(HOSTILE)}
units: centimetres
wearer:
  stature: 158 cm
  waist: 64 cm
  hip: 96 cm
  waist_height: {{front: 98 cm, left: 99.5 cm, right: 100 cm, back: 100.5 cm}}
shape:
  line: {{kind: bell}}
  top_hoop: {{below_waist: 12 cm}}
  hem: {{girth: 380 cm, off_floor: 4 cm}}
  hoops:
    count: 22
    names: ['<b>&top"', the second hoop from the very top of all, '', '{{{{ x }}}}']
build:
  hoops: {{material: a strip with a very long and <i>hostile</i> name & more}}
  tapes: {{count: 12, front_gap: 8 cm}}
materials:
  a strip with a very long and <i>hostile</i> name & more:
    grade: spring steel, tempered
    section: {{kind: flat, width: 8 mm, thickness: 0.8 mm}}
    sold: [{{length: 30 m, price: 12.00 EUR}}]
    on_hand: [2 m, 3.7 m]
limits: {{door: 75 cm}}
workshop: {{paper: letter}}
"""

SMALL = """
spec: 1
title: Small
units: inches
wearer: {stature: 4 ft 6 in, waist: 22 in}
shape:
  line: {kind: cone}
  hem: {girth: 70 in, off_floor: 6 in}
  hoops: {count: 3}
build:
  tapes: {count: 4, to: band}
  hem_band: {depth: 6 in}
"""

WIDE = """
spec: 1
units: inches
wearer: {stature: 5 ft 9 in, waist: 30 in}
shape:
  hem: {girth: 190 in, off_floor: 5 in}
  hoops: {count: 12}
build:
  hoops: {join: lap bound}
  tapes: {count: 9, front_gap: 9 in}
  hem_band: {depth: 10 in}
load:
  - {name: flannel petticoat, material: flannel, area: 5 yd2, buy: true}
materials:
  flannel: {kind: cloth, weight: 200 g/m2, width: 60 in, sold: [{per: 1 yd, price: 9.00 USD}]}
limits: {door: 36 in}
workshop: {helper: true}
"""


@dataclass(frozen=True)
class Drawn:
    """A plan and its pictures, as figures and as XML trees by name."""

    name: str
    plan: Plan
    figures: tuple[Figure, ...]
    trees: dict[str, ElementTree.Element]

    def tree(self, name: str) -> ElementTree.Element:
        """The picture of that name."""
        return self.trees[name]

    def rects(self, name: str, kind: str) -> list[dict[str, float]]:
        """Place and size of every rectangle of a kind, in drawing order."""
        return [{key: float(rect.attrib[key]) for key in ("x", "y", "width", "height")}
                for rect in self.trees[name].iter(f"{SVG}rect") if rect.get("class") == kind]

    def texts(self, name: str) -> list[str]:
        """Every line of text in drawing order."""
        return [text.text or "" for text in self.trees[name].iter(f"{SVG}text")]

    def all_texts(self) -> Iterator[tuple[str, ElementTree.Element]]:
        """Every text element with its figure's name."""
        for name, tree in self.trees.items():
            for text in tree.iter(f"{SVG}text"):
                yield name, text


def _draw(name: str, text: str) -> Drawn:
    compiled = compile_spec(text.encode(), f"{name}.yaml")
    assert compiled.plan is not None, compiled.diagnostics
    figures = draw_figures(compiled.plan)
    return Drawn(name, compiled.plan, figures,
                 {figure.name: ElementTree.fromstring(figure.svg) for figure in figures})


@pytest.fixture(scope="session")
def draw_text() -> Callable[[str, str], Drawn]:
    """``draw_text(name, spec)``: a spec's text, compiled and drawn."""
    return _draw


@pytest.fixture(scope="session", params=["harbour", "lantern", "five-lines", "crowded", "small", "wide"])
def cage(request: pytest.FixtureRequest) -> Drawn:
    """Each of the specs of the repository, and three that crowd, shrink and widen the page."""
    own = {"crowded": CROWDED, "small": SMALL, "wide": WIDE}
    folders = {"harbour": "harbour-play", "lantern": "lantern-hall", "five-lines": "five-lines"}
    name = str(request.param)
    text = own.get(name) or (SPECS / folders[name] / "cage.yaml").read_text(encoding="utf-8")
    return _draw(name, text)


@pytest.fixture(scope="session")
def harbour() -> Drawn:
    """The worked example alone."""
    return _draw("harbour", (SPECS / "harbour-play" / "cage.yaml").read_text(encoding="utf-8"))


@pytest.fixture(scope="session")
def crowded() -> Drawn:
    """Twenty-two hoops, twelve tapes, letter paper, and hostile names."""
    return _draw("crowded", CROWDED)
