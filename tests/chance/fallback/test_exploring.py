"""Finding all standings of an evening."""

from dataclasses import replace

from paradestate.chance.fallback.exploring import explored
from paradestate.chance.fallback.rules import rules_of
from paradestate.chance.fallback.standing import UNSEEN, Standing
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.offer import Offer
from tests.chance.fallback.fallbacks import GUN, TANK, guns_and_horse, prospect
from tests.chance.plans import terms_with


def test_three_that_have_to_do_with_no_other_stand_in_eight_ways() -> None:
    tanks = [replace(TANK, name=f"tank {n}") for n in range(3)]
    play = explored(rules_of(prospect(terms_with(*tanks, GUN), points=9)))
    assert play is not None
    assert [len(layer) for layer in play.layers] == [1, 3, 3, 1]
    assert [len(each.standings) for each in play.knots] == [2, 2, 2]
    after = [
        (request.index, request.rows.tolist(), play.standing(int(request.after[UNSEEN, 0][0])))
        for request in play.requests(play.layers[0])
    ]
    assert after == [
        (0, [0], Standing(0b001, 0, (), (), ())),
        (1, [0], Standing(0b010, 0, (), (), ())),
        (2, [0], Standing(0b100, 0, (), (), ())),
    ]


def test_every_standing_has_a_number_of_its_own() -> None:
    guide = Offer(name="guide", cost={1: 2}, group="scouts")
    led = replace(TANK, name="led", needs={"guide": 1}, bars=frozenset({"gun"}))
    terms = terms_with(*guns_and_horse().offers.values(), led, guide, GUN)
    rules = rules_of(
        prospect(replace(terms, groups=(GroupLimit(group="scouts", most=1),)), points=9)
    )
    play = explored(rules)
    assert play is not None
    assert len(play.knots) == 2
    standings = [play.standing(number) for number in range(play.size)]
    assert standings[0] == rules.start().at(0)
    assert len(set(standings)) == play.size
    depths = [
        {standings[number].asked.bit_count() + sum(standings[number].early) for number in layer}
        for layer in play.layers
    ]
    assert depths == [{depth} for depth in range(len(play.layers))]


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
    assert [len(layer) for layer in play.layers] == [1, 1, 1]


def test_what_brings_points_is_no_step_where_nothing_is_rolled_for() -> None:
    mud = Offer(name="mud", cost={1: -1})
    play = explored(rules_of(prospect(terms_with(mud, GUN), points=9)))
    assert play is not None
    assert play.size == 1


def test_what_is_bought_early_is_a_step_of_its_own() -> None:
    guide = Offer(name="guide", cost={1: 2})
    terms = terms_with(replace(TANK, needs={"guide": 1}), guide)
    play = explored(rules_of(prospect(terms, points=9)))
    assert play is not None
    (buy,) = play.buys(play.layers[0])
    assert (buy.points, buy.rows.tolist()) == (2, [0])
    assert play.standing(int(buy.after[0])).early == (1,)
    assert list(play.requests(play.layers[0])) == []
