"""The order of the stages, held by reading every import of the package."""

from __future__ import annotations

import ast
from pathlib import Path

import networkx

import hoopwright

PACKAGE = Path(hoopwright.__file__).parent
ORDER = (
    "highs",
    "source",
    "library",
    "spec",
    "shape",
    "strength",
    "supply",
    "work",
    "plan",
    "render",
    "explain",
    "compare",
    "compile",
    "cli",
    "__main__",
)
STANDS_ALONE = {"explain"}  # pages only: depends on no stage
HEAVY = {"numpy", "scipy", "networkx", "highspy", "jinja2", "jsonschema", "ruamel"}
FORBIDDEN = {"time", "datetime", "locale", "socket", "subprocess", "pickle", "getpass", "platform"}


def _files() -> list[tuple[str, Path, ast.Module]]:
    found = []
    for path in sorted(PACKAGE.rglob("*.py")):
        room = path.relative_to(PACKAGE).parts[0].removesuffix(".py")
        if room != "__init__":
            found.append((room, path, ast.parse(path.read_text())))
    return found


def _imports(tree: ast.AST) -> list[str]:
    names = []
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            names += [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom) and node.module:
            names += (
                [node.module] if node.module != "hoopwright" else [f"hoopwright.{a.name}" for a in node.names]
            )
    return names


def test_every_room_is_in_the_order() -> None:
    assert {room for room, _, _ in _files()} <= set(ORDER)


def test_no_stage_imports_from_one_below_it() -> None:
    wrong = []
    for room, path, tree in _files():
        for name in _imports(tree):
            parts = name.split(".")
            if parts[0] != "hoopwright" or len(parts) == 1 or parts[1] == "__version__":
                continue
            later = ORDER.index(parts[1]) > ORDER.index(room)
            alone = room in STANDS_ALONE and parts[1] not in (room, "source")
            if later or alone:
                wrong.append(f"{path.relative_to(PACKAGE)} imports {name}")
    assert wrong == []


def test_no_two_files_import_each_other() -> None:
    """Neither directly nor in a ring, imports inside functions among them."""
    files = {".".join(path.relative_to(PACKAGE.parent).with_suffix("").parts): tree
             for path in PACKAGE.rglob("*.py") for tree in [ast.parse(path.read_text())]}
    files = {name.removesuffix(".__init__"): tree for name, tree in files.items()}
    house: networkx.DiGraph[str] = networkx.DiGraph()
    for name, tree in files.items():
        for node in ast.walk(tree):
            if isinstance(node, ast.ImportFrom) and node.module:
                whole = {f"{node.module}.{alias.name}" for alias in node.names} & files.keys()
                house.add_edges_from((name, other) for other in whole or {node.module} & files.keys())
    assert house.number_of_edges() > 1000
    assert [sorted(ring) for ring in networkx.strongly_connected_components(house) if len(ring) > 1] == []


def test_no_stage_reads_the_clock_the_locale_or_the_network() -> None:
    wrong = [
        f"{path.relative_to(PACKAGE)} imports {name}"
        for _, path, tree in _files()
        for name in _imports(tree)
        if name.split(".")[0] in FORBIDDEN
    ]
    assert wrong == []


def test_only_the_command_line_prints_or_reads_the_environment() -> None:
    wrong = []
    for room, path, tree in _files():
        if room in ("cli", "__main__"):
            continue
        for node in ast.walk(tree):
            printing = (
                isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "print"
            )
            reading = isinstance(node, ast.Attribute) and node.attr in (
                "environ",
                "getenv",
                "stdout",
                "stderr",
            )
            if printing or reading:
                wrong.append(f"{path.relative_to(PACKAGE)}:{node.lineno}")
    assert wrong == []


def test_heavy_libraries_are_imported_where_they_are_needed() -> None:
    """At the top of a file only inside packages that are themselves imported late."""
    late = ("strength/cage/", "supply/cutting/", "render/")
    wrong = []
    for _, path, tree in _files():
        inside = path.relative_to(PACKAGE).as_posix()
        for node in tree.body:
            names = _imports(node) if isinstance(node, ast.Import | ast.ImportFrom) else []
            heavy = [name for name in names if name.split(".")[0] in HEAVY]
            if heavy and not inside.startswith(late):
                wrong.append(f"{inside} imports {heavy}")
    assert wrong == []


def test_chance_is_seeded() -> None:
    """``random()`` of a seeded generator is the same in every version of Python; nothing else of it is used."""
    wrong = []
    for _, path, tree in _files():
        for node in ast.walk(tree):
            if isinstance(node, ast.Import) and any(alias.name == "random" for alias in node.names):
                wrong.append(f"{path.relative_to(PACKAGE)} imports random whole")
            if isinstance(node, ast.ImportFrom) and node.module == "random":
                wrong += [f"{path.name} takes {alias.name}" for alias in node.names if alias.name != "Random"]
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "Random":
                wrong += [] if len(node.args) == 1 else [f"{path.name}:{node.lineno} has no seed"]
    assert wrong == []
