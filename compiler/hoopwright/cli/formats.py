"""The formats in which findings are printed."""

from __future__ import annotations

STREAMED = ("text", "short", "jsonl")
"""Printed as the findings come."""
GATHERED = ("sarif", "junit", "annotations", "summary")
"""One document at the end."""
