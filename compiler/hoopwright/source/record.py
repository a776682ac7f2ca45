"""Value classes that cost little to define: what ``dataclass(frozen=True, slots=True)`` says, made faster.

A dataclass has six methods written and compiled when its module is loaded; for the hundred small classes that
every command needs, that is the largest part of its start. A record is a dataclass whose comparison, hash
and print are shared functions, and which is made one only when it is first asked for a value or its fields: a check
needs two in three of those it loads. That a record is never changed after it is made, and has
no other attributes, is held by the type checker, which sees a frozen dataclass, and not again at run time.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from dataclasses import dataclass as record
else:

    def record(*, frozen: bool, slots: bool) -> Any:
        """The decorator; ``frozen`` and ``slots`` are said at each class for the type checker."""

        def make(cls: type) -> type:
            def first(self: Any, *values: Any, **named: Any) -> None:
                _finish(cls)
                cls.__init__(self, *values, **named)

            cls.__init__, cls.__dataclass_fields__ = first, _Unfinished(cls)
            cls.__eq__, cls.__hash__, cls.__repr__ = _equal, _hash, _print
            return cls

        return make


__all__ = ["record"]


class _Unfinished:
    """Stands for the fields of a record until somebody asks for them."""

    def __init__(self, cls: Any) -> None:
        self.cls = cls

    def __get__(self, value: object, owner: type) -> Any:
        _finish(self.cls)
        return self.cls.__dataclass_fields__


def _finish(cls: Any) -> None:
    """Make a record the dataclass that it says it is."""
    del cls.__init__, cls.__dataclass_fields__
    dataclass(repr=False, eq=False)(cls)


def _values(value: Any) -> tuple[Any, ...]:
    return tuple([getattr(value, name) for name in value.__dataclass_fields__])


def _equal(self: Any, other: object) -> Any:
    return _values(self) == _values(other) if other.__class__ is self.__class__ else NotImplemented


def _hash(self: Any) -> int:
    return hash(_values(self))


def _print(self: Any) -> str:
    shown = ", ".join(f"{name}={getattr(self, name)!r}" for name in self.__dataclass_fields__)
    return f"{self.__class__.__qualname__}({shown})"
