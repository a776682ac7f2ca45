"""SARIF output held against OASIS Standard SARIF 2.1.0 (27 March 2020).

The whole schema of the standard is not to be had from a Python package, so the part of it that our documents
use is written out here from the standard's sections (from memory, section numbers beside), closed against
every property we do not mean to write: 3.13 sarifLog, 3.14 run, 3.18 tool, 3.19 toolComponent, 3.49
reportingDescriptor, 3.27 result, 3.11 message, 3.28 location, 3.29 physicalLocation, 3.4 artifactLocation,
3.30 region.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft7Validator

from hoopwright.cli.reporting import _described
from hoopwright.compile import compile_spec
from hoopwright.render.outcome import Outcome
from hoopwright.render.sarif import sarif
from hoopwright.source.diagnostic import Diagnostic, Severity


def closed(required: list[str], **properties: Any) -> dict[str, Any]:
    return {"type": "object", "required": required, "properties": properties, "additionalProperties": False}


TEXT: dict[str, Any] = {"type": "string"}
MESSAGE = closed(["text"], text=TEXT, markdown=TEXT)
LEVEL = {"enum": ["none", "note", "warning", "error"]}
COUNT = {"type": "integer", "minimum": 1}
REGION = closed(["startLine"], startLine=COUNT, startColumn=COUNT, endLine=COUNT, endColumn=COUNT)
ARTIFACT = closed(["uri"], uri={"type": "string", "format": "uri-reference"})
PHYSICAL = closed(["artifactLocation"], artifactLocation=ARTIFACT, region=REGION)
LOCATION = closed(["physicalLocation"], id={"type": "integer", "minimum": -1}, physicalLocation=PHYSICAL,
                  message=MESSAGE)
RULE = closed(["id"], id=TEXT, shortDescription=MESSAGE, help=MESSAGE)
RESULT = closed(["message", "ruleId", "ruleIndex", "level"], ruleId=TEXT,
                ruleIndex={"type": "integer", "minimum": -1}, level=LEVEL, message=MESSAGE,
                locations={"type": "array", "items": LOCATION},
                relatedLocations={"type": "array", "items": LOCATION, "uniqueItems": True})
DRIVER = closed(["name"], name=TEXT, version=TEXT,
                rules={"type": "array", "items": RULE, "uniqueItems": True})
RUN = closed(["tool", "results"], tool=closed(["driver"], driver=DRIVER),
             columnKind={"enum": ["utf16CodeUnits", "unicodeCodePoints"]},
             results={"type": "array", "items": RESULT})
LOG = closed(["version", "runs"], **{
    "$schema": {"type": "string", "format": "uri"}, "version": {"const": "2.1.0"},
    "runs": {"type": "array", "items": RUN}})

BAD = sorted((Path(__file__).parents[1] / "bad").rglob("*.yaml"))
SPECS = sorted((Path(__file__).parents[2] / "specs").glob("*/cage.yaml"))


def outcome(path: Path, name: str) -> Outcome:
    run = compile_spec(path.read_bytes(), name)
    return Outcome(name, name, run.diagnostics, run.plan)


def checked(*outcomes: Outcome) -> dict[str, Any]:
    log: dict[str, Any] = json.loads(sarif(outcomes, _described))
    wrong = [f"{list(one.absolute_path)}: {one.message}" for one in Draft7Validator(LOG).iter_errors(log)]
    assert wrong == []
    return log


def test_every_bad_spec_and_every_plan_reports_well() -> None:
    log = checked(*(outcome(path, path.name) for path in (*BAD, *SPECS)))
    run = log["runs"][0]
    rules = [rule["id"] for rule in run["tool"]["driver"]["rules"]]
    assert len(rules) > 25
    assert rules == sorted(set(rules))
    for result in run["results"]:
        assert rules[result["ruleIndex"]] == result["ruleId"]
        for place in (*result["locations"], *result.get("relatedLocations", ())):
            region = place["physicalLocation"].get("region")
            if region:
                assert (region["endLine"], region["endColumn"]) >= (
                    region["startLine"], region["startColumn"])


def test_an_error_stands_at_its_line_and_column() -> None:
    text = b"spec: 1\nunits: inches\nwearer: {waist: 28}\nshape: {hem: {girth: 110 in}}\n"
    run = compile_spec(text, "a b/c.yaml")
    log = checked(Outcome("a b/c.yaml", "c", run.diagnostics))
    result = next(one for one in log["runs"][0]["results"] if one["ruleId"] == "unit-missing")
    place = result["locations"][0]["physicalLocation"]
    assert place["artifactLocation"]["uri"] == "a%20b/c.yaml"
    assert place["region"] == {"startLine": 3, "startColumn": 17, "endLine": 3, "endColumn": 19}
    assert result["level"] == "error"


@pytest.mark.parametrize("file", ["/tmp/x.yaml", "söme/ñame.yaml", "back\\slash.yaml", "per%cent.yaml"])
def test_any_file_name_becomes_a_uri(file: str) -> None:
    log = checked(Outcome(file, file, (Diagnostic("file-missing", Severity.ERROR, "no", file),)))
    found = log["runs"][0]["results"][0]["locations"][0]["physicalLocation"]["artifactLocation"]["uri"]
    assert found.isascii()
    assert "\\" not in found
