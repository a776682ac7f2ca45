"""A good spec with one value or line damaged ends in diagnostics or in a spec, never in a traceback."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from hoopwright.compile import compile_spec
from hoopwright.render import report
from hoopwright.source.read import read

SPEC = Path(__file__).parents[2] / "specs" / "harbour-play" / "cage.yaml"
TEXT = SPEC.read_text(encoding="utf-8")
DOCUMENT, _ = read(TEXT.encode(), "cage.yaml")
assert DOCUMENT is not None
PATHS = sorted((path for path in DOCUMENT.spans if path), key=str)

ODD = st.one_of(
    st.none(), st.booleans(), st.integers(-3, 100), st.floats(allow_nan=False, allow_infinity=False),
    st.text(max_size=12), st.just([]), st.just({}), st.lists(st.integers(), max_size=3),
    st.sampled_from(["0 in", "-3 in", "1e300 m", "1e-300 in", "28", "3 kg", "5 ft 4", "0 USD", "4 yd2",
                     "10 %", "spring steel, tempered", "drum", "oval", "calico", "nonsense", "{{ 7 * 7 }}",
                     "<b>", "H1"]),
    st.dictionaries(st.text(min_size=1, max_size=5), st.integers(), max_size=2),
)


def damaged(path: tuple[str | int, ...], value: Any) -> bytes:
    """The worked example as JSON, which is YAML, with one value replaced."""
    assert DOCUMENT is not None
    tree = json.loads(json.dumps(DOCUMENT.value))
    inside = tree
    for key in path[:-1]:
        inside = inside[key]
    inside[path[-1]] = value
    return json.dumps(tree, ensure_ascii=False).encode("utf-8", "replace")


def tell(data: bytes) -> None:
    """Compile to the end of the spec stage and print what there is to say."""
    compiled = compile_spec(data, "cage.yaml", syntax_only=True)
    assert compiled.spec is not None or compiled.diagnostics
    for write in (report.text, report.short, report.json_lines):
        write(compiled.diagnostics, {"cage.yaml": data.decode("utf-8", "replace")})


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.sampled_from(PATHS), ODD)
def test_one_odd_value(path: tuple[str | int, ...], value: Any) -> None:
    tell(damaged(path, value))


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.integers(0, len(TEXT) - 1), st.sampled_from([*":'!0{]", "", "- ", "\n", "  ", "*a", "&a "]))
def test_one_sign_put_in_or_taken_out(at: int, sign: str) -> None:
    tell((TEXT[:at] + sign + TEXT[at + (not sign) :]).encode())


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.sets(st.integers(0, TEXT.count("\n")), min_size=1, max_size=4))
def test_lines_left_out(left_out: set[int]) -> None:
    lines = TEXT.split("\n")
    tell("\n".join(line for number, line in enumerate(lines) if number not in left_out).encode())
