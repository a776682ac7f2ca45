"""Task cards: each step of the plan on a page of its own, for somebody who has never seen one."""

from __future__ import annotations

import re
from collections.abc import Mapping

from hoopwright.library.cautions import CAUTIONS
from hoopwright.plan.model import Plan
from hoopwright.render.escape import Md
from hoopwright.render.figure import Figure
from hoopwright.render.views.steps import Step
from hoopwright.render.words import ids_text, listed
from hoopwright.source.record import record
from hoopwright.work.actions import ACTIONS

_LOOK: Mapping[str, str] = {
    "water": "it is clean and dry all through",
    "table": "every measure is taken again from its zero; left and right are not changed over",
    "metal": "each piece is measured again from end to end, and nothing sharp is felt at its ends",
    "joining": "each join is pulled by hand, lies flat, and nothing sharp is felt",
    "machine": "each seam is pulled; no stitch is missing, and it lies on its line",
    "hand": "each seam and crossing is pulled; nothing slips, and it sits on its mark",
    "body": "every line of the box is true, and the wearer says so too",
}
"""What the one who checks a card looks at, by the place it is done at."""

_LOOK_AT = {
    "open-coil": "the coil lies still, tied where it is not let out, and its free end is taped",
    "test-stock": "what was measured is written down; where it differs, the plan is built again before anything is cut",
}
"""The same for an action after which nothing is cut."""

_ENDS = frozenset({"cut-hoop", "case-hoop", "thread-channel", "join-hoop", "join-hoop-shielded",
                   "splice-hoop", "prove-join"})
_METAL_ENDS = ("File off the burr of every cut end, round its corners, and tip it or wrap it in sticky tape"
               " at once, before you put it down.")
_OTHER_ENDS = "Cut every end square, smooth it, and wrap it in sticky tape at once, before you put it down."
_WET_ENDS = ("Cut every end square. When the cane is dry, and before anything else is done with it, round its ends"
             " and tip them or wrap them in sticky tape.")

EVERYDAY = frozenset(
    f"{word}{end}"
    for word in ("set", "train", "dip", "fan", "drum", "bell", "ease", "grain", "cone", "clamp", "temper",
                 "tie", "dome", "flare", "bag")
    for end in ("", "s")
)
"""Forms of the trade's words that instructions also use in their everyday sense: a card explains them not."""

_OF_ENDS = "tip"
_OWN = re.compile(r"\b(?:bustle )?cage\b")
"""What is made: a card says it and need not explain it, least of all by the page on round cages."""

_MOST_WORDS = 6


@record(frozen=True, slots=True)
class Word:
    """A word of the trade: every form it may stand in, and what it means in one sentence."""

    name: str
    forms: tuple[str, ...]
    means: str


@record(frozen=True, slots=True)
class Card:
    """One card. ``before`` are the numbers of the cards that must be finished first; ``ends``: how cut ends
    are finished, blank when the card has none; ``checker`` and ``look``: who checks it and at what."""

    number: int
    heading: str
    body: Md
    step: Step
    sitting: int
    before: str
    cautions: tuple[str, ...]
    ends: str
    checker: str
    look: str
    words: tuple[Word, ...]
    figures: tuple[Figure, ...]


_SHOWN: Mapping[str, str] = {
    "cut-cover": "cover",
    "cut-roll": "roll",
    "cut-sides": "panel",
    "cut-panels": "panel",
    "cut-cloth": "",
}
"""Actions whose piece is drawn as a panel of the plan: a word of the panel's name."""


def card(plan: Plan, step: Step, sitting: int, heading: str, body: Md, cards: Mapping[str, int],
         words: tuple[Word, ...], figures: Mapping[str, Figure]) -> Card:
    """The card of a step. ``cards`` gives the card of each task so far, ``figures`` the plan's by name."""
    tasks = [task for task in plan.work.tasks if task.id in step.ids]
    needed = sorted({cards[need] for task in tasks for need in task.needs if need in cards} - {step.number})
    keys = dict.fromkeys(key for task in tasks for key in task.cautions)
    hoops = plan.spec.build.hooped
    metal = hoops is not None and hoops.material.grade.metal
    wet = hoops is not None and hoops.bent_wet and step.action == "cut-hoop"
    ends = (_WET_ENDS if wet else _METAL_ENDS if metal else _OTHER_ENDS) if step.action in _ENDS else ""
    return Card(
        step.number,
        heading,
        body,
        step,
        sitting,
        ids_text(str(number) for number in needed),
        tuple(CAUTIONS[key].text for key in keys if key in CAUTIONS),
        ends,
        _checker(plan, step.hand),
        _LOOK_AT.get(step.action) or _LOOK[ACTIONS[step.action].setup],
        spoken(_OWN.sub(" ", f"{heading} {body}"), words if ends else tuple(w for w in words if w.name != _OF_ENDS)),
        _drawn(plan, step, figures),
    )


def _drawn(plan: Plan, step: Step, figures: Mapping[str, Figure]) -> tuple[Figure, ...]:
    """A step's sketch; where it has none because the plan's figure of a piece shows it, that figure."""
    if step.figure is not None:
        return (step.figure,)
    word = _SHOWN.get(step.action)
    if word is None:
        return ()
    names = [f"panel-{at}" for at, panel in enumerate(plan.shape.panels, 1) if word in panel.part]
    return tuple(figures[name] for name in names if name in figures)


def spoken(text: str, words: tuple[Word, ...]) -> tuple[Word, ...]:
    """The words of the trade that a text speaks, in the order it first does, a few at most."""
    bare = re.sub(r"`[^`]*`|[*_]", " ", text).lower()
    found = []
    for word in words:
        forms = "|".join(re.escape(form) for form in word.forms if form not in EVERYDAY)
        at = re.search(rf"\b(?:{forms})\b", bare) if forms else None
        if at:
            found.append((at.start(), word))
    return tuple(word for _, word in sorted(found, key=lambda item: item[0]))[:_MOST_WORDS]


def _checker(plan: Plan, hand: str) -> str:
    others = [name for name in plan.work.order.hands if name != hand]
    return f"{listed(others, 'or')}, who did not do it" if hand and others else "somebody who did not do it"
