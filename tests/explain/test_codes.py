"""The list of diagnostics: each code that is emitted has a page, each page's code is emitted, and each page's
example really fails with it while its mended twin does not."""

from __future__ import annotations

import ast
import os
import re
import subprocess
import sys
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

import hoopwright
from hoopwright.compile import compile_spec
from hoopwright.explain.pages import Kind, Page, pages

PACKAGE = Path(hoopwright.__file__).parent
SPECS = Path(__file__).parents[2] / "specs"
STAGES = {"source", "spec", "shape", "strength", "supply", "work", "plan", "command line"}
CODES = [page for page in pages() if page.kind == "codes"]
YAML = [page for page in CODES if page.example("Fails")[0] == "yaml"]
CONSOLE = [page for page in CODES if page.example("Fails")[0] == "console"]
BUILTIN = ("error", "warning", "note", "Diagnostic", "Finding", "QuantityError", "Unread", "refuse")


@cache
def trees() -> tuple[ast.Module, ...]:
    """The parsed modules of the package."""
    return tuple(ast.parse(path.read_text(encoding="utf-8")) for path in sorted(PACKAGE.rglob("*.py")))


def functions_with_code() -> dict[str, tuple[int, bool]]:
    """Functions that make a diagnostic or a check from a parameter ``code``: its place among their arguments,
    and whether it is a check."""
    found = dict.fromkeys(BUILTIN, (0, False)) | {"Check": (0, True)}
    for tree in trees():
        for node in ast.walk(tree):
            if not isinstance(node, ast.FunctionDef) or node.returns is None:
                continue
            returns = ast.unparse(node.returns)
            names = [one.arg for one in (*node.args.posonlyargs, *node.args.args) if one.arg != "self"]
            if "code" in names and re.search(r"Check\b|Finding|Diagnostic|QuantityError|Unread", returns):
                found[node.name] = (names.index("code"), re.search(r"Check\b", returns) is not None)
    return found


def emitted(of_checks: bool) -> set[str]:
    """Every code written out in a call that makes a diagnostic, or a check."""
    functions = functions_with_code()
    codes = set()
    for tree in trees():
        for node in ast.walk(tree):
            if not isinstance(node, ast.Call):
                continue
            name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
            place, makes_check = functions.get(name, (-1, not of_checks))
            if makes_check is of_checks:
                codes |= set(_written(node, place))
    return codes


def _written(call: ast.Call, place: int) -> Iterator[str]:
    """String constants in the code argument of a call."""
    given = [word.value for word in call.keywords if word.arg == "code"]
    if 0 <= place < len(call.args):
        given.append(call.args[place])
    for argument in given:
        for node in ast.walk(argument):
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                yield node.value


def slugs(kind: Kind) -> set[str]:
    """The names of all pages of a kind."""
    return {page.slug for page in pages() if page.kind == kind}


def test_the_search_for_codes_finds_some_of_every_kind() -> None:
    assert {"duplicate-key", "unit-missing", "key-unknown", "file-missing"} <= emitted(of_checks=False)


def test_every_emitted_code_has_a_page() -> None:
    assert sorted(emitted(of_checks=False) - slugs("codes")) == []


def test_every_page_is_of_a_code_that_is_emitted() -> None:
    assert sorted(slugs("codes") - emitted(of_checks=False)) == []


def test_every_code_is_a_lower_case_slug() -> None:
    for code in emitted(of_checks=False) | emitted(of_checks=True):
        assert re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", code), code


def test_every_check_of_a_plan_has_a_page() -> None:
    given = set(emitted(of_checks=True))
    for path in sorted(SPECS.glob("*/*.yaml")):
        plan = compile_spec(path.read_bytes(), path.name).plan
        given |= {check.code for check in plan.checks} if plan else set()
    assert len(given) > 10
    assert sorted(given - slugs("checks")) == []


def test_every_page_of_a_check_is_of_one_the_compiler_names() -> None:
    named = {node.value for tree in trees() for node in ast.walk(tree)
             if isinstance(node, ast.Constant) and isinstance(node.value, str)}
    assert sorted(slugs("checks") - named) == []


@pytest.mark.parametrize("page", CODES, ids=lambda page: page.slug)
def test_the_page_says_how_much_the_code_matters_and_where_it_comes_from(page: Page) -> None:
    assert page.fields["severity"] in {"error", "warning", "note"}
    assert page.fields["stage"] in STAGES
    assert page.example("Fails")[0] == page.example("Mended")[0]
    assert page.example("Fails")[0] in {"yaml", "console"}
    assert page.example("Fails")[1] != page.example("Mended")[1]


@pytest.mark.parametrize("page", YAML, ids=lambda page: page.slug)
def test_the_example_fails_with_its_code_and_the_mended_twin_does_not(page: Page) -> None:
    fails = compile_spec(page.example("Fails")[1].encode(), "cage.yaml").diagnostics
    given = {found.severity.value for found in fails if found.code == page.slug}
    assert given == {page.fields["severity"]}, fails
    assert all(found.code == page.slug for found in fails if found.severity.value == "error"), fails
    mended = compile_spec(page.example("Mended")[1].encode(), "cage.yaml").diagnostics
    assert not [found for found in mended if found.code == page.slug or found.severity.value == "error"]


@pytest.mark.parametrize("slug", ["waistband-short", "tape-too-short"])
def test_what_was_measured_at_a_fitting_is_not_mended_away(slug: str) -> None:
    page = next(page for page in YAML if page.slug == slug)
    fails, mended = (re.search(r"^fittings:.*(?:\n .*)*", page.example(name)[1], re.MULTILINE)
                     for name in ("Fails", "Mended"))
    assert fails is not None
    assert mended is not None
    assert fails[0] == mended[0]


@pytest.mark.parametrize("page", CONSOLE, ids=lambda page: page.slug)
def test_the_commands_fail_with_its_code_and_the_mended_ones_do_not(page: Page, tmp_path: Path) -> None:
    assert f" {page.slug} " in _said(page.example("Fails")[1], tmp_path / "fails")
    assert f" {page.slug} " not in _said(page.example("Mended")[1], tmp_path / "mended")


def _said(commands: str, folder: Path) -> str:
    """What the commands print when a shell runs them in an empty folder."""
    folder.mkdir()
    tool = folder / "bin" / "hoopwright"
    tool.parent.mkdir()
    tool.write_text(f'#!/bin/sh\nexec "{sys.executable}" -m hoopwright "$@"\n')
    tool.chmod(0o755)
    work = folder / "work"
    work.mkdir()
    where = {**os.environ, "PATH": f"{tool.parent}{os.pathsep}{os.environ['PATH']}"}
    shell = ["sh", "-c", commands]
    ran = subprocess.run(shell, cwd=work, env=where, capture_output=True, text=True, check=False)
    return ran.stdout + ran.stderr
