"""The same spec gives the same bytes everywhere; the command ``same_bytes.py`` does it over every spec."""

from __future__ import annotations

import importlib.util
import os
import sys
from pathlib import Path


def test_three_plans_are_the_same_in_every_surrounding(tmp_path: Path) -> None:
    """Two hash seeds, locales, time zones, working folders, processors' kernels, source and wheel; and whichever
    other Python with the libraries is on the PATH."""
    path = Path(__file__).with_name("same_bytes.py")
    module_spec = importlib.util.spec_from_file_location("same_bytes", path)
    assert module_spec is not None
    assert module_spec.loader is not None
    same = sys.modules["same_bytes"] = importlib.util.module_from_spec(module_spec)
    module_spec.loader.exec_module(same)
    names = ("mill-fair/design.yaml", "salt-masque/farthingale.yaml", "dye-works/petticoat.yaml")
    places = same.surroundings(tmp_path, list(same.other_pythons()))
    assert len({place.code for place in places}) == 2
    assert all((place.code / "hoopwright" / "__init__.py").is_file() for place in places)
    assert len({place.settings["PYTHONHASHSEED"] for place in places}) >= 3
    wrong = same.differing(
        [same.ROOT / "specs" / name for name in names], places, tmp_path / os.curdir / "out"
    )
    assert wrong == {place.name: [] for place in places[1:]}
