"""From checks to a verdict: does it stand, and if not, why, in plain words."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from hoopwright.spec.check import Check

Verdict = Literal["stands", "stands, but", "will not stand"]

STANDING = ("buckling", "sag", "out-of-round", "set-worn", "slack")
"""Checks without which a cage does not carry its skirt; the others spoil it in other ways."""


def verdict(checks: Sequence[Check]) -> tuple[Verdict, tuple[str, ...]]:
    """The verdict and its reasons: each check that fails, then each that is marginal or not assessed for
    standing."""
    fails = [check for check in checks if check.result == "fails"]
    near = [check for check in checks if check.result == "marginal"]
    open_ = [check for check in checks if check.result == "not assessed" and check.code in STANDING
             and check.code != "slack"]
    reasons = (*(_reason("it does not hold that", check) for check in fails),
               *(_reason("only just, or not surely:", check) for check in near),
               *(_reason("not assessed:", check) for check in open_))
    if any(check.code in STANDING for check in fails):
        return "will not stand", reasons
    return ("stands, but" if reasons else "stands"), reasons


def _reason(opening: str, check: Check) -> str:
    part = f" ({check.part})" if check.part else ""
    return f"{opening} {check.says}{part}" + (f"; {check.remedy}" if check.remedy else "")
