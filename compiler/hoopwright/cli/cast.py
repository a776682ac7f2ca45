"""A whole cast in one file: ``cast:`` lists which spec is built on which wearer, in which variant.

Each entry names a ``spec`` and may name a ``wearer`` (a body file), a ``variant`` of the spec, a ``title``
and ``regrade``. ``wearer`` and ``variant`` may be lists: every combination is then built.
"""

from __future__ import annotations

from itertools import product
from pathlib import Path
from typing import Any

from hoopwright.cli.include import reader
from hoopwright.cli.names import one_of_a_kind, path_of, slug, text_of
from hoopwright.source.diagnostic import Diagnostic, Finding, Severity, Span, error, failed
from hoopwright.source.fetch import Unread
from hoopwright.source.locate import locate, place
from hoopwright.source.read import Document, read
from hoopwright.source.record import record
from hoopwright.spec.checking.nearest import listed, offer
from hoopwright.spec.document.choice import Choice

_KEYS = ("spec", "wearer", "variant", "title", "regrade")
_LISTS = ("wearer", "variant")
_REGRADE = ("sizes", "proportions")


@record(frozen=True, slots=True)
class Member:
    """One combination: the spec's file and text, the choice, and a name for its folder."""

    path: Path
    shown: str
    data: bytes
    choice: Choice
    name: str


def read_cast(data: bytes, path: Path, shown: str) -> tuple[tuple[Member, ...], tuple[Diagnostic, ...]]:
    """The members of a cast file in their order, each with a name of its own, and what is wrong with it."""
    document, said = read(data, shown)
    if document is None or failed(said):
        return (), said
    findings = tuple(_findings(document.value))
    if findings:
        return (), tuple(locate(finding, document) for finding in findings)
    members: list[Member] = []
    problems: list[Diagnostic] = []
    fetch = reader(path)
    for index, entry in enumerate(document.value["cast"]):
        at = place(("cast", index, "spec"), document)
        got = fetch(entry["spec"], shown)
        if isinstance(got, Unread):
            problems.append(Diagnostic(got.code, Severity.ERROR, got.message, shown, at, help=got.help))
            continue
        spec = path.parent / path_of(entry["spec"])
        for choice in _choices(document, index, entry):
            members.append(Member(spec, got.file, got.data, choice, _name(spec, choice, members)))
    return tuple(members), tuple(problems)


def _choices(document: Document, index: int, entry: dict[str, Any]) -> list[Choice]:
    """Every combination an entry asks for."""
    wearers, variants = (_all(entry.get(key)) for key in _LISTS)
    several = len(wearers) * len(variants) > 1
    found = []
    for (w, wearer), (v, variant) in product(enumerate(wearers), enumerate(variants)):
        places: dict[str, Span] = {}
        for key, at in (("wearer", w), ("variant", v)):
            if key in entry:
                inner = (at,) if isinstance(entry[key], list) else ()
                places[key] = place(("cast", index, key, *inner), document)
        choice = Choice(variant, wearer, "", entry.get("regrade", ""), document.file, places)
        title = entry.get("title", "")
        if title and several and choice.label:
            title = f"{title} ({choice.label})"
        found.append(Choice(variant, wearer, title, choice.regrade, choice.file, places))
    return found


def _all(value: Any) -> list[str]:
    return list(value) if isinstance(value, list) else [value or ""]


def _name(spec: Path, choice: Choice, others: list[Member]) -> str:
    """A folder's name: the member's title, or spec, wearer and variant; numbered when it comes twice."""
    words = choice.title or " ".join(word for word in (text_of(spec.stem), choice.label) if word)
    return one_of_a_kind(slug(words) or "member", {member.name for member in others})


def _findings(value: dict[str, Any]) -> list[Finding]:
    found = [error("key-unknown", (key,), f"no key `{key[:40]}` is known at the top of a cast",
                   "a cast file holds `cast`, a list of `{spec, wearer, variant, title}`", at_key=True)
             for key in value if key not in ("cast", "title")]
    entries = value.get("cast")
    if not isinstance(entries, list) or not entries:
        return [*found, error("value-wrong-type", ("cast",), "`cast` takes a list of members",
                              "write each on a line that begins with `- spec: ...`", at_key=True)]
    for index, entry in enumerate(entries):
        found.extend(_entry_findings(entry, index))
    return found


def _entry_findings(entry: Any, index: int) -> list[Finding]:
    at = ("cast", index)
    if not isinstance(entry, dict):
        return [error("value-wrong-type", at, "a member of a cast takes keys and values",
                      "write `- spec: cage.yaml`, and `wearer`, `variant` or `title` below it")]
    found = [error("key-unknown", (*at, key), f"no key `{key[:40]}` is known in a member of a cast",
                   offer(key, _KEYS, "key"), at_key=True) for key in entry if key not in _KEYS]
    if "spec" not in entry:
        found.append(error("key-missing", at, "this member names no `spec`",
                           "add `spec`: the path of a spec, relative to this file"))
    for key in (key for key in _KEYS if key in entry):
        items = entry[key] if key in _LISTS and isinstance(entry[key], list) else [entry[key]]
        if not items or not all(isinstance(item, str) and item.strip() for item in items):
            found.append(error("value-wrong-type", (*at, key), f"`{key}` takes text", "put it in quotes"))
        elif key == "regrade" and entry[key] not in _REGRADE:
            found.append(error("value-unknown", (*at, key), f"`{entry[key][:40]}` is no value of `regrade`",
                               f"it takes {listed(_REGRADE)}"))
    return found
