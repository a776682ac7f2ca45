"""The reckoned height of a printed card against what a browser lays out.

Measured with Chromium (the height of each section, in points, at the width the margins leave of A4, in DejaVu
Sans) with the style of ``pass-on.css``. The reckoning errs to the safe side: it is never more than 3 % under the
browser's height, which the foot of the page has room for, and at most 40 % above (where the last words of every
paragraph just fall on to a line of their own).
"""

from __future__ import annotations

import pytest

from hoopwright.render.onepage import HEIGHT, SIZES, height, size_class, type_size
from hoopwright.render.templating import FOLDER

HEAD = "# 7. Cut the hoops\n\n**A play** · sitting 1 · 20 min · done by ____________________\n"
TEXT = ("Measure twice, cut once, to within a quarter of an inch. Write the name of each hoop on it with a flag of"
        " sticky tape. Round the corners, and tip or tape both ends before you put the piece down again.\n")
BOX = "> **Take care.**\n>\n" + "> - A bare end cuts skin and works through cloth: tip or tape every end at once.\n" * 4
ITEMS = "".join(f"- [ ] **H{k}** 59 5/8 in · `cut-H{k}`\n" for k in range(1, 8))
TABLE = ("| Must be true | Wanted | Found | If not |\n| --- | --- | --- | --- |\n"
         + "| lower edge of the hem hoop above the floor | 7 in, within 1/4 in | ________ | Off by the same all round:"
           " take it up or let it down at the waistband. |\n" * 6
         + "| no hoop rests on the body in a long step | look | ________ | Lower the hoop that touches. |\n" * 5)
CARDS = {
    "words": "\n".join((HEAD, *[TEXT] * 6)),
    "list": "\n".join((HEAD, BOX, TEXT, ITEMS, TEXT)),
    "table": "\n".join((HEAD, TEXT, TABLE, TEXT)),
}
MEASURED = {
    ("words", 14.0): 430.0, ("words", 12.0): 368.0, ("words", 10.0): 226.0,
    ("list", 14.0): 514.0, ("list", 12.0): 375.0, ("list", 10.0): 286.0,
    ("table", 14.0): 594.0, ("table", 12.0): 511.0, ("table", 10.0): 400.0,
}


@pytest.mark.parametrize(("card", "size"), MEASURED)
def test_the_reckoning_is_a_little_higher_than_the_browsers_page(card: str, size: float) -> None:
    browser = MEASURED[card, size]
    assert 0.97 * browser <= height(CARDS[card], size) <= 1.4 * browser


def test_a_short_card_is_in_large_type_and_a_longer_one_never_in_larger() -> None:
    sizes = [type_size("\n".join((HEAD, *[TEXT] * more))) for more in range(1, 31)]
    assert sizes[0] == SIZES[0]
    assert sizes == sorted(sizes, reverse=True)
    assert len(set(sizes)) > 3


def test_the_next_larger_type_would_not_have_stayed_on_the_page() -> None:
    page = "\n".join((HEAD, BOX, TEXT, ITEMS, TABLE))
    size = type_size(page)
    assert SIZES[-1] < size < SIZES[0]
    assert height(page, size) <= HEIGHT < height(page, SIZES[SIZES.index(size) - 1])


def test_every_size_has_its_style() -> None:
    style = (FOLDER / "pass-on.css").read_text(encoding="utf-8")
    assert f"font: {SIZES[0]:g}pt" in style
    for size in SIZES[1:]:
        assert f".{size_class(size)} {{ font-size: {size:g}pt; }}" in style
