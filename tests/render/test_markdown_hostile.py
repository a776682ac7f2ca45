"""A title full of Markdown, HTML, templates and Mermaid prints as text and does nothing."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

import pytest
from markdown_it import MarkdownIt

from hoopwright.library.model import Goods
from hoopwright.plan.model import Plan
from hoopwright.render.markdown import plan_markdown
from hoopwright.spec.model import Assumed

TITLES = (
    "# Act *two* <script>alert(1)</script> {{ 7*7 }} {% include 'x' %} [x](javascript:1) | `a`",
    "```mermaid\ngraph TD; A-->B\n```",
    '%%{init: {"securityLevel": "loose"}}%% click s1 "javascript:alert(1)"',
    "</h1><img src=x onerror=alert(1)> &lt;b&gt; ![i](http://x.example/i.png)",
    "{# gone #}{{ self }}{{ ''.__class__ }}",
    "- [ ] not a box\n\n---\n\n> not a quote",
)


def _html(page: str) -> str:
    return MarkdownIt("commonmark").enable("table").render(page)


@pytest.mark.parametrize("title", TITLES)
def test_the_title_is_the_heading_as_it_stands(title: str, make_plan: Callable[..., Plan]) -> None:
    page = plan_markdown(make_plan(title=title))
    tokens = MarkdownIt("commonmark").parse(page)
    assert tokens[0].tag == "h1"
    shown = "".join(child.content for child in tokens[1].children or [])
    assert shown == re.sub(r"\s+", " ", title)


@pytest.mark.parametrize("title", TITLES)
def test_only_the_heading_differs_from_a_tame_title(title: str, make_plan: Callable[..., Plan]) -> None:
    tame = plan_markdown(make_plan(title="Tame")).split("\n", 1)
    wild = plan_markdown(make_plan(title=title)).split("\n", 1)
    assert wild[1] == tame[1]


@pytest.fixture(scope="module")
def hostile(make_plan: Callable[..., Plan]) -> str:
    """A page whose every text of the maker's own is hostile."""
    plan = make_plan(title=TITLES[0])
    bad = '<img src=x onerror="alert(1)"> | {{ 1234*1000 }} `x` [y](z) "]; end; %%{init}%%\n```\n# h'
    spec = plan.spec
    stock = replace(spec.build.hoops.material, name=bad)
    hoops = replace(spec.build.hoops, material=stock, casing=Goods(bad, "braid"))
    build = replace(
        spec.build, hooped=hoops, waistband=replace(spec.build.waistband, fastening=Goods(bad, "fastening"))
    )
    spec = replace(
        spec,
        build=build,
        wearer=replace(spec.wearer, name=bad),
        assumed=(Assumed(bad, bad, "text", bad),),
        workshop=replace(spec.workshop, tools=(bad,)),
    )
    first = replace(plan.shape.hoops[0], id=bad)
    shape = replace(plan.shape, hoops=(first, *plan.shape.hoops[1:]))
    supply = replace(plan.supply, shopping=tuple(replace(line, item=bad) for line in plan.supply.shopping))
    tasks = tuple(
        replace(task, parts=tuple(bad if part == "H1" else part for part in task.parts))
        for task in plan.work.tasks
    )
    return plan_markdown(
        replace(
            plan,
            source="a`b|c.yaml",
            spec=spec,
            shape=shape,
            supply=supply,
            work=replace(plan.work, tasks=tasks),
        )
    )


def test_no_text_of_the_makers_becomes_html(hostile: str) -> None:
    html = _html(hostile)
    assert "onerror" in html
    assert not re.search(r"<(?:img|script|b)\b", html)


def test_no_text_of_the_makers_is_a_template(hostile: str) -> None:
    assert "1234000" not in hostile
    assert hostile.count("1234\\*1000") > 20


def test_tables_stay_whole(hostile: str) -> None:
    html = _html(hostile)
    for row in html.split("<table>")[1:]:
        table = row.split("</table>")[0]
        heads = len(re.findall("<th[ >]", table.split("</tr>")[0]))
        assert all(line.count("<td") == heads for line in table.split("<tr>")[2:])


def test_the_drawing_keeps_its_fence_and_its_labels(hostile: str) -> None:
    drawing = hostile.split("```mermaid\n")[1].split("\n```")[0]
    assert drawing.startswith("flowchart TD")
    assert "%%" not in drawing
    for line in drawing.split("\n")[1:]:
        assert re.fullmatch(
            r'\s*(?:n\d+ --> n\d+|n\d+(?:\["[^"\[\]{}<>]*"\]|'
            r'\{\{"[^"\[\]{}<>]*"\}\}))',
            line,
        ), line


def test_the_yaml_to_fill_in_is_closed(hostile: str) -> None:
    assert re.findall("^```.*", hostile, re.MULTILINE) == [
        "```yaml", "```", "```yaml", "```", "```mermaid", "```"
    ]
    assert "\n```\n# h" not in hostile
