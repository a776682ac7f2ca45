"""Small words: counts, lists, runs of ids, places round the body, sentences, printed quantities."""

from __future__ import annotations

from decimal import Decimal

import pytest

from hoopwright.render.quantities import Printer, assumed_text, exact_length
from hoopwright.render.words import closed, count_word, counted, ids_text, listed, plain_key, sentence, where
from hoopwright.spec.model import Assumed, Units

INCH = 0.0254


@pytest.mark.parametrize(
    ("ids", "text"),
    [
        (["H1", "H2", "H3"], "H1 to H3"),
        (["H1", "H2"], "H1, H2"),
        (["H1", "H3", "H4", "H5", "waistband"], "H1, H3 to H5, waistband"),
        (["casing H1", "casing H2", "casing H3"], "casing H1 to H3"),
        (["T9", "T10", "T11"], "T9 to T11"),
        (["H3", "H2", "H1"], "H3, H2, H1"),
        (["T1", "T1", "H2"], "T1, H2"),
        (["9", "10", "11", "13"], "9 to 11, 13"),
        ([], ""),
    ],
)
def test_runs_of_ids_are_drawn_together(ids: list[str], text: str) -> None:
    assert ids_text(ids) == text


@pytest.mark.parametrize(
    ("fraction", "place"),
    [
        (0.0, "centre front"),
        (1 / 12, "left front"),
        (0.25, "left side"),
        (5 / 12, "left back"),
        (0.5, "centre back"),
        (7 / 12, "right back"),
        (0.75, "right side"),
        (11 / 12, "right front"),
        (1.0, "centre front"),
        (0.22, "left side"),
    ],
)
def test_places_are_named_from_the_wearers_own_side(fraction: float, place: str) -> None:
    assert where(fraction) == place


def test_sentences_keep_their_words_apart() -> None:
    assert sentence("a cage that swings") == "A cage that swings."
    assert sentence("done!") == "Done!"
    assert sentence("  ") == ""
    assert closed("no fault") == "no fault."


def test_counts_and_lists() -> None:
    assert counted(1, "hoop") == "one hoop"
    assert counted(7, "hoop") == "seven hoops"
    assert counted(2, "thing has", "things have") == "two things have"
    assert count_word(13) == "13"
    assert listed(["a", "b", "c"]) == "a, b and c"
    assert listed(["a", "b"], "or") == "a or b"
    assert listed([]) == ""
    assert plain_key("flux-fume") == "flux fume"


@pytest.mark.parametrize(
    ("metres", "units", "text"),
    [
        (INCH / 16, "inches", "1/16 in"),
        (1.5 * INCH, "inches", "1 1/2 in"),
        (INCH * 33 / 32, "inches", "1 1/32 in"),
        (0.0, "inches", "0 in"),
        (0.0015875, "centimetres", "0.16 cm"),
        (0.0127, "centimetres", "1.27 cm"),
        (0.025, "centimetres", "2.5 cm"),
    ],
)
def test_an_assumed_length_is_not_rounded_away(metres: float, units: Units, text: str) -> None:
    assert exact_length(metres, units) == text


@pytest.mark.parametrize(
    ("value", "dimension", "text"),
    [
        (0.08, "share", "8 %"),
        (3000.0, "force", "3 kN"),
        (205e9, "stress", "205 GPa"),
        (1.4, "ratio", "1.4"),
        ("either", "text", "either"),
        (7850.0, "density", "7850 kg/m3"),
        (90.0, "time", "1 h 30 min"),
    ],
)
def test_assumed_values_read_as_a_maker_writes_them(value: float | str, dimension: str, text: str) -> None:
    assert assumed_text(Assumed("a.b", value, dimension, "why"), "inches") == text


def test_a_shop_measures_in_eighths_of_a_yard() -> None:
    shop = Printer("inches", "USD").shop
    assert shop(63 * INCH) == "1 3/4 yd"
    assert shop(360 * INCH) == "10 yd"
    assert shop(61 * INCH) == "5 ft 1 in"
    assert Printer("centimetres", None).shop(1.6) == "1.60 m"


def test_what_is_too_small_to_print_is_said_to_be() -> None:
    assert Printer("inches", None).small(0.0005) == "under 1/8 in"
    assert Printer("centimetres", None).small(0.0004) == "under 0.1 cm"
    assert Printer("inches", None).small(0.0) == "0 in"


def test_money_without_a_price_is_a_question() -> None:
    assert Printer("inches", "USD").money(None) == "?"
    assert Printer("inches", "USD").money(Decimal("2.1")) == "2.10 USD"
