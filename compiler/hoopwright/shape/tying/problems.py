"""Ties that cannot be as stated, as findings at the keys that say so."""

from __future__ import annotations

from collections.abc import Sequence

from hoopwright.source.diagnostic import Finding, Path, error
from hoopwright.source.quantity import Units, length_text
from hoopwright.spec.checking.nearest import listed

GROUND: Path = ("shape", "ground_plan")
TIES: Path = ("build", "ties", "lengths")


def tie_too_long(hoop: str, free: float, own: Sequence[float], units: Units) -> Finding:
    """A stated tie no shorter than its hoop is wide when nothing ties it."""
    across = length_text(free, units)
    mend = f"write {_lengths(own, units)} for this oval" if own else "make it shorter"
    return error(
        "tie-too-long",
        (*TIES, hoop),
        f"`{hoop}` is {across} across when nothing ties it, so a tie as long as that draws nothing in",
        f"{mend}, or leave it out: the plan gives the length of every tie",
    )


def tie_disagrees(hoop: str, own: Sequence[float], units: Units) -> Finding:
    """A stated tie of another length than the oval asks for."""
    return error(
        "tie-disagrees",
        (*TIES, hoop),
        f"the oval of `{hoop}` asks for a tie of {_lengths(own, units)}",
        "write that, leave it out, or change `width_over_depth` until they agree",
        related=((GROUND, "the oval"),),
    )


def tie_unwanted(hoop: str) -> Finding:
    """A tie is stated for a hoop that needs none."""
    return error(
        "tie-disagrees",
        (*TIES, hoop),
        f"`{hoop}` is round and takes no tie",
        "leave it out; a tied hoop wants a `ground_plan` of `kind: oval` or `thrown back`",
    )


def tie_of_no_hoop(hoop: str, known: Sequence[str]) -> Finding:
    """A tie is stated for a hoop that is not there."""
    return error(
        "tie-disagrees", (*TIES, hoop), f"no hoop is called `{hoop[:60]}`", f"there are {listed(known, 'and')}",
        at_key=True,
    )


def _lengths(own: Sequence[float], units: Units) -> str:
    return " or ".join(f"`{length_text(length, units)}`" for length in own)
