"""What to change when a check does not hold: the changed cage is computed, and the words say how much it
helps."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from types import MappingProxyType

from hoopwright.library.model import Section, Stock
from hoopwright.shape.draw import draw
from hoopwright.spec.model import Spec, TapeBuild
from hoopwright.spec.tapes import equal_places, places_beside_gap
from hoopwright.strength.measures import MEASURES
from hoopwright.strength.method import Method
from hoopwright.strength.problem import pose

LIGHTER = 0.75
MOST_TAPES = 12


@dataclass(frozen=True, slots=True)
class Change:
    """A change to a cage: what to say of it, and the changed spec (None when it does not apply)."""

    words: Callable[[Spec], str]
    apply: Callable[[Spec], Spec | None]


def with_tapes(spec: Spec, count: int, gap: float | None) -> Spec | None:
    """The same cage on ``count`` tapes with that front gap; None past what can be sewn on."""
    if count > MOST_TAPES:
        return None
    waist = equal_places(count) if gap is None else places_beside_gap(count, gap / spec.wearer.waist)
    old = spec.build.tapes
    tapes = TapeBuild(old.material, count, gap, old.to, waist, equal_places(count))
    return replace(spec, build=replace(spec.build, tapes=tapes))


def with_section(spec: Spec, section: Section) -> Spec:
    """The same cage of another section of the same grade; bench tests of the old section do not count."""
    old = spec.build.hoops.material
    stock = Stock(old.name, old.grade, section, (), old.sold, old.on_hand, old.form)
    return replace(spec, build=replace(spec.build, hoops=replace(spec.build.hoops, material=stock)))


def _more_tapes(spec: Spec) -> Spec | None:
    return with_tapes(spec, spec.build.tapes.count + 1, spec.build.tapes.front_gap)


def _no_gap(spec: Spec) -> Spec | None:
    return None if spec.build.tapes.front_gap is None else with_tapes(spec, spec.build.tapes.count, None)


def _scaled(spec: Spec, width: float, depth: float) -> Spec:
    old = spec.build.hoops.material.section
    return with_section(spec, replace(old, width=old.width * width, thickness=old.thickness * depth,
                                      diameter=old.diameter * depth, wall=old.wall * depth))


def _stock_word(spec: Spec) -> str:
    return spec.build.hoops.material.form


def _wider(spec: Spec) -> Spec | None:
    return _scaled(spec, 4 / 3, 1.0) if spec.build.hoops.material.section.kind == "flat" else None


def _lighter(spec: Spec) -> Spec | None:
    if not spec.load:
        return None
    return replace(spec, load=tuple(replace(layer, mass=layer.mass * LIGHTER) for layer in spec.load))


MORE_TAPES = Change(lambda spec: f"take {spec.build.tapes.count + 1} tapes", _more_tapes)
NO_GAP = Change(lambda spec: "space the tapes evenly, without a front gap", _no_gap)
WIDER = Change(lambda spec: "take a strip a third wider", _wider)
THICKER = Change(
    lambda spec: f"take a {_stock_word(spec)} a quarter thicker", lambda spec: _scaled(spec, 1.0, 1.25)
)
THINNER = Change(
    lambda spec: f"take a {_stock_word(spec)} a fifth thinner", lambda spec: _scaled(spec, 1.0, 0.8)
)
LIGHTER_SKIRT = Change(lambda spec: "hang a quarter less skirt on it", _lighter)

CHANGES: Mapping[str, tuple[Change, ...]] = MappingProxyType({
    "sag": (MORE_TAPES, NO_GAP, WIDER, THICKER, LIGHTER_SKIRT),
    "buckling": (LIGHTER_SKIRT, THICKER, WIDER),
    "out-of-round": (MORE_TAPES, NO_GAP, THICKER, LIGHTER_SKIRT),
    "set-closed": (THINNER,),
    "set-worn": (THINNER, MORE_TAPES, LIGHTER_SKIRT),
    "door": (THINNER,),
})
"""What may mend each check, the cheapest first."""


def remedy(code: str, spec: Spec, used: float, method: Method) -> str:
    """The changes that mend a check, or the best of those that help, in plain words; empty when none does.

    ``used``: how much of the allowed value the cage as it is uses up.
    """
    tried = _tried(code, spec, method)
    mends = [(words, now) for words, now in tried if now <= 1.0]
    if mends:
        return ", or ".join(f"{words} ({_effect(now, used)})" for words, now in mends[:2])
    helps = [(words, now) for words, now in sorted(tried, key=lambda pair: pair[1]) if now < 0.95 * used]
    if helps:
        return f"{helps[0][0]} ({_effect(helps[0][1], used)}, not yet enough: combine it with other changes)"
    return ""


def _tried(code: str, spec: Spec, method: Method) -> Sequence[tuple[str, float]]:
    """Each change with how much of the allowed value the changed cage uses."""
    tried = []
    for change in CHANGES.get(code, ()):
        changed = change.apply(spec)
        shape = None if changed is None else draw(changed)[0]
        if changed is None or shape is None:
            continue
        problem = pose(changed, shape)
        measured = MEASURES[code](problem, method(problem))
        if measured.value is not None:
            tried.append((change.words(spec), measured.used))
    return tried


def _effect(now: float, before: float) -> str:
    """How a change works, in hundredths of what is allowed."""
    return f"from {before * 100:.0f} % to {now * 100:.0f} % of what is allowed"
