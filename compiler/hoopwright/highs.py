"""HiGHS as the engines of whole numbers use it: silent, and the same in every run."""

from __future__ import annotations

from typing import Any


def quiet_solver(**options: float) -> Any:
    """A solver that prints nothing, not even its name: output is off before its own set-up speaks. ``options`` are
    HiGHS's own, by name."""
    import highspy

    class Quiet(highspy.Highs):
        def enableCallbacks(self) -> None:
            self.setOptionValue("output_flag", False)
            speak: Any = super().enableCallbacks
            speak()

    make: Any = Quiet
    solver = make()
    for option, value in {"output_flag": False, "threads": 1, "random_seed": 0, **options}.items():
        solver.setOptionValue(option, value)
    return solver
