"""What each worth must become to change the first choice."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from paradestate.chance.fallback.best_play import fallback
from paradestate.chance.fallback.play import START
from paradestate.chance.fallback.tipping import Line, Reading, crossing
from paradestate.core.support.policy import Fallback, Tipping
from paradestate.core.support.terms import Terms
from tests.chance.fallback.fallbacks import GUN, MACHINE_GUN, TANK, TANK_GAME, decider, worth
from tests.chance.plans import rolled, terms_with
from tests.core.support.test_terms import terms as terms_of_force
from tests.forces import marenz

HAIR = Fraction(1, 10**6)


def solved(terms: Terms, points: int) -> Fallback:
    answer = fallback(terms, points=points)
    assert isinstance(answer, Fallback)
    return answer


def with_worth(terms: Terms, tipping: Tipping, *, said: Fraction) -> Terms:
    offer = terms.offers[tipping.entry]
    tables = {choice: dict(table) for choice, table in offer.worths.items()}
    tables[tipping.choice][tipping.number] = said
    return replace(terms, offers={**terms.offers, offer.name: replace(offer, worths=tables)})


def lead(terms: Terms, tipping: Tipping, *, said: Fraction, points: int) -> Fraction:
    """How much the first choice is ahead of all others, once it is all solved again."""
    first = decider(terms, points=points)
    index = first.decisions(START, points=points)[0].index
    again = decider(with_worth(terms, tipping, said=said), points=points)
    decisions = again.decisions(START, points=points)
    mine = max(each.value for each in decisions if each.index == index)
    other = max(each.value for each in decisions if each.index != index)
    return Fraction(mine - other)


def proved(terms: Terms, tipping: Tipping, *, points: int) -> None:
    """Up to the end the first choice leads, at it another is as good; without one it leads on."""
    ends = ((tipping.down_to, HAIR, Fraction(0)), (tipping.up_to, -HAIR, tipping.worth + 1000))
    for end, inward, last in ends:
        if end is None:
            assert lead(terms, tipping, said=last, points=points) > 0
            assert lead(terms, tipping, said=(tipping.worth + last) / 2, points=points) > 0
        else:
            assert lead(terms, tipping, said=end, points=points) == 0
            assert lead(terms, tipping, said=end + inward, points=points) > 0
            assert lead(terms, tipping, said=(tipping.worth + end) / 2, points=points) > 0


def test_the_tank_is_asked_for_until_it_is_worth_eight() -> None:
    """Half of w and half of 8 is as much as 8 at w = 8."""
    tank, gun, machine_gun = solved(TANK_GAME, 6).tippings
    assert [tank.entry, tank.down_to, tank.up_to] == ["tank", 8, None]
    assert [gun.down_to, gun.up_to] == [None, 7]
    assert [machine_gun.down_to, machine_gun.up_to] == [None, 5]


def test_the_worths_of_the_example_are_proved_by_solving_again() -> None:
    terms = terms_of_force(marenz(), game="whole-day attack")
    tippings = solved(terms, 18).tippings
    assert {(each.entry, each.number): each.down_to for each in tippings}["light tanks", 2] == 8
    for tipping in tippings:
        proved(terms, tipping, points=18)


def test_without_another_choice_there_is_nothing_to_tip() -> None:
    assert solved(terms_with(GUN, MACHINE_GUN), 6).tippings == ()
    assert solved(TANK_GAME, 5).tippings == ()


def test_a_worth_of_less_than_nothing_is_not_lowered_further() -> None:
    burden = replace(GUN, name="burden", cost={1: -1}, worths=worth(n1=-2))
    terms = terms_with(TANK, burden)
    tipping = {each.entry: each for each in solved(terms, 5).tippings}["burden"]
    assert tipping.down_to is None
    assert tipping.up_to is None


def offers(costs: list[int], worths: list[int], *, faces: list[int]) -> Terms:
    return terms_with(
        *(
            replace(
                TANK if number < 2 else GUN,
                name=f"entry {number}",
                cost={1: cost, 2: 2 * cost - 1},
                availability=rolled(face, partly=max(2, face - 1)) if number < 2 else None,
                worths=worth(n1=said, n2=2 * said - 1),
            )
            for number, (cost, said, face) in enumerate(zip(costs, worths, faces, strict=True))
        )
    )


@settings(max_examples=4)
@given(
    st.lists(st.integers(2, 4), min_size=4, max_size=4),
    st.lists(st.integers(1, 9), min_size=4, max_size=4),
    st.lists(st.integers(3, 6), min_size=4, max_size=4),
    st.integers(0, 9),
)
def test_tippings_are_proved_by_solving_again(
    costs: list[int], worths: list[int], faces: list[int], place: int
) -> None:
    terms = offers(costs, worths, faces=faces)
    answer = solved(terms, 7)
    first, other = answer.first_choices[:2]
    assume(first.worth > other.worth)
    proved(terms, answer.tippings[place % len(answer.tippings)], points=7)


Curve = tuple[tuple[Fraction, Fraction], ...]
"""A convex curve as the greatest of lines: value at 0, and slope."""


def touching(curve: Curve, at: Fraction) -> Line:
    value, slope = max((start + slope * at, slope) for start, slope in curve)
    return Line(at=at, value=value, slope=slope)


def found(first: Curve, other: Curve, *, end: int) -> Fraction | None:
    search = crossing(Fraction(0), Fraction(end))
    at = next(search)
    while True:
        reading = Reading(first=touching(first, at), other=touching(other, at))
        try:
            at = search.send(reading)
        except StopIteration as stop:
            value: Fraction | None = stop.value
            return value


@pytest.mark.parametrize(
    ("first", "other", "wanted"),
    [
        ([(2, 0)], [(0, 1)], 2),
        ([(2, 1)], [(0, 1)], None),
        ([(2, 0), (-2, 2)], [(0, 1)], 2),
        ([(3, 0), (-1, 2)], [(0, 1)], None),
        ([(3, 0), (-1, 2)], [(0, 1), (-20, 3)], 19),
        ([(2, 0), (0, 1)], [(0, 1)], 2),
        ([(0, 0), (-1, 1)], [(0, 0)], None),
        ([(0, 0)], [(-1000, 1)], 1000),
        ([(0, 0)], [(0, 0), (-3, 1)], 3),
        ([(0, 0)], [(0, 1)], 0),
        ([(4, 0)], [(0, 1), (-10, 3), (-40, 8)], Fraction(4)),
    ],
)
def test_curves_cross_where_another_rises_above_the_first(
    first: list[tuple[int, int]], other: list[tuple[int, int]], wanted: Fraction | None
) -> None:
    """The third touches at 2; from the sixth on they go on alike, begin alike, meet at the end."""

    def curve(lines: list[tuple[int, int]]) -> Curve:
        return tuple((Fraction(start), Fraction(slope)) for start, slope in lines)

    assert found(curve(first), curve(other), end=1000) == wanted
