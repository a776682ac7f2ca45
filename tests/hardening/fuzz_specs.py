"""Mutate every spec of the repository and compile what comes out: findings or a plan, never an exception.

Run ``python tests/hardening/fuzz_specs.py --count 20000``; the tests run fewer. Every run must end in
diagnostics or in a plan whose files are all made, with no number that is not finite.
"""

from __future__ import annotations

import argparse
import json
import math
import sys
import time
import traceback
from collections.abc import Iterator
from pathlib import Path
from random import Random

from hoopwright.cli.files import rendered
from hoopwright.compile import compile_spec

ROOT = Path(__file__).resolve().parents[2]
WORDS = tuple(
    """\
0|-3|1e400|.nan|true|null|[]|{}|'' |10 in|10|3 parsecs|0 cm|-2 cm|1e9 m|0.001 mm|999 kg|12 EUR|12|round
[1, 2]|{kind: cone}|2 h|a: b|&a x|*a|!!int 3|#|5' 4"|10\u00bd in|\U0001d543oop|tapes|7|40 kg|3 mm|0.2 mm
2 ft 3 in|50 %|90 min|none|H1|calico|channels|oval|{kind: oval, top: 1.2}""".replace("\n", "|").split("|")
)


def sources() -> list[bytes]:
    """The text of every spec and starter of the repository."""
    return [path.read_bytes() for path in sorted((ROOT / "specs").rglob("*.yaml"))]


def mutations(count: int, seed: int) -> Iterator[bytes]:
    """``count`` damaged specs: values swapped, lines dropped, doubled or moved, bytes changed."""
    texts = sources()
    dice = Random(seed)
    for _ in range(count):
        text = texts[int(dice.random() * len(texts))]
        for _ in range(1 + int(dice.random() * 3)):
            text = _mutated(text, dice)
        yield text


def _mutated(text: bytes, dice: Random) -> bytes:
    lines = text.splitlines(keepends=True)
    if not lines:
        return text
    at = int(dice.random() * len(lines))
    kind = dice.random()
    if kind < 0.55:
        lines[at] = _value_swapped(lines[at], dice)
    elif kind < 0.7:
        del lines[at]
    elif kind < 0.8:
        lines.insert(at, lines[int(dice.random() * len(lines))])
    elif kind < 0.9:
        other = int(dice.random() * len(lines))
        lines[at], lines[other] = lines[other], lines[at]
    else:
        line = bytearray(lines[at])
        if line:
            line[int(dice.random() * len(line))] = int(dice.random() * 256)
        lines[at] = bytes(line)
    return b"".join(lines)


def _value_swapped(line: bytes, dice: Random) -> bytes:
    """One value of a line for another: behind a colon, up to a comma, a brace or the end."""
    starts = [k + 1 for k, byte in enumerate(line) if byte == ord(":")]
    if not starts:
        return line
    start = starts[int(dice.random() * len(starts))]
    end = next((k for k in range(start, len(line)) if line[k] in b",}]\n"), len(line))
    word = WORDS[int(dice.random() * len(WORDS))].encode()
    return line[:start] + b" " + word + line[end:]


def trouble(data: bytes) -> str | None:
    """What went wrong in compiling ``data``, or None."""
    try:
        result = compile_spec(data, "cage.yaml")
        if result.plan is None:
            return None if result.diagnostics else "no plan and no diagnostics"
        files = rendered(result.plan)
    except Exception:
        return traceback.format_exc()
    bad = [number for number in _numbers(json.loads(files["plan.json"])) if not math.isfinite(number)]
    return f"numbers that are not finite: {bad[:3]}" if bad else None


def _numbers(value: object) -> Iterator[float]:
    if isinstance(value, dict):
        for item in value.values():
            yield from _numbers(item)
    elif isinstance(value, list):
        for item in value:
            yield from _numbers(item)
    elif isinstance(value, float):
        yield value


def main() -> int:
    """Fuzz as often as asked; print every trouble with the spec that gave it, and the slowest run."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--count", type=int, default=20000)
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args()
    found, slowest = 0, (0.0, b"")
    for data in mutations(options.count, options.seed):
        start = time.perf_counter()
        wrong = trouble(data)
        slowest = max(slowest, (time.perf_counter() - start, data), key=lambda pair: pair[0])
        if wrong:
            found += 1
            print(f"--- spec\n{data.decode(errors='replace')}\n--- trouble\n{wrong}")
    print(f"{options.count} mutated specs: {found} in trouble; the slowest took {slowest[0]:.1f} s")
    print(f"--- slowest\n{slowest[1].decode(errors='replace')}")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
