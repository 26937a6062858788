"""The colour that marks each body, by its number among those of its formation."""

from collections.abc import Iterable

from paradestate.core.force import Marks
from paradestate.core.unfolding import Body


def numbers_in_formation(bodies: Iterable[Body]) -> tuple[int, ...]:
    """For each body which of its formation it is in the whole force, from 1."""
    seen: dict[str, int] = {}
    numbers = []
    for body in bodies:
        seen[body.formation] = seen.get(body.formation, 0) + 1
        numbers.append(seen[body.formation])
    return tuple(numbers)


def colours_of(marks: Marks, bodies: Iterable[Body]) -> tuple[str, ...]:
    """For each body the name of its colour; empty where its formation has no more.

    No colour is given out twice: bodies of one colour couldn't be told apart.
    """
    every = tuple(bodies)
    return tuple(
        colours[number - 1] if number <= len(colours) else ""
        for body, number in zip(every, numbers_in_formation(every), strict=True)
        for colours in [marks.by_formation.get(body.formation, ())]
    )
