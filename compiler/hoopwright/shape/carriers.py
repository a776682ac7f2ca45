"""What carries the hoops, laid out over their levels.

``CARRIERS`` names one layer-out for each carrier the language knows. It takes the spec, waist, body and
the hoops as levels, and gives the parts it adds to the shape. A new carrier is a new function here (or in
a file of its own) and one line in ``CARRIERS``.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from types import MappingProxyType

from hoopwright.shape import lengths
from hoopwright.shape.body import Body
from hoopwright.shape.families.petticoat import petticoat_of
from hoopwright.shape.model import Contact, Fixing, Panel, Petticoat, Tape
from hoopwright.shape.tapes import Level, run_tape
from hoopwright.shape.waist import Waist
from hoopwright.source.record import record
from hoopwright.spec.model import Carrier, Spec, TapeBuild


@record(frozen=True, slots=True)
class Carried:
    """The parts a carrier adds: ``fixings`` has one tuple for each hoop, from the top."""

    fixings: tuple[tuple[Fixing, ...], ...]
    tapes: tuple[Tape, ...] = ()
    contacts: tuple[Contact, ...] = ()
    panels: tuple[Panel, ...] = ()
    petticoat: Petticoat | None = None


LayOut = Callable[[Spec, Waist, Body, Sequence[Level]], Carried]


def on_tapes(spec: Spec, waist: Waist, body: Body, levels: Sequence[Level]) -> Carried:
    """Tapes from the waistband; each is fixed to every hoop whose line it meets."""
    build = spec.build.tapes
    if build is None:
        return Carried(((),) * len(levels))
    met = levels[:-1] if build.to == "band" else levels
    spare = lengths.tape_spare(spec)
    runs = [
        run_tape(f"T{k + 1}", waist, pair, met, levels[-1].height, body, spare)
        for k, pair in enumerate(_fractions(build))
    ]
    fixings: dict[str, list[Fixing]] = {level.id: [] for level in levels}
    for tape, places, _ in runs:
        for mark, place in zip(tape.marks, places, strict=True):
            fixings[mark.hoop].append(Fixing(tape.id, *place))
    return Carried(
        tuple(tuple(fixings[level.id]) for level in levels),
        tuple(run[0] for run in runs),
        tuple(contact for run in runs for contact in run[2]),
    )


def _fractions(build: TapeBuild) -> list[tuple[float, float]]:
    return list(zip(build.waist_fractions, build.hem_fractions, strict=True))


def in_channels(spec: Spec, waist: Waist, body: Body, levels: Sequence[Level]) -> Carried:
    """Channels in the cloth of a petticoat, which carries every hoop all round."""
    bare: tuple[tuple[Fixing, ...], ...] = ((),) * len(levels)
    cloth, panel = petticoat_of(spec, waist, levels)
    return Carried(bare, panels=(panel,), petticoat=cloth)


CARRIERS: Mapping[Carrier, LayOut] = MappingProxyType({"tapes": on_tapes, "channels": in_channels})
"""One layer-out for each carrier."""
