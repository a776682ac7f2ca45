"""Wrong use of the command line, told in plain words with the nearest thing that would do.

The words of ``argparse`` are matched here and nowhere else; what is not matched is passed on as it is.
"""

from __future__ import annotations

import argparse
import re
from collections.abc import Iterator
from typing import NoReturn

_WANTED = {"SPEC": "a spec to work on: the name of a YAML file, or of a folder of them", "COMMAND": "a command"}
_UNITS = {"cm": "centimetres", "in": "inches", "inch": "inches", "metric": "centimetres"}


class Parser(argparse.ArgumentParser):
    """An argument parser that says what is wrong and what to write, in two lines on stderr."""

    def error(self, message: str) -> NoReturn:
        """Leave with exit code 2."""
        said, mend = self._told(message)
        self.exit(2, f"{said}\n{mend}\n")

    def _told(self, message: str) -> tuple[str, str]:
        helper = f"`{self.prog} --help` shows what it takes"
        if found := re.match(r"argument (\S+): invalid choice: '(.*?)'", message):
            return self._no_choice(found[1], found[2], helper)
        if found := re.match(r"the following arguments are required: (\S+)", message):
            name = found[1].rstrip(",")
            return f"`{self.prog}` wants {_WANTED.get(name, f'{name} as well')}", helper
        if found := re.match(r"argument (\S+): expected (?:one|at least one) argument", message):
            return f"`{found[1].split('/')[-1]}` wants a value after it", helper
        if found := re.match(r"unrecognized arguments: (.*)", message):
            return self._unknown(found[1].split(" ")[0], helper)
        if found := re.match(r"argument (\S+): (.*)", message):
            return f"`{found[1].split('/')[-1]}`: {found[2]}", helper
        return message, helper

    def _no_choice(self, name: str, written: str, helper: str) -> tuple[str, str]:
        """A word that is none of the choices."""
        action = next(one for one in self._actions if name in ("/".join(one.option_strings), one.dest,
                                                               one.metavar))
        known = [str(choice) for choice in action.choices or ()]
        near = _near(_UNITS.get(written, written), known)
        if written == "help":
            return "`help` is no command", f"`{self.prog} --help` lists the commands, `explain` the words"
        if action.metavar == "COMMAND":
            return f"there is no command `{written}`", f"the nearest is `{near}`" if near else (
                f"there are {', '.join(known)}; {helper}")
        called = action.option_strings[-1] if action.option_strings else self.prog
        return (f"`{called}` does not take `{written}`",
                f"it takes {', '.join(known)}" + (f"; the nearest is `{near}`" if near else ""))

    def _unknown(self, written: str, helper: str) -> tuple[str, str]:
        """An option nobody knows, or one word too many."""
        if not written.startswith("-"):
            return f"`{written}` is one word too many", f"put a name with spaces in quotes; {helper}"
        near = _near(written, sorted(set(_options(self))))
        return f"there is no option `{written}`", f"the nearest is `{near}`" if near else helper


def _options(parser: argparse.ArgumentParser) -> Iterator[str]:
    """The options of a parser and of the commands below it."""
    for action in parser._actions:
        yield from action.option_strings
        if isinstance(action, argparse._SubParsersAction):
            for command in action.choices.values():
                yield from _options(command)


def _near(written: str, known: list[str]) -> str:
    from difflib import get_close_matches

    return next(iter(get_close_matches(written, known, n=1, cutoff=0.5)), "")
