"""The stands that supporting troops bring, each with a name of its own."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.paper.ground import Ground
from paradestate.core.sentence.wording import capital
from paradestate.core.support.entry import Position
from paradestate.core.unfolding import SEPARATOR, capitals


@dataclass(frozen=True, slots=True, kw_only=True)
class Brought:
    """One stand that comes with supporting troops."""

    name: str
    """Such as `Light tanks / 2 Light Tank`."""
    pattern: str


def brought(ground: Ground) -> tuple[Brought, ...]:
    """What the plan puts on the table, with what comes free, in the order of the plan.

    What a purchase replaces stays where it is: who reads the labels sees both.
    """
    running: Counter[tuple[str, str]] = Counter()
    patterns = tuple(_patterns(ground))
    together = Counter(patterns)
    made = []
    for entry, pattern in patterns:
        running[entry, pattern] += 1
        called = ground.force.stands[pattern].called or capitals(pattern)
        number = f"{running[entry, pattern]} " if together[entry, pattern] > 1 else ""
        name = f"{capital(entry)}{SEPARATOR}{number}{called}"
        made.append(Brought(name=name, pattern=pattern))
    return tuple(made)


def _patterns(ground: Ground) -> Iterator[tuple[str, str]]:
    """Entry and pattern of each stand."""
    for purchase in ground.plan:
        entry = ground.force.supporting_troops.get(purchase.entry)
        if entry is None or entry.place is Position.OFF_TABLE:
            continue
        each = [(name, number * purchase.number) for name, number in entry.each.items()]
        free = [*entry.grants.items()]
        if entry.replaces is not None:
            free.append((entry.replaces.with_, entry.replaces.number))
        for pattern, number in (*each, *free):
            yield from [(purchase.entry, pattern)] * number
