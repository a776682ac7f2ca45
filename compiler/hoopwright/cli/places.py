"""Where plans go: beside their specs, or into an output folder; no two of one call into the same."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from functools import cache
from itertools import islice
from pathlib import Path

from hoopwright.cli.include import leads_out
from hoopwright.cli.kinds import SUFFIXES, is_spec
from hoopwright.cli.names import folder_name, one_of_a_kind, path_of, slug, text_of
from hoopwright.cli.specs import SpecFile


def plan_folders(specs: Sequence[SpecFile], output: str | None) -> list[Path]:
    """Where the plans of ``specs``, built in one call, go; in their order.

    Without ``output`` it is the spec's own folder, or a folder of its name there when other specs
    live beside it.
    With it, that folder, or a folder of the spec's name in it when several specs are built. A variant's plan
    goes into a folder of its name below the spec's; a cast's plans go into a folder of the cast's name.
    """
    if output is None:
        first_two = cache(_first_two)  # each folder is looked through once, however many specs lie in it
        return [
            spec.home / path_of(spec.member) if spec.home is not None else _of_variant(spec, _own_folder(
                spec.path, alone=first_two(spec.path.parent) <= {spec.path.name}))
            for spec in specs
        ]
    if len(specs) == 1 and specs[0].home is None:
        return [Path(output)]
    folders = [Path(output) / path_of(name) for name in _own_names(specs)]
    if len(specs) == 1:
        return folders
    return [_of_variant(spec, folder) for spec, folder in zip(specs, folders, strict=True)]


def _of_variant(spec: SpecFile, folder: Path) -> Path:
    if spec.home is not None or not spec.choice.variant:
        return folder
    return folder / path_of(slug(spec.choice.variant) or "variant")


def _own_names(specs: Sequence[SpecFile]) -> list[str]:
    """The names of the specs' folders beside each other: no two are the same on any system."""
    stems = [folder_name(text_of(spec.path.stem)) for spec in specs]
    often = Counter(stem for stem, spec in zip(stems, specs, strict=True) if spec.home is None)
    taken: set[str] = set()
    names = []
    for stem, spec in zip(stems, specs, strict=True):
        if spec.home is not None:
            name = spec.member
        elif often[stem] > 1:
            name = f"{text_of(spec.path.resolve().parent.name)}-{stem}"
        else:
            name = stem
        names.append(one_of_a_kind(name, taken))
    return names


def _own_folder(path: Path, *, alone: bool) -> Path:
    """The folder of a spec's plan beside it: among others one of its name, its ending with it where another differs in
    that alone."""
    if alone:
        return path.parent
    stem = folder_name(text_of(path.stem))
    twin = any(path.with_suffix(other).exists() for other in SUFFIXES if other != path.suffix)
    return path.parent / path_of(f"{stem}-{path.suffix[1:]}" if twin and path.suffix != SUFFIXES[0] else stem)


def _first_two(folder: Path) -> set[str]:
    """The names of the first two specs in a folder: any spec has neighbours where another is among them."""
    try:
        there = [one for one in sorted(folder.iterdir()) if one.suffix in SUFFIXES]
    except OSError:
        return set()
    return {one.name for one in islice((one for one in there if not leads_out(one) and is_spec(one)), 2)}
