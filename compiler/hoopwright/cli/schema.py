"""``hoopwright schema``: the JSON Schema, for editors and other programs."""

from __future__ import annotations

import argparse
import sys

from hoopwright.cli import CLEAN


def run(options: argparse.Namespace) -> int:
    """Print the schema of specs, of plan.json or of shopping.json, byte for byte as it is shipped."""
    from hoopwright.spec.checking.schema import schema_text

    sys.stdout.write(schema_text(options.which))
    return CLEAN
