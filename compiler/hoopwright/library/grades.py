"""Grades of hoop material, each value with its source. A bench test of the maker's own outranks them.

Shear moduli of isotropic grades follow from Young's modulus and Poisson's ratio, G = E / 2(1 + nu):
nu = 0.29 for steels, 0.45 for polyethylene. Rattan is no isotropic material: its G is stated.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from hoopwright.library.model import Grade, Section

GPA = 1e9
MPA = 1e6
STEEL_POISSON = 0.29
POLYETHYLENE_POISSON = 0.45
MUSIC_WIRE_YIELD_SHARE = 0.75
_SHIGLEY = "Shigley, Mechanical Engineering Design (quoted from memory)"


def shear_modulus(e: float, poisson: float) -> float:
    """G = E / 2(1 + nu), Pa, of an isotropic material.

    >>> round(shear_modulus(205e9, 0.29) / 1e9, 2)
    79.46
    """
    return e / (2 * (1 + poisson))


def music_wire_tensile(diameter: float) -> float:
    """Least tensile strength of music wire (ASTM A228), Pa: 2211 / d^0.145 MPa, d in mm.

    ``diameter`` m; fitted between 0.1 and 6.5 mm. Source: Shigley, table of tensile constants
    (quoted from memory).

    >>> round(music_wire_tensile(0.002) / 1e6)
    2000
    """
    return 2211 * MPA / math.pow(diameter * 1000, 0.145)


# temper: blue strip was drawn at 330-430 C (ASTM A684 data sheet); cold-rolled stainless and cold-drawn
# wire lose strength from about 400 and 250 C (from memory).


def _grades() -> tuple[Grade, ...]:
    steel = shear_modulus(205 * GPA, STEEL_POISSON)
    return (
        Grade("spring steel, tempered", 205 * GPA, steel, 1200 * MPA, 7850,
              "high-carbon strip, tempered: E 205 GPa, 7850 kg/m3, yield 1200-1700 MPa (typical values quoted"
              " from memory); the lowest yield is taken", hard=True, temper=330.0),
        Grade("mild steel", 205 * GPA, steel, 250 * MPA, 7850,
              f"low-carbon steel: E 205 GPa, yield 250 MPa, 7850 kg/m3; {_SHIGLEY}"),
        Grade("stainless, full hard", 193 * GPA, shear_modulus(193 * GPA, STEEL_POISSON), 965 * MPA, 7900,
              "type 301 full hard, ASTM A666: E 193 GPa, yield 965 MPa, 7900 kg/m3 (quoted from memory)",
              hard=True, temper=400.0),
        Grade("music wire", 205 * GPA, steel, MUSIC_WIRE_YIELD_SHARE * music_wire_tensile(0.002), 7850,
              "ASTM A228: elastic limit taken as 0.75 of the least tensile strength 2211/d^0.145 MPa, d in"
              f" mm; {_SHIGLEY}", hard=True, temper=250.0),
        Grade("rattan", 4.0 * GPA, 0.3 * GPA, 40 * MPA, 600,
              "cane: E 4 GPa give or take half, G 0.3 GPa, elastic limit 40 MPa, 600 kg/m3; typical figures"
              " quoted from memory - test your own", spread=0.5, metal=False),
        Grade("polyethylene", 0.9 * GPA, shear_modulus(0.9 * GPA, POLYETHYLENE_POISSON), 20 * MPA, 950,
              "polyethylene tube: E 0.9 GPa at first and a quarter of it under lasting load, yield 20 MPa,"
              " 950 kg/m3; typical figures quoted from memory", creeps=True, metal=False),
    )


GRADES: Mapping[str, Grade] = MappingProxyType({grade.name: grade for grade in _grades()})
"""Every grade by name."""

DEFAULT_SECTIONS: Mapping[str, Section] = MappingProxyType({
    "spring steel, tempered": Section("flat", width=0.010, thickness=0.001, text="10 x 1 mm"),
    "mild steel": Section("flat", width=0.010, thickness=0.001, text="10 x 1 mm"),
    "stainless, full hard": Section("flat", width=0.010, thickness=0.001, text="10 x 1 mm"),
    "music wire": Section("round", diameter=0.002, text="2 mm round"),
    "rattan": Section("round", diameter=0.006, text="6 mm round"),
    "polyethylene": Section("tube", diameter=0.020, wall=0.002, text="20 x 2 mm tube"),
})
"""The section taken when a build names a grade and no section: common stock, no source."""


def grade_for(name: str, section: Section) -> Grade:
    """The grade ``name`` as it is in ``section``: music wire is the stronger the thinner it is.

    Raises KeyError for an unknown grade.
    """
    grade = GRADES[name]
    if name == "music wire" and section.diameter > 0:
        return replace(grade, elastic_limit=MUSIC_WIRE_YIELD_SHARE * music_wire_tensile(section.diameter))
    return grade
