"""What a sample says, and how stocks fare in a cage, as plain text for the shop counter."""

from __future__ import annotations

from collections.abc import Sequence

from hoopwright.compare.stand_in import StandIn
from hoopwright.render.words import closed, listed
from hoopwright.source.printed import (
    Units,
    length_text,
    linear_density_text,
    mass_text,
    share_text,
    stress_text,
)
from hoopwright.strength.forms.setting import least_radius
from hoopwright.strength.gravity import GRAVITY
from hoopwright.strength.samples.sample import Report, Sample


def sample_text(sample: Sample, report: Report, units: Units, read: Sequence[str]) -> str:
    """The report on a sample, a line for each thing found. ``read`` tells how everyday things were taken."""
    what = sample.form + (f", {sample.section.text}" if sample.section is not None else "")
    lines = [f"Sample: {what}", *(f"  taken: {words}" for words in read)]
    lines += [f"  {name:<15} {words}" for name, words in (
        ("stiffness", _stiffness(report)), ("bending length", _bending(sample, report, units)),
        ("modulus", _modulus(report)), ("springs back", _limit(report)),
        ("no set above", _radius(sample, report, units)), ("weight", _weight(report, units)),
        ("likely", _likely(report)), ("unlikely", _unlikely(report))) if words]
    lines += [f"  look again: the tests lie more than 30 % apart in {what}" for what in report.clashes]
    if report.unweighed:
        lines.append("  the sample's own weight is left out: state --section, or weigh a length of it")
    if sample.form != "corded cloth" and sample.section is None:
        lines.append("  without --section nothing can be said of the spring limit, the grade or a cage")
    return "\n".join(lines) + "\n"


def _stiffness(report: Report) -> str:
    if report.stiffness is None:
        return ""
    spread = "" if report.spread is None else f"; the tests lie within {share_text(report.spread)}"
    wide = "" if report.per_width is None else f"; {report.per_width:.3g} N m for each metre of width"
    return f"EI {report.stiffness:.3g} N m2{spread}{wide}"


def _bending(sample: Sample, report: Report, units: Units) -> str:
    """The bending length of corded cloth that was weighed: the cube root of stiffness over weight for length."""
    if sample.form != "corded cloth" or report.stiffness is None or not report.metre:
        return ""
    return length_text((report.stiffness / (report.metre * GRAVITY)) ** (1 / 3), units)


def _modulus(report: Report) -> str:
    return "" if report.modulus is None else f"{report.modulus / 1e9:.3g} GPa with this section"


def _limit(report: Report) -> str:
    if report.found is not None:
        return f"up to about {stress_text(report.found)} (measured on the curve it kept)"
    bounds = []
    if report.least is not None:
        bounds.append(f"at least up to {stress_text(report.least)}")
    if report.most is not None:
        bounds.append(f"at most up to {stress_text(report.most)}")
    return " and ".join(bounds)


def _radius(sample: Sample, report: Report, units: Units) -> str:
    """The smallest hoop that keeps no set, from what is proven or measured."""
    limit = report.found if report.found is not None else report.least
    if limit is None or sample.section is None:
        return ""
    e = report.modulus
    if e is None and report.stock is not None:
        e = report.stock.grade.e
    if e is None:
        return ""
    return f"{length_text(2 * least_radius(e, sample.section.depth, limit), units)} across"


def _weight(report: Report, units: Units) -> str:
    if report.metre is None:
        return ""
    told = f"{linear_density_text(report.metre, units)} weighed"
    if report.plain is not None:
        told += f"; {linear_density_text(report.plain, units)} by section and grade"
    return told


def _likely(report: Report) -> str:
    fitting = [one for one in report.grades if not one.misses and one.fits]
    told = "; ".join(f"{one.grade} ({listed(one.fits)} {'fits' if len(one.fits) == 1 else 'fit'})"
                     for one in fitting)
    if len(fitting) > 1 and not any("spring limit" in one.fits for one in fitting):
        told += "; a wrap test tells them apart"
    return told


def _unlikely(report: Report) -> str:
    return "; ".join(f"{one.grade} ({listed(one.misses)} {'does' if len(one.misses) == 1 else 'do'} not fit)"
                     for one in report.grades if one.misses)


def cage_text(name: str, rows: Sequence[StandIn], units: Units, own: str) -> str:
    """How stocks fare in one cage, thin to thick, as an aligned table; ``own`` names the spec's stock."""
    table = [("stock", "stiffness A/R3", "set limit used", "hoops weigh", "all costs", "result")]
    table += [(
        one.stock.name + (" (the spec's)" if one.stock.name == own else ""),
        "–" if one.ring is None else f"{one.ring:.0f} N/m" if one.ring >= 100 else f"{one.ring:.3g} N/m",
        "–" if one.set_share is None else share_text(one.set_share),
        "–" if one.mass is None else mass_text(one.mass, units),
        "–" if one.cost is None else f"{one.cost:.2f}",
        one.verdict,
    ) for one in rows]
    widths = [max(len(row[k]) for row in table) for k in range(len(table[0]))]
    lines = [f"{name}, thin to thick:"]
    lines += ["  " + "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()
              for row in table]
    for one in rows:
        if one.verdict != "stands":
            lines += [f"  {one.stock.name} {one.verdict}: {closed('; '.join(one.reasons))}"]
            lines += [f"    {words}" for words in one.remedies]
    return "\n".join(lines) + "\n"
