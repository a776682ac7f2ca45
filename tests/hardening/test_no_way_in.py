"""A spec opens no door: no network, no shell, nothing written outside the output folder, nothing read outside
the spec's project and the installation."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import hoopwright

WATCHED = """
import json, os, sys
seen = {"read": [], "write": [], "other": []}
def watch(event, arguments):
    if event == "open":
        path, mode, flags = arguments
        if isinstance(path, (str, bytes, os.PathLike)):
            writing = isinstance(flags, int) and bool(flags & (os.O_WRONLY | os.O_RDWR | os.O_CREAT))
            seen["write" if writing else "read"].append(os.path.abspath(os.fsdecode(path)))
    elif event.split(".")[0] in ("socket", "subprocess", "pickle"):
        seen["other"].append(event)
    elif event in ("os.system", "os.exec", "os.spawn"):
        seen["other"].append(event)
sys.addaudithook(watch)
sys.argv[0] = "hoopwright"
from hoopwright.cli import main
code = main(sys.argv[1:])
watched, seen = seen, {"read": [], "write": [], "other": []}
sys.stderr.write("\\nWATCHED " + json.dumps({**watched, "code": code}))
"""

HOSTILE = """
spec: 1
title: "{{ ().__class__ }} {% include '/etc/passwd' %} <script>alert(1)</script> `$(id)` ![x](/etc/y)"
units: centimetres
wearer: {name: "../../../etc/passwd", stature: 168 cm, waist: 72 cm}
shape: {hem: {girth: 280 cm}, hoops: {count: 5, names: ["../../up", "/etc/x", "<b>", "a|b", "%0A"]}}
load: [{name: "{{ 7 * 7 }}", weight: 1 kg}]
"""


def _watched(*arguments: str) -> dict[str, list[str]]:
    environment = os.environ | {"PYTHONDONTWRITEBYTECODE": "1"}
    run = subprocess.run(
        [sys.executable, "-c", WATCHED, *arguments],
        capture_output=True,
        text=True,
        check=False,
        env=environment,
    )
    found: dict[str, list[str]] = json.loads(run.stderr.rsplit("WATCHED ", 1)[1])
    return found


def test_a_hostile_spec_reads_and_writes_nothing_it_should_not(tmp_path: Path) -> None:
    project, out = tmp_path / "project", tmp_path / "out"
    project.mkdir()
    (tmp_path / "secret.yaml").write_text("wearer: {waist: 70 cm}\n")
    (project / "cage.yaml").write_text(HOSTILE)
    seen = _watched("build", str(project / "cage.yaml"), "-o", str(out))
    assert seen["code"] == 0
    assert seen["other"] == []
    written = {path for path in seen["write"] if not path.startswith("/dev/")}
    assert written
    assert {path for path in written if not path.startswith(f"{out}/")} == set()
    homes = (str(project), str(out), sys.prefix, sys.base_prefix, str(Path(hoopwright.__file__).parents[2]))
    system = ("/proc/", "/sys/", "/dev/", "/usr/", "/lib", "/etc/ld", "/etc/localtime")
    strange = [path for path in seen["read"] if not path.startswith(homes + system)]
    assert strange == []
    assert not any("passwd" in path for path in seen["read"])


def test_hostile_text_is_printed_and_not_obeyed(tmp_path: Path) -> None:
    (tmp_path / "cage.yaml").write_text(HOSTILE)
    _watched("build", str(tmp_path / "cage.yaml"))
    plan = (tmp_path / "plan.md").read_text()
    assert "<script>" not in plan
    assert "49" not in plan.split("## At a glance")[0]
    assert sorted(path.name for path in tmp_path.iterdir()) == [
        "cage.yaml",
        "figures",
        "plan.json",
        "plan.md",
    ]
    for figure in (tmp_path / "figures").iterdir():
        assert "<script" not in figure.read_text()


def test_a_wearer_from_outside_the_project_is_refused(tmp_path: Path) -> None:
    project = tmp_path / "project"
    (project / ".git").mkdir(parents=True)
    (tmp_path / "secret.yaml").write_text("wearer: {waist: 70 cm}\n")
    (project / "cage.yaml").write_text(
        "spec: 1\nunits: centimetres\nwearer: {from: ../secret.yaml}\nshape: {hem: {girth: 280 cm}}\n"
    )
    seen = _watched("check", str(project / "cage.yaml"))
    assert seen["code"] == 1
    assert str(tmp_path / "secret.yaml") not in seen["read"]
