"""What is passed on with a cage: task cards for volunteers, the wearing and care sheet, the inside label.

``cards.md`` and ``wearing.md`` read well on a forge; forges drop page breaks, so the same pages are also laid
out in ``pass-on.html``, which prints in one go from any browser: one card a page, its type as large as the page
allows, the label last.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from html import escape

from hoopwright.plan.model import Plan
from hoopwright.render.escape import Md
from hoopwright.render.figure import Figure
from hoopwright.render.markdown import page_values, ticked, tidy
from hoopwright.render.onepage import size_class, type_size
from hoopwright.render.printable import html
from hoopwright.render.templating import FOLDER, environment
from hoopwright.render.views.cards import Card, Word, card


def passed_on(plan: Plan, figures: tuple[Figure, ...], words: tuple[Word, ...]) -> dict[str, str]:
    """``cards.md``, ``wearing.md`` and ``pass-on.html`` by name. ``words`` are those that cards explain."""
    by_name = {figure.name: figure for figure in figures}
    values = page_values(plan, by_name)
    env = environment()
    cards, template = list(_cards(plan, values, words, by_name)), env.get_template("card.md.j2")
    pages = [_elsewhere(tidy(template.render(values, card=one))) for one in cards]
    front = tidy(env.get_template("cards.md.j2").render(values, cards=cards))
    wearing = _elsewhere(tidy(env.get_template("wearing.md.j2").render(values)))
    return {
        "cards.md": "\n---\n\n".join((front, *pages)),
        "wearing.md": wearing,
        "pass-on.html": _sheet(plan, [front, *pages], wearing, values["wearing"].label),
    }


def _cards(plan: Plan, values: dict[str, object], words: tuple[Word, ...],
           figures: Mapping[str, Figure]) -> Iterator[Card]:
    """Every step as a card, its instruction in full."""
    env = environment()
    of_task: dict[str, int] = {}
    sittings = values["sittings"]
    assert isinstance(sittings, tuple)
    for sitting in sittings:
        for step in sitting.steps:
            said = env.get_template(f"actions/{step.action}.md.j2").render(values, step=step)
            heading, _, body = said.partition("\n")
            text = Md(ticked(body, step).strip("\n"))
            yield card(plan, step, sitting.number, heading.strip(), text, of_task, words, figures)
            of_task.update(dict.fromkeys(step.ids, step.number))


def _elsewhere(text: str) -> str:
    """Links to chapters of the plan lead to the plan."""
    return text.replace("](#", "](plan.md#")


def _wide(page: str) -> str:
    """Another class for a card that shows the plan's figure of a piece, which is read, not glanced at."""
    panels = page.count("(figures/panel-")
    return "" if not panels else " wide" if panels == 1 else " several"


def _sheet(plan: Plan, cards: list[str], wearing: str, label: tuple[tuple[str, str], ...]) -> str:
    """One HTML page for the printer."""
    style = (FOLDER / "pass-on.css").read_text(encoding="utf-8")
    front, *rest = cards
    sections = [f'<section class="card {size_class(type_size(front))}">\n{html(front)}\n</section>']
    sections += [
        f'<section class="card {size_class(type_size(page))}{_wide(page)}">\n{html(page)}\n</section>'
        for page in rest]
    sections.append(f'<section class="wearing">\n{html(wearing)}\n</section>')
    cloth = plan.shape.petticoat or plan.shape.corded
    where = "the upper edge" if cloth is not None and cloth.drawstring else "the waistband"
    rows = "\n".join(f"<tr><th>{escape(name)}</th><td>{escape(value)}</td></tr>" for name, value in label)
    sections.append(
        "<section>\n<h1>Inside label</h1>\n<p>Cut it out, or copy it in laundry ink on to tape, and sew"
        f' it inside {where}.</p>\n<table class="label">\n{rows}\n</table>\n</section>')
    paper = "A4" if plan.spec.workshop.paper == "A4" else "letter"
    return (
        '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        f"<title>{escape(plan.spec.title)}: to pass on</title>\n<style>\n"
        f"@page {{ size: {paper}; margin: 15mm; }}\n{style}</style>\n</head>\n<body>\n"
        + "\n".join(sections) + "\n</body>\n</html>\n"
    )
