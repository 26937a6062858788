"""Round numbers along an axis. Imports nothing of the project."""

from collections.abc import Iterator, Sequence

STEPS = (1, 2, 5)


def round_step(span: int, *, most: int) -> int:
    """The least step of 1, 2 or 5 times a power of ten that cuts a span into at most so many."""
    power = 1
    while True:
        for step in STEPS:
            if span <= step * power * most:
                return step * power
        power *= 10


def ticks(least: int, greatest: int, *, most: int = 6) -> tuple[int, ...]:
    """Round numbers from at or below `least` to at or above `greatest`, evenly apart."""
    step = round_step(max(1, greatest - least), most=most)
    first = least // step * step
    return tuple(range(first, -(-greatest // step) * step + 1, step))


def with_room(
    numbers: Sequence[int], *, first: int | None, room: float, pitch: float
) -> Iterator[int]:
    """Places of the numbers that can be said under an axis, `pitch` from one to the next.

    Each takes `room`. The number `first` is said in any case, and of the rest all or, where they
    are too many, round ones as far as they have room.
    """
    step = 1 if room <= pitch else round_step(int(room / pitch) + 1, most=1)
    said: list[int] = []
    for number in sorted(numbers, key=lambda each: (each != first, each)):
        place = numbers.index(number)
        is_asked = number == first or number % step == 0
        if is_asked and all(pitch * abs(place - other) >= room for other in said):
            said.append(place)
            yield place
