"""What to change when a check does not hold: the changed cage is computed, and the words say how much it
helps."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from types import MappingProxyType

from hoopwright.library.model import Section, Stock
from hoopwright.shape.draw import draw
from hoopwright.spec.model import Spec, TapeBuild
from hoopwright.spec.tapes import equal_places, places_beside_gap
from hoopwright.strength.measures import MEASURES
from hoopwright.strength.method import Method, Problem, Solution
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
    old = spec.build.tapes
    if count > MOST_TAPES or old is None:
        return None
    waist = equal_places(count) if gap is None else places_beside_gap(count, gap / spec.wearer.waist)
    tapes = TapeBuild(old.material, count, gap, old.to, waist, equal_places(count))
    return replace(spec, build=replace(spec.build, tapes=tapes))


def with_section(spec: Spec, section: Section) -> Spec:
    """The same cage of another section of the same grade; bench tests of the old section do not count."""
    old = spec.build.hoops.material
    stock = Stock(old.name, old.grade, section, (), old.sold, old.on_hand, old.form)
    return replace(spec, build=replace(spec.build, hoops=replace(spec.build.hoops, material=stock)))


def _more_tapes(spec: Spec) -> Spec | None:
    old = spec.build.tapes
    return None if old is None else with_tapes(spec, old.count + 1, old.front_gap)


def _no_gap(spec: Spec) -> Spec | None:
    old = spec.build.tapes
    return None if old is None or old.front_gap is None else with_tapes(spec, old.count, None)


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


MORE_TAPES = Change(
    lambda spec: f"take {spec.build.tapes.count + 1 if spec.build.tapes else 0} tapes", _more_tapes
)
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
    "equilibrium": (MORE_TAPES, NO_GAP, LIGHTER_SKIRT, THICKER),
    "sag": (MORE_TAPES, NO_GAP, WIDER, THICKER, LIGHTER_SKIRT),
    "buckling": (LIGHTER_SKIRT, THICKER, WIDER),
    "out-of-round": (MORE_TAPES, NO_GAP, THICKER, LIGHTER_SKIRT),
    "set-closed": (THINNER,),
    "set-worn": (THINNER, MORE_TAPES, LIGHTER_SKIRT),
    "door": (THINNER,),
})
"""What may mend each check, the cheapest first."""


@dataclass(frozen=True, slots=True)
class Trials:
    """Changed cages, each solved at most once, whichever checks ask for it."""

    spec: Spec
    method: Method
    done: dict[str, tuple[Problem, Solution] | None] = field(default_factory=dict)

    def solved(self, change: Change) -> tuple[Problem, Solution] | None:
        """The problem and solution of a changed cage; None when the change does not apply."""
        words = change.words(self.spec)
        if words not in self.done:
            changed = change.apply(self.spec)
            shape = None if changed is None else draw(changed)[0]
            if changed is None or shape is None:
                self.done[words] = None
            else:
                problem = pose(changed, shape)
                self.done[words] = (problem, self.method(problem))
        return self.done[words]


def remedy(code: str, trials: Trials, used: float) -> str:
    """The changes that mend a check, or the best of those that help, in plain words; empty when none does.

    ``used``: how much of the allowed value the cage as it is uses up.
    """
    tried = _tried(code, trials)
    mends = [(words, now) for words, now in tried if now <= 1.0]
    if mends:
        return ", or ".join(f"{words} ({_effect(now, used)})" for words, now in mends[:2])
    helps = [(words, now) for words, now in sorted(tried, key=lambda pair: pair[1]) if now < 0.95 * used]
    if helps:
        return f"{helps[0][0]} ({_effect(helps[0][1], used)}, not yet enough: combine it with other changes)"
    return ""


def _tried(code: str, trials: Trials) -> Sequence[tuple[str, float]]:
    """Each change with how much of the allowed value the changed cage uses."""
    tried = []
    for change in CHANGES.get(code, ()):
        solved = trials.solved(change)
        if solved is None:
            continue
        measured = MEASURES[code](*solved)
        if measured.value is not None:
            tried.append((change.words(trials.spec), measured.used))
    return tried


def _effect(now: float, before: float) -> str:
    """How a change works, in hundredths of what is allowed."""
    return f"from {before * 100:.0f} % to {now * 100:.0f} % of what is allowed"
