"""What the solver says of a cage: frozen plain values, SI units."""

from __future__ import annotations

from typing import Literal

from hoopwright.source.record import record
from hoopwright.strength.cage.model import Xyz

Status = Literal[
    "solved",
    "bad model",
    "hangs from nothing",
    "too few fixings",
    "tapes do not descend",
    "no equilibrium",
    "stands only by symmetry",
    "tips over",
    "collapsed",
]
"""`solved`: an equilibrium that stands against any small push, within the stops. `stands only by symmetry`:
the shape found is in balance, but a small push makes it leave it. `tips over`, `collapsed`: what was found
lies beyond the stops; a factor, below 1, says how much of its load it carries within them. `no equilibrium`: none
was found, and a factor below 1 tells the same. The others say why there is nothing to solve.
"""

Limit = Literal["cap", "unstable", "sag", "out of round", "tilt", "shift", "no equilibrium", "spent"]


@record(frozen=True, slots=True)
class Note:
    """One thing to know, in words: `code` for programs, `parts` the ids it is about."""

    code: str
    parts: tuple[str, ...]
    text: str


@record(frozen=True, slots=True)
class HoopResult:
    """One hoop under load.

    `load_n_per_m` mean line load, own weight included; `thrust_n` mean compression along the hoop;
    `sag_m` greatest drop below the line between neighbouring fixings; `inward_m`, `outward_m` greatest
    departure from the wished outline in plan after the hoop's own shift and turn are taken out; moments N
    m (weak: in the hoop's plane, the closing moment of a sprung strip included), `torque_n_m`;
    `stress_pa` greatest, at `stress_at` (fraction); `closing_stress_pa` what closing alone would give at
    the wished shape; `shift_m` mean movement; `turn_rad` in plan, by the wearer's left; `tilt_rad`;
    `least_radius_m` tightest bend; `touching` how many nodes lie on the body; `wished`, `deformed` centre
    lines (closed hoops do not repeat the first point) at `fractions`.
    """

    id: str
    load_n_per_m: float
    thrust_n: float
    sag_m: float
    inward_m: float
    outward_m: float
    moment_weak_n_m: float
    moment_strong_n_m: float
    torque_n_m: float
    stress_pa: float
    stress_at: float
    closing_stress_pa: float
    least_radius_m: float
    shift_m: Xyz
    turn_rad: float
    tilt_rad: float
    touching: int
    fractions: tuple[float, ...]
    wished: tuple[Xyz, ...]
    deformed: tuple[Xyz, ...]


@record(frozen=True, slots=True)
class SegmentResult:
    """One stretch of tape, ending at hoop `to`; `slack` when it carries less than a thousandth of a tape's
    share, and by how much it is then longer than the way between its ends, `loose_m`.
    """

    to: str
    tension_n: float
    slack: bool
    loose_m: float


@record(frozen=True, slots=True)
class TapeResult:
    """One tape: its segments from the top, and its outward and downward pull on the waistband, N."""

    id: str
    segments: tuple[SegmentResult, ...]
    pull_outward_n: float
    pull_down_n: float


@record(frozen=True, slots=True)
class TieResult:
    """One tie: tension N, slack or not."""

    id: str
    tension_n: float
    slack: bool


@record(frozen=True, slots=True)
class BandResult:
    """One cloth band: greatest tension in a strip N, how many uprights are slack, and how many there are."""

    id: str
    tension_n: float
    slack_uprights: int
    uprights: int


@record(frozen=True, slots=True)
class RestResult:
    """One rest: how hard it pushes, N; 0 where the cage has left it."""

    id: str
    push_n: float


@record(frozen=True, slots=True)
class Held:
    """A point that the wearer holds still: whose it is (a tape, a tie, or the hoop joined to it), where, and
    her force on the cage there, N."""

    part: str
    at: Xyz
    force: Xyz


@record(frozen=True, slots=True)
class Factor:
    """How many times the load the cage carries.

    `at_least`: it was followed no farther, either to the `cap` asked for or until the work allowed was `spent`; it may
    carry more. `limit` is what stopped it, at `part`.
    """

    value: float
    at_least: bool
    limit: Limit
    part: str | None


@record(frozen=True, slots=True)
class CageResult:
    """The whole cage. With a status that says there was nothing to solve, all lists but `notes` are empty.

    `waist_pull_n` sum of the tapes' outward pulls on the waistband, `waist_down_n` their downward pulls,
    `body_push_n` sum of the sizes of all the body's pushes, whichever way each goes; `swing_m` horizontal movement of
    the lowest hoop's centre and `swing_xy` its direction; `error` largest residual force of the state reported over
    the weight; `iterations` of the solve at factor 1.
    """

    status: Status
    notes: tuple[Note, ...]
    hoops: tuple[HoopResult, ...] = ()
    tapes: tuple[TapeResult, ...] = ()
    ties: tuple[TieResult, ...] = ()
    bands: tuple[BandResult, ...] = ()
    rests: tuple[RestResult, ...] = ()
    held: tuple[Held, ...] = ()
    weight_n: float = 0.0
    waist_pull_n: float = 0.0
    waist_down_n: float = 0.0
    body_push_n: float = 0.0
    swing_m: float = 0.0
    swing_xy: tuple[float, float] = (0.0, 0.0)
    factor: Factor | None = None
    error: float = 0.0
    iterations: int = 0
