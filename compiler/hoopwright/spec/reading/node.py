"""A well-formed spec read key by key: each value in SI units with its path, each default noted once."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from decimal import Decimal
from typing import TypeVar

from hoopwright.source import quantity
from hoopwright.source.diagnostic import Finding, Path
from hoopwright.source.record import record
from hoopwright.spec.checking.quantities import parse_fraction
from hoopwright.spec.model import Assumed

T = TypeVar("T", float, str)


@dataclass(slots=True)
class Notebook:
    """What the spec stage has to say: values it assumed, and findings."""

    assumed: list[Assumed] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)

    def assume(self, path: str, value: T, dimension: str, reason: str) -> T:
        """Note an assumed value under the key that overrides it, and hand it on."""
        self.assumed.append(Assumed(path, value, dimension, reason))
        return value

    def text(self, node: Node, usual: str, reason: str) -> str:
        """Text as written, else the usual one, noted under its key; blanks say nothing."""
        return self._or(node, node.text() or None, usual, "text", reason)

    def length(self, node: Node, usual: float, reason: str) -> float:
        """A length as stated, m, else the usual one, noted under its key."""
        return self._or(node, node.length(), usual, "length", reason)

    def share(self, node: Node, usual: float, reason: str) -> float:
        """A share as stated, else the usual one, noted under its key."""
        return self._or(node, node.share(), usual, "share", reason)

    def ratio(self, node: Node, usual: float, reason: str) -> float:
        """A plain number as stated, else the usual one, noted under its key."""
        return self._or(node, node.number(), usual, "ratio", reason)

    def count(self, node: Node, usual: int, reason: str) -> int:
        """A whole number as stated, else the usual one, noted under its key."""
        return int(self._or(node, node.number(), float(usual), "count", reason))

    def _or(self, node: Node, stated: T | None, usual: T, dimension: str, reason: str) -> T:
        return self.assume(node.dotted, usual, dimension, reason) if stated is None else stated

    def tell(self, *findings: Finding) -> None:
        """Note findings."""
        self.findings.extend(findings)


@record(frozen=True, slots=True)
class Node:
    """A value of the spec and its path; an absent key is a node whose value is None.

    Readers return None for an absent key. They expect a spec that :func:`hoopwright.spec.checking.validate.validate`
    found nothing wrong with.
    """

    value: object
    path: Path = ()

    def __getitem__(self, key: str | int) -> Node:
        """The node under a key or index."""
        inner: object = None
        if isinstance(self.value, dict):
            inner = self.value.get(key)
        elif isinstance(self.value, list) and isinstance(key, int) and key < len(self.value):
            inner = self.value[key]
        return Node(inner, (*self.path, key))

    def __bool__(self) -> bool:
        """Whether the maker wrote it."""
        return self.value is not None

    def items(self) -> Iterator[Node]:
        """The nodes of a list, in order; nothing for an absent one."""
        if isinstance(self.value, list):
            yield from (self[index] for index in range(len(self.value)))

    def names(self) -> tuple[str, ...]:
        """The keys of a mapping, in the maker's order."""
        return tuple(self.value) if isinstance(self.value, dict) else ()

    @property
    def dotted(self) -> str:
        """The path as text, ``shape.hem.girth``."""
        return ".".join(str(part) for part in self.path)

    def text(self) -> str | None:
        """Text as written, blanks at the ends taken off."""
        return self.value.strip() if isinstance(self.value, str) else None

    def number(self) -> float | None:
        """A plain number."""
        return float(self.value) if isinstance(self.value, int | float) else None

    def whole(self) -> int | None:
        """A whole number."""
        return int(self.value) if isinstance(self.value, int | float) else None

    def flag(self) -> bool | None:
        """True or false."""
        return self.value if isinstance(self.value, bool) else None

    def length(self) -> float | None:
        """A length, m."""
        return quantity.parse_length(self.value, zero=True) if self else None

    def mass(self) -> float | None:
        """A weight, kg."""
        return quantity.parse_mass(self.value, zero=True) if self else None

    def area(self) -> float | None:
        """An area, m2."""
        return quantity.parse_area(self.value) if self else None

    def areal_density(self) -> float | None:
        """A weight of cloth, kg/m2."""
        return quantity.parse_areal_density(self.value) if self else None

    def linear_density(self) -> float | None:
        """A weight for length, kg/m."""
        return quantity.parse_linear_density(self.value) if self else None

    def density(self) -> float | None:
        """A density, kg/m3."""
        return quantity.parse_density(self.value) if self else None

    def stress(self) -> float | None:
        """A stress, Pa."""
        return quantity.parse_stress(self.value) if self else None

    def force(self) -> float | None:
        """A force, N."""
        return quantity.parse_force(self.value) if self else None

    def minutes(self) -> float | None:
        """A time, minutes."""
        return quantity.parse_minutes(self.value) if self else None

    def angle(self) -> float | None:
        """An angle, radians."""
        return quantity.parse_angle(self.value) if self else None

    def share(self) -> float | None:
        """A share of one."""
        return quantity.parse_share(self.value) if self else None

    def fraction(self) -> float | None:
        """A place round a girth, 0 up to 1."""
        return parse_fraction(self.value) if self else None

    def money(self, *, zero: bool = False) -> tuple[Decimal, str] | None:
        """An amount and its currency; nought only with ``zero``."""
        return quantity.parse_money(self.value, zero=zero) if self else None


def dotted_paths(value: object, path: Path = ()) -> Iterator[Path]:
    """The paths of everything written in a spec, outer before inner."""
    if path:
        yield path
    if isinstance(value, dict):
        for key, item in value.items():
            yield from dotted_paths(item, (*path, key))
    elif isinstance(value, list):
        for index, item in enumerate(value):
            yield from dotted_paths(item, (*path, index))
