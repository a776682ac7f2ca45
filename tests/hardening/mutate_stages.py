"""Which small changes of the code does no test notice? A change of one number, sign, operator or comparison at a
time, in the running modules; every test file that calls the function runs until one fails.

    python tests/hardening/mutate_stages.py shape/families/wheel.py --tests tests/shape tests/external
    nice -n 19 python tests/hardening/mutate_stages.py supply/counts.py --tests tests/supply --jobs 2 --every 3

It prints each change that no test noticed, with its line, and the share that was noticed. Some changes alter nothing
that can be seen; the others show a number that a maker acts on and no test holds. Needs os.fork.
"""

from __future__ import annotations

import argparse
import ast
import importlib
import os
import re
import signal
import sys
import time
from collections.abc import Callable, Iterator
from functools import partial, reduce
from pathlib import Path
from types import CodeType, FunctionType, ModuleType
from typing import Any, NamedTuple

import pytest

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "compiler" / "hoopwright"
SWAPPED: dict[type[ast.AST], Callable[[], ast.AST]] = {
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult, ast.Pow: ast.Mult, ast.Lt: ast.GtE,
    ast.FloorDiv: ast.Mult, ast.GtE: ast.Lt, ast.LtE: ast.Gt, ast.Gt: ast.LtE, ast.Eq: ast.NotEq, ast.NotEq: ast.Eq,
    ast.In: ast.NotIn, ast.NotIn: ast.In, ast.Is: ast.IsNot, ast.IsNot: ast.Is, ast.And: ast.Or, ast.Or: ast.And,
}
NAMES = {"min": "max", "max": "min", "sin": "cos", "cos": "sin", "ceil": "floor", "floor": "ceil"}
Callers = dict[tuple[str, str], list[str]]


class Mutant(NamedTuple):
    """One change: in which module and function, at which line, what, and the whole module's code with it."""

    module: str
    place: tuple[str, ...]
    line: int
    what: str
    code: CodeType


def change(node: ast.AST) -> tuple[str, str, Any] | None:
    """What a node's change is in words, which field it sets and to what; None for a node that has none."""
    if isinstance(node, ast.Constant) and type(node.value) in (int, float):
        new = node.value + 1 if isinstance(node.value, int) else node.value * 1.02 or 0.02
        return f"{node.value} becomes {new:g}", "value", new
    if isinstance(node, ast.BinOp | ast.BoolOp) and type(node.op) in SWAPPED:
        to = SWAPPED[type(node.op)]()
        return f"{type(node.op).__name__} becomes {type(to).__name__}", "op", to
    if isinstance(node, ast.Compare) and len(node.ops) == 1 and type(node.ops[0]) in SWAPPED:
        to = SWAPPED[type(node.ops[0])]()
        return f"{type(node.ops[0]).__name__} becomes {type(to).__name__}", "ops", [to]
    if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub):
        return "the sign is dropped", "op", ast.UAdd()
    if isinstance(node, ast.Name) and node.id in NAMES:
        return f"{node.id} becomes {NAMES[node.id]}", "id", NAMES[node.id]
    return None


def mutants(file: str) -> Iterator[Mutant]:
    """Every change of a module, one after the other; the tree is as it was after each."""
    module = "hoopwright." + file.removesuffix(".py").replace("/", ".")
    tree = ast.parse((PACKAGE / file).read_text(encoding="utf-8"))
    for place, part in parts(tree):
        for node in ast.walk(part):
            found = change(node)
            if found is None or not isinstance(node, ast.expr):
                continue
            what, field, new = found
            old = node.__dict__[field]
            setattr(node, field, new)
            code = compile(ast.fix_missing_locations(tree), str(PACKAGE / file), "exec")
            setattr(node, field, old)
            yield Mutant(module, place, node.lineno, what, code)


def parts(tree: ast.Module) -> Iterator[tuple[tuple[str, ...], ast.stmt]]:
    """Functions, methods and plain constants of a module, with their names."""
    for part in tree.body:
        if isinstance(part, ast.FunctionDef):
            yield (part.name,), part
        elif isinstance(part, ast.ClassDef):
            yield from (((part.name, one.name), one) for one in part.body if isinstance(one, ast.FunctionDef))
        elif isinstance(part, ast.Assign) and isinstance(part.value, ast.Constant | ast.BinOp):
            yield (ast.unparse(part.targets[0]),), part


def live(mutant: Mutant) -> Any:
    """The running function, under its property or cache, or the constant's value."""
    found = reduce(lambda inside, name: inside.__dict__[name], mutant.place, sys.modules[mutant.module])
    return reduce(lambda over, under: getattr(over, under, None) or over, ("fget", "__wrapped__"), found)


def put_in(mutant: Mutant) -> None:
    """Change the running module: a function's code, or a constant wherever it has been imported to."""
    function, module, code = live(mutant), sys.modules[mutant.module], mutant.code
    if isinstance(function, FunctionType):
        for name in mutant.place:
            code = next(one for one in code.co_consts if isinstance(one, CodeType) and one.co_name == name)
        function.__code__ = code
        return
    fresh, name = ModuleType(mutant.module), mutant.place[0]
    fresh.__dict__.update(module.__dict__)
    exec(code, fresh.__dict__)
    for other in [one for key, one in sys.modules.items() if key.startswith("hoopwright")]:
        if other.__dict__.get(name) == function:
            setattr(other, name, fresh.__dict__[name])


def forked(files: list[str], limit: float, before: Callable[[], Any], after: Callable[[], Any] = int) -> int:
    """The child that runs test files until one fails, or so many seconds are over."""
    child = os.fork()
    if child:
        return child
    result = 1
    try:
        signal.alarm(round(limit))
        for stream in (1, 2):
            os.dup2(os.open(os.devnull, os.O_WRONLY), stream)
        before()
        result = int(pytest.main(["-x", "-q", "-n", "0", "-p", "no:cacheprovider", "--hypothesis-seed=0", *files]))
        after()
    finally:
        os._exit(result)


def callers(tests: list[str]) -> Callers:
    """Which test files call which function, by (file, name); the quickest first."""
    found: dict[tuple[str, str], list[tuple[float, str]]] = {}
    called: set[tuple[str, str]] = set()

    def note(frame: Any, event: str, _: object) -> None:
        if event == "call" and "hoopwright" in frame.f_code.co_filename:
            called.add((frame.f_code.co_filename, frame.f_code.co_name))

    def tell(writing: int) -> None:
        sys.setprofile(None)
        with os.fdopen(writing, "w") as out:
            out.writelines(f"{path}\t{name}\n" for path, name in called)

    for test in tests:
        reading, writing = os.pipe()
        start = time.monotonic()
        child = forked([test], 900, partial(sys.setprofile, note), partial(tell, writing))
        os.close(writing)
        with os.fdopen(reading) as back:
            rows = [line.rstrip("\n").split("\t") for line in back]
        if os.waitpid(child, 0)[1]:
            print(f"{test}: fails, or takes too long, before anything is changed")
            continue
        for path, name in rows:
            found.setdefault((path, name), []).append((time.monotonic() - start, test))
    return {key: [test for _, test in sorted(pairs)] for key, pairs in found.items()}


def tried(given: argparse.Namespace, who: Callers) -> Iterator[tuple[Mutant, bool]]:
    """Each change and whether it was noticed, as they finish."""
    running: dict[int, Mutant] = {}
    chosen = [one for file in given.files for one in mutants(file) if re.search(given.only, one.place[-1])]
    for mutant in chosen[given.every - 1::given.every]:
        path = mutant.code.co_filename
        files = who.get((path, mutant.place[-1]), [])
        if not isinstance(live(mutant), FunctionType):
            files = list(dict.fromkeys(one for (at, _), some in who.items() if at == path for one in some))
        if not files:
            yield mutant, False
            continue
        while len(running) >= given.jobs:
            child, status = os.wait()
            yield running.pop(child), status != 0
        running[forked(files, given.limit, partial(put_in, mutant))] = mutant
    while running:
        child, status = os.wait()
        yield running.pop(child), status != 0


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("files", nargs="+", help="modules below compiler/hoopwright")
    parser.add_argument("--tests", nargs="+", default=["tests"], help="test files or folders that may notice")
    parser.add_argument("--jobs", type=int, default=1)
    parser.add_argument("--every", type=int, default=1, help="try one change in so many")
    parser.add_argument("--limit", type=int, default=120, help="seconds for one change")
    parser.add_argument("--only", default="", help="functions and constants whose name matches this")
    given = parser.parse_args()
    os.chdir(ROOT)
    sys.dont_write_bytecode = False
    paths = [one for path in map(Path, given.tests) for one in (sorted(path.rglob("test_*.py")) or [path])]
    for file in ("compile.py", *given.files):
        importlib.import_module("hoopwright." + file.removesuffix(".py").replace("/", "."))
    pytest.main(["--version"])  # plugins are loaded once, before any child is forked
    results = []
    for mutant, noticed in tried(given, callers([str(path) for path in paths])):
        results.append(noticed)
        if not noticed:
            print(f"{mutant.module}:{mutant.line} {'.'.join(mutant.place)}: {mutant.what}", flush=True)
    print(f"{sum(results)} of {len(results)} changes noticed")


if __name__ == "__main__":
    main()
