"""Where a spec names its materials, and what may stand there."""

from __future__ import annotations

from collections.abc import Iterator

from hoopwright.source.diagnostic import Path
from hoopwright.spec.reading.node import Node

HOOP = "material for hoops"
Kinds = tuple[str, ...]

_USES: tuple[tuple[Path, Kinds], ...] = (
    (("build", "hoops", "material"), (HOOP,)),
    (("build", "hoops", "casing"), ("braid", "tape")),
    (("build", "tapes", "material"), ("tape",)),
    (("build", "ties", "material"), ("tape",)),
    (("build", "hip_ties", "material"), ("tape",)),
    (("build", "lacing", "material"), ("cloth",)),
    (("build", "lacing", "cord"), ("tape", "braid", "cord")),
    (("build", "waistband", "material"), ("tape", "cloth")),
    (("build", "waistband", "fastening"), ("fastening",)),
    (("build", "hem_band", "material"), ("cloth",)),
    (("build", "panels", "material"), ("cloth",)),
    (("build", "panels", "cord"), ("tape", "braid", "cord")),
    (("build", "cords", "material"), ("cord",)),
    (("build", "cords", "facing"), ("cloth",)),
    (("build", "cords", "starch"), ("consumable",)),
    (("build", "channels", "material"), ("tape", "cloth")),
    (("build", "flounce", "material"), ("cloth",)),
    (("build", "wheel", "cover", "material"), ("cloth",)),
    (("build", "wheel", "roll", "material"), ("cloth",)),
    (("build", "side_hoops", "material"), ("cloth",)),
    (("build", "side_hoops", "tie"), ("tape",)),
)


def uses(spec: Node) -> list[tuple[Node, Kinds]]:
    """Every place where one material is named, written or not, with the kinds that would do there."""
    found = [(_at(spec, path), wanted) for path, wanted in _USES]
    found += [(layer["material"], ("cloth",)) for layer in spec["load"].items()]
    return [(one, wanted) for node, wanted in found for one in _each(node)]


def use_of(spec: Node, name: str) -> tuple[Path, Kinds] | None:
    """The first place where a material of that name is used, and the kinds that would do wherever it is."""
    places = [(node.path, wanted) for node, wanted in uses(spec) if node.text() == name]
    if not places:
        return None
    path, kinds = places[0]
    return path, tuple(kind for kind in kinds if all(kind in wanted for _, wanted in places))


def _at(node: Node, path: Path) -> Node:
    for key in path:
        node = node[key]
    return node


def _each(node: Node) -> Iterator[Node]:
    """A name, or each name of a list."""
    if isinstance(node.value, list):
        yield from node.items()
    else:
        yield node
