"""One case: files, and a command on them. A case follows from a seed and a number, so that it can be made again."""

from __future__ import annotations

import json
from copy import deepcopy
from dataclasses import dataclass, replace
from functools import lru_cache
from random import Random
from typing import Any

from fuzzing import commands, structural, textual
from fuzzing.corpus import Seed, committed, seeds
from hoopwright.source.read import read


@dataclass(frozen=True)
class Case:
    """``files`` by relative name, ``given`` to a command as arguments; ``damaged`` is the file that was changed."""

    files: dict[str, bytes]
    damaged: str
    given: tuple[str, ...]

    @property
    def text(self) -> bytes:
        """The damaged text, which is on stdin too; empty when there is none."""
        return self.files.get(self.damaged, b"")

    def but(self, text: bytes) -> Case:
        """The same case with another damaged text."""
        return replace(self, files=self.files | {self.damaged: text})

    def shown(self) -> str:
        """The command, and the damaged text."""
        words = " ".join(json.dumps(word) for word in self.given)
        return f"hoopwright {words}\n--- {self.damaged}\n{self.text.decode('utf-8', 'replace')}"


def case(seed: int, number: int) -> Case:
    """The case of that number."""
    dice = Random(f"{seed}-{number}")
    if dice.random() < 0.05:
        return Case({}, "", commands.alone(dice))
    origin = dice.choice(committed() if dice.random() < 0.6 else seeds())
    text = damaged_text(origin, dice.choice(seeds()), dice)
    files = origin.files | {origin.damaged: text, commands.BEFORE: origin.text}
    return Case(files, origin.damaged, commands.on_spec(origin.asked, tree_of(files[origin.asked]), dice))


def damaged_text(origin: Seed, other: Seed, dice: Random) -> bytes:
    """A text damaged as a text, or as the tree it is; in two of five cases only by other amounts."""
    tree, way = tree_of(origin.text), dice.random()
    if tree is not None and way < 0.4:
        return structural.written(structural.moved(tree, dice))
    if tree is None or way < 0.7:
        return textual.damaged(origin.text, other.text, dice)
    text = structural.written(structural.damaged(tree, tree_of(other.text) or {}, dice))
    return textual.damaged(text, other.text, dice) if dice.random() < 0.1 else text


def tree_of(text: bytes) -> Any:
    """The values of a text, to be changed at will; None when it cannot be read."""
    return deepcopy(_tree(text))


@lru_cache(maxsize=256)
def _tree(text: bytes) -> Any:
    document, _ = read(text, "cage.yaml")
    return None if document is None else document.value
