"""Prices: an amount and the currency it is in, never one without the other."""

from __future__ import annotations

import re
from decimal import Decimal

from hoopwright.source.amount import LONGEST, QuantityError, comma_trouble, shown, tidy
from hoopwright.source.units import UNITS, symbol_of

_CODES = """
    AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BGN BHD BIF BMD BND BOB BRL BSD BTN BWP BYN BZD CAD
    CDF CHF CLP CNY COP CRC CUP CVE CZK DJF DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GNF
    GTQ GYD HKD HNL HTG HUF IDR ILS INR IQD IRR ISK JMD JOD JPY KES KGS KHR KMF KPW KRW KWD KYD KZT LAK
    LBP LKR LRD LSL LYD MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD
    OMR PAB PEN PGK PHP PKR PLN PYG QAR RON RSD RUB RWF SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN
    SVC SYP SZL THB TJS TMT TND TOP TRY TTD TWD TZS UAH UGX USD UYU UZS VES VND VUV WST XAF XCD XOF XPF
    YER ZAR ZMW ZWG
"""
CURRENCIES = frozenset(_CODES.split())
"""Currency codes of ISO 4217, from memory."""

_SIGNS = {"$": "USD", "€": "EUR", "£": "GBP", "¥": "JPY"}
_SPOKEN = {"dollar": "USD", "dollars": "USD", "buck": "USD", "bucks": "USD", "euro": "EUR", "euros": "EUR",
           "pound": "GBP", "pounds": "GBP", "quid": "GBP", "franc": "CHF", "francs": "CHF", "yen": "JPY"}
_AMOUNT = re.compile(r"""(?P<before>[A-Za-z]{1,12}|[$€£¥])?\s*
                     (?P<amount>[+-]?(?:[0-9]+(?:\.[0-9]+)?|\.[0-9]+))\s*
                     (?P<after>[^\W\d_]{1,12}|[$€£¥])?""", re.VERBOSE)
_USUAL = ("USD", "EUR", "GBP", "CAD", "AUD", "NZD", "CHF", "SEK", "NOK", "DKK", "JPY")
_LEAST, _MOST = Decimal("0.000001"), Decimal(1_000_000_000)
_AS_IN = "write it as in `24.50 USD`"


def parse_money(value: object, *, zero: bool = False) -> tuple[Decimal, str]:
    """A price: the exact amount and its currency code, from ``24.50 USD``.

    Raises:
        QuantityError: ``currency-missing``, ``unit-unknown``, ``unit-wrong``, ``amount-not-positive``,
            ``number-not-finite`` or ``quantity-unreadable``.
    """
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        raise QuantityError("quantity-unreadable", "a price is wanted here", _AS_IN)
    if not isinstance(value, str) and abs(value) > 1e300:
        raise QuantityError("number-not-finite", "this is too large to be a price", _AS_IN)
    text = str(value).strip()
    said = shown(text)
    plain = tidy(text) if len(text) <= LONGEST else ""
    if re.match(r"[+-]?\.?(?:nan|inf|∞)", plain, re.IGNORECASE):
        raise QuantityError("number-not-finite", f"`{said}` is no price", _AS_IN)
    trouble = comma_trouble(plain)
    if trouble is not None:
        raise trouble
    found = _AMOUNT.fullmatch(plain)
    if found is None or (found["before"] and found["after"]):
        raise QuantityError("quantity-unreadable", f"`{said}` does not read as a price", _AS_IN)
    amount = Decimal(found["amount"])
    digits = f"{value:.2f}" if isinstance(value, float) and round(value, 2) == value else found["amount"]
    currency = _currency(found["before"] or found["after"], digits)
    if amount < 0 or (amount == 0 and not zero):
        raise QuantityError("amount-not-positive", f"`{said}` is not above zero", "write what it costs")
    if amount and not _LEAST <= abs(amount) <= _MOST:
        raise QuantityError("amount-beyond-use", f"`{said}` is no price of any use", _AS_IN)
    return amount, currency


def _currency(written: str | None, amount: str) -> str:
    """The currency code, or the reason why it is none."""
    if written is None or written in _SIGNS:
        said = f"`{written}` does not name one currency" if written else f"`{amount}` has no currency"
        meant = _SIGNS.get(written or "$")
        raise QuantityError("currency-missing", said,
                            f"write `{amount} {meant}`, or another three-letter code")
    code = written.upper()
    if code in CURRENCIES:
        return code
    if symbol_of(written) in UNITS:
        raise QuantityError("unit-wrong", f"`{written}` is no currency, but a price is wanted here",
                            f"write `{amount} USD`, or another three-letter code")
    from difflib import get_close_matches

    spoken = _SPOKEN.get(written.lower())
    near = get_close_matches(code, _USUAL, n=1) or get_close_matches(code, sorted(CURRENCIES), n=1)
    meant = spoken or (near[0] if near else "USD")
    raise QuantityError("unit-unknown", f"`{written}` is no currency code",
                        f"write `{amount} {meant}`, or another three-letter code")
