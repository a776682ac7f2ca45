"""How a material is sold, and the lengths of it on hand."""

from __future__ import annotations

from hoopwright.library.model import ByMeasure, Money, Offer, Pack, Pieces
from hoopwright.spec.reading.node import Node


def read_offers(node: Node) -> tuple[Offer, ...]:
    """How it is sold: one offer for each item of ``sold``."""
    return tuple(_offer(item) for item in node.items())


def _offer(node: Node) -> Offer:
    said = node["price"].money()
    price = Money(*said) if said else None
    if node["length"]:
        return Pack(node["length"].length() or 0.0, price, node["at_most"].whole(), node["coil"].length())
    if node["per"]:
        per = node["per"].length() or 0.0
        return ByMeasure(per, node["step"].length() or per, price)
    return Pieces(node["count"].whole() or 1, price)


def read_lengths(node: Node) -> tuple[float, ...]:
    """Plain lengths on hand; pieces that say their width too are read elsewhere."""
    return tuple(item.length() or 0.0 for item in node.items() if not isinstance(item.value, dict))
