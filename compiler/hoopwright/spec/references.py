"""Names in a spec: materials, grades, joins and tools must be known and of the right kind.

Works on any value, well formed or not, so that an unknown name is told in the same run as a wrong unit.
"""

from __future__ import annotations

from collections.abc import Iterator

from hoopwright.library.goods import GOODS
from hoopwright.library.grades import GRADES
from hoopwright.library.joins import JOINS
from hoopwright.library.tools import tool_name, tool_names
from hoopwright.source.diagnostic import Finding, Path, error, warning
from hoopwright.spec.nearest import listed, offer
from hoopwright.spec.node import Node

HOOP = "material for hoops"
NONE = "none"
Kinds = tuple[str, ...]

_USES: tuple[tuple[Path, Kinds], ...] = (
    (("build", "hoops", "material"), (HOOP,)),
    (("build", "hoops", "casing"), ("braid", "tape")),
    (("build", "tapes", "material"), ("tape",)),
    (("build", "waistband", "material"), ("tape", "cloth")),
    (("build", "waistband", "fastening"), ("fastening",)),
    (("build", "hem_band", "material"), ("cloth",)),
)


def reference_findings(value: object) -> tuple[Finding, ...]:
    """Every unknown name, and every name of something of the wrong kind, in the order of the uses."""
    spec = Node(value)
    kinds = _kinds(spec["materials"])
    found = [wrong for path, wanted in _USES for wrong in _material(_at(spec, path), wanted, kinds)]
    for layer in spec["load"].items():
        found.extend(_material(layer["material"], ("cloth",), kinds))
    found.extend(_join(spec["build"]["hoops"]["join"]))
    for name in spec["materials"].names():
        found.extend(_grade(spec["materials"][name]["grade"]))
    for tool in spec["workshop"]["tools"].items():
        found.extend(_tool(tool))
    return tuple(found)


def _at(node: Node, path: Path) -> Node:
    for key in path:
        node = node[key]
    return node


def _kinds(materials: Node) -> dict[str, str]:
    """What each name stands for: the maker's own names before the library's."""
    own = {name: str(materials[name]["kind"].value) if materials[name]["kind"] else HOOP
           for name in materials.names()}
    return dict.fromkeys(GRADES, HOOP) | {name: goods.kind for name, goods in GOODS.items()} | own


def _material(node: Node, wanted: Kinds, kinds: dict[str, str]) -> Iterator[Finding]:
    name = node.text()
    if not name or (name == NONE and node.path[-1] == "casing"):
        return
    fitting = [known for known, kind in kinds.items() if kind in wanted]
    kind = kinds.get(name)
    if kind is None:
        yield error("material-unknown", node.path, f"no material is called `{name}`",
                    offer(name, fitting, "material"))
    elif kind not in wanted:
        yield error("material-wrong-kind", node.path,
                    f"`{name}` is {_article(kind)}, but {_any(wanted)} is wanted here",
                    f"known here: {listed(sorted(fitting))}")


def _article(kind: str) -> str:
    return kind if kind == HOOP else f"a {kind}"


def _any(kinds: Kinds) -> str:
    return " or ".join(_article(kind) for kind in kinds)


def _join(node: Node) -> Iterator[Finding]:
    name = node.text()
    if name and name not in JOINS:
        yield error("join-unknown", node.path, f"no join is called `{name}`", offer(name, JOINS, "join"))


def _grade(node: Node) -> Iterator[Finding]:
    name = node.text()
    if name and name not in GRADES:
        yield error("grade-unknown", node.path, f"no grade is called `{name}`", offer(name, GRADES, "grade"))


def _tool(node: Node) -> Iterator[Finding]:
    name = node.text()
    if name and tool_name(name) is None:
        yield warning("tool-unknown", node.path, f"no tool is called `{name}`; it is passed over",
                      offer(name, tool_names(), "tool"))
