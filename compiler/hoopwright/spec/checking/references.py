"""Names in a spec: materials, grades, joins and tools must be known and of the right kind.

Works on any value, well formed or not, so that an unknown name is told in the same run as a wrong unit.
"""

from __future__ import annotations

from collections.abc import Iterator

from hoopwright.library.goods import GOODS
from hoopwright.library.grades import GRADES
from hoopwright.library.joins import JOINS
from hoopwright.library.tools import tool_name, tool_names
from hoopwright.source.diagnostic import Finding, error, warning
from hoopwright.spec.checking.nearest import listed, nearest, offer
from hoopwright.spec.checking.uses import HOOP, Kinds, uses
from hoopwright.spec.reading.node import Node

NONE = "none"
ANY = "any"
_KINDS = frozenset(goods.kind for goods in GOODS.values())

def reference_findings(value: object) -> tuple[Finding, ...]:
    """Every unknown name, and every name of something of the wrong kind, in the order of the uses."""
    spec = Node(value)
    found: list[Finding] = []
    if _own_materials_readable(spec):
        kinds = _kinds(spec["materials"])
        own = tuple(spec["materials"].names())
        found = [wrong for node, wanted in uses(spec) for wrong in _material(node, wanted, kinds, own)]
    found.extend(_join(spec["build"]["hoops"]["join"]))
    for name in spec["materials"].names():
        found.extend(_grade(spec["materials"][name]["grade"]))
        found.extend(_shop(spec["materials"][name]["from"], spec["shops"]))
    for tool in spec["workshop"]["tools"].items():
        found.extend(_tool(tool))
    return tuple(found)


def _own_materials_readable(spec: Node) -> bool:
    """False when ``materials`` is malformed or its key misspelt: every name would then seem unknown."""
    if "materials" in spec.names():
        return isinstance(spec["materials"].value, dict)
    return not any(nearest(key, ("materials",)) for key in spec.names())


def _kinds(materials: Node) -> dict[str, str]:
    """What each name stands for: the maker's own names before the library's.

    A material that does not say what it is passes everywhere; that mistake is told at the material.
    """
    own = {name: _kind(materials[name]) for name in materials.names()}
    return dict.fromkeys(GRADES, HOOP) | {name: goods.kind for name, goods in GOODS.items()} | own


def _kind(material: Node) -> str:
    if not material["kind"]:
        return HOOP if material["grade"] else ANY
    kind = material["kind"].text()
    return kind if kind in _KINDS else ANY


def _material(node: Node, wanted: Kinds, kinds: dict[str, str], own: tuple[str, ...]) -> Iterator[Finding]:
    name = node.text()
    if name is None or (name == NONE and node.path[-1] in ("casing", "starch")):
        return
    fitting = [known for known, kind in kinds.items() if kind in wanted]
    kind = kinds.get(name)
    if kind is None:
        said = f"no material is called `{name}`" if name else "the name of a material is blank"
        yield error("material-unknown", node.path, said,
                    _offered(name, wanted, fitting, tuple(word for word in own if word in fitting)))
    elif kind not in (*wanted, ANY):
        yield error("material-wrong-kind", node.path,
                    f"`{name}` is {_article(kind)}, but {_any(wanted)} is wanted here",
                    f"known here: {listed(sorted(fitting))}")


def _offered(name: str, wanted: Kinds, fitting: list[str], own: tuple[str, ...]) -> str:
    """The mend of an unknown material: the nearest of the maker's own or of all, else those of her own that
    would do, and how to list another."""
    if nearest(name, own):
        return offer(name, own, "material")
    if own:
        entry = "{grade: ..., section: ...}" if HOOP in wanted else f"{{kind: {wanted[0]}}}"
        return (f"of your `materials`, {listed(own)} would do here; or list this one there, as in"
                f" `{name[:40]}: {entry}`")
    return offer(name, fitting, "material")


def _article(kind: str) -> str:
    return kind if kind == HOOP else f"a {kind}"


def _any(kinds: Kinds) -> str:
    return " or ".join(_article(kind) for kind in kinds)


def _join(node: Node) -> Iterator[Finding]:
    name = node.text()
    if name is not None and name not in JOINS:
        said = f"no join is called `{name}`" if name else "the name of a join is blank"
        yield error("join-unknown", node.path, said, offer(name, JOINS, "join"))


def _shop(node: Node, shops: Node) -> Iterator[Finding]:
    name = node.text()
    if name and name not in shops.names():
        yield error("shop-unknown", node.path, f"no shop is called `{name}`",
                    offer(name, shops.names(), "shop") if shops.names() else
                    f"write `shops: {{{name[:40]}: 0 EUR}}` with what its delivery costs",
                    related=((shops.path, "the shops"),) if shops else ())


def _grade(node: Node) -> Iterator[Finding]:
    name = node.text()
    if name and name not in GRADES:
        yield error("grade-unknown", node.path, f"no grade is called `{name}`", offer(name, GRADES, "grade"))


def _tool(node: Node) -> Iterator[Finding]:
    name = node.text()
    if name and tool_name(name) is None:
        yield warning("tool-unknown", node.path, f"no tool is called `{name}`; it is passed over",
                      offer(name, tool_names(), "tool"))
