"""Reading YAML: values of the core schema, places, and every refusal with its line, column and code."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.source.diagnostic import Diagnostic, Span
from hoopwright.source.read import Document, read
from hoopwright.source.tree import DEEPEST, MOST_VALUES


def document(text: str) -> Document:
    """The document of a text that must be readable."""
    found, said = read(text.encode(), "a.yaml")
    assert said == ()
    assert found is not None
    return found


def refusals(data: bytes | str) -> tuple[Diagnostic, ...]:
    """The refusals of a text that must not be readable."""
    found, said = read(data if isinstance(data, bytes) else data.encode(), "a.yaml")
    assert found is None
    assert said
    return said


def test_only_the_core_schema_gives_values_that_are_not_text() -> None:
    value = document(
        "n: no\ny: yes\no: off\nclock: 12:30\ndate: 2027-03-02\nunder: 1_000\nbig: 0o14\nhex: 0x1F\n"
        "int: 012\nminus: -3\nfloat: 1.30\nexp: 1e3\nt: true\nf: False\nnothing: ~\nempty:\n"
        "quoted: '1'\nq2: \"true\"\nsize: 10 1/2 in\nfeet: 5' 4\"\nmerge: <<\n").value
    assert value == {
        "n": "no", "y": "yes", "o": "off", "clock": "12:30", "date": "2027-03-02", "under": "1_000",
        "big": 12,
        "hex": 31, "int": 12, "minus": -3, "float": 1.3, "exp": 1000.0, "t": True, "f": False,
        "nothing": None,
        "empty": None, "quoted": "1", "q2": "true", "size": "10 1/2 in", "feet": "5' 4\"", "merge": "<<"}
    assert type(value["int"]) is int
    assert type(value["exp"]) is float


def test_every_value_and_key_has_its_place() -> None:
    found = document("a: {b: 10 in}\nlist:\n  - one\n  - k: v\ntext: |\n  first\n  second\n\nlast:\n")
    assert found.spans[("a",)] == Span("a.yaml", 1, 4, 1, 14)
    assert found.key_spans[("a", "b")] == Span("a.yaml", 1, 5, 1, 6)
    assert found.spans[("a", "b")] == Span("a.yaml", 1, 8, 1, 13)
    assert found.spans[("list", 0)] == Span("a.yaml", 3, 5, 3, 8)
    assert found.spans[("list", 1, "k")] == Span("a.yaml", 4, 8, 4, 9)
    assert found.spans[("list",)] == Span("a.yaml", 3, 3, 4, 9)
    assert found.spans[("text",)] == Span("a.yaml", 5, 7, 7, 9)
    assert found.spans[("last",)] == Span("a.yaml", 9, 5, 9, 5)
    assert set(found.key_spans) == {("a",), ("a", "b"), ("list",), ("list", 1, "k"), ("text",), ("last",)}


def test_a_repeat_has_its_own_place_and_the_original_inside() -> None:
    found = document("a: &x {b: {c: 1}}\nd: *x\n")
    assert found.value == {"a": {"b": {"c": 1}}, "d": {"b": {"c": 1}}}
    assert found.spans[("d",)] == Span("a.yaml", 2, 4, 2, 6)
    assert found.spans[("d", "b", "c")] == found.spans[("a", "b", "c")]
    assert found.key_spans[("d", "b")] == found.key_spans[("a", "b")]


@pytest.mark.parametrize("data", [
    b"\xef\xbb\xbfa: 1\nb: 2\n", b"a: 1\r\nb: 2\r\n", b"a: 1\rb: 2", b"---\na: 1\nb: 2\n...\n",
    b"{a: 1, b: 2}",
])
def test_marks_and_line_ends_of_other_machines_are_read(data: bytes) -> None:
    found, said = read(data, "a.yaml")
    assert said == ()
    assert found is not None
    assert found.value == {"a": 1, "b": 2}
    assert found.key_spans[("b",)].line == (1 if data[:1] == b"{" else 3 if data[:1] == b"-" else 2)


NESTED = "a: " + "[" * 300 + "]" * 300
BOMB = "a: &a [x,x,x,x,x,x,x,x,x,x]\n" + "".join(
    f"{name}: &{name} [{','.join(f'*{before}' for _ in range(10))}]\n"
    for before, name in zip("abcdefgh", "bcdefghi", strict=True))


@pytest.mark.parametrize(("data", "code", "line", "column"), [
    ("", "file-empty", 0, 0), ("# only a remark\n", "file-empty", 0, 0), ("---\n", "file-empty", 0, 0),
    ("~\n", "file-empty", 0, 0),
    ("- a\n", "top-not-keys", 1, 1), ("ten inches\n", "top-not-keys", 1, 1),
    ("# x\n12\n", "top-not-keys", 2, 1),
    (b"x" * (2**20 + 1), "file-too-large", 0, 0),
    (b"title: caf\xe9\n", "text-not-utf8", 1, 11), (b"\xef\xbb\xbf\xe9", "text-not-utf8", 1, 1),
    (b"a: 1\ntitle: \xc3\xa9\xe9", "text-not-utf8", 2, 9), ("a: 1".encode("utf-16"), "text-not-utf8", 1, 1),
    (b"a: 1\nb: \x00\n", "control-character", 2, 4), ("a: 1\u2028b: 2\n", "control-character", 1, 5),
    ('a: "\\0"\n', "control-character", 1, 4), ('a: "\\ud800"\n', "control-character", 1, 4),
    ('"\\0": 1\n', "control-character", 1, 1),
    ("a:\n\tb: 1\n", "tab", 2, 1), ("a: 1\t# why\n", "tab", 1, 5),
    ("%YAML 1.1\n---\na: no\n", "yaml-directive", 1, 1),
    ("# x\n\n%TAG ! x\n---\na: 1\n", "yaml-directive", 3, 1),
    ("a: !!python/object:os.system x\n", "yaml-tag", 1, 4), ("a: !mine {b: 1}\n", "yaml-tag", 1, 4),
    ("a: ! 3\n", "yaml-tag", 1, 4), ("!!str a: 1\n", "yaml-tag", 1, 1),
    ("a: 1\nb: 2\na: 3\n", "duplicate-key", 3, 1), ("a: {b: 1, b: {c: 2}}\n", "duplicate-key", 1, 11),
    ("1: x\n", "key-not-text", 1, 1), ("true: x\n", "key-not-text", 1, 1), (": x\n", "key-not-text", 1, 1),
    ("? [a]\n: b\n", "key-not-text", 1, 3), ("{a: 1}: b\n", "key-not-text", 1, 1),
    ("a: &k x\n*k : 3\n", "key-not-text", 2, 1), ("a: 1\n<<: {b: 1}\n", "merge-key", 2, 1),
    ("a: .nan\n", "number-not-finite", 1, 4), ("a: -.inf\n", "number-not-finite", 1, 4),
    ("a: 1e400\n", "number-not-finite", 1, 4), ("a: " + "9" * 5000, "number-not-finite", 1, 4),
    ("a: 1\n---\nb: 2\n", "second-document", 2, 1), ("a: 1\n...\n---\nb: 2\n", "second-document", 3, 1),
    (NESTED, "nesting-too-deep", 1, 3 + DEEPEST), (BOMB, "too-many-values", 5, 17),
    ("a: &x [1, *x]\n", "anchor-cycle", 1, 11), ("a: *x\n", "anchor-unknown", 1, 4),
    ("title: Harbour: act two\n", "yaml-syntax", 1, 15), ("a: 1\n  b: 2\n", "yaml-syntax", 2, 1),
    ("a:\n  b: 1\n c: 2\n", "yaml-syntax", 3, 2), ("a: {b: 1\nc: 2\n", "yaml-syntax", 1, 4),
    ("a: [1, 2\n", "yaml-syntax", 1, 4), ("a: 'x\nb: 2\n", "yaml-syntax", 1, 4),
    ("a: '5' 4\"'\n", "yaml-syntax", 1, 8), ("a: @x\n", "yaml-syntax", 1, 4),
    ("a: 1\nb\n", "yaml-syntax", 2, 1),
    ("a: - b\n", "yaml-syntax", 1, 4), ("a: 1\n- b\n", "yaml-syntax", 2, 1),
    ('a: "\\q"\n', "yaml-syntax", 1, 6),
    ('a: 1\nb: "\\UFFFFFFFF"\n', "yaml-syntax", 2, 5), ("a: !foo!bar x\n", "yaml-syntax", 1, 4),
    ("a: *\n", "yaml-syntax", 1, 5), ("}\n", "yaml-syntax", 1, 1), ("a: |x\n  b\n", "yaml-syntax", 1, 5),
    ("'a' 'b': 1\n", "yaml-syntax", 1, 5),
])
def test_refused_with_code_and_place(data: bytes | str, code: str, line: int, column: int) -> None:
    first = refusals(data)[0]
    assert first.code == code
    assert first.help
    place = (first.span.line, first.span.column) if first.span else (0, 0)
    assert place == (line, column)


def test_no_phrase_of_the_yaml_reader_reaches_the_maker() -> None:
    for text in ("a: {b: 1\nc: 2\n", "a:\n  b: 1\n c: 2\n", "a: 'x", "a: 1\n- b\n", "a: |x\n  b\n"):
        said = refusals(text)[0]
        assert said.code == "yaml-syntax"
        assert "cannot be read as YAML" not in said.message
        assert "block" not in said.message


def test_a_comma_in_a_number_inside_braces_is_told_as_such() -> None:
    said = refusals("a: {girth: 2,8 m, b: 1}\n")
    assert [(one.code, one.message, one.help) for one in said] == [
        ("quantity-unreadable", "`2,8 m` has a comma in its number", "write `2.8 m`")]
    assert said[0].span == Span("a.yaml", 1, 12, 1, 17)
    assert document("a: {b: 2, 8 m: 1}\n").value == {"a": {"b": 2, "8 m": 1}}
    assert document("a: [2,8 m]\n").value == {"a": [2, "8 m"]}


def test_both_places_of_a_duplicate_key_are_shown() -> None:
    said = refusals("a: 1\nb: 2\na: 3\n")[0]
    assert [(label.span.line, label.text) for label in said.labels] == [(1, "the first one is here")]


def test_several_errors_are_told_in_one_run() -> None:
    codes = [found.code for found in refusals("a: 1\na: 2\nb: !x 1\n3: c\nd: .inf\n")]
    assert codes == ["duplicate-key", "yaml-tag", "key-not-text", "number-not-finite"]


def test_the_limits_are_where_they_are_said_to_be() -> None:
    document("a: " + "[" * (DEEPEST - 1) + "]" * (DEEPEST - 1))
    assert refusals("a: " + "[" * DEEPEST + "]" * DEEPEST)[0].code == "nesting-too-deep"
    # the mapping, one key and the list count three; a repeated list counts in full each time
    items = (MOST_VALUES - 6) // 2
    rest = MOST_VALUES - 5 - 2 * items - 1
    document("a: &x [" + "1," * items + "]\nb: *x\n" + "c:\n" * (rest // 2))
    assert refusals("a: &x [" + "1," * items + "]\nb: *x\nc: 1\nd: 1\n")[0].code == "too-many-values"


def test_deep_nesting_through_repeats_is_refused() -> None:
    half, room = "a: &x " + "[" * 30 + "]" * 30 + "\n", DEEPEST - 31
    document(half + "b: " + "[" * room + "*x" + "]" * room)
    assert refusals(half + "b: [" + "[" * room + "*x" + "]" * room + "]")[0].code == "nesting-too-deep"


def test_three_hundred_levels_by_indentation_are_refused_in_good_order() -> None:
    text = "\n".join(" " * depth + "a:" for depth in range(300))
    assert refusals(text)[0].code == "nesting-too-deep"


_YAML_SIGNS = st.text("abk12 :-[]{},&*!|>'\"\n#?%@`~<.\\\ue000\x00\t\r…é\ufeff\U0001f389", max_size=60)


@settings(max_examples=400)
@given(st.one_of(_YAML_SIGNS.map(str.encode), st.binary(max_size=60), st.text(max_size=60).map(
    lambda text: text.encode("utf-8", "surrogatepass"))))
def test_any_bytes_end_in_a_document_or_in_diagnostics(data: bytes) -> None:
    found, said = read(data, "a.yaml")
    assert (found is None) == bool(said)
    for one in said:
        assert one.message
        assert not one.message.endswith((".", "?"))
        assert one.help
    if found is not None:
        assert isinstance(found.value, dict)
        for path, span in found.spans.items():
            assert (span.line, span.column) <= (span.end_line, span.end_column), path
            if path and isinstance(path[-1], str):
                assert path in found.key_spans
