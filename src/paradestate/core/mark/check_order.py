"""In which order companies enter the check where not every mark is needed.

Two marks with one sign differ in colour and bars alone. Where all numbers of bars are used the
companies enter in their own order. Where some aren't (platoons, and no troops of the company's
own), the marks left unused may be those that are most alike: colours that somebody sees alike,
with bars that differ by one.
"""

from collections.abc import Sequence
from itertools import combinations, permutations

from paradestate.core.mark.code import Grid
from paradestate.core.mark.difference import Differences

BEYOND = 1_000_000
"""Hundredths that no two colours are apart."""

MOST_TRIED = 6
"""Signs of which every order is tried; of more the companies' own order is kept."""


def check_order(grid: Grid, colours: Sequence[str], *, differences: Differences) -> tuple[int, ...]:
    """The place of each company in the check; its own number where all marks are used."""
    own = tuple(range(grid.companies))
    if grid.is_full or grid.signs > MOST_TRIED:
        return own
    orders = permutations(range(grid.signs), grid.companies)
    return max(
        orders, key=lambda order: _likenesses(order, colours, grid=grid, differences=differences)
    )


def _likenesses(
    order: Sequence[int], colours: Sequence[str], *, grid: Grid, differences: Differences
) -> tuple[int, ...]:
    """How far apart the colours are, grey too, of each two marks that an eye confuses; rising.

    More than any difference stands at the end, so that fewer such marks are better than more.
    Colours of which nobody says how they look are compared with no other.
    """
    found: list[int] = []
    for one, other in combinations(range(grid.companies), 2):
        for pair in differences.among((colours[one], colours[other])):
            likeness = min(pair.by_viewer.values())
            found += [likeness] * _confusable(order[one] - order[other], grid=grid)
    return (*sorted(found), BEYOND)


def _confusable(apart: int, *, grid: Grid) -> int:
    """Pairs of marks of two companies that have one sign, and bars that differ by one."""
    return sum(
        abs(one - other) == 1 and (apart + one - other) % grid.signs == 0
        for one in grid.bars
        for other in grid.bars
    )
