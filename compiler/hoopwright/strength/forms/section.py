"""Sections: second moments of area and the torsion constant of what hoops are made of.

A flat strip stands on edge: width b vertical, thickness t in the hoop's plane. Weak bending is in
the hoop's plane, strong bending is up and down.
"""

from __future__ import annotations

from math import hypot, pi, tanh

from hoopwright.library.model import Section
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class SectionProperties:
    """``weak``, ``strong``: second moments of area, m4; ``torsion``: J, m4; ``weak_fibre``, ``strong_fibre``:
    distances of the outer fibre, m; ``corners`` tells that both bending stresses add at a corner."""

    weak: float
    strong: float
    torsion: float
    weak_fibre: float
    strong_fibre: float
    corners: bool

    def combined(self, weak_stress: float, strong_stress: float) -> float:
        """Greatest stress from bending both ways, Pa: added at a strip's corner, as vectors on a round."""
        if self.corners:
            return abs(weak_stress) + abs(strong_stress)
        return hypot(weak_stress, strong_stress)


def properties(section: Section) -> SectionProperties:
    """The properties of a section.

    Strip: b t^3/12, t b^3/12 and Saint-Venant's J. Round: pi d^4/64, J twice that; tube: the difference of
    two.
    """
    if section.kind == "flat":
        b, t = section.width, section.thickness
        return SectionProperties(b * t**3 / 12, t * b**3 / 12, strip_torsion(b, t), t / 2, b / 2, True)
    inner = section.diameter - 2 * section.wall if section.kind == "tube" else 0.0
    second = pi / 64 * (section.diameter**4 - inner**4)
    return SectionProperties(second, second, 2 * second, section.diameter / 2, section.diameter / 2, False)


def strip_torsion(width: float, thickness: float) -> float:
    """Torsion constant J of a rectangle, m4.

    J = (b t^3/3)[1 - (192/pi^5)(t/b) sum over odd k of tanh(k pi b/2t)/k^5], b >= t: Saint-Venant's series
    (Timoshenko and Goodier, Theory of Elasticity, quoted from memory; tested against a solved membrane).
    """
    b, t = max(width, thickness), min(width, thickness)
    series = sum(tanh(k * pi * b / (2 * t)) / k**5 for k in range(1, 41, 2))
    return b * t**3 / 3 * (1 - 192 / pi**5 * t / b * series)
