"""The colour that marks each body, by its number among those of its formation."""

from collections import Counter
from collections.abc import Callable, Hashable, Iterable

from paradestate.core.force import Marks
from paradestate.core.unfolding import Body


def numbers_in_formation(bodies: Iterable[Body]) -> tuple[int, ...]:
    """For each body which of its formation it is in the whole force, from 1."""
    return numbers_among(bodies, like=lambda body: body.formation)


def numbers_among(bodies: Iterable[Body], *, like: Callable[[Body], Hashable]) -> tuple[int, ...]:
    """For each body which it is among those that are alike, from 1."""
    seen: Counter[Hashable] = Counter()
    numbers = []
    for body in bodies:
        kind = like(body)
        seen[kind] += 1
        numbers.append(seen[kind])
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
