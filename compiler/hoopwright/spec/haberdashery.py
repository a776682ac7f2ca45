"""Tapes, braids, cloths, fastenings and small stuff: the maker's own figures, else the library's."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from hoopwright.library.goods import CLOTH_WIDTH, GOODS
from hoopwright.library.model import Goods
from hoopwright.source.diagnostic import error
from hoopwright.spec.filled import FilledGoods
from hoopwright.spec.model import Assumed
from hoopwright.spec.node import Node, Notebook
from hoopwright.spec.offers import read_lengths, read_offers

_USUAL: Mapping[str, Goods] = MappingProxyType({
    "tape": GOODS["twill"],
    "braid": GOODS["braid"],
    "cloth": Goods("", "cloth", width=CLOTH_WIDTH),
    "fastening": Goods("", "fastening"),
    "consumable": Goods("", "consumable"),
})
"""What an article without a namesake in the library is filled up from."""


def library_goods(name: str) -> FilledGoods:
    """An article of the library, with its data listed as assumed. KeyError when unknown."""
    goods = GOODS[name]
    path = f"materials.{name}"
    return FilledGoods(goods, _library_data(goods, path, Node({}, ("materials", name))))


def read_goods(name: str, node: Node, notes: Notebook) -> FilledGoods:
    """Tape, braid, cloth, fastening or consumable; what is not stated comes from the library."""
    kind = node["kind"].text() or ""
    base = _base(name, kind)
    if kind == "cloth" and base.areal_density == 0.0 and not node["weight"]:
        notes.tell(error("key-missing", node.path, f"`{name}` has no `weight`",
                         "the library does not know this cloth: weigh a square metre, or a square yard, and"
                         " write it as in `weight: 140 g/m2`", at_key=True))
    base = _scaled(base, node["width"].length())
    assumed = _library_data(base, node.dotted, node)
    weight = node["weight"].areal_density() if kind == "cloth" else node["weight"].linear_density()
    count = node["on_hand"].whole()
    on_hand = read_lengths(node["on_hand"]) if count is None else (float(count),)
    goods = replace(
        base, name=name, sold=read_offers(node["sold"]), on_hand=on_hand,
        width=_or(node["width"].length(), base.width),
        shrinkage=_or(node["shrinkage"].share(), base.shrinkage),
        nap=base.nap if node["nap"].flag() is None else node["nap"].value is True,
        areal_density=base.areal_density if kind != "cloth" else _or(weight, base.areal_density),
        linear_density=base.linear_density if kind == "cloth" else _or(weight, base.linear_density))
    return FilledGoods(goods, assumed)


def _base(name: str, kind: str) -> Goods:
    """The library's article of that name, else the usual one of its kind."""
    base = GOODS.get(name)
    if base is not None and base.kind == kind:
        return base
    return _USUAL[kind]


def _scaled(base: Goods, width: float | None) -> Goods:
    """A tape or braid of another width weighs in proportion."""
    if width is None or not base.linear_density:
        return base
    return replace(base, linear_density=base.linear_density * width / base.width)


def _or(stated: float | None, base: float) -> float:
    return base if stated is None else stated


def _library_data(base: Goods, path: str, node: Node) -> tuple[Assumed, ...]:
    """The physical data that come from the library because the maker states none."""
    reason = f"library: {base.source}" if base.source else "usual width of cloth"
    found = []
    if base.width and not node["width"]:
        found.append(Assumed(f"{path}.width", base.width, "length", reason))
    if not node["weight"]:
        if base.areal_density:
            found.append(Assumed(f"{path}.weight", base.areal_density, "areal density", reason))
        if base.linear_density:
            found.append(Assumed(f"{path}.weight", base.linear_density, "linear density", reason))
    return tuple(found)
