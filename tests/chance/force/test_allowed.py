"""What the dice may allow in a game."""

from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.chance.force import allowed as module
from paradestate.chance.force.allowed import Lot, Outcomes, outcomes_of
from paradestate.chance.force.weighing import weighing
from paradestate.core.certainty import NotComputed
from paradestate.core.support.entry import Availability, Band
from paradestate.core.support.offer import NO_CHOICE, Offer
from tests.chance.force.lists import drawn, listed
from tests.support_terms import dice

LOT = Lot(draws=300, seed=7)
ROLL = Availability(
    roll=dice(1, sides=6),
    allows=(
        Band(least=1, most=1, allows=0),
        Band(least=2, most=3, allows=1),
        Band(least=4, most=6, allows=None),
    ),
)
GUNS = Offer(name="guns", cost={1: 2, 3: 5}, availability=ROLL)
TWICE = replace(GUNS, most=2)


def outcomes(*offers: Offer) -> Outcomes | NotComputed:
    weighed = weighing(drawn(listed(*offers), greatest=20))
    every = {row.entry: weighed.takings(at) for at, row in enumerate(weighed.drawn.rows)}
    return outcomes_of(weighed, within=every, lot=LOT)


def numbers(
    found: Outcomes | NotComputed, entry: str = "guns"
) -> dict[frozenset[tuple[int, ...]], int]:
    """The numbers of the purchases that are allowed, to ways."""
    assert isinstance(found, Outcomes)
    ways: dict[frozenset[tuple[int, ...]], int] = {}
    for place, number in zip(found.chosen[entry], found.ways, strict=True):
        allowed = found.numbers[entry][int(place)]
        ways[allowed] = ways.get(allowed, 0) + number
    return ways


def test_one_purchase_has_one_roll() -> None:
    assert numbers(outcomes(GUNS)) == {
        frozenset({()}): 1,
        frozenset({(), (1,)}): 2,
        frozenset({(), (1,), (3,)}): 3,
    }


def test_two_purchases_have_two_rolls() -> None:
    """Of 36 ways: both refused, one of 1, two of 1, one of 3, a 3 and a 1, two of 3."""
    one, three = frozenset({(), (1,)}), frozenset({(), (1,), (3,)})
    assert numbers(outcomes(TWICE)) == {
        frozenset({()}): 1,
        one: 4,
        one | {(1, 1)}: 4,
        three: 6,
        three | {(1, 1), (3, 1)}: 12,
        three | {(1, 1), (3, 1), (3, 3)}: 9,
    }


def test_takings_are_allowed_with_the_purchases_that_come_to_them() -> None:
    found = outcomes(TWICE)
    assert isinstance(found, Outcomes)
    sizes = [sorted(t.points for t in among) for among in found.classes["guns"]]
    assert sorted(sizes) == [
        [0],
        [0, 2],
        [0, 2, 4],
        [0, 2, 4, 5, 7],
        [0, 2, 4, 5, 7, 10],
        [0, 2, 5],
    ]


def test_a_shared_roll_falls_once_for_all() -> None:
    shared = replace(ROLL, shared_roll="convoy")
    guns, horse = (replace(TWICE, name=name, availability=shared) for name in ("guns", "horse"))
    found = outcomes(guns, horse)
    assert isinstance(found, Outcomes)
    assert found.ways == (1, 2, 3)
    every = frozenset({(), (1,), (3,), (1, 1), (3, 1), (3, 3)})
    assert numbers(found)[every] == numbers(found, "horse")[every] == 3


def test_what_cannot_be_there_at_all_is_not_rolled_for() -> None:
    weighed = weighing(drawn(listed(GUNS), greatest=20))
    nothing = frozenset(each for each in weighed.takings(0) if not each.purchases)
    found = outcomes_of(weighed, within={"guns": nothing}, lot=LOT)
    assert isinstance(found, Outcomes)
    assert (found.ways, found.classes["guns"]) == ((6,), (nothing,))


def test_choices_are_allowed_alike() -> None:
    found = outcomes(
        replace(GUNS, choices={"flame": 0, "bridging": 1}, worths={"flame": {1: Fraction(2)}})
    )
    assert isinstance(found, Outcomes)
    assert [len(among) for among in found.classes["guns"]] == [1, 3, 5]


def test_too_many_outcomes_are_drawn_by_lot(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "MOST_OUTCOMES", 2)
    found, again = outcomes(GUNS), outcomes(GUNS)
    assert isinstance(found, Outcomes)
    assert isinstance(again, Outcomes)
    assert (found.lot, sum(found.ways)) == (LOT, 300)
    assert found.ways == again.ways
    assert numbers(found)[frozenset({(), (1,), (3,)})] in range(120, 180)


def test_an_entry_that_can_be_taken_in_too_many_ways_is_refused() -> None:
    many = Offer(name="guns", cost=dict.fromkeys(range(1, 9), 1), most=12, availability=ROLL)
    found = outcomes(many)
    assert isinstance(found, NotComputed)
    assert found.reason == "'guns' is rolled for and can be taken in more than 20,000 ways"


def test_entries_without_a_roll_are_left_out() -> None:
    found = outcomes(Offer(name="guns", cost={1: 2}, choices={NO_CHOICE: 0}))
    assert isinstance(found, Outcomes)
    assert (found.classes, found.ways, found.lot) == ({}, (1,), None)


def test_of_what_can_be_there_only_those_takings_are_allowed() -> None:
    weighed = weighing(drawn(listed(TWICE), greatest=20))
    small = frozenset(each for each in weighed.takings(0) if each.points <= 4)
    found = outcomes_of(weighed, within={"guns": small}, lot=LOT)
    assert isinstance(found, Outcomes)
    assert {frozenset(t.points for t in among) for among in found.classes["guns"]} == {
        frozenset({0}),
        frozenset({0, 2}),
        frozenset({0, 2, 4}),
    }
