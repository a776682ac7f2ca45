"""Damaged specs for the command ``fuzz_specs.py`` and its tests: made from all the repository's, and judged."""
