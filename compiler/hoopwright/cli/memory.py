"""Memory of a process that makes one plan after another: flat, with little time spent on looking for garbage.

Most of what a spec leaves goes by itself; only what holds itself in circles has to be looked for.
"""

from __future__ import annotations

import gc
from functools import cache

_SELDOM = 100_000
"""New objects before the interpreter looks by itself: a command lives for a second, and looking as often as usual would
cost a tenth of it."""


def look_seldom() -> None:
    """To be called when a process starts."""
    gc.set_threshold(_SELDOM)


def clear_away() -> None:
    """What a spec left in circles goes before the next. After the first one nothing is looked for, and all there is
    stays for good: libraries and caches nearly alone, which would be looked through in vain."""
    if _set_aside.cache_info().currsize:
        gc.collect(1)
    else:
        _set_aside()


@cache
def _set_aside() -> None:
    gc.freeze()
