"""Round numbers along an axis. Imports nothing of the project."""

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
