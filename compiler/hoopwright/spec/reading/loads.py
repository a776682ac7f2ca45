"""The layers a cage carries: their weight, how it hangs, and whether their cloth is bought."""

from __future__ import annotations

from hoopwright.source.diagnostic import error, warning
from hoopwright.spec.model import Layer, Wearer
from hoopwright.spec.reading.building import Cupboard
from hoopwright.spec.reading.node import Node, Notebook

HEAVIEST = 12.0
"""Skirts heavier than this in all are more likely a slip of the unit, kg: our judgement. Skirts on
record weighed up to 2.7 kg each and underskirts up to 0.82 kg (a press report of 1883)."""


def read_load(node: Node, wearer: Wearer, cupboard: Cupboard, notes: Notebook) -> tuple[Layer, ...]:
    """Every layer in the maker's order."""
    layers = tuple(_layer(item, wearer, cupboard, notes) for item in node.items())
    total = sum(layer.mass for layer in layers)
    if total > HEAVIEST:
        notes.tell(warning("load-unlikely", node.path, f"the layers weigh {total:.1f} kg together",
                           "check the units; a heavy skirt weighs about 3 kg, an underskirt less than 1 kg",
                           at_key=True))
    return layers


def _layer(node: Node, wearer: Wearer, cupboard: Cupboard, notes: Notebook) -> Layer:
    weight, area, material = node["weight"].mass(), node["area"].area(), node["material"].text()
    cloth = cupboard.article(material) if material else None
    if weight is None and (cloth is None or area is None):
        lacking = "area" if cloth is not None else "material" if area is not None else "weight"
        notes.tell(error("load-weight-missing", node.path,
                         f"the weight of this layer is not known: no `{lacking}`",
                         "write `weight`, or `material` and `area`"))
    mass = weight if weight is not None else (area or 0.0) * (cloth.areal_density if cloth else 0.0)
    buy = node["buy"].flag() is True
    if buy and (cloth is None or area is None):
        notes.tell(error("key-missing", node["buy"].path, "what is to be bought for this layer is not known",
                         "`buy: true` wants `material` and `area`", at_key=True))
    hang = node["hang"].text() or "straight"
    heights = tuple(item.length() or 0.0 for item in node["at"].items())
    _check_heights(node, hang, heights, wearer, notes)
    return Layer(node["name"].text() or "", mass,
                 "gored" if hang == "gored" else "flounced" if hang == "flounced" else "straight",
                 heights, cloth, area, buy, node["gathered"].flag() is True)


def _check_heights(node: Node, hang: str, heights: tuple[float, ...], wearer: Wearer,
                   notes: Notebook) -> None:
    if hang == "flounced" and not heights:
        notes.tell(error("key-missing", node["hang"].path,
                         "`hang: flounced` wants the heights of the flounces",
                         "add `at` with a height above the floor for each flounce", at_key=True))
    if hang != "flounced" and heights:
        notes.tell(error("keys-clash", node["at"].path, f"`at` has no meaning with `hang: {hang}`",
                         "write `hang: flounced`, or leave `at` out", at_key=True))
    for item, height in zip(node["at"].items(), heights, strict=True):
        if height > wearer.side:
            notes.tell(error("flounce-above-waist", item.path, "this flounce hangs above the waistline",
                             "heights are measured up from the floor"))
