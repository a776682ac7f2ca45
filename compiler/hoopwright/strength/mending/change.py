"""Changes to a cage that may mend it, each in growing sizes: what to say, and the changed spec."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType

from hoopwright.library.model import Section, Stock
from hoopwright.source.record import record
from hoopwright.spec.model import Spec, TapeBuild
from hoopwright.spec.reading.tapes import equal_places, places_behind, places_beside_gap
from hoopwright.strength.material import material_strength, modulus

MOST_TAPES = 12
FEWEST_EVEN = 4
"""Tapes that are spaced evenly are at least so many: fewer hold a hoop level only just."""


@record(frozen=True, slots=True)
class Change:
    """A change: ``words`` to say of it with ``{stock}`` and ``{tapes}`` to fill in, and ``apply``, which
    gives the changed spec, or None where it does not apply."""

    words: str
    apply: Callable[[Spec], Spec | None]

    def said_of(self, spec: Spec) -> str:
        """The words for one spec."""
        count = 0 if spec.build.tapes is None else spec.build.tapes.count
        return self.words.format(stock=spec.build.hoops.material.form, one_more=count + 1, two_more=count + 2)


A_FIFTH_OFF = 0.8
"""What is left of a depth that is made a fifth thinner."""
Family = tuple[Change, ...]
"""The same change in growing sizes."""


def with_tapes(spec: Spec, count: int, gap: float | None) -> Spec | None:
    """The same cage on ``count`` tapes with that front gap; None past what can be sewn on."""
    old = spec.build.tapes
    if count > MOST_TAPES or old is None:
        return None
    hem = equal_places(count)
    waist = hem if gap is None else places_beside_gap(count, gap / spec.wearer.waist)
    half = spec.shape.ground_plan.half
    if half is not None:
        waist = hem = places_behind(count, "with full hoops" if half.full else "only")
    tapes = TapeBuild(old.material, count, gap, old.to, waist, hem)
    return replace(spec, build=replace(spec.build, tapes=tapes))


def scaled(section: Section, width: float, depth: float) -> Section:
    """A section so many times as wide and as deep; of a wire or a tube ``depth`` is of the whole of it."""
    return replace(section, width=section.width * width, thickness=section.thickness * depth,
                   diameter=section.diameter * depth, wall=section.wall * depth)


def of_section(old: Stock, section: Section) -> Stock:
    """The same stuff in another section: what was measured on the bench of the old one is carried over as a property
    of the stuff."""
    material, _ = material_strength(old)
    e = modulus(old, material)
    plain = Stock(old.name, old.grade, old.section, form=old.form)
    grade = replace(old.grade, e=e, g=old.grade.g * e / old.grade.e, elastic_limit=material.elastic_limit,
                    density=old.grade.density * old.linear_density / plain.linear_density)
    return Stock(old.name, grade, section, (), old.sold, old.on_hand, old.form)


def with_section(spec: Spec, section: Section) -> Spec:
    """The same cage of another section of the same stuff."""
    stock = of_section(spec.build.hoops.material, section)
    return replace(spec, build=replace(spec.build, hooped=replace(spec.build.hoops, material=stock)))


def _more_tapes(more: int) -> Callable[[Spec], Spec | None]:
    def apply(spec: Spec) -> Spec | None:
        old = spec.build.tapes
        return None if old is None else with_tapes(spec, old.count + more, old.front_gap)

    return apply


def _even(spec: Spec) -> Spec | None:
    old = spec.build.tapes
    if old is None or spec.shape.ground_plan.half is not None:
        return None
    even = with_tapes(spec, max(old.count, FEWEST_EVEN), None)
    return None if even is None or even.build.tapes == old else even


def _scaled(width: float, depth: float) -> Callable[[Spec], Spec | None]:
    def apply(spec: Spec) -> Spec | None:
        old = spec.build.hoops.material.section
        if depth == 1.0 and old.kind != "flat":
            return None
        return with_section(spec, scaled(old, width, depth))

    return apply


def _lighter(share: float) -> Callable[[Spec], Spec | None]:
    def apply(spec: Spec) -> Spec | None:
        if not spec.load:
            return None
        return replace(spec, load=tuple(replace(layer, mass=layer.mass * share) for layer in spec.load))

    return apply


MORE_TAPES: Family = (Change("take {one_more} tapes", _more_tapes(1)),
                      Change("take {two_more} tapes", _more_tapes(2)))
NO_GAP: Family = (Change("space the tapes evenly, without a front gap", _even),)
WIDER: Family = (Change("take a {stock} a third wider", _scaled(4 / 3, 1.0)),
                 Change("take a {stock} twice as wide", _scaled(2.0, 1.0)))
THICKER: Family = (Change("take a {stock} a quarter thicker", _scaled(1.0, 1.25)),
                   Change("take a {stock} half as thick again", _scaled(1.0, 1.5)),
                   Change("take a {stock} twice as thick", _scaled(1.0, 2.0)))
THINNER: Family = (Change("take a {stock} a fifth thinner", _scaled(1.0, A_FIFTH_OFF)),
                   Change("take a {stock} a third thinner", _scaled(1.0, 2 / 3)),
                   Change("take a {stock} half as thick", _scaled(1.0, 0.5)))
LIGHTER: Family = (Change("hang a quarter less skirt on it", _lighter(0.75)),
                   Change("hang half as much skirt on it", _lighter(0.5)))

FAMILIES: Mapping[str, tuple[Family, ...]] = MappingProxyType({
    "equilibrium": (MORE_TAPES, NO_GAP, LIGHTER, THICKER),
    "buckling": (LIGHTER, THICKER, WIDER),
    "sag": (MORE_TAPES, NO_GAP, WIDER, THICKER, LIGHTER),
    "out-of-round": (MORE_TAPES, NO_GAP, THICKER, LIGHTER),
    "set-closed": (THINNER,),
    "set-worn": (THINNER, MORE_TAPES, LIGHTER),
    "door": (THINNER,),
})
"""What may mend each check, the cheapest first."""
