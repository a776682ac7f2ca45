"""Every allowance, tolerance and cutting default. Lengths in metres."""

from __future__ import annotations

from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Allowances:
    """Every allowance, tolerance and cutting default, m unless said otherwise."""

    seam: float = 0.0127
    waistband_turning: float = 0.0127
    casing_end: float = 0.0127
    braid_take_up: float = 0.08  # share of the girth
    band_join: float = 0.0
    band_ease: float = 0.00635
    kerf: float = 0.0015875
    end_trim: float = 0.0
    smallest_offcut: float = 0.3048
    splice_shortest: float = 0.3048
    tape_top: float = 0.0381
    tape_hem: float = 0.0381
    tape_reserve: float = 0.0762
    tape_stretch: float = 3000.0  # EA, N
    hoop_tolerance: float = 0.00635
    tape_tolerance: float = 0.003175
    hem_tolerance: float = 0.00635
    small_stuff_reserve: float = 0.10  # share
    money_reserve: float = 0.10  # share
