"""Commands with their options: those on a damaged spec, and those that need none, with odd words."""

from __future__ import annotations

from random import Random
from typing import Any

FORMATS = ("text", "short", "jsonl", "sarif", "junit", "annotations", "summary")
DIFFS = ("text", "markdown", "json")
BEFORE = "before.yaml"
"""The spec as it was before it was damaged."""

_STARTERS = ("round-cage-inches", "round-cage-centimetres", "bustle-centimetres", "wheel-farthingale-inches",
             "side-hoops-centimetres", "hooped-petticoat-centimetres", "crinolette-inches", "no-such-starter")
_MEASURES = ("5 ft 6 in", "168 cm", "29 in", "70 cm", "0 cm", "-3 in", "9 km", "0.01 mm", "1e3 cm", "28", "",
             "\u00bd yd", "5' 4\"", "tall", "\u0000", "120 kg", "66 cm # x", "66 cm\nspec: 2", "1/0 in", "\ud800",
             "[1, 2]", "300 cm")
_TOPICS = ("hem-not-wider", "sag", "lap", "", " ", "no such word", "../../etc", "\u202e", "a" * 5000, "%s", "[", "*",
           "set-worn", "unit missing", "\ud800", "Hoop")
_SECTIONS = ("10 x 1 mm", "6 mm round", "20 mm x 2 mm tube", "1 x 1 km", "x", "0 mm round", "5 x mm", "1/4 x 1/32 in")
_FORMS = ("strip", "wire", "cane", "tube", "rod", "corded cloth")
_GRADES = ("spring steel, tempered", "rattan", "polyethylene", "cheese")
_LENGTHS = ("45 cm", "17 cm", "6 in", "1 mm", "0.01 mm", "9 km", "0 cm", "", "x", "a drink can")
_HUNG = ("20 nickels", "100 g", "9 t", "0 g", "", "1e4 kg")
_RESULTS = ("springs back", "takes a set", "8 in", "", "no")


def on_spec(name: str, tree: Any, dice: Random) -> tuple[str, ...]:
    """A command on the spec ``name``, whose values are ``tree`` when it can be read; it lies beside :data:`BEFORE`."""
    way, varied = dice.random(), _variant(tree, dice)
    if way < 0.30:
        cards = ["--cards"] * (dice.random() < 0.3)
        return ("build", name, "--check", "--format", dice.choice(FORMATS), *cards, *varied)
    if way < 0.40:
        return ("build", name, "-o", "out", "--format", "jsonl", *dice.choice(([], ["--units", "inches"])))
    if way < 0.60:
        return ("check", name, "--format", dice.choice(FORMATS), *varied)
    if way < 0.66:
        return ("check", "--syntax", name, "--format", dice.choice(FORMATS))
    if way < 0.76:
        return _difference(name, varied, dice)
    if way < 0.82:
        return ("compare", name, "--format", dice.choice(DIFFS))
    if way < 0.90:
        more = [BEFORE] * (dice.random() < 0.5)
        return ("shop", name, *more, "--format", dice.choice(("markdown", "json")), *varied)
    if way < 0.95:
        return ("bench", *_sample(dice), "--for", name)
    return ("values", dice.choice((name, "-")))


def alone(dice: Random) -> tuple[str, ...]:
    """A command that needs no spec."""
    way = dice.random()
    if way < 0.5:
        asked = [key for key in ("title", "stature", "waist", "hip") if dice.random() < 0.6]
        return ("new", dice.choice(_STARTERS), *(f"--{key}={dice.choice(_MEASURES)}" for key in asked))
    return ("explain", "--", dice.choice(_TOPICS)) if way < 0.7 else ("bench", *_sample(dice))


def _variant(tree: Any, dice: Random) -> list[str]:
    """Now and then a variant, mostly one that the spec has."""
    if dice.random() < 0.7:
        return []
    variants = tree.get("variants") if isinstance(tree, dict) else None
    known = [name for name in variants if name] if isinstance(variants, dict) else []
    return ["--variant", dice.choice(known) if known and dice.random() < 0.9 else "no such one"]


def _difference(name: str, varied: list[str], dice: Random) -> tuple[str, ...]:
    how = ("--format", dice.choice(DIFFS))
    if varied:
        return ("diff", name, *varied, *how)
    return ("diff", *dice.choice(((BEFORE, name), (name, BEFORE), ("-", BEFORE), (name, name))), *how)


def _sample(dice: Random) -> list[str]:
    """A sample tested in the shop, often as it should be and often not."""
    words = [f"--section={dice.choice(_SECTIONS)}"]
    if dice.random() < 0.3:
        words = [f"--form={dice.choice(_FORMS)}", f"--width={dice.choice(_LENGTHS)}"]
    if dice.random() < 0.5:
        words.append(f"--grade={dice.choice(_GRADES)}")
    for _ in range(dice.choice((0, 1, 1, 2))):
        words += [f"--overhang={dice.choice(_LENGTHS)}", f"--drop={dice.choice(_LENGTHS)}",
                  f"--hang={dice.choice(_HUNG)}"]
        words += [f"--turned={dice.choice(_LENGTHS)}"] * (dice.random() < 0.3)
        words += ["--clamp=5 degrees"] * (dice.random() < 0.2)
    if dice.random() < 0.5:
        words += [f"--around={dice.choice(_LENGTHS)}", f"--then={dice.choice(_RESULTS)}"]
    if dice.random() < 0.3:
        words += [f"--length={dice.choice(_LENGTHS)}", f"--weight={dice.choice(_HUNG)}"]
    return words
