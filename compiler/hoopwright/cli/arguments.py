"""The commands and their options."""

from __future__ import annotations

import argparse
from importlib import import_module

from hoopwright import __version__
from hoopwright.cli.formats import GATHERED, STREAMED
from hoopwright.cli.misuse import Parser

_MOST_JOBS = 256
COMMANDS = ("check", "build", "bench", "diff", "compare", "shop", "new", "explain", "schema", "values")


def parser(only: str | None = None) -> argparse.ArgumentParser:
    """The parser of the whole command line; ``options.run(options)`` carries a command out.

    ``only`` the command that is asked for need be described, when it is known beforehand.
    """
    top = Parser(
        prog="hoopwright",
        description="Turns a YAML spec of a hooped understructure into a build plan.",
        epilog="exit codes: 0 clean, 1 findings or failed checks, 2 wrong use, 70 a defect in hoopwright",
    )
    top.add_argument("--version", action="version", version=f"hoopwright {__version__}")
    commands = top.add_subparsers(dest="command", required=True, metavar="COMMAND")
    described = (_check, _build, _bench, _diff, _compare, _shop, _new, _explain, _schema, _values)
    makers = dict(zip(COMMANDS, described, strict=True))
    for make in [makers[only]] if only in makers else makers.values():
        make(commands)
    return top


_Commands = argparse._SubParsersAction  # the only name argparse gives this type


def _check(commands: _Commands[Parser]) -> None:
    command = commands.add_parser(
        "check", help="run every stage on specs and say what was found; write nothing"
    )
    _specs(command)
    _jobs(command)
    _variant(command)
    command.add_argument(
        "--syntax", action="store_true", help="stop after the spec itself: keys, units, references"
    )
    _format(command)
    command.set_defaults(run=_later("check"))


def _build(commands: _Commands[Parser]) -> None:
    command = commands.add_parser("build", help="write plan.md, plan.json and figures/ for each spec")
    _specs(command)
    _jobs(command)
    _variant(command)
    command.add_argument("-o", "--output", metavar="DIR", help="where plans go (default: beside the spec)")
    command.add_argument(
        "--check",
        action="store_true",
        help="write nothing; fail when the plan on disk is not what would be built",
    )
    command.add_argument(
        "--cards",
        action="store_true",
        help="also write what is passed on: cards.md (a card for each task), wearing.md (to wear and to"
        " keep), and pass-on.html, which prints both and the inside label in one go",
    )
    command.add_argument(
        "--units", choices=("inches", "centimetres"), help="print the plan in these units, not the spec's"
    )
    _format(command)
    command.set_defaults(run=_later("build"))


def _bench(commands: _Commands[Parser]) -> None:
    command = commands.add_parser(
        "bench",
        help="what a sample tested in the shop says of its stock, and for which cages it will do",
        epilog="Weights and widths may be everyday things: --hang 'a full half-litre bottle',"
        " --around 'a drink can'. Options of a test may be given again for further tests.",
    )
    command.add_argument(
        "--section", metavar="SIZE", help="'10 mm x 1 mm', '6 mm round' or '20 mm x 2 mm tube'"
    )
    command.add_argument(
        "--form", choices=("strip", "wire", "cane", "tube", "rod", "corded cloth"), help="what the sample is"
    )
    command.add_argument("--grade", help="the grade it is sold as, when that is known")
    command.add_argument("--width", metavar="LENGTH", help="width of a sample of corded cloth")
    for name, kind, words in BENCH:
        command.add_argument(f"--{name}", metavar=kind, action="append", default=[], help=words)
    command.add_argument(
        "--for", dest="cages", nargs="+", metavar="SPEC", help="cages to try it in: specs or folders"
    )
    command.add_argument("--units", choices=("inches", "centimetres"), default="centimetres")
    command.set_defaults(run=_later("bench"))


BENCH = (
    ("overhang", "LENGTH", "droop: free length from the clamp to the end"),
    ("hang", "WEIGHT", "droop: weight hung at the end (default: none)"),
    ("drop", "LENGTH", "droop: how far the end drops below the clamp"),
    ("turned", "LENGTH", "droop: how far it drops with the other face up"),
    ("clamp", "ANGLE", "droop: how far the clamp points below the level (default: 0 degrees)"),
    ("around", "WIDTH", "wrap: diameter of what it is bent round"),
    ("then", "RESULT", "wrap: 'springs back', 'takes a set', or the diameter of the curve it keeps"),
    ("length", "LENGTH", "weighing: length on the scales"),
    ("weight", "WEIGHT", "weighing: what that length weighs"),
)


def _diff(commands: _Commands[Parser]) -> None:
    command = commands.add_parser(
        "diff",
        help="say what differs between two designs: shape, parts, shopping, cost, hours, checks, tasks",
        description="Compares two specs, or one spec with a variant of it. Exit code 0 whenever they could be"
        " compared.",
    )
    command.add_argument(
        "specs", nargs="+", metavar="SPEC", help="two specs, before and after; - reads one from stdin"
    )
    command.add_argument(
        "--variant",
        action="append",
        metavar="NAME",
        help="of one spec: this variant against the spec, or against the variant named before; of two specs:"
        " this variant of both",
    )
    command.add_argument("--format", choices=("text", "markdown", "json"), default="text")
    command.set_defaults(run=_later("diff"))


def _compare(commands: _Commands[Parser]) -> None:
    command = commands.add_parser(
        "compare", help="designs and their variants side by side, the cheapest that passes first"
    )
    _specs(command)
    _jobs(command)
    command.add_argument(
        "--variant", action="append", metavar="NAME", help="only these variants (default: all of them)"
    )
    command.add_argument("--format", choices=("text", "markdown", "json"), default="text")
    command.set_defaults(run=_later("compare"))


def _shop(commands: _Commands[Parser]) -> None:
    command = commands.add_parser(
        "shop",
        help="one shopping trip for several designs: pooled packs, one cutting plan, the cost shared out",
        description="Buys for several specs or a cast together. Prints the list, or writes shopping.md,"
        " shopping.json and a figure of the coils into a folder.",
    )
    _specs(command)
    _jobs(command)
    _variant(command)
    command.add_argument("-o", "--output", metavar="DIR", help="write it into this folder instead")
    command.add_argument("--format", choices=("markdown", "json"), default="markdown", help="what is printed")
    command.set_defaults(run=_later("shop"))


def _values(commands: _Commands[Parser]) -> None:
    command = commands.add_parser(
        "values", help="print a spec as sorted `path = value` lines, for git's textconv"
    )
    command.add_argument("spec", metavar="SPEC", help="a spec; - reads it from stdin")
    command.set_defaults(run=_later("values"))


def _new(commands: _Commands[Parser]) -> None:
    command = commands.add_parser("new", help="print a starter spec made from a few measurements")
    command.add_argument(
        "starter", nargs="?", metavar="STARTER", help="which one; without it, the list of starters"
    )
    command.add_argument("--title", help="what the design is called")
    command.add_argument("--stature", metavar="LENGTH", help='body height, as in "5 ft 6 in" or "168 cm"')
    command.add_argument("--waist", metavar="LENGTH", help="waist girth over what is worn beneath")
    command.add_argument("--hip", metavar="LENGTH", help="hip girth")
    command.add_argument("-o", "--output", metavar="FILE", help="write it there instead; never over a file")
    command.set_defaults(run=_later("new"))


def _explain(commands: _Commands[Parser]) -> None:
    command = commands.add_parser("explain", help="explain a finding's code, a check, or a word of the trade")
    command.add_argument("topic", nargs="*", metavar="TOPIC", help="without one, the list of all")
    command.set_defaults(run=_later("explain"))


def _schema(commands: _Commands[Parser]) -> None:
    command = commands.add_parser(
        "schema", help="print the JSON Schema of specs, of plan.json or of shopping.json"
    )
    command.add_argument("which", nargs="?", choices=("spec", "plan", "trip"), default="spec")
    command.set_defaults(run=_later("schema"))


def _specs(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "specs",
        nargs="+",
        metavar="SPEC",
        help="a YAML spec, a cast of them, or a folder: every spec below it except starters",
    )


def _jobs(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "-j", "--jobs", metavar="N", type=_number_of_jobs, default=1,
        help="work on so many specs at once, each in a process of its own; auto: one for each processor."
        " What is written and printed is the same for every N (default: 1)",
    )


def _number_of_jobs(words: str) -> int:
    if words == "auto":
        from hoopwright.cli.jobs import usable

        return usable()
    if not words.isdecimal() or not 1 <= int(words) <= _MOST_JOBS:
        raise argparse.ArgumentTypeError(f"takes a number from 1 to {_MOST_JOBS}, or auto; not {words!r}")
    return int(words)


def _variant(command: argparse.ArgumentParser) -> None:
    command.add_argument("--variant", metavar="NAME", help="one of the spec's variants instead of the spec")


def _format(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "--format",
        choices=(*STREAMED, *GATHERED),
        default="text",
        help="how findings are printed: text (default), short and jsonl line by line; SARIF 2.1.0, JUnit XML,"
        " workflow annotations, or a Markdown summary as one document",
    )


class _later:
    """A command whose module is imported only when it is run, so that each loads just what it needs."""

    def __init__(self, name: str) -> None:
        self.name = name

    def __call__(self, options: argparse.Namespace) -> int:
        code: int = import_module(f"hoopwright.cli.{self.name}").run(options)
        return code
