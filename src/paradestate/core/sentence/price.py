"""Prices of supporting troops in words."""

from collections.abc import Iterator, Mapping

from paradestate.core.sentence.wording import listed, several, spelled
from paradestate.core.support.entry import Entry

LONG_TABLE = 4
"""From so many rows on, a table of multiples is said in one breath."""

ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth")


def prices_words(cost: Mapping[int, int]) -> str:
    """Prices by number: `one costs 3 points, two 5, three 7`; `4 to 12 cost 10 points each`."""
    each = _each(cost)
    if each is not None:
        return f"{min(cost)} to {max(cost)} cost {several(each, 'point')} each"
    first, *rest = cost.items()
    number, points = first
    verb = "costs" if number == 1 else "cost"
    opening = f"{spelled(number)} {verb} {several(points, 'point')}"
    return ", ".join([opening, *(f"{spelled(more)} {price}" for more, price in rest)])


def _each(cost: Mapping[int, int]) -> int | None:
    """The price of each in a long table of all multiples between two numbers, else None."""
    numbers = sorted(cost)
    if len(numbers) < LONG_TABLE or numbers[-1] - numbers[0] != len(numbers) - 1:
        return None
    each, rest = divmod(cost[numbers[0]], numbers[0])
    is_each = not rest and all(cost[number] == each * number for number in numbers)
    return each if is_each else None


def more_price_clauses(entry: Entry) -> Iterator[str]:
    """What else prices depend on: grades, and purchases of the same before."""
    for scale, by_grade in entry.cost_by_grade.items():
        for grade, cost in by_grade.items():
            yield f"where {scale} is {grade}, {prices_words(cost)}"
    if entry.repeats_cost_more:
        yield _repeats_words(entry.repeats_cost_more)


def _repeats_words(steps: tuple[int, ...]) -> str:
    """Surcharges: `a second purchase costs 1 point more, a third and each later one 2 more`."""
    *early, last = steps
    if not early:
        return f"a second purchase and each later one cost {_more(last)}"
    said = [f"{_ordinal(number)} {_more(step)}" for number, step in enumerate(early[1:], start=3)]
    opening = f"a second purchase costs {_more(early[0])}"
    closing = f"{_ordinal(len(steps) + 1)} and each later one {_more(last)}"
    return ", ".join([opening, *said, closing])


def _ordinal(number: int) -> str:
    return f"a {ORDINALS[number - 1]}" if number <= len(ORDINALS) else f"number {number}"


def _more(points: int) -> str:
    return f"{several(abs(points), 'point')} {'less' if points < 0 else 'more'}"


def choice_words(entry: Entry) -> str:
    """What may be chosen, and what each choice adds: `flame (1 point more each) or smoke`."""
    costs = entry.choice_costs
    said = [
        f"{each} ({_more(costs[each])} each)" if costs.get(each) else each for each in entry.choice
    ]
    return listed(said, joint="or")
