"""Where an evening may stand, and how it goes on."""

from dataclasses import replace
from fractions import Fraction

from paradestate.chance.fallback.prospect import Held
from paradestate.chance.fallback.standing import UNSEEN, Rules, Standing, rules_of
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


def held_early(made: Rules, standing: Standing) -> dict[str, Plan]:
    """Entry to the purchases of it that were bought early, or held from the start."""
    return {
        name: each[place].purchases
        for name, place, each in zip(made.early, standing.early, made.holdings, strict=True)
    }


def test_what_has_to_do_with_no_other_is_plain_and_leaves_no_trace() -> None:
    made = rules(TANK_GAME)
    assert made.plain == 1
    start = made.start()
    taken = made.after(start, 0, taken=made.prospect.rolled[0].options[0], case=UNSEEN)
    assert taken == made.after(start, 0, taken=None, case=UNSEEN)
    assert (made.effect(0, None), made.effect(0, 0)) == (0, 0)
    assert (made.scale(start), made.scale(taken)) == (2, 1)
    assert (made.depth(start), made.depth(taken)) == (0, 1)


def test_what_bars_a_sure_entry_is_remembered_until_the_end() -> None:
    made = rules(terms_with(replace(TANK, bars=frozenset({"gun"})), GUN))
    assert made.plain == 0
    option = made.prospect.rolled[0].options[0]
    assert made.after(made.start(), 0, taken=option, case=UNSEEN).taken == 1
    assert made.after(made.start(), 0, taken=None, case=UNSEEN).taken == 0
    assert (made.effect(0, None), made.effect(0, 0)) == (0, 1)


def test_what_bars_another_rolled_entry_closes_it_and_is_forgotten() -> None:
    made = rules(terms_with(replace(TANK, bars=frozenset({"horse"})), HORSE))
    option = made.prospect.rolled[0].options[0]
    after = made.after(made.start(), 0, taken=option, case=UNSEEN)
    assert (after.asked, after.taken) == (0b11, 0)
    assert made.scale(after) == 1


def test_what_is_needed_closes_those_that_need_it_when_it_is_refused() -> None:
    for words in ({"needs": {"tank": 1}}, {"needs_any_of": {"tank": 1, "mules": 1}}):
        made = rules(terms_with(TANK, replace(HORSE, **words)))  # type: ignore[arg-type] # two words
        start = made.start()
        assert made.legal_options(start, 1) == ()
        assert made.after(start, 0, taken=None, case=UNSEEN).asked == 0b11
        option = made.prospect.rolled[0].options[0]
        granted = made.after(start, 0, taken=option, case=UNSEEN)
        assert (granted.asked, granted.taken) == (0b01, 0b01)
        assert made.legal_options(granted, 1) == (0, 1)
        assert made.after(granted, 1, taken=None, case=UNSEEN).taken == 0


def test_two_of_what_is_asked_once_can_never_be_there() -> None:
    made = rules(terms_with(TANK, replace(HORSE, needs={"tank": 2})))
    assert made.start().asked == 0b10


def test_a_full_group_closes_what_is_in_it() -> None:
    grouped = terms_with(replace(TANK, group="armour"), replace(HORSE, group="armour"), GUN)
    one = replace(grouped, groups=(GroupLimit(group="armour", most=1),))
    made = rules(one)
    option = made.prospect.rolled[0].options[0]
    assert made.after(made.start(), 0, taken=option, case=UNSEEN).asked == 0b11
    half = replace(grouped, groups=(GroupLimit(group="armour", most_points=Fraction(1, 2)),))
    made = rules(half, points=16)
    start = made.start()
    assert start.room == (8,)
    assert made.after(start, 0, taken=option, case=UNSEEN).room == (2,)
    assert made.legal_options(made.after(start, 0, taken=option, case=UNSEEN), 1) == (0,)
    assert [made.effect(1, place) for place in (None, 0, 1)] == [0, 1, 2]
    wide = replace(grouped, groups=(GroupLimit(group="armour", most_points=Fraction(1)),))
    assert rules(wide, points=99).start().room == (11,)


def test_room_is_never_more_than_what_could_be_taken() -> None:
    many = replace(GUN, group="armour", most=None)
    few = replace(GUN, name="few", group="armour", most=2, repeats_cost_more=(1,))
    for sure, purchases, points in ((many, 7, 30), (few, 3, 6 + 9)):
        terms = terms_with(replace(TANK, group="armour"), sure)
        limits = (
            GroupLimit(group="armour", most=7),
            GroupLimit(group="armour", most_points=Fraction(1)),
        )
        assert rules(replace(terms, groups=limits), points=30).start().room == (purchases, points)


def test_what_is_bought_early_is_remembered_and_may_close_others() -> None:
    barring = replace(GUIDE, bars=frozenset({"horse"}))
    made = rules(terms_with(replace(TANK, needs={"guide": 1}), HORSE, barring))
    start = made.start()
    assert made.legal_options(start, 0) == ()
    (buy,) = made.early_buys(start)
    assert (buy.purchases, buy.points) == (bought(guide=1), 2)
    assert made.legal_options(buy.standing, 0) == (0,)
    assert buy.standing.asked == 0b10
    assert made.depth(buy.standing) == 2
    assert held_early(made, buy.standing) == {"guide": bought(guide=1)}
    assert list(made.early_buys(made.after(buy.standing, 0, taken=None, case=UNSEEN))) == []


def test_what_cannot_stand_yet_is_not_bought_early() -> None:
    guide = replace(GUIDE, needs={"map": 1}, group="scouts")
    terms = terms_with(
        replace(TANK, needs={"guide": 1}), guide, replace(GUIDE, name="map", group="scouts")
    )
    assert [buy.purchases for buy in rules(terms).early_buys(rules(terms).start())] == [
        bought(map=1),
        bought(guide=1, map=1),
    ]
    full = replace(terms, groups=(GroupLimit(group="scouts", most=1),))
    assert [buy.purchases for buy in rules(full).early_buys(rules(full).start())] == [bought(map=1)]


def test_a_shared_roll_is_remembered_while_it_tells_something() -> None:
    made = rules(guns_and_horse())
    start = made.start()
    assert made.case_seen(start, 0) == UNSEEN
    both_refused_to_horse = made.after(start, 0, taken=None, case=1)
    assert made.case_seen(both_refused_to_horse, 1) == 1
    assert made.after(start, 0, taken=None, case=3) == both_refused_to_horse
    assert (made.scale(start), made.scale(both_refused_to_horse)) == (4, 1)
    assert made.after(both_refused_to_horse, 1, taken=None, case=1).seen == (UNSEEN,)


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
    start = rules(replace(terms, groups=limits), points=15, held=held).start()
    assert start.asked == 0b11
    assert start.room == (1, 1)
    made = rules(terms, held=held)
    assert held_early(made, start._replace(room=()))["gun"] == bought(gun=1) * 2
