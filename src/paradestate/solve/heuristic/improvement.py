"""Better and better orders for large price lists, for as long as one likes to wait.

Orders on several steps of the tills are improved side by side, each by taking packs out and
filling the gap at the least cost; the worst drop out by and by.
"""

import random
from collections.abc import Iterator, Sequence

from paradestate.core.order import Basket, OrderProblem
from paradestate.solve.clock import Clock
from paradestate.solve.heuristic.greedy import greedy_orders
from paradestate.solve.heuristic.refill import Rival, Search, moved_on, on_other_steps
from paradestate.solve.heuristic.relaxation import (
    Relaxation,
    cheapest_steps,
    good_steps,
    pool_of,
    sifted,
)
from paradestate.solve.heuristic.shelf import Steps, shelf_of

START_SIZE = 8.0
RIVALS = 6
ALONE = 0.4
"""From this share of the time on only the best order is improved."""
STEPS_SHARE = 0.08
"""Share of the time in which steps of the tills are tried."""
LOOKED_AT = 40
GREEDY_SECONDS = 0.5
WHOLE_EVERY = 8
"""Every so many moves a whole order on other steps is tried."""


def better_orders(
    problem: OrderProblem, basket: Basket, *, until: Clock, seed: int = 1
) -> Iterator[Basket]:
    """After each move the best order so far, first of all the one given.

    A move takes a quarter of a second or so. Ends sooner where there is nothing to improve.
    """
    yield basket
    seconds = until.left
    shelf = shelf_of(problem)
    found = sifted(shelf, steps=cheapest_steps(shelf), until=until.share(0.5))
    if found is None:
        return
    lots = pool_of(shelf, found[1])
    tried = good_steps(shelf, lots, found=found[0], until=until.share(STEPS_SHARE))
    search = Search(
        shelf=shelf,
        lots=lots,
        draw=random.Random(seed),  # noqa: S311 - the same search each time
        until=until,
        bounds={each.gap.steps: each.bound for each in tried},
    )
    rivals = sorted(_rivals(search, basket, tried=tried), key=lambda each: each.total)
    yield from _raced(search, rivals[:RIVALS], tried=tried, seconds=seconds)


def _raced(
    search: Search, rivals: Sequence[Rival], *, tried: Sequence[Relaxation], seconds: float
) -> Iterator[Basket]:
    """The best of the rivals after each move."""
    racing, promising, turn = list(rivals), iter(tried), 0
    while racing and search.until.left:
        turn += 1
        found = next(promising, None) if turn % WHOLE_EVERY == 0 else None
        if found is not None:
            racing[0] = on_other_steps(search, racing[0], found=found)
        else:
            moving = turn % len(racing)
            racing[moving] = moved_on(search, racing[moving])
        racing.sort(key=lambda each: each.total)
        yield search.shelf.basket(racing[0].packs)
        gone = 1 - search.until.left / seconds
        racing = racing[: max(1, round(RIVALS * (1 - gone / ALONE)))]


def _rivals(search: Search, basket: Basket, *, tried: Sequence[Relaxation]) -> Iterator[Rival]:
    """The order given and greedy ones, each on other steps."""
    shelf = search.shelf
    numbers = {name: number for number, name in enumerate(shelf.names)}
    given = {numbers[name]: number for name, number in basket.items() if number and name in numbers}
    greedy = greedy_orders(shelf, tried[:LOOKED_AT], until=search.until.within(GREEDY_SECONDS))
    seen: set[Steps] = set()
    for packs in (given, *(each.packs for each in greedy)):
        steps = shelf.steps_of(packs)
        if packs and steps not in seen and shelf.is_enough(packs):
            seen.add(steps)
            yield Rival(packs=packs, total=shelf.total(packs), size=START_SIZE)
