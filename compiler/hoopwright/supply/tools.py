"""Which tools each job of the work asks for, and which of them the workshop lacks.

A group of names means that any one of them will do, the handiest first.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from hoopwright.library.tools import TOOLS, at_hand, cutting_tools, lacking
from hoopwright.spec.model import Spec
from hoopwright.supply.model import ToolNeed

Groups = tuple[tuple[str, ...], ...]

_MARK: Groups = (("tape measure",), ("pencil",))
_GOGGLES = ("goggles",)
_GUARD: Groups = (_GOGGLES, ("gloves",))
_JOBS: Mapping[str, Groups] = {
    "press": (("flat iron",),),
    "mark": _MARK,
    "cut cloth": (("scissors",), *_MARK),
    "test sample": (("tape measure",), ("pencil",)),
    "boil starch": (("pot",),),
    "bench test": (("clamps", "vice"), ("tape measure",)),
    "sew long seams": (("sewing machine", "needle"), ("pins",)),
    "sew by hand": (("needle",), ("scissors",)),
    "clip": (("pins",), ("tape measure",)),
    "clamp": (("clamps", "pins"), ("sticky tape",)),
    "open coil": (("clamps", "vice"), ("string",), ("scissors",)),
    "bend round": (),
    "bend wet": (("bath",), ("string",)),
    "look and measure": (("tape measure",), ("pins",)),
    "level alone": (("plumb line",), ("tape measure",)),
}


def job_tools(spec: Spec) -> dict[str, Groups]:
    """Every job with its groups of tools; cutting and joining hoops depend on stock and join."""
    hoops = spec.build.hooped
    if hoops is None:
        return dict(_JOBS)
    cut = (cutting_tools(hoops.material), ("file", "grinder", "abrasive paper"), ("sticky tape",), *_MARK)
    table = {**_JOBS, "cut stock": cut, "join": (*hoops.join.tools, ("tape measure",))}
    if hoops.material.grade.metal:
        table |= {"cut stock": (*cut, _GOGGLES), "bench test": (*_JOBS["bench test"], *_GUARD),
                  "open coil": (*_JOBS["open coil"], *_GUARD)}
    elif hoops.sprung:
        table["bench test"] = (*_JOBS["bench test"], _GOGGLES)
    if hoops.bent_wet:
        table["bench test"] = (*table["bench test"], ("bath",))
    if hoops.sprung:
        table |= {"clamp": (("clamps",), ("sticky tape",), _GOGGLES), "bend round": (_GOGGLES,)}
    return table


def have(spec: Spec) -> frozenset[str] | None:
    """Library names of the tools at hand; None when the spec names no workshop."""
    return None if spec.workshop.tools is None else at_hand(spec.workshop.tools)


def lay_ready(groups: Groups, tools: frozenset[str] | None) -> tuple[str, ...]:
    """One tool of each group: the first that is at hand, or the first of all."""
    chosen = [
        next((tool for tool in group if tools is not None and tool in tools), group[0]) for group in groups
    ]
    return tuple(dict.fromkeys(chosen))


def missing_tools(spec: Spec, wanted: Iterable[str]) -> tuple[ToolNeed, ...]:
    """The tools that the ``wanted`` jobs ask for and the workshop lacks, each once: a choice is left out where one
    of its tools is wanted anyway."""
    tools = have(spec)
    if tools is None:
        return ()
    table = job_tools(spec)
    groups = dict.fromkeys(group for job in wanted for group in lacking(table[job], tools))
    return tuple(
        ToolNeed(group, TOOLS[group[0]].purpose)
        for group in groups if not any(set(other) < set(group) for other in groups)
    )


def wanted_jobs(spec: Spec) -> tuple[str, ...]:
    """The jobs that this build has, in working order."""
    level = () if spec.workshop.helper else ("level alone",)
    if spec.build.hooped is None:
        starch = ("boil starch",) if spec.build.cords is not None and spec.build.cords.starch else ()
        return (
            "press", "mark", "cut cloth", "test sample", *starch, "sew long seams", "sew by hand", "clip",
            "look and measure", *level,
        )
    return (
        "press",
        "mark",
        "cut cloth",
        "open coil",
        "bench test",
        "cut stock",
        "bend round",
        "join",
        "sew long seams",
        "sew by hand",
        "clip",
        "clamp",
        "look and measure",
        *level,
    )
