"""The files that a plan is written into."""

from __future__ import annotations

from hoopwright.plan.model import Plan


def rendered(plan: Plan, *, cards: bool = False) -> dict[str, str]:
    """Every file of a plan by its name relative to the plan's folder; with ``cards`` also what is passed
    on."""
    from hoopwright.render.figures import draw_figures
    from hoopwright.render.machine import plan_json
    from hoopwright.render.markdown import plan_markdown

    figures = draw_figures(plan)
    files = {f"figures/{figure.name}.svg": figure.svg for figure in figures}
    files["plan.json"] = plan_json(plan)
    files["plan.md"] = plan_markdown(plan, figures)
    if cards:
        from hoopwright.cli.words import card_words
        from hoopwright.render.passing import passed_on

        files |= passed_on(plan, figures, card_words())
    return files
