"""Damage to a text: bytes, signs, words, lines, indentation, units, and two texts spliced."""

from __future__ import annotations

import re
from collections.abc import Callable
from random import Random

WORDS = tuple(
    """\
0|-3|1e400|.nan|.inf|true|null|~|[]|{}|'' |10 in|10|3 parsecs|0 cm|-2 cm|1e9 m|0.001 mm|999 kg|12 EUR|12|round
[1, 2]|{kind: cone}|2 h|a: b|&a x|*a|!!int 3|#|5' 4"|10\u00bd in|\U0001d543oop|tapes|7|40 kg|3 mm|0.2 mm|\u0663 cm
2 ft 3 in|50 %|90 min|none|H1|T1|calico|channels|oval|{kind: oval, top: 1.2}|999999999|0.01 mm|9.9 km|1/0 in|"\\0"
{top: 1 cm, hem: 9 m}|10,5 cm|1 \u2044 2 in|\u202ereversed|half|pair|wheel|listed|1|200|[[[[]]]]|2027-13-45|<<
""".strip().replace("\n", "|").split("|")
)
SIGNS = tuple(b":{}[],&*!|>'\"%@`#-?~ \t\r\n\x00\x1b\x85\xff\xc3\xe2\x80\xa8\xef\xbb\xbf0129.e/\\")
UNITS = ("mm", "cm", "m", "in", "ft", "yd", "g", "kg", "oz", "lb", "EUR", "USD", "h", "min", "m2", "g/m2", "%")
_QUANTITY = re.compile(rb"(\d+(?:\.\d+)?(?: \d+/\d+)?)( *)(mm|cm|m|in|ft|yd|g|kg|oz|lb|EUR|USD|h|min)\b")
_NUMBER = re.compile(rb"\d+(?:\.\d+)?")


def damaged(text: bytes, other: bytes, dice: Random) -> bytes:
    """``text`` damaged in one to four ways; ``other`` is a text to take pieces from."""
    for _ in range(dice.choice((1, 1, 1, 2, 3))):
        text = dice.choice(_WAYS)(text, other, dice)
    return text


def _lines(text: bytes) -> list[bytes]:
    return text.splitlines(keepends=True) or [b""]


def _value_swapped(text: bytes, other: bytes, dice: Random) -> bytes:
    """One value for a word: behind a colon, up to a comma, a brace or the end of the line."""
    at = [k + 1 for k, byte in enumerate(text) if byte == ord(":")]
    if not at:
        return text
    start = dice.choice(at)
    end = next((k for k in range(start, len(text)) if text[k] in b",}]\n"), len(text))
    return text[:start] + b" " + dice.choice(WORDS).encode() + text[end:]


def _values_changed_about(text: bytes, other: bytes, dice: Random) -> bytes:
    """Two values change places."""
    found = [m.span(1) for m in re.finditer(rb":[ ]+([^,}\]\n:{\[]+)", text)]
    if len(found) < 2:
        return text
    (a, b), (c, d) = sorted(dice.sample(found, 2))
    return text[:a] + text[c:d] + text[b:c] + text[a:b] + text[d:]


def _unit_swapped(text: bytes, other: bytes, dice: Random) -> bytes:
    found = list(_QUANTITY.finditer(text))
    if not found:
        return text
    one = dice.choice(found)
    return text[: one.start(3)] + dice.choice(UNITS).encode() + text[one.end(3) :]


def _number_changed(text: bytes, other: bytes, dice: Random) -> bytes:
    found = list(_NUMBER.finditer(text))
    if not found:
        return text
    one = dice.choice(found)
    new = dice.choice((
        "0", "1", "2", "3", "0.1", "0.01", "99", "200", "1e3", "1e-3", "-1", "9" * 30, "0" * 9,
        f"{float(one[0]) * dice.choice((0.01, 0.1, 0.5, 0.9, 1.1, 2, 3, 10, 100)):.6g}",
        f"{float(one[0]) * dice.uniform(0.3, 3):.4f}"))
    return text[: one.start()] + new.encode() + text[one.end() :]


def _line_left_out(text: bytes, other: bytes, dice: Random) -> bytes:
    lines = _lines(text)
    at = dice.randrange(len(lines))
    del lines[at : at + dice.choice((1, 1, 1, 2, 5))]
    return b"".join(lines)


def _line_doubled(text: bytes, other: bytes, dice: Random) -> bytes:
    lines = _lines(text)
    at, source = dice.randrange(len(lines)), dice.choice((lines, _lines(other)))
    lines[at:at] = [dice.choice(source)] * dice.choice((1, 1, 1, 2, 40))
    return b"".join(lines)


def _lines_changed_about(text: bytes, other: bytes, dice: Random) -> bytes:
    lines = _lines(text)
    a, b = dice.randrange(len(lines)), dice.randrange(len(lines))
    lines[a], lines[b] = lines[b], lines[a]
    return b"".join(lines)


def _indented(text: bytes, other: bytes, dice: Random) -> bytes:
    lines = _lines(text)
    at = dice.randrange(len(lines))
    for k in range(at, min(len(lines), at + dice.choice((1, 1, 3, 99)))):
        lines[k] = lines[k][2:] if dice.random() < 0.5 and lines[k].startswith(b"  ") else b"  " + lines[k]
    return b"".join(lines)


def _bytes_changed(text: bytes, other: bytes, dice: Random) -> bytes:
    raw = bytearray(text or b" ")
    for _ in range(dice.choice((1, 1, 2, 8))):
        raw[dice.randrange(len(raw))] = dice.choice(SIGNS) if dice.random() < 0.6 else dice.randrange(256)
    return bytes(raw)


def _sign_put_in(text: bytes, other: bytes, dice: Random) -> bytes:
    at = dice.randrange(len(text) + 1)
    return text[:at] + bytes([dice.choice(SIGNS)]) * dice.choice((1, 1, 1, 2, 60)) + text[at:]


def _character_put_in(text: bytes, other: bytes, dice: Random) -> bytes:
    """Any character of Unicode at a place between two."""
    letters = text.decode("utf-8", "replace")
    at = dice.randrange(len(letters) + 1)
    sign = chr(dice.choice((dice.randrange(0xD800), dice.randrange(0xE000, 0x110000), dice.randrange(0x2000, 0x2100))))
    return (letters[:at] + sign + letters[at:]).encode()


def _cut_out(text: bytes, other: bytes, dice: Random) -> bytes:
    a = dice.randrange(len(text) + 1)
    return text[:a] + text[a + dice.choice((1, 2, 7, 30, len(text))) :]


def _spliced(text: bytes, other: bytes, dice: Random) -> bytes:
    """The head of one text and the tail of another."""
    mine, theirs = _lines(text), _lines(other)
    return b"".join(mine[: dice.randrange(len(mine) + 1)] + theirs[dice.randrange(len(theirs)) :])


def _ends_of_lines(text: bytes, other: bytes, dice: Random) -> bytes:
    return dice.choice((text.replace(b"\n", b"\r\n"), text.replace(b"\n", b"\r"), b"\xef\xbb\xbf" + text,
                        text.decode("utf-8", "replace").encode("utf-16"), text.rstrip(), text + b"...\n"))


_WAYS: tuple[Callable[[bytes, bytes, Random], bytes], ...] = (
    *[_value_swapped] * 5, *[_number_changed] * 5, *[_unit_swapped] * 3, *[_values_changed_about] * 3,
    *[_line_left_out] * 3, _line_doubled, _lines_changed_about, _indented, _bytes_changed, _sign_put_in,
    _character_put_in, _cut_out, *[_spliced] * 2, _ends_of_lines)
