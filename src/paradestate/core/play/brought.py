"""Stands that supporting troops bring to the table, each by the name that it has there."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from paradestate.core.game import Purchase
from paradestate.core.support.entry import Entry
from paradestate.core.unfolding import SEPARATOR


@dataclass(frozen=True, slots=True, kw_only=True)
class Brought:
    """One stand that came with something that was taken."""

    name: str
    """Such as `anti-tank guns / 1 truck`, as the table page calls it too."""
    pattern: str


def brought_stands(
    plan: Iterable[Purchase], *, entries: Mapping[str, Entry]
) -> tuple[Brought, ...]:
    """The stands of all that was taken, numbered over all purchases of an entry.

    Those that each one taken puts down come before those that are granted once a purchase. Every
    purchase is of a known entry.
    """
    taken: dict[str, Counter[str]] = {}
    for purchase in plan:
        entry, stands = entries[purchase.entry], taken.setdefault(purchase.entry, Counter())
        stands.update({name: each * purchase.number for name, each in entry.each.items()})
        stands.update(entry.grants)
    return tuple(_numbered(taken))


def _numbered(taken: Mapping[str, Counter[str]]) -> Iterator[Brought]:
    for entry, stands in taken.items():
        for pattern, number in stands.items():
            for place in range(1, number + 1):
                yield Brought(name=f"{entry}{SEPARATOR}{place} {pattern}", pattern=pattern)
