"""Explanations to read at the table: a Markdown page for every code, every check, every word of the trade.

- ``codes/<code>.md``: what a diagnostic means, a spec that fails with it, and its mended twin. The format is
  fixed and tested: a list with ``severity`` and ``stage``, then words, then ``## Fails`` and ``## Mended``.
- ``checks/<code>.md``: what a judgement of the plan means, its formula and source, how to set another limit.
- ``words/<word>.md``: a word of the trade, its first line a definition that can stand alone.

``pages.py`` finds them. It belongs to no stage: it knows files and names, nothing of specs or plans.
"""
