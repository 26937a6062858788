"""What each candidate adds, in the order in which it is shown."""

from dataclasses import replace
from fractions import Fraction

from paradestate.core.advice.advice import Alone, Joined
from paradestate.core.advice.gain import by_gain, gains, idle
from tests.core.advice.test_advice import ADVICE, GUN, SAMPLED, TANK, priced

ALONE = replace(ADVICE.alone[0], together=None)


def alone(gain: int, *, cost: int = 800, joined: Joined | None = None) -> Alone:
    """The gun, with that gain."""
    made = priced(6 + gain, cost, 1, 0)
    return replace(ALONE, candidate=GUN, priced=made, gain=Fraction(gain), together=joined)


def test_what_adds_most_stands_first_and_of_two_alike_the_cheaper_one() -> None:
    tank = replace(ALONE, candidate=TANK, priced=priced(9, 700, 0, 1), gain=Fraction(3))
    found = gains(replace(ADVICE, alone=(alone(3), tank)))
    assert [each.basket for each in found] == [(0, 1), (1, 0)]
    assert [each.cost for each in found] == [700, 800]
    assert not any(each.is_joined for each in found)
    more = gains(replace(ADVICE, alone=(alone(4), tank)))
    assert [each.gain for each in more] == [4, 3]
    both = replace(ADVICE, alone=(tank, alone(3, cost=600)))
    assert [each.candidate.name for each in by_gain(both)] == ["Quay/gun", "Quay/tank"]


def test_things_that_add_only_together_stand_once_and_together() -> None:
    joined = Joined(
        priced=priced(8, 2000, 1, 1), gain=Fraction(2), sure=SAMPLED, is_affordable=False
    )
    tank = replace(ALONE, together=joined)
    found = gains(replace(ADVICE, alone=(alone(0, joined=joined), tank)))
    (one,) = found
    assert (one.basket, one.sure) == ((1, 1), SAMPLED)
    assert [one.cost, one.gain] == [2000, 2]
    assert one.is_joined
    assert not one.is_affordable
    assert idle(replace(ADVICE, alone=(alone(0, joined=joined), tank))) == ()


def test_what_adds_nothing_or_takes_away_has_no_place_among_them() -> None:
    worse = alone(-1)
    advice = replace(ADVICE, alone=(worse, ALONE))
    assert gains(advice) == ()
    assert idle(advice) == (worse, ALONE)
