"""``hoopwright bench``: what a sample tested in the shop says, and for which cages it will do."""

from __future__ import annotations

import argparse
import re
import sys
from collections.abc import Callable, Mapping, Sequence

from hoopwright.cli import CLEAN, FOUND, MISUSED, say
from hoopwright.cli.arguments import BENCH
from hoopwright.library.everyday import WEIGHTS, WIDTHS, everyday, near
from hoopwright.library.grades import GRADES
from hoopwright.library.model import BenchTest, Droop, Section, Stock, Weigh, Wrap
from hoopwright.source import quantity
from hoopwright.source.quantity import QuantityError
from hoopwright.strength.samples.sample import Form, Report, Sample, examine


class Wrong(Exception):
    """Something on the command line that cannot be read; the message says how to mend it."""


def run(options: argparse.Namespace) -> int:
    """Print the report on the sample; with ``--for``, how it fares in those cages."""
    read: list[str] = []
    try:
        sample = _sample(options, read)
        report = examine(sample)
    except QuantityError as problem:
        named = {"--section": options.section, "--width": options.width}
        tests = {f"--{name}": value for name, _, _ in BENCH for value in getattr(options, name)}
        say.progress(say.of_option(problem, named | tests))
        return MISUSED
    except (Wrong, ValueError) as problem:
        say.progress(str(problem))
        return MISUSED
    from hoopwright.compare.sample_page import sample_text

    if sample.tests or sample.section is not None:
        sys.stdout.write(sample_text(sample, report, options.units, read))
    return _cages(options, report) if options.cages else CLEAN


def _cages(options: argparse.Namespace, report: Report) -> int:
    """The sample and every stock of its own in each cage."""
    from hoopwright.cli.specs import code_of_problems, gather
    from hoopwright.compare.sample_page import cage_text
    from hoopwright.compare.stand_in import stand_ins

    specs, problems = gather(options.cages)
    say.diagnostics(problems, specs, "text")
    worst = code_of_problems(problems)
    for spec in specs:
        compiled = spec.compiled(syntax_only=True)
        if compiled.spec is None:
            say.diagnostics(compiled.diagnostics, [spec], "text")
            worst = max(worst, FOUND)
            continue
        if compiled.spec.build.hooped is None:
            say.progress(f"{spec.shown}: a corded petticoat has no hoops; write the droop of its sample under"
                         " `build.cords.sample`")
            continue
        own = compiled.spec.build.hooped.material
        mine = [stock for name, stock in compiled.spec.stocks.items() if name not in GRADES]
        stocks: list[Stock] = list({stock.name: stock for stock in (own, *mine)}.values())
        if report.stock is not None:
            stocks.append(report.stock)
        rows = stand_ins(compiled.spec, stocks)
        sys.stdout.write("\n" + cage_text(spec.label, rows, options.units, own.name))
    if report.stock is None:
        say.progress(
            "the sample was tried in no cage: state --section, and --grade when no grade fits the tests"
        )
    return worst


def _sample(options: argparse.Namespace, read: list[str]) -> Sample:
    section = _section(options.section) if options.section else None
    tests: tuple[BenchTest, ...] = (
        *_droops(options, read), *_wraps(options, read), *_weighings(options, read)
    )
    if not tests and not options.cages:
        raise Wrong("nothing was tested: give --overhang, --hang and --drop, or --around and --then, or"
                    " --length and --weight")
    if options.grade and options.grade not in GRADES:
        raise Wrong(f"there is no grade `{options.grade}`; there are: {', '.join(GRADES)}")
    if section is None and any(isinstance(test, Wrap) for test in tests):
        raise Wrong("a wrap test needs the thickness: give --section, as in `10 mm x 1 mm` or `6 mm round`")
    form = options.form or _form(section)
    width = quantity.parse_length(options.width) if options.width else None
    if form == "corded cloth":
        section = None
    return Sample(form, tests, section, options.grade or "", width)


def _form(section: Section | None) -> Form:
    if section is None or section.kind == "flat":
        return "strip"
    return "tube" if section.kind == "tube" else "wire" if section.diameter < 0.004 else "cane"


def _section(text: str) -> Section:
    """``10 mm x 1 mm``, ``6 mm round``, ``20 mm x 2 mm tube``; in ``10 x 1 mm`` the unit counts for both."""
    words = re.sub(r"\s+", " ", text.strip().lower())
    kind = "tube" if words.endswith("tube") else "round" if words.endswith("round") else "flat"
    sides = re.split(r"\s*(?:x|×|by)\s*", words.removesuffix(kind).strip())
    if len(sides) == 2 and re.fullmatch(r"[\d./ ]+", sides[0]):
        unit = re.search(r"[a-z\"']+$", sides[1])
        sides[0] = f"{sides[0]} {unit.group()}" if unit else sides[0]
    if len(sides) != (1 if kind == "round" else 2):
        raise Wrong(f"`{text}` is no section: write `10 mm x 1 mm`, `6 mm round` or `20 mm x 2 mm tube`")
    size = [quantity.parse_length(side) for side in sides]
    if kind == "round":
        return Section("round", diameter=size[0], text=text.strip())
    if kind == "tube":
        if size[1] * 2 >= size[0]:
            raise Wrong("the wall fills the tube: the wall is less than half the diameter")
        return Section("tube", diameter=size[0], wall=size[1], text=text.strip())
    return Section("flat", width=max(size), thickness=min(size), text=text.strip())


def _droops(options: argparse.Namespace, read: list[str]) -> list[Droop]:
    overhangs, drops = options.overhang, options.drop
    if len(overhangs) != len(drops):
        raise Wrong("each droop test has one --overhang and one --drop")
    hangs = _filled(options.hang, len(overhangs), "--hang", "0 g")
    turned = _filled(options.turned, len(overhangs), "--turned", "")
    angles = _filled(options.clamp, len(overhangs), "--clamp", "0 degrees")
    return [Droop(
        quantity.parse_length(overhang),
        _taken(hang, quantity.parse_mass, WEIGHTS, read, zero=True),
        quantity.parse_length(drop),
        quantity.parse_length(other) if other else None,
        quantity.parse_angle(angle),
    ) for overhang, hang, drop, other, angle in zip(overhangs, hangs, drops, turned, angles, strict=True)]


def _wraps(options: argparse.Namespace, read: list[str]) -> list[Wrap]:
    if len(options.around) != len(options.then):
        raise Wrong("each wrap test has one --around and one --then")
    found = []
    for around, then in zip(options.around, options.then, strict=True):
        across = _taken(around, quantity.parse_length, WIDTHS, read)
        result = " ".join(then.lower().split())
        if result in ("springs back", "takes a set"):
            found.append(Wrap(across, result == "springs back"))
            continue
        keeps = _taken(then, quantity.parse_length, WIDTHS, read)
        if keeps <= across:
            raise Wrong(f"the curve it keeps, {then}, is tighter than {around}, which it was bent round")
        found.append(Wrap(across, False, keeps))
    return found


def _weighings(options: argparse.Namespace, read: list[str]) -> list[Weigh]:
    if len(options.length) != len(options.weight):
        raise Wrong("each weighing has one --length and one --weight")
    return [Weigh(quantity.parse_length(length), _taken(weight, quantity.parse_mass, WEIGHTS, read))
            for length, weight in zip(options.length, options.weight, strict=True)]


def _filled(values: Sequence[str], count: int, option: str, usual: str) -> list[str]:
    """As many values as tests: all of them, one for all, or none."""
    if len(values) in (0, 1):
        return [values[0] if values else usual] * count
    if len(values) != count:
        raise Wrong(f"give {option} once for all droop tests, or once for each")
    return list(values)


def _taken(text: str, parse: Callable[..., float], things: Mapping[str, float], read: list[str], *,
           zero: bool = False) -> float:
    """A quantity, or an everyday thing whose size is known; how it was taken is noted."""
    size = everyday(text, things)
    if size is not None:
        amount = f"{size * 1000:.6g} {'g' if things is WEIGHTS else 'mm across'}"
        note = f"{text.strip()} as {amount}"
        if note not in read:
            read.append(note)
        return size
    if not re.search(r"\d", text):
        offered = near(text, things) or tuple(things)[:4]
        raise Wrong(f"`{text}` is no amount, and not among the everyday things known: near it are"
                    f" {', '.join(offered)}")
    return parse(text, zero=True) if zero else parse(text)
