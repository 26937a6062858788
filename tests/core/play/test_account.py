"""Points left, what is bought and what is still open, from what was written down of a game."""

from dataclasses import replace

import pytest

from paradestate.core.choice import Choice, chosen
from paradestate.core.dice import LookUp, Row
from paradestate.core.establishment import establishment
from paradestate.core.game import Purchase
from paradestate.core.play.account import Account, Request, account
from paradestate.core.play.event import Asked, Event, Opened, Rolled
from paradestate.core.support.entry import Asking
from paradestate.core.support.terms import Terms, terms_of
from tests.core.play.test_faces import dice
from tests.core.play.test_game_record import record, strike, written
from tests.forces import force_from
from tests.support_terms import attack

ALLOWANCE = Rolled(purpose="allowance", dice="18 + 2d6", faces=(6, 2), total=26)
TANKS = Purchase(entry="light tanks", number=2)


def roll(entry: str, total: int, *, number: int = 2, choice: str = "") -> Rolled:
    return Rolled(
        purpose=entry, dice="1d12", faces=(total,), total=total, number=number, choice=choice
    )


def of(*events: Event, terms: Terms | None = None) -> Account:
    opened = Opened(game="whole-day attack")
    return account(record(*written(opened, *events)), terms or attack())


def test_six_and_two_for_the_allowance_leave_nineteen() -> None:
    """Story 15: 18 + 8 - 7 = 19; 3 on 1d12 refuses the tanks, and the points are kept."""
    found = of(ALLOWANCE, roll("light tanks", 3))
    assert (found.allowance, found.start, found.left) == (26, 19, 19)
    assert found.requests == (Request(asked=TANKS, allowed=0, taken=0, roll="2"),)
    assert (found.refused, found.bought, found.open) == ((TANKS,), (), None)


def test_before_the_allowance_is_rolled_nothing_is_left_to_be_said() -> None:
    assert (of().start, of().left) == (None, None)


def test_what_is_allowed_is_open_until_it_is_said_how_many_are_taken() -> None:
    found = of(ALLOWANCE, roll("light tanks", 9))
    assert found.open == Request(asked=TANKS, allowed=2, roll="2")
    assert found.left == 19
    taken = of(ALLOWANCE, roll("light tanks", 9), Asked(entry="light tanks", number=2, taken=2))
    assert (taken.open, taken.bought, taken.left, taken.paid) == (None, (TANKS,), 10, 9)


def test_a_part_may_be_taken_and_all_may_be_declined() -> None:
    one = of(ALLOWANCE, roll("anti-tank guns", 9), Asked(entry="anti-tank guns", number=2, taken=1))
    assert one.left == 15
    none = of(ALLOWANCE, roll("anti-tank guns", 9), Asked(entry="anti-tank guns", number=2))
    assert (none.left, none.refused) == (19, (Purchase(entry="anti-tank guns", number=2),))


def test_what_needs_no_roll_is_bought_at_once() -> None:
    bought = Asked(entry="machine-gun platoon", number=2, taken=2)
    assert of(ALLOWANCE, bought).left == 14
    assert of(ALLOWANCE, replace(bought, taken=0)).requests == ()


def test_what_isn_t_on_offer_and_what_is_rolled_for_anything_else_changes_nothing() -> None:
    found = of(
        ALLOWANCE,
        Asked(entry="dragons", number=1, taken=1),
        roll("first move", 4),
        roll("machine-gun platoon", 4),
    )
    assert (found.requests, found.second, found.left) == ((), frozenset(), 19)


def test_the_first_roll_counts_until_it_is_struck_out() -> None:
    """Row 54 of the mistakes."""
    opened = Opened(game="whole-day attack")
    entries = written(opened, ALLOWANCE, roll("light tanks", 2), roll("light tanks", 11), ALLOWANCE)
    twice = account(record(*entries), attack())
    assert twice.second == {"3", "4"}
    assert twice.refused == (TANKS,)
    struck = account(record(*entries, strike("2", because="it was a 7")), attack())
    assert struck.second == {"4"}
    assert struck.open is not None


FEW = """\
figures: {rider: {}}
stands: {patrol: {base: none, figures: {rider: 1}}}
formations: {top: {parts: {patrol: 1}}}
games: {skirmish: {allowance: 20, posture: attack}}
"""
LOST = """\
supporting troops:
  guns: {cost: {1: 4, 2: 7}, limit: {most: 2}, availability: {roll: 1d12,
    allows: {1-2: 0, 3-8: 1, 9-12: all}}, when refused: points lost}
  lancers: {cost: 5, availability: {roll: 1d6, shared roll: horse, allows: {1-3: 0, 4-6: 1}},
    when refused: points kept}
  hussars: {cost: 3, availability: {roll: 1d6, shared roll: horse, allows: {1-2: 0, 3-6: 1}},
    when refused: points kept}
"""


def few() -> Terms:
    force, _ = chosen(force_from(FEW, LOST), Choice(game="skirmish"))
    made, _ = establishment(force)
    assert made is not None
    terms, _ = terms_of(force, made, game="skirmish", grades={})
    assert terms is not None
    return terms


def test_an_allowance_that_is_fixed_needs_no_roll() -> None:
    assert of(terms=few()).left == 20


@pytest.mark.parametrize(
    ("total", "taken", "left", "is_partly"),
    [(1, None, 13, False), (5, 1, 13, True), (9, 2, 13, False), (9, 0, 13, False)],
)
def test_points_that_are_lost_are_gone_whatever_comes(
    *, total: int, taken: int | None, left: int, is_partly: bool
) -> None:
    after = [] if taken is None else [Asked(entry="guns", number=2, allowed=2, taken=taken)]
    found = of(roll("guns", total), *after, terms=few())
    assert (found.left, found.is_partly_lost) == (left, is_partly)


def test_an_entry_that_may_be_taken_twice_is_rolled_for_twice() -> None:
    one = (roll("guns", 9, number=1), Asked(entry="guns", number=1, allowed=1, taken=1))
    assert of(*one, roll("guns", 9, number=1), terms=few()).second == frozenset()
    assert of(*one, *one, roll("guns", 9, number=1), terms=few()).second == {"5"}
    endless = replace(few(), offers={"guns": replace(few().offers["guns"], most=None)})
    assert of(*one, *one, *one, terms=endless).second == frozenset()


def test_what_was_refused_or_is_still_open_isn_t_rolled_for_again() -> None:
    assert of(roll("guns", 1), roll("guns", 9), terms=few()).second == {"2"}
    assert of(roll("guns", 9), roll("guns", 9), terms=few()).second == {"2"}


def test_entries_that_share_a_roll_have_one_between_them() -> None:
    first = roll("lancers", 3, number=1)
    found = of(first, roll("hussars", 6, number=1), terms=few())
    assert found.second == {"2"}
    taken = Asked(entry="hussars", number=1, allowed=1, taken=1)
    both = of(first, taken, terms=few())
    assert (both.bought, both.left) == ((Purchase(entry="hussars", number=1),), 17)


def test_what_is_named_beforehand_waits_for_its_roll() -> None:
    """Row 55 of the mistakes."""
    terms = replace(few(), asking=Asking.ALL_DECLARED_FIRST)
    named = Asked(entry="guns", number=2)
    assert of(named, terms=terms).declared == (Purchase(entry="guns", number=2),)
    found = of(named, roll("guns", 9), roll("lancers", 5, number=1), terms=terms)
    assert found.declared == ()
    assert found.undeclared == {"3"}
    assert of(roll("lancers", 5, number=1), terms=few()).undeclared == frozenset()


def test_points_are_looked_up_where_the_game_has_a_table() -> None:
    game = few().game
    table = LookUp(
        roll=dice("1d6"),
        gives=(Row(least=1, most=3, gives=6), Row(least=4, most=None, gives=9)),
    )
    terms = replace(few(), game=replace(game, allowance=table))
    rolled = Rolled(purpose="allowance", dice="1d6", faces=(4,), total=4)
    assert of(rolled, terms=terms).left == 9
    assert of(terms=terms).left is None
