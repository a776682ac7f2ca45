"""From checks to a verdict: does it stand, and if not, why, in clauses of plain words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType

from hoopwright.source.record import record
from hoopwright.spec.check import Check
from hoopwright.strength.model import Verdict

GROSS = 4.0
"""A cage that sags or goes out of round by more than so many times what is allowed has lost its shape: our
judgement."""


@record(frozen=True, slots=True)
class Clause:
    """How a check reads in a sentence: ``missed`` when it fails, ``near`` when it only just holds.
    ``past`` when its limit is passed and that can be borne. ``{part}`` is the part it is about."""

    missed: str
    near: str
    past: str = ""


CLAUSES: Mapping[str, Clause] = MappingProxyType({
    "equilibrium": Clause("no shape is found in which it hangs at rest",
                          "it hangs at rest only while nothing pushes it aside"),
    "buckling": Clause("{part} gives way under too little more than its load",
                       "{part} has little in reserve before it gives way"),
    "cord-ring": Clause("its corded band gives way under too little more than its load and falls into folds",
                        "its corded band has little in reserve before it falls into folds"),
    "sag": Clause("{part} sags too far between what holds it", "{part} only just keeps level between what holds it"),
    "out-of-round": Clause("{part} goes too far out of its shape", "{part} only just keeps its shape"),
    "swing": Clause("it swings too far forward or back", "it swings nearly too far forward or back"),
    "balance": Clause("its weight hangs too far behind the waist",
                      "its weight hangs rather far behind the waist"),
    "seat-room": Clause("it leaves too little of a chair to sit on",
                        "it leaves just enough of a chair to sit on",
                        "it leaves little of a chair to sit on"),
    "sinking": Clause("{part} sinks by more than the skirt's hem is off the floor",
                      "{part} sinks so far that the skirt must be cut to it"),
    "reach": Clause("{part} stands out less than wished, by more than is let pass",
                    "{part} stands out less than wished, by nearly all that is let pass",
                    "{part} stands out less than wished, by more than is let pass"),
    "set-closed": Clause("closing {part} leaves too little before it takes a set",
                         "closing {part} leaves only just enough before it takes a set",
                         "{part} takes a set unless its cane is bent to the curve wet"),
    "set-worn": Clause("wearing it leaves too little before {part} takes a set",
                       "wearing it leaves only just enough before {part} takes a set"),
    "door": Clause("{part} may keep a kink from the door", "{part} only just springs back from the door"),
    "chair": Clause("{part} keeps a bend from the chair", "{part} may keep a bend from the chair"),
    "car": Clause("{part} keeps a bend from the car", "{part} may keep a bend from the car"),
    "bag": Clause("{part} keeps a bend from the bag", "{part} may keep a bend from the bag"),
    "coil": Clause("the stock keeps a curl from its coil", "the stock may keep a curl from its coil"),
    "join-heat": Clause("making the joins takes the temper out of the stock",
                        "making the joins may take the temper out of the stock"),
    "join-stiff": Clause("the join flattens {part}", "the join nearly flattens {part}"),
    "join-shear": Clause("the join of {part} may slide apart", "the join of {part} only just holds"),
    "join-peel": Clause("the join of {part} may peel apart", "the join of {part} only just holds"),
    "slack": Clause("nothing pulls in {part}", "hardly anything pulls in {part}",
                    "a stretch of {part} hangs loose"),
    "weight": Clause("the cage alone is too heavy", "the cage alone is nearly too heavy"),
})
"""The clauses of every check of strength."""

UNKNOWN: Mapping[str, str] = MappingProxyType({
    "cord-ring": "whether its corded band stands out round",
    "buckling": "how much it can carry before it gives way",
    "sag": "how far its hoops sag",
    "out-of-round": "whether its hoops keep round",
    "set-worn": "whether wearing it leaves a set",
})
"""What is not known when a check that matters for standing is not assessed."""


def verdict(checks: Sequence[Check]) -> tuple[Verdict, tuple[str, ...]]:
    """The verdict and its reasons: what fails, what is near a limit, what could not be judged.

    It will not stand when no equilibrium is found, when it gives way below its own load, or when it loses its
    shape by far. Anything else that misses a limit leaves it standing, but.
    """
    fails = [check for check in checks if check.result == "fails"]
    near = [check for check in checks if check.result == "marginal"]
    unknown = [UNKNOWN[check.code] for check in checks
               if check.result == "not assessed" and check.code in UNKNOWN]
    reasons = (*(clause(check) for check in fails), *(clause(check) for check in near),
               *(f"{what} is not known" for what in unknown))
    if any(_falls(check) for check in fails):
        return "will not stand", reasons
    return ("stands, but" if reasons else "stands"), reasons


def _falls(check: Check) -> bool:
    """Whether a failed check means that the cage cannot be worn at all."""
    if check.code == "equilibrium":
        return True
    if check.value is None or check.limit is None:
        return False
    if check.code in ("buckling", "cord-ring"):
        return check.value < 1.0
    return check.code in ("sag", "out-of-round") and check.value > GROSS * check.limit


def clause(check: Check) -> str:
    """A check of strength that fails or is marginal, as a clause of the verdict."""
    said = CLAUSES[check.code]
    words = said.missed if check.result == "fails" else (said.past if check.beyond else "") or said.near
    return words.format(part=check.part or "a part")
