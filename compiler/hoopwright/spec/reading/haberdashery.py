"""Tapes, braids, cloths, fastenings and small stuff: the maker's own figures, else the library's."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType

from hoopwright.library.goods import CLOTH_WIDTH, GOODS, SHRINKAGE_SOURCE, usual_shrinkage
from hoopwright.library.model import Goods, Remnant
from hoopwright.source.diagnostic import error
from hoopwright.spec.model import Assumed
from hoopwright.spec.reading.filled import FilledGoods
from hoopwright.spec.reading.node import Node, Notebook
from hoopwright.spec.reading.offers import read_lengths, read_offers

Article = Callable[[Node, str], Goods]
"""Reads the article a key names, else the usual one, by name."""
_SAME = 0.005
"""Widths closer than this share count as the same, so that 45 in and 114.5 cm agree."""

_USUAL: Mapping[str, Goods] = MappingProxyType({
    "tape": GOODS["twill"],
    "braid": GOODS["braid"],
    "cord": GOODS["piping cord"],
    "cloth": Goods("", "cloth", width=CLOTH_WIDTH),
    "fastening": Goods("", "fastening"),
    "consumable": Goods("", "consumable"),
})
"""What an article without a namesake in the library is filled up from."""
_WASHED = ("tape", "braid", "cord", "cloth")
"""Kinds that are washed before they are cut."""


def library_goods(name: str) -> FilledGoods:
    """An article of the library, with its data listed as assumed. KeyError when unknown."""
    goods = GOODS[name]
    path = f"materials.{name}"
    return FilledGoods(goods, _library_data(goods, path, Node({}, ("materials", name))))


def read_goods(name: str, node: Node, notes: Notebook) -> FilledGoods:
    """Tape, braid, cord, cloth, fastening or consumable; what is not stated comes from the library."""
    kind = node["kind"].text() or ""
    base = _base(name, kind)
    if kind == "cloth" and base.areal_density == 0.0 and not node["weight"]:
        notes.tell(error("key-missing", node.path, f"`{name}` has no `weight`",
                         "the library does not know this cloth: weigh a square metre, or a square yard, and"
                         " write it as in `weight: 140 g/m2`", at_key=True))
    _nap(name, base, node, notes)
    across = node["diameter" if kind == "cord" else "width"].length()
    base = _scaled(base, across)
    assumed = _library_data(base, node.dotted, node)
    weight = node["weight"].areal_density() if kind == "cloth" else node["weight"].linear_density()
    count = node["on_hand"].whole()
    on_hand = read_lengths(node["on_hand"]) if count is None else (float(count),)
    width, shrinkage = _or(across, base.width), _or(node["shrinkage"].share(), base.shrinkage)
    goods = replace(
        base, name=name, sold=read_offers(node["sold"]), on_hand=on_hand, width=width,
        remnants=_remnants(name, node["on_hand"], width, shrinkage, notes), shop=node["from"].text() or "",
        shrinkage=shrinkage,
        nap=_has_nap(base, node) or node["head_to_tail"].flag() is False,
        areal_density=base.areal_density if kind != "cloth" else _or(weight, base.areal_density),
        linear_density=base.linear_density if kind == "cloth" else _or(weight, base.linear_density))
    return FilledGoods(goods, assumed)


def _has_nap(base: Goods, node: Node) -> bool:
    stated = node["nap"].flag()
    return base.nap if stated is None else stated


def _nap(name: str, base: Goods, node: Node, notes: Notebook) -> None:
    """A cloth with nap may not be laid head to tail."""
    if node["head_to_tail"].flag() is True and _has_nap(base, node):
        why = "" if node["nap"] else ", says the library"
        related = ((node["nap"].path, "here"),) if node["nap"] else ()
        notes.tell(error("nap-head-to-tail", node["head_to_tail"].path,
                         f"`{name}` has a nap{why}, so no piece may be turned head to tail",
                         "leave `head_to_tail` out, or write `nap: false` if the cloth looks the same both"
                         " ways",
                         related=related))


def _remnants(name: str, node: Node, width: float, shrinkage: float, notes: Notebook) -> tuple[Remnant, ...]:
    """Washed pieces on hand that are written with their width, else as wide as the cloth when washed; none can be
    wider than the cloth it comes from."""
    found = []
    for item in node.items():
        if not isinstance(item.value, dict):
            continue
        across = _or(item["width"].length(), width * (1 - shrinkage))
        if across > width * (1 + _SAME):
            notes.tell(error("remnant-too-wide", item["width"].path,
                             f"a remnant wider than `{name}` is of another cloth",
                             "list it under the material it is of, or mend the width of one of them",
                             related=((node.path[:-1], f"`{name}`"),)))
        found.append(Remnant(item["length"].length() or 0.0, across))
    return tuple(found)


def _base(name: str, kind: str) -> Goods:
    """The library's article of that name, else the usual one of its kind."""
    base = GOODS.get(name)
    if base is not None and base.kind == kind:
        return base
    usual = _USUAL[kind]
    return replace(usual, shrinkage=usual_shrinkage(name)) if kind in _WASHED else usual


def _scaled(base: Goods, width: float | None) -> Goods:
    """A tape or braid of another width weighs in proportion, a cord with the square of its thickness."""
    if width is None or not base.linear_density:
        return base
    ratio = width / base.width
    return replace(base, linear_density=base.linear_density * (ratio**2 if base.kind == "cord" else ratio))


def _or(stated: float | None, base: float) -> float:
    return base if stated is None else stated


def _library_data(base: Goods, path: str, node: Node) -> tuple[Assumed, ...]:
    """The physical data that come from the library because the maker states none."""
    reason = f"library: {base.source}" if base.source else "usual width of cloth"
    found = []
    across = "diameter" if base.kind == "cord" else "width"
    if base.width and not node[across]:
        found.append(Assumed(f"{path}.{across}", base.width, "length", reason))
    if not node["weight"]:
        if base.areal_density:
            found.append(Assumed(f"{path}.weight", base.areal_density, "areal density", reason))
        if base.linear_density:
            found.append(Assumed(f"{path}.weight", base.linear_density, "linear density", reason))
    if base.shrinkage and not node["shrinkage"]:
        found.append(Assumed(f"{path}.shrinkage", base.shrinkage, "share", SHRINKAGE_SOURCE))
    return tuple(found)
