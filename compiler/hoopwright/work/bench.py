"""The bench a builder of tasks works at: the design, the rates, the tools at hand, and one maker of tasks."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from hoopwright.library.tools import TOOLS, beyond_snips
from hoopwright.shape.model import Hoop, Shape
from hoopwright.spec.model import Spec
from hoopwright.strength.model import Assessment
from hoopwright.supply.model import CutPack, Supply
from hoopwright.supply.tools import Groups, have, job_tools, lay_ready
from hoopwright.work.actions import ACTIONS
from hoopwright.work.model import Condition, Spent, Task
from hoopwright.work.rates import JOIN, RATES, Rate, minutes

_ENDINGS = frozenset(key.partition("-")[2] for key in ACTIONS) - {"hoop", "hem"}
"""Words that stand for a hoop's name in the ids of tasks that are about none; no hoop hangs where a hem is sewn."""


@dataclass(frozen=True)
class Bench:
    """What every builder needs: ``rates`` of work by name, and in ``tally`` what each was counted for so far.
    ``found``: how it hangs, where a stop measures that; None where that is not known."""

    spec: Spec
    shape: Shape
    supply: Supply
    rates: Mapping[str, Rate] = field(default_factory=lambda: RATES)
    tally: dict[str, float] = field(default_factory=dict)
    found: Assessment | None = None

    def minutes(self, *counts: tuple[str, float]) -> float:
        """Whole minutes for so many of each rate; what was counted is kept in ``tally``."""
        for key, count in counts:
            self.tally[key] = self.tally.get(key, 0.0) + count
        return minutes(self.known_rates, *counts)

    @property
    def known_rates(self) -> Mapping[str, Rate]:
        """The rates, and the minutes of the join this build has unless they hold a rate of that name."""
        if self.spec.build.hooped is None:
            return self.rates
        join = self.spec.build.hooped.join
        return {JOIN: Rate(JOIN, join.minutes, "piece", join.source), **self.rates}

    def spent(self) -> tuple[Spent, ...]:
        """What each rate was counted for so far, in the order of the rates."""
        return tuple(
            Spent(key, rate.minutes, rate.per, self.tally[key], rate.source)
            for key, rate in self.known_rates.items()
            if self.tally.get(key)
        )

    def seam(self, metres: float) -> tuple[str, float]:
        """A long seam: by machine when one is at hand (or no workshop is stated), else by hand."""
        tools = have(self.spec)
        machine = tools is None or "sewing machine" in tools
        return ("machine seam" if machine else "hand seam", metres)

    def short(self, hoop: Hoop) -> str:
        """The hoop's name in task ids: letters and digits of its id, anything else a hyphen; unique, and no word
        in which the id of another task ends."""
        names: list[str] = []
        for other in self.shape.hoops:
            name = "".join(sign if sign.isalnum() else "-" for sign in other.id).strip("-") or "hoop"
            name = f"hoop-{name}" if name in _ENDINGS or name.startswith("ties-") else name
            while name in names:
                name += "-2"
            names.append(name)
            if other.id == hoop.id:
                break
        return names[-1]

    def stock_packs(self) -> tuple[CutPack, ...]:
        """The lengths the hoops are cut from."""
        name = self.spec.build.hoops.material.name
        return tuple(pack for pack in self.supply.cutting.packs if pack.material == name)

    def shares(self, hoop: Hoop) -> int:
        """How many lengths a hoop is made of."""
        pieces = (piece for pack in self.stock_packs() for piece in pack.pieces if piece.part == hoop.id)
        return max((piece.shares for piece in pieces), default=1)

    @property
    def bent_wet(self) -> bool:
        """Whether hoops are soaked and bent to their curve: cane, unless the spec says that it is sprung."""
        hoops = self.spec.build.hooped
        return hoops is not None and hoops.bent_wet

    @property
    def recoil(self) -> tuple[str, ...]:
        """The caution for bending hoops round: what was made to its curve stays as it is."""
        hoops = self.spec.build.hooped
        return ("recoil",) if hoops is not None and hoops.sprung else ()

    @property
    def clamped(self) -> tuple[str, ...]:
        """The caution for hoops that are bent round and held, not yet joined or sewn."""
        return ("clamped-hoop",) if self.recoil else ()

    def whole(self, hoop: Hoop) -> str:
        """The task after which a hoop is one length: its cut, or its splice."""
        return f"{'cut' if self.shares(hoop) == 1 else 'splice'}-{self.short(hoop)}"

    def task(
        self,
        id: str,
        action: str,
        title: str,
        needs: tuple[str, ...],
        time: float,
        *,
        jobs: tuple[str, ...] = (),
        parts: tuple[str, ...] = (),
        cautions: tuple[str, ...] = (),
        wait: float = 0.0,
        conditions: tuple[Condition, ...] = (),
    ) -> Task:
        """A task of an action that takes ``time`` and then ``wait`` minutes: its kind and set-up from the vocabulary,
        tools of its ``jobs`` laid ready, and the cautions of those tools added to its own."""
        table = job_tools(self.spec)
        groups: Groups = tuple(group for job in jobs for group in table[job])
        tools = lay_ready(groups, have(self.spec))
        hooped = self.spec.build.hooped
        thick = hooped is not None and beyond_snips(hooped.material)
        of_tools = tuple(key for tool in tools for key in TOOLS[tool].cautions
                         if thick or key != "cutting-hard-strip")
        told = dict.fromkeys((*cautions, *of_tools))
        if action == "cut-hoop" and self.bent_wet:
            told.pop("cut-ends", None)  # nothing sticks to wet cane: its ends are tipped when it is dry
        known = ACTIONS[action]
        return Task(
            id,
            known.kind,
            action,
            title,
            tuple(dict.fromkeys(needs)),
            time,
            tools,
            parts,
            tuple(told),
            known.setup,
            wait=wait,
            stop=bool(conditions),
            conditions=conditions,
        )
