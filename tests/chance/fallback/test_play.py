"""What may be done in the standings of an evening, by their numbers."""

from dataclasses import replace

from paradestate.chance.fallback.exploring import explored
from paradestate.chance.fallback.play import START, Play, cases_of
from paradestate.chance.fallback.rolled import Case
from paradestate.chance.fallback.rules import rules_of
from paradestate.chance.fallback.standing import UNSEEN
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms
from tests.chance.fallback.fallbacks import TANK, guns_and_horse, prospect
from tests.chance.plans import bought, terms_with

GUIDE = Offer(name="guide", cost={1: 2})


def played(terms: Terms) -> Play:
    play = explored(rules_of(prospect(terms, points=9)))
    assert play is not None
    return play


def test_a_shared_roll_that_was_seen_has_one_case() -> None:
    rules = rules_of(prospect(guns_and_horse(), points=9))
    (roll,) = rules.prospect.rolls
    assert [case for case, _ in cases_of(roll, seen=UNSEEN, is_shared=True)] == [0, 1, 2, 3]
    assert cases_of(roll, seen=2, is_shared=True) == ((2, Case(allowed=(1, 0), ways=1)),)
    assert {case for case, _ in cases_of(roll, seen=UNSEEN, is_shared=False)} == {UNSEEN}
    play = played(guns_and_horse())
    assert {request.case for request in play.requests(play.layers[1])} == {0, 1, 2, 3}


def test_requests_in_one_standing_are_those_of_its_layer() -> None:
    play = played(terms_with(TANK, replace(TANK, name="other"), replace(TANK, name="third")))
    (ask, *_) = play.requests_at(START).values()
    (granted,) = ask.after[UNSEEN, 0].tolist()
    assert list(play.requests_at(START)) == [0, 1, 2]
    assert list(play.requests_at(granted)) == [1, 2]
    assert play.requests_at(START) is play.requests_at(START)


def test_what_is_bought_early_may_be_of_many_knots() -> None:
    """The fewest first, as the file has them; and none once all was asked for."""
    led = replace(TANK, needs={"guide": 1})
    shown = replace(TANK, name="shown", needs={"map": 1})
    play = played(terms_with(led, shown, GUIDE, replace(GUIDE, name="map", cost={1: 1})))
    buys = play.buys_at(START)
    assert [(buy.purchases, buy.points) for buy in buys] == [
        (bought(map=1), 1),
        (bought(guide=1), 2),
        (bought(guide=1, map=1), 3),
    ]
    assert play.standing(buys[2].standing).early == (1, 1)
    assert [buy.purchases for buy in play.buys_at(buys[0].standing)] == [bought(guide=1)]
    assert play.buys_at(buys[2].standing) == ()


def test_what_brings_points_is_not_bought_once_all_was_asked_for() -> None:
    play = played(terms_with(TANK, Offer(name="mud", cost={1: -1})))
    assert [buy.points for buy in play.buys_at(START)] == [-1]
    (after,) = play.requests_at(START)[0].after[UNSEEN, 0].tolist()
    assert play.buys_at(after) == ()
    assert len(list(play.buys(play.layers[1]))) == 1
