"""Value classes that cost little to define: what ``dataclass(frozen=True, slots=True)`` says, made faster.

A dataclass has six methods written and compiled when its module is loaded; for the hundred small classes that
every command needs, that is the largest part of its start. A record is a dataclass whose comparison, hash
and print are shared functions. That it is never changed after it is made is held by the type checker, which sees
a frozen dataclass, and not again at run time.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from dataclasses import dataclass as record
else:
    from dataclasses import dataclass

    def record(*, frozen: bool, slots: bool) -> Any:
        """The decorator; ``frozen`` and ``slots`` are said at each class for the type checker."""

        def make(cls: type) -> type:
            made = dataclass(slots=slots, repr=False, eq=False)(cls)
            made.__eq__, made.__hash__, made.__repr__ = _equal, _hash, _print
            return made

        return make


__all__ = ["record"]


def _values(value: Any) -> tuple[Any, ...]:
    return tuple([getattr(value, name) for name in value.__dataclass_fields__])


def _equal(self: Any, other: object) -> Any:
    return _values(self) == _values(other) if other.__class__ is self.__class__ else NotImplemented


def _hash(self: Any) -> int:
    return hash(_values(self))


def _print(self: Any) -> str:
    shown = ", ".join(f"{name}={getattr(self, name)!r}" for name in self.__dataclass_fields__)
    return f"{self.__class__.__qualname__}({shown})"
