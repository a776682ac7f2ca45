"""Joins: how the two ends of a hoop are made into a ring. Laps and tools are common practice, no source.

The added mass and the minutes are our estimates; a maker's own lap is stated as ``build.hoops.lap``.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from hoopwright.library.cautions import PRACTICE
from hoopwright.library.model import Consumption, Join, JoinStrength, Section

INCH = 0.0254
PROOF = ("Join two offcuts in the same way. Clamp a cord to each far end, or knot it there behind a turn of sticky"
         " tape; hang up the one and 2 kg from the other over night, where nothing breakable stands and nobody passes"
         " beneath. The join must not creep or crack.")

SOLDER = JoinStrength(True, shear=20e6, tension=10e6, lasting=2e6)
"""Half of what a soft-soldered lap shears at in a quick test, about 39 MPa (from memory), a quarter across
it; a twentieth where the load lasts, for solder creeps: our judgement."""
BRAZE = JoinStrength(True, shear=80e6, tension=80e6, lasting=40e6)
"""Well below the 150 MPa and more of a sound silver-brazed lap (from memory): our judgement."""
BINDING = JoinStrength(False, shear=150.0, tension=200.0, lasting=100.0)
"""Ten close turns of waxed thread at each end, and glue: our judgement."""
CRIMP = JoinStrength(False, shear=150.0, tension=300.0, lasting=200.0)
"""A sleeve crimped twice on each side: our judgement."""
PINS = JoinStrength(False, shear=500.0, tension=400.0, lasting=300.0)
"""Two bolts or rivets of 3 mm in strip: our judgement."""

_JOINS = (
    Join("lap soldered", lap=1 * INCH,
         tools=(("soldering iron",), ("file", "grinder", "abrasive paper"), ("clamps", "vice")),
         consumes=(Consumption("solder and flux", 1, 40),),
         minutes=12, cautions=("flux-fume", "acid-flux", "no-torch", "zinc", "hot-iron"),
         sections=("flat", "round"), metal_only=True, heat=True, mass=0.003, proof=PROOF,
         remarks="Roughen both faces, tin them, clamp them, heat with an iron only; wash off acid flux.",
         source=PRACTICE, temperature=227.0, strength=SOLDER),
    Join("lap brazed", lap=1 * INCH,
         tools=(("brazing torch",), ("file", "grinder", "abrasive paper"), ("clamps", "vice")),
         consumes=(Consumption("brazing rod and flux", 1, 20),),
         minutes=15, cautions=("flux-fume", "zinc", "torch"),
         sections=("flat", "round"), metal_only=True, heat=True, mass=0.003, proof=PROOF,
         remarks="For mild steel only: clean both faces, flux them, clamp them, heat to a dull red until the"
                 " rod flows; a torch takes the temper out of spring steel.",
         source=PRACTICE, temperature=620.0, strength=BRAZE),
    Join("lap bound", lap=4 * INCH, tools=(("sticky tape",), ("scissors",)),
         consumes=(Consumption("thread", 4.0, 100), Consumption("glue", 1, 40)),
         minutes=10, cautions=("glue",), sections=("flat", "round", "tube"), metal_only=False, heat=False,
         mass=0.003, proof=PROOF,
         remarks="Tape the lap, bind it tightly from end to end with waxed thread or wire, then glue over"
                 " it.",
         source=PRACTICE, strength=BINDING),
    Join("sleeve crimped", lap=0.0, tools=(("crimp tool", "pliers"),),
         consumes=(Consumption("sleeve", 1, 1),),
         minutes=5, cautions=("crimp",), sections=("flat", "round", "tube"), metal_only=False, heat=False,
         mass=0.005, proof=PROOF,
         remarks="The ends meet in the middle of the sleeve, which must fit the strip; crimp each half"
                 " twice.",
         source=PRACTICE, sleeve=1.75 * INCH, strength=CRIMP),
    Join("lap bolted", lap=2 * INCH,
         tools=(("punch", "drill"), ("screwdriver", "spanner", "pliers")),
         consumes=(Consumption("bolts", 2, 1),),
         minutes=12, cautions=("drilling", "holes-weaken"), sections=("flat",), metal_only=False, heat=False,
         mass=0.004, proof=PROOF,
         remarks="Two holes, at least three widths apart where the lap allows; heads inside, nuts filed"
                 " flush.",
         source=PRACTICE, strength=PINS),
    Join("lap riveted", lap=2 * INCH,
         tools=(("punch", "drill"), ("hammer", "rivet tool")),
         consumes=(Consumption("rivets", 2, 1),),
         minutes=12, cautions=("drilling", "holes-weaken"), sections=("flat",), metal_only=False, heat=False,
         mass=0.003, proof=PROOF,
         remarks="Two holes, at least three widths apart where the lap allows; set the heads inside.",
         source=PRACTICE, strength=PINS),
)

JOINS: Mapping[str, Join] = MappingProxyType({join.name: join for join in _JOINS})
"""Every join by name."""


def suits(join: Join, section: Section, metal: bool) -> bool:
    """Whether a join can be made on that section and kind of material."""
    return section.kind in join.sections and (metal or not join.metal_only)
