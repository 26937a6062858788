"""Ways to end up with purchases of one sure entry."""

from fractions import Fraction

from paradestate.chance.fallback.sure_way import listed_totals, sure_ways, worth_of
from paradestate.core.game import Purchase
from paradestate.core.support.offer import NO_CHOICE, Offer
from tests.chance.fallback.fallbacks import worth

GUNS = Offer(name="guns", cost={1: 3, 2: 5}, most=2, worths=worth(n1=2, n3=7))


def told(offer: Offer, *, points: int = 99, exact: bool = True) -> list[tuple[int, int, int]]:
    """Number, points and worth of each way, without what is held."""
    ways = sure_ways(offer, held=(), points=points, exact_number=exact)
    return [(way.number, way.points, int(worth_of(offer, way.totals))) for way in ways]


def test_of_equal_number_and_worth_only_the_cheapest_is_kept() -> None:
    assert told(GUNS) == [(0, 0, 0), (1, 3, 2), (2, 6, 2), (2, 8, 7)]


def test_where_the_number_makes_no_difference_fewer_serve_as_well() -> None:
    assert told(GUNS, exact=False) == [(0, 0, 0), (1, 3, 2), (2, 8, 7)]


def test_what_cannot_be_paid_is_left_out() -> None:
    assert told(GUNS, points=5) == [(0, 0, 0), (1, 3, 2)]


def test_of_any_number_as_many_as_can_be_paid() -> None:
    many = Offer(name="scouts", cost={1: 2}, most=None, worths=worth(n2=3))
    assert told(many, points=7) == [(0, 0, 0), (1, 2, 0), (2, 4, 3), (3, 6, 3)]


def test_repeats_cost_more_and_refunds_may_come_after_what_cannot_be_paid() -> None:
    mud = Offer(name="mud", cost={1: -1, 2: 4}, most=2, repeats_cost_more=(1,), worths=worth(n2=1))
    assert told(mud, points=3) == [(1, -1, 0), (2, -1, 1), (0, 0, 0), (1, 4, 1)]


def test_what_is_held_counts_and_is_not_paid_again() -> None:
    held = (Purchase(entry="guns", number=1),)
    ways = sure_ways(GUNS, held=held, points=9, exact_number=True)
    assert [(way.number, way.points, len(way.bought)) for way in ways] == [
        (1, 0, 0),
        (2, 3, 1),
        (2, 5, 1),
    ]


def test_totals_are_counted_by_choice_and_together() -> None:
    offer = Offer(
        name="pioneers",
        cost={1: 3, 2: 6},
        choices={"flame": 0, "charges": 0},
        worths={"flame": {1: Fraction(4)}, "": {2: Fraction(1)}},
    )
    bought = (Purchase(entry="pioneers", number=2, choice="flame"),)
    assert listed_totals(offer, bought) == {"flame": 1, "": 2}
    assert worth_of(offer, listed_totals(offer, bought)) == 5
    other = (Purchase(entry="pioneers", number=1, choice="charges"),)
    assert listed_totals(offer, other) == {"flame": 0, "": 0}
    assert worth_of(offer, {"flame": 0, "": 0}) == 0


def test_of_what_costs_nothing_no_more_is_gone_through_than_is_worth_anything() -> None:
    free = Offer(name="free", cost={1: 0}, most=10**9, worths={NO_CHOICE: {2: Fraction(5)}})
    found = sure_ways(free, held=(), points=3, exact_number=False)
    assert [way.number for way in found] == [0, 2]
