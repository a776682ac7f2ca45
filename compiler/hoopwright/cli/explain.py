"""``hoopwright explain``: the page of a code, a check or a word."""

from __future__ import annotations

import argparse
import sys

from hoopwright.cli import CLEAN, MISUSED, say
from hoopwright.cli.arguments import COMMANDS
from hoopwright.explain.pages import find, listing, nearest


def run(options: argparse.Namespace) -> int:
    """Print the pages of a topic, or the list of all; an unknown topic offers the nearest names."""
    topic = " ".join(options.topic)
    if not topic:
        sys.stdout.write(listing())
        return CLEAN
    found = find(topic)
    if not found:
        near = nearest(topic)
        offer = f"; near it: {', '.join(near)}" if near else "; `hoopwright explain` lists all there are"
        if topic in COMMANDS:
            offer = f"; it is a command: `hoopwright {topic} --help` tells of it"
        say.progress(f"there is no page on `{topic}`{offer}")
        return MISUSED
    sys.stdout.write("\n".join(page.text for page in found))
    return CLEAN
