"""Numbers as makers write them: ``10 1/2``, ``10-1/2``, ``10½``, ``0.042`` - read exactly."""

from __future__ import annotations

import re
import unicodedata
from decimal import Decimal
from fractions import Fraction

LONGEST = 120
"""The longest text read as a quantity, characters."""

_HIGHEST = 300
"""The largest power of ten a number may have; a measure has no use for more."""


class QuantityError(Exception):
    """Why a text is no quantity: a code of the diagnostics list, what is wrong, and the mend."""

    def __init__(self, code: str, message: str, help: str = "") -> None:
        super().__init__(f"{code}: {message}")
        self.code, self.message, self.help = code, message, help


_SPACES = dict.fromkeys([0xA0, *range(0x2000, 0x200B), 0x202F, 0x3000], " ")
_SIGNS = {ord(sign): plain for sign, plain in (
    ("′", "'"), ("’", "'"), ("″", '"'), ("”", '"'), ("“", '"'), ("−", "-"), ("‐", "-"), ("‑", "-"),
    ("⁄", "/"), ("∕", "/"), ("²", "2"), ("³", "3"), ("º", "°"))}
_SQUARE = re.compile(r"\b(?:sq\.?|square)\s+([A-Za-z]+)\.?", re.IGNORECASE)
_PERCENT = re.compile(r"\bper\s+cent\b", re.IGNORECASE)
_PER = re.compile(r"\s+per\s+", re.IGNORECASE)

_COMMA = re.compile(r"([0-9]+),([0-9]+)")
_NUMBER = re.compile(
    r"""(?P<sign>[+-]?)\s*(?:
        (?P<whole>[0-9]+)(?:\s*-\s*|\s+)(?P<top>[0-9]+)\s*/\s*(?P<under>[0-9]+)
      | (?P<over>[0-9]+)\s*/\s*(?P<base>[0-9]+)
      | (?P<plain>(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]+(?![A-Za-z]))?)
    )(?![0-9])""",
    re.VERBOSE,
)


def tidy(text: str) -> str:
    """The text in plain signs: ordinary spaces, quotes, slashes; ``½`` as `` 1/2``; ``sq yd`` as ``yd^2``."""
    text = text.translate(_SPACES).translate(_SIGNS)
    text = "".join(_plain_fraction(sign) for sign in text).strip()
    text = _SQUARE.sub(r"\1^2", text)
    return _PER.sub("/", _PERCENT.sub("percent", text))


def _plain_fraction(sign: str) -> str:
    """``½`` as `` 1/2``; any other sign as it is."""
    if ord(sign) < 0xBC or unicodedata.category(sign) != "No":
        return sign
    spelled = unicodedata.normalize("NFKC", sign).replace("⁄", "/")
    return f" {spelled}" if re.fullmatch(r"[0-9]+/[0-9]+", spelled) else sign


def shown(text: str) -> str:
    """A text fit to stand in a message: one line, printable, not long."""
    line = " ".join(text.split())
    line = "".join(sign if sign.isprintable() else "?" for sign in line)
    return line if len(line) <= 40 else f"{line[:36]} ..."


def comma_trouble(plain: str) -> QuantityError | None:
    """What to say of a number with a comma: the mend is a point, or nothing when thousands are meant."""
    comma = _COMMA.search(plain)
    if comma is None:
        return None
    mend = f"write `{shown(plain.replace(comma[0], f'{comma[1]}.{comma[2]}', 1))}`"
    if len(comma[2]) == 3:
        mend += f", or `{shown(plain.replace(comma[0], comma[1] + comma[2], 1))}` if thousands are meant"
    return QuantityError("quantity-unreadable", f"`{shown(plain)}` has a comma in its number", mend)


def take_number(text: str, at: int, whole_text: str) -> tuple[Fraction, int] | None:
    """The number that starts at ``at`` and where it ends; None when no number starts there.

    Raises:
        QuantityError: a zero below a fraction's line, or a number too large (``number-not-finite``);
            a fraction above one after a whole number (``quantity-unreadable``).
    """
    found = _NUMBER.match(text, at)
    if found is None:
        return None
    if found["plain"] is not None:
        value = _decimal(found["plain"], whole_text)
    elif found["over"] is not None:
        value = _ratio(found["over"], found["base"], whole_text)
    else:
        part = _ratio(found["top"], found["under"], whole_text)
        if part >= 1:
            raise QuantityError(
                "quantity-unreadable",
                f"the fraction in `{found['whole']} {found['top']}/{found['under']}` is not below one",
                "write the whole number first and a fraction below one after it, as in `10 1/2 in`")
        value = int(found["whole"]) + part
    return (-value if found["sign"] == "-" else value), found.end()


def _ratio(over: str, under: str, whole_text: str) -> Fraction:
    """A fraction, its lower number checked."""
    if int(under) == 0:
        raise QuantityError("number-not-finite", f"`{whole_text}` divides by zero",
                            "write a fraction whose lower number is not 0, as in `1/2 in`")
    return Fraction(int(over), int(under))


def _decimal(digits: str, whole_text: str) -> Fraction:
    """A decimal number, exactly; powers of ten are held to what a measure can need."""
    mantissa, _, exponent = digits.lower().partition("e")
    if exponent and abs(int(exponent)) > _HIGHEST:
        if Decimal(mantissa) == 0:
            return Fraction(0)
        if int(exponent) < 0:
            raise QuantityError("amount-not-positive", f"`{whole_text}` is too small to be told from nothing",
                                "write the number out, as in `10.5 cm`")
        raise QuantityError("number-not-finite", f"`{whole_text}` is too large to be a number",
                            "write the number out, as in `10.5 cm`")
    return Fraction(Decimal(digits))


def number_text(value: Fraction) -> str:
    """A number for a message: ``10 1/2`` for small fractions, else a short decimal."""
    if value.denominator == 1:
        return str(value.numerator)
    if value.denominator in (2, 4, 8, 16, 32, 64):
        whole, rest = divmod(abs(value.numerator), value.denominator)
        sign = "-" if value < 0 else ""
        return f"{sign}{whole} {rest}/{value.denominator}" if whole else f"{sign}{rest}/{value.denominator}"
    return f"{float(value):.6g}"
