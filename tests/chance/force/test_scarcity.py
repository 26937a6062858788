"""What room is worth: any prices make a bound, good ones a low bound."""

from collections.abc import Sequence
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.chance.force import scarcity
from paradestate.chance.force.option import Option, Options
from paradestate.chance.force.scarcity import prices
from paradestate.chance.force.taking import ValuedTaking

NOTHING = ValuedTaking(0, 0, 0, 0, 1)


def options(*choices: Sequence[tuple[int, Sequence[int]]], room: tuple[int, ...]) -> Options:
    """Entries with options of a weight that use some room."""
    return Options(
        of={
            str(number): tuple(Option(weight, tuple(uses), NOTHING) for weight, uses in each)
            for number, each in enumerate(choices)
        },
        room=room,
        ties=(),
        scale=1,
        span=1,
    )


def bound(found: Options, price: tuple[int, ...]) -> int:
    """All room at its price, and the most that is left of an option of each entry."""
    return sum(map(int.__mul__, price, found.room)) + sum(
        max(each.weight - sum(map(int.__mul__, price, each.uses)) for each in choices)
        for choices in found.of.values()
    )


def test_the_price_of_a_limit_is_what_the_last_unit_of_room_is_worth() -> None:
    """Three items of 6, 5, 4 units for 60, 40, 20 thousand, and room for 8: 40 / 5 for the next."""
    six, five, four = ([(0, (0,)), (10_000 * w, (u,))] for w, u in ((6, 6), (4, 5), (2, 4)))
    found = options(six, five, four, room=(8,))
    (price,) = prices(found)
    assert abs(price - 8_000) < 40
    whole = 60_000 + Fraction(2, 5) * 40_000
    assert whole <= bound(found, (price,)) < whole + 100


def test_room_that_nobody_asks_for_has_no_price() -> None:
    found = options([(0, (0, 0)), (9_000, (2, 1))], room=(1, 5))
    dear, cheap = prices(found)
    assert abs(dear - 4_500) < 40
    assert cheap < 40


def test_without_limits_or_weights_there_are_no_prices() -> None:
    assert prices(options([(5, ())], room=())) == ()
    assert prices(options([(0, (0,)), (0, (1,))], room=(1,))) == (0,)
    assert prices(options(room=())) == ()


def test_a_step_that_has_nowhere_to_go_is_the_last() -> None:
    """The option that is best without prices uses just the room that there is."""
    assert prices(options([(0, (0,)), (7, (2,))], room=(2,))) == (0,)


def test_steps_are_no_more_than_allowed(monkeypatch: pytest.MonkeyPatch) -> None:
    found = options([(0, (0,)), (9_000, (2,))], [(0, (0,)), (5_000, (2,))], room=(2,))
    monkeypatch.setattr(scarcity, "STEPS", 1)
    assert prices(found) == (0,)


def test_weights_may_be_greater_than_the_numbers_of_the_machine() -> None:
    great = 10**400
    (price,) = prices(options([(0, (0,)), (great, (2,))], room=(1,)))
    assert abs(price - great // 2) < great // 100


@settings(max_examples=12)
@given(
    st.lists(
        st.lists(
            st.tuples(st.integers(-50, 50), st.tuples(*[st.integers(0, 5)] * 2)),
            min_size=1,
            max_size=3,
        ),
        max_size=4,
    ),
    st.tuples(st.integers(0, 9), st.integers(0, 9)),
)
def test_prices_are_never_below_nought_nor_worse_than_none(
    choices: list[list[tuple[int, tuple[int, ...]]]], room: tuple[int, ...]
) -> None:
    found = options(*([(640 * w, uses) for w, uses in each] for each in choices), room=room)
    price = prices(found)
    assert min(price) >= 0
    assert bound(found, price) <= bound(found, (0, 0)) + sum(room) + 20
