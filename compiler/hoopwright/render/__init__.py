"""Render stage: a Plan in, Markdown, SVG and JSON out; diagnostics into their formats."""
