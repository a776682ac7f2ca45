"""What the benchmarks hand in: ratios with what they should be, and the machine they were found on."""

from __future__ import annotations

import os
import platform
import subprocess
import sys
import time
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

ENVIRONMENT = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
"""Without a setting that has our own files, but no library's, compiled anew at every start."""


@dataclass(frozen=True)
class Run:
    """One process and its children: seconds on the clock and of the processors, the most memory that one of them
    held, MB, and the exit code."""

    clock: float
    processor: float
    memory: float
    code: int


def spent(command: Sequence[str]) -> Run:
    """Run a command, what it prints thrown away."""
    began = time.perf_counter()
    process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, env=ENVIRONMENT)
    _, status, used = os.wait4(process.pid, 0)
    clock = time.perf_counter() - began
    process.returncode = os.waitstatus_to_exitcode(status)
    return Run(clock, used.ru_utime + used.ru_stime, used.ru_maxrss / 1024, process.returncode)


@dataclass(frozen=True)
class Ratio:
    """One ratio found within one run. ``target``: at most (``most``) or at least so much; None when it is only
    told. ``more``: what else there is to say of it."""

    what: str
    found: float
    target: float | None = None
    most: bool = True
    more: str = ""

    @property
    def wanted(self) -> str:
        """The target in words."""
        return "" if self.target is None else f"at {'most' if self.most else 'least'} {self.target:g}"

    @property
    def missed(self) -> bool:
        """Whether it is not what it should be."""
        return self.target is not None and (self.found > self.target) is self.most and self.found != self.target


def tell(ratios: Iterable[Ratio]) -> None:
    """Print ratios as they come."""
    for one in ratios:
        wanted = f" ({one.wanted}{'; MISSED' if one.missed else ''})" if one.wanted else ""
        print(f"{one.what}: {one.found:.2f}{wanted}{f'; {one.more}' if one.more else ''}", flush=True)


def table(rows: Iterable[tuple[str, Ratio]]) -> str:
    """A Markdown table of (program, ratio), with the date and the class of machine."""
    lines = [f"| program | ratio | target | {time.strftime('%d %B %Y').lstrip('0')} |", "| --- | --- | --- | --- |"]
    for program, one in rows:
        found = f"{one.found:.2f}{', missed' if one.missed else ''}{f' ({one.more})' if one.more else ''}"
        lines.append(f"| `{program}` | {one.what} | {one.wanted} | {found} |")
    return "\n".join([*lines, "", machine()])


def machine() -> str:
    """The class of machine: processors that may be used and how busy they are, their kind, Python."""
    kind = platform.machine()
    info = Path("/proc/cpuinfo")
    if info.exists():
        names = [line.partition(":")[2].strip() for line in info.read_text().splitlines()
                 if line.startswith("model name")]
        kind = names[0] if names else kind
    usable = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count()
    busy = f", {os.getloadavg()[0]:.0f} tasks waiting or running" if hasattr(os, "getloadavg") else ""
    return f"{usable} processors ({kind}){busy}; Python {sys.version.split()[0]}"
