"""Whole-cage nonlinear solver: any hoops, hung on any tapes, from the wearer's waistband.

Fill a `model.CageModel` (plain frozen values, SI units; x to the wearer's left, y forward, z up; fractions
from centre front by the wearer's left) and call `solve.solve(model)`; the answer is a `result.CageResult`. A
cage of one hoop, for example:

    >>> from math import cos, pi, sin
    >>> from hoopwright.strength.cage.model import CageModel, HoopModel, Section, TapeModel
    >>> from hoopwright.strength.cage.solve import solve
    >>> def round_line(radius, z, count):
    ...     turns = (2 * pi * k / count for k in range(count))
    ...     return tuple((radius * sin(turn), radius * cos(turn), z) for turn in turns)
    >>> strip = Section(ea=3.2e6, ei_weak=0.384, ei_strong=45.0, gj=0.557, mass_per_m=0.122,
    ...                 half_thickness=0.6e-3, half_width=6.5e-3, modulus=205e9)
    >>> hem = HoopModel("H1", round_line(0.45, -0.9, 64), strip, born="straight", line_load_n_per_m=8.0)
    >>> tapes = tuple(TapeModel(f"T{k}", at, (("H1", k / 6),)) for k, at in enumerate(round_line(0.11, 0.0, 6)))
    >>> result = solve(CageModel((hem,), tapes))
    >>> result.status, result.hoops[0].sag_m < 0.001, result.factor.at_least
    ('solved', True, True)

What goes where: a hoop's girth line is `HoopModel.points`; the load of cloth and casing `line_load_n_per_m`
(own weight is added here); a hoop closed from straight stock is `born="straight"`; each tape is a `TapeModel`
from its point on the waistband's lower edge through its marks; cross-ties, laced chords and panel edges are
`TieModel`s; a cloth band `BandModel`; spokes and welded frames `JoinModel`; hips `BodyModel` (give tapes
`pieces=4` or so, to let them lie on it). An oval sprung from straight stock needs its ties in the model, or
it rounds itself; a half hoop its lacing.

What comes back: `status` first (see `result.Status`), `notes` in words with the ids they are about, then
hoops, tapes, ties, bands, the pull on the waistband, the swing of the hem, and the load `factor` (it may carry
more when `at_least`: followed no farther than `Options.cap`, or than the work allowed).

How it works, file by file: `check` says in words what is wrong with a model; `curve` and `mesh` lay hoops out
as rods, `build` everything else; `rod`, `arc`, `bars`, `contact`, `loads` are the mechanics with exact
derivatives, `rotation` and `arrays` what they reckon with; `system` numbers and assembles, `sparse` factors;
`newton` and `relax` find balance, `rolling` what of it may roll; `track` follows the load to its factor;
`outline` says how a loaded hoop lies to its wished line, and `report` writes the result. Only `solve` and what
it needs load numpy and scipy; `model`, `check` and `result` are plain Python.
"""
