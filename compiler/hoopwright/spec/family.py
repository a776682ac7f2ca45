"""What a design is called: the one place that decides the word by which its page speaks of it."""

from __future__ import annotations

from typing import Literal

from hoopwright.spec.model import Spec

Family = Literal["cage", "bustle cage", "crinolette", "farthingale", "petticoat", "wheel", "pair"]


def family_of(spec: Spec) -> Family:
    """The word for a design, always one thing of which one says "it": side hoops are a pair. Gores on a cone,
    plain and on a waistband, are a farthingale; any other cloth with channels is a petticoat."""
    build, plan = spec.build, spec.shape.ground_plan
    if build.wheel is not None:
        return "wheel"
    if build.sides is not None:
        return "pair"
    if plan.half is not None:
        return "crinolette" if plan.half.full else "bustle cage"
    panels = build.panels
    if panels is None:
        return "cage"
    plain = panels.kind == "gores" and panels.cord is None and not build.flounces
    return "farthingale" if plain and spec.shape.line.kind == "cone" else "petticoat"


FULL: dict[Family, str] = {
    "cage": "cage",
    "bustle cage": "bustle cage",
    "crinolette": "crinolette",
    "farthingale": "farthingale",
    "petticoat": "hooped petticoat",
    "wheel": "wheel farthingale",
    "pair": "pair of side hoops",
}
"""The word written out, for a heading or where it is named first."""


def full_word(spec: Spec) -> str:
    """The word of a design written out; a petticoat without hoops is a corded one."""
    return "corded petticoat" if spec.build.cords is not None else FULL[family_of(spec)]
