"""Figures given out to games, those of a box to the games that have it alone."""

from collections.abc import Sequence
from itertools import chain, combinations

from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.club.giving_out import Supply, given_out
from paradestate.core.figure import FigureKind, Match, StandIn
from tests.core.club.bookings import TRUCK

GAMES = ("river", "hill", "wood")
NUMBERS = st.integers(min_value=0, max_value=9)


def deficiency(needs: Sequence[int], supplies: Sequence[Supply]) -> int:
    """What is lacking at the least: over all sets of games their needs less all open to them.

    The deficiency form of Hall's theorem (Ore, *Graphs and matching theorems*, 1955).
    """
    numbers = dict(zip(GAMES, needs, strict=True))
    every = chain.from_iterable(combinations(GAMES, size) for size in range(len(GAMES) + 1))
    return max(
        sum(numbers[game] for game in some)
        - sum(each.figures[TRUCK] for each in supplies if any(map(each.serves, some)))
        for some in every
    )


@settings(max_examples=60)
@given(
    needs=st.tuples(NUMBERS, NUMBERS, NUMBERS),
    open_shelf=NUMBERS,
    boxes=st.lists(st.tuples(NUMBERS, st.sets(st.sampled_from(GAMES), min_size=1)), max_size=3),
)
def test_what_is_short_is_what_no_set_of_games_can_have(
    needs: tuple[int, int, int], open_shelf: int, boxes: list[tuple[int, set[str]]]
) -> None:
    supplies = [
        Supply(figures={TRUCK: open_shelf}),
        *(Supply(figures={TRUCK: held}, games=tuple(games)) for held, games in boxes),
    ]
    wanted = {game: {TRUCK: number} for game, number in zip(GAMES, needs, strict=True)}
    found = given_out(wanted, supplies, figures={})
    assert found.short.get(TRUCK, 0) == deficiency(needs, supplies)
    assert found.stand_ins == ()


def test_stand_ins_out_of_two_supplies_are_told_together() -> None:
    lorry = FigureKind(name="lorry", may_stand_for={TRUCK: Match.POOR})
    found = given_out(
        {"river": {TRUCK: 5}, "hill": {TRUCK: 1}},
        (Supply(figures={"lorry": 2}), Supply(figures={"lorry": 2, TRUCK: 0}, games=("river",))),
        figures={"lorry": lorry},
    )
    assert found.short == {TRUCK: 2}
    assert found.stand_ins == (StandIn(kind="lorry", stands_for=TRUCK, number=4),)
