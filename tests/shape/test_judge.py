"""The worst of several values, and which part it is told of."""

import pytest

from hoopwright.shape.judge import worst


@pytest.mark.parametrize(("found", "part"), [
    ([(1.0, "T1"), (3.0, "T2"), (2.0, "T3")], "T2"),
    ([(3.0, "T2"), (3.0 + 1e-12, "T6")], "T2"),
    ([(3.0 - 1e-12, "T2"), (1.0, "T3"), (3.0, "T6")], "T2"),
    ([(3.0, "T2"), (3.001, "T6")], "T6"),
    ([(-2.0 - 1e-12, "T1"), (-2.0, "T2")], "T1"),
    ([(0.0, "")], ""),
])
def test_of_alike_parts_the_first_is_told(found: list[tuple[float, str]], part: str) -> None:
    """Which of two tapes alike leans more is a matter of rounding, and must not change the plan."""
    assert worst(found)[1] == part
