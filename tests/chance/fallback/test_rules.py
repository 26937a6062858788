"""How an evening of asking goes on from where it stands."""

from dataclasses import replace
from fractions import Fraction

import numpy as np

from paradestate.chance.fallback.prospect import Held
from paradestate.chance.fallback.rules import NO_LIMIT, Move, Rules, rules_of
from paradestate.chance.fallback.standing import UNSEEN, Standings, joined
from paradestate.core.game import Purchase
from paradestate.core.support.entry import GroupLimit
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms
from tests.chance.fallback.fallbacks import (
    GUN,
    HALF,
    TANK,
    TANK_GAME,
    guns_and_horse,
    prospect,
    worth,
)
from tests.chance.plans import bought, terms_with
from tests.support_terms import Plan

HORSE = Offer(name="horse", cost={1: 2, 2: 5}, availability=HALF, worths=worth(n1=4))
GUIDE = Offer(name="guide", cost={1: 2})


def rules(terms: Terms, *, points: int = 9, held: Held | None = None) -> Rules:
    return rules_of(prospect(terms, points=points, held=held or Held()))


def after(
    made: Rules, index: int, *, taken: bool, here: Standings | None = None, case: int = UNSEEN
) -> Standings:
    """Where asking for an entry leads, from the start or from elsewhere; its cheapest is taken."""
    option = made.prospect.rolled[index].options[0] if taken else None
    return made.settled(made.after(here or made.start(), index, taken=option, case=case))


def options(made: Rules, here: Standings, *, of: int) -> list[int]:
    (legal,) = made.legal_options(here, of)
    return np.flatnonzero(legal).tolist()


def moves(made: Rules, here: Standings) -> list[Move]:
    return [move for knot in made.knots for move in made.moves(here, knot)]


def held_early(made: Rules, early: tuple[int, ...]) -> dict[str, Plan]:
    """Entry to the purchases of it that were bought early, or held from the start."""
    return {
        name: each[place].purchases
        for name, place, each in zip(made.early, early, made.holdings, strict=True)
    }


def ways(made: Rules, here: Standings) -> list[int]:
    """The ways of the rolls that are still to come."""
    (rolls,) = made.still_to_roll(here)
    return [
        roll.ways for roll, is_to_come in zip(made.prospect.rolls, rolls, strict=True) if is_to_come
    ]


def test_what_has_to_do_with_no_other_is_plain_and_leaves_no_trace() -> None:
    made = rules(TANK_GAME)
    assert made.plain == 1
    assert (made.effect(0, None), made.effect(0, 0)) == (0, 0)
    assert after(made, 0, taken=True).at(0) == after(made, 0, taken=False).at(0)
    assert (ways(made, made.start()), ways(made, after(made, 0, taken=True))) == ([2], [])
    assert made.depths(made.start()).tolist() == [0]
    assert made.depths(after(made, 0, taken=True)).tolist() == [1]


def test_what_bars_a_sure_entry_is_remembered_until_the_end() -> None:
    made = rules(terms_with(replace(TANK, bars=frozenset({"gun"})), GUN))
    assert made.plain == 0
    assert after(made, 0, taken=True).at(0).taken == 1
    assert after(made, 0, taken=False).at(0).taken == 0
    assert (made.effect(0, None), made.effect(0, 0)) == (0, 1)


def test_what_bars_another_rolled_entry_closes_it_and_is_forgotten() -> None:
    made = rules(terms_with(replace(TANK, bars=frozenset({"horse"})), HORSE))
    standing = after(made, 0, taken=True)
    assert (standing.at(0).asked, standing.at(0).taken) == (0b11, 0)
    assert ways(made, standing) == []


def test_what_is_needed_closes_those_that_need_it_when_it_is_refused() -> None:
    for words in ({"needs": {"tank": 1}}, {"needs_any_of": {"tank": 1, "mules": 1}}):
        made = rules(terms_with(TANK, replace(HORSE, **words)))  # type: ignore[arg-type] # two words
        assert options(made, made.start(), of=1) == []
        assert after(made, 0, taken=False).at(0).asked == 0b11
        granted = after(made, 0, taken=True)
        assert (granted.at(0).asked, granted.at(0).taken) == (0b01, 0b01)
        assert options(made, granted, of=1) == [0, 1]
        assert after(made, 1, taken=False, here=granted).at(0).taken == 0


def test_many_standings_are_gone_on_from_as_each_of_them_is() -> None:
    made = rules(terms_with(TANK, replace(HORSE, needs={"tank": 1})))
    every = [made.start(), after(made, 0, taken=False), after(made, 0, taken=True)]
    together = joined(every)
    assert made.legal_options(together, 1).tolist() == [[False] * 2, [False] * 2, [True] * 2]
    settled = made.settled(together)
    assert [settled.at(row) for row in range(3)] == [each.at(0) for each in every]


def test_two_of_what_is_asked_once_can_never_be_there() -> None:
    made = rules(terms_with(TANK, replace(HORSE, needs={"tank": 2})))
    assert made.start().at(0).asked == 0b10


def test_a_full_group_closes_what_is_in_it() -> None:
    grouped = terms_with(replace(TANK, group="armour"), replace(HORSE, group="armour"), GUN)
    one = replace(grouped, groups=(GroupLimit(group="armour", most=1),))
    assert after(rules(one), 0, taken=True).at(0).asked == 0b11
    half = replace(grouped, groups=(GroupLimit(group="armour", most_points=Fraction(1, 2)),))
    made = rules(half, points=16)
    assert made.start().at(0).room == (8,)
    assert after(made, 0, taken=True).at(0).room == (2,)
    assert options(made, after(made, 0, taken=True), of=1) == [0]
    assert [made.effect(1, place) for place in (None, 0, 1)] == [0, 1, 2]
    wide = replace(grouped, groups=(GroupLimit(group="armour", most_points=Fraction(1)),))
    assert rules(wide, points=99).start().at(0).room == (11,)


def test_room_is_never_more_than_what_could_be_taken() -> None:
    many = replace(GUN, group="armour", most=None)
    few = replace(GUN, name="few", group="armour", most=2, repeats_cost_more=(1,))
    for sure, purchases, points in ((many, 7, 30), (few, 3, 6 + 9)):
        terms = terms_with(replace(TANK, group="armour"), sure)
        limits = (
            GroupLimit(group="armour", most=7),
            GroupLimit(group="armour", most_points=Fraction(1)),
        )
        made = rules(replace(terms, groups=limits), points=30)
        assert made.start().at(0).room == (purchases, points)


def test_a_group_may_have_a_limit_beyond_all_numbers() -> None:
    sure = replace(GUN, group="armour", most=None)
    terms = terms_with(replace(TANK, group="armour"), sure)
    made = rules(replace(terms, groups=(GroupLimit(group="armour", most=10**30),)))
    assert made.start().at(0).room == (NO_LIMIT,)


def test_what_is_bought_early_is_remembered_and_may_close_others() -> None:
    barring = replace(GUIDE, bars=frozenset({"horse"}))
    made = rules(terms_with(replace(TANK, needs={"guide": 1}), HORSE, barring))
    assert options(made, made.start(), of=0) == []
    (move,) = moves(made, made.start())
    assert held_early(made, move.before) == {"guide": ()}
    assert held_early(made, move.early) == {"guide": bought(guide=1)}
    assert (move.points, move.rows.tolist()) == (2, [0])
    there = made.settled(move.after)
    assert options(made, there, of=0) == [0]
    assert there.at(0).asked == 0b10
    assert made.depths(there).tolist() == [2]
    assert moves(made, after(made, 0, taken=False, here=there)) == []


def test_what_cannot_stand_yet_is_not_bought_early() -> None:
    guide = replace(GUIDE, needs={"map": 1}, group="scouts")
    terms = terms_with(
        replace(TANK, needs={"guide": 1}), guide, replace(GUIDE, name="map", group="scouts")
    )
    free = rules(terms)
    assert [held_early(free, move.early) for move in moves(free, free.start())] == [
        {"guide": (), "map": bought(map=1)},
        {"guide": bought(guide=1), "map": bought(map=1)},
    ]
    full = rules(replace(terms, groups=(GroupLimit(group="scouts", most=1),)))
    assert [held_early(full, move.early) for move in moves(full, full.start())] == [
        {"guide": (), "map": bought(map=1)}
    ]


def test_a_shared_roll_is_remembered_while_it_tells_something() -> None:
    made = rules(guns_and_horse())
    assert made.cases_seen(made.start(), 0).tolist() == [UNSEEN]
    refused_to_horse = after(made, 0, taken=False, case=1)
    assert made.cases_seen(refused_to_horse, 1).tolist() == [1]
    assert after(made, 0, taken=False, case=3).at(0) == refused_to_horse.at(0)
    assert (ways(made, made.start()), ways(made, refused_to_horse)) == ([4], [])
    assert after(made, 1, taken=False, here=refused_to_horse, case=1).at(0).seen == (UNSEEN,)


def test_what_is_held_at_the_start_is_closed_counted_and_out_of_the_room() -> None:
    held = Held(
        taken=(
            Purchase(entry="tank", number=1),
            Purchase(entry="gun", number=1),
            Purchase(entry="gun", number=1),
        ),
        asked=frozenset({"horse"}),
    )
    terms = terms_with(replace(TANK, group="armour"), HORSE, replace(GUN, most=3, group="armour"))
    limits = (
        GroupLimit(group="armour", most=4),
        GroupLimit(group="armour", most_points=Fraction(1)),
    )
    start = rules(replace(terms, groups=limits), points=15, held=held).start().at(0)
    assert start.asked == 0b11
    assert start.room == (1, 1)
    made = rules(terms, held=held)
    assert held_early(made, start.early)["gun"] == bought(gun=1) * 2
