"""What a quantity that cannot be read most likely means: curly quotes, a range, a word too many, a trade's own unit."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from fractions import Fraction

from hoopwright.source.quantity import QuantityError

Parser = Callable[[object], object]

# Patterns stand as text: they are compiled only where something could not be read.
_CURLY = "[“”„‘’]"
_RANGE = r"\s*[0-9][^-–—]*?(?:[-–—]|\bto\b|\bor\b)\s*(?P<last>[0-9].*)"
_THOUSANDTHS = r"(?P<number>[0-9]{1,4})\s*(?:thou|mils?)\b\.?"
_GAUGE = r"(?i).*\b(?:gauge|ga|swg|awg)\b.*"
_POUNDS = r"(?P<number>[0-9][0-9 /.]*)\s*#"
_LONGEST = 60


def meant(value: object, parser: Parser) -> str:
    """The mend in words, or nothing when no guess can be read by ``parser`` either."""
    if isinstance(value, list) and len(value) == 1 and _reads(value[0], parser):
        return f"write `{value[0]}`, without brackets"
    if not isinstance(value, str) or len(value) > _LONGEST:
        return ""
    plain = re.sub(_CURLY, "", value).strip()
    if plain != value and _reads(plain, parser):
        return f"leave the curly quotation marks out: write `{plain}`"
    if (thin := re.fullmatch(_THOUSANDTHS, plain)) and _reads("0.001 in", parser):
        return f"write thousandths of an inch as `{float(Fraction(int(thin['number']), 1000)):g} in`"
    if re.fullmatch(_GAUGE, plain) and _reads("0.042 in", parser):
        return "tables of gauges differ: measure it and write what you find, as in `0.042 in` or `1.1 mm`"
    if (pounds := re.fullmatch(_POUNDS, plain)) and _reads(f"{pounds['number']} lb", parser):
        return f"write `{pounds['number'].strip()} lb`"
    if (span := re.fullmatch(_RANGE, plain)) and _reads(span["last"], parser):
        return f"it reads as a range: write one measure, as in `{span['last']}`"
    if _reads(f"{plain}/yd2", parser):
        return f"write `{plain}/yd2` if the shop means a square yard"
    alone = next((one for one in _shorter(plain) if _reads(one, parser)), "")
    return f"write `{alone}` and nothing else" if alone else ""


def _shorter(plain: str) -> Iterator[str]:
    """The same with less round it: punctuation, a word before, a word behind, the unit written first."""
    bare = plain.strip(" .,;:~")
    yield bare
    words = bare.split()
    for count in range(1, len(words)):
        yield " ".join(words[count:])
    for count in range(len(words) - 1, 0, -1):
        yield " ".join(words[:count])
    yield " ".join(reversed(words))


def _reads(value: object, parser: Parser) -> bool:
    try:
        parser(value)
    except QuantityError:
        return False
    return True
