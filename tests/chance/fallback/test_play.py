"""All standings that an evening may come to."""

from dataclasses import replace

from paradestate.chance.fallback.play import PLAIN, cases_of, explored
from paradestate.chance.fallback.rolled import Case
from paradestate.chance.fallback.standing import UNSEEN, rules_of
from paradestate.core.support.offer import Offer
from tests.chance.fallback.fallbacks import GUN, TANK, guns_and_horse, prospect
from tests.chance.plans import terms_with


def test_three_that_have_to_do_with_no_other_stand_in_eight_ways() -> None:
    tanks = [replace(TANK, name=f"tank {n}") for n in range(3)]
    play = explored(rules_of(prospect(terms_with(*tanks, GUN), points=9)))
    assert play is not None
    assert [len(layer.standings) for layer in play.layers] == [1, 3, 3, 1]
    first = play.layers[0].requests[0, UNSEEN, (0,)]
    assert (first.rows, first.after[PLAIN]) == ([0], [play.numbers[(1, 0, (), (), ())]])  # type: ignore[index] # a standing is a tuple


def test_more_than_so_many_standings_are_refused_at_once_or_on_the_way() -> None:
    tanks = [replace(TANK, name=f"tank {n}") for n in range(4)]
    rules = rules_of(prospect(terms_with(*tanks), points=9))
    assert explored(rules, most=15) is None
    assert explored(rules, most=16) is not None
    needing = [tanks[0], *(replace(each, needs={"tank 0": 1}) for each in tanks[1:])]
    rules = rules_of(prospect(terms_with(*needing), points=9))
    assert explored(rules, most=3) is None


def test_a_closed_entry_leaves_out_a_layer() -> None:
    terms = terms_with(TANK, replace(TANK, name="other", needs={"tank": 1}))
    play = explored(rules_of(prospect(terms, points=9)))
    assert play is not None
    assert [len(layer.standings) for layer in play.layers] == [1, 1, 1]


def test_what_brings_points_is_no_step_where_nothing_is_rolled_for() -> None:
    mud = Offer(name="mud", cost={1: -1})
    play = explored(rules_of(prospect(terms_with(mud, GUN), points=9)))
    assert play is not None
    assert [len(layer.standings) for layer in play.layers] == [1]


def test_what_is_bought_early_is_a_step_of_its_own() -> None:
    guide = Offer(name="guide", cost={1: 2})
    terms = terms_with(replace(TANK, needs={"guide": 1}), guide)
    play = explored(rules_of(prospect(terms, points=9)))
    assert play is not None
    assert list(play.layers[0].buys) == [2]
    assert play.layers[0].requests == {}


def test_a_shared_roll_that_was_seen_has_one_case() -> None:
    rules = rules_of(prospect(guns_and_horse(), points=9))
    (roll,) = rules.prospect.rolls
    assert [case for case, _ in cases_of(roll, seen=UNSEEN, is_shared=True)] == [0, 1, 2, 3]
    assert cases_of(roll, seen=2, is_shared=True) == ((2, Case(allowed=(1, 0), ways=1)),)
    assert {case for case, _ in cases_of(roll, seen=UNSEEN, is_shared=False)} == {UNSEEN}
    play = explored(rules)
    assert play is not None
    assert {request.case for request in play.layers[1].requests.values()} == {0, 1, 2, 3}
