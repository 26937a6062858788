"""What to ask for first, and what then."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from paradestate.chance.dice import allowance_chances
from paradestate.chance.fallback.best_play import BEGUN, fallback, level_choices
from paradestate.chance.fallback.prospect import Held
from paradestate.core.certainty import NotComputed
from paradestate.core.game import Purchase
from paradestate.core.support.entry import Asking, GroupLimit
from paradestate.core.support.offer import Offer
from paradestate.core.support.policy import Ask, Fallback, FirstChoice, LevelChoice, Take
from paradestate.core.support.terms import Terms
from tests.chance.fallback.fallbacks import (
    GUN,
    HALF,
    LOSING_GAME,
    MACHINE_GUN,
    TANK,
    TANK_GAME,
    guns_and_horse,
    worth,
)
from tests.chance.fallback.plain_declaring import plain_declared
from tests.chance.fallback.plain_fallback import PlainFallback, without_leasts
from tests.chance.plans import bought, rolled, terms_with
from tests.core.support.test_terms import terms as terms_of_force
from tests.forces import marenz
from tests.support_terms import small_terms

SLOW_TO_DRAW = [HealthCheck.too_slow, HealthCheck.data_too_large, HealthCheck.filter_too_much]


def attack() -> Terms:
    return terms_of_force(marenz(), game="whole-day attack")


def best(terms: Terms, *, points: int, held: Held | None = None) -> Fallback:
    answer = fallback(terms, points=points, held=held or Held())
    assert isinstance(answer, Fallback), answer
    return answer


def levels(terms: Terms, *points: int) -> tuple[LevelChoice, ...]:
    answer = level_choices(terms, points=points)
    assert not isinstance(answer, NotComputed)
    return answer


def test_example_a_ask_for_the_tank_and_if_refused_take_gun_and_machine_gun() -> None:
    """Worked by hand: ½·10 + ½·(5 + 3) = 9, and 5 + 3 = 8 without the tank."""
    answer = best(TANK_GAME, points=6)
    assert answer.worth == 9
    assert isinstance(answer.chart, Ask)
    assert answer.chart.purchase == Purchase(entry="tank", number=1)
    granted, refused = answer.chart.outcomes
    assert granted.then == Take(purchases=(), points=0, worth=Fraction(0))
    assert isinstance(refused.then, Take)
    assert [each.entry for each in refused.then.purchases] == ["gun", "machine gun"]
    assert answer.first_choices[1] == FirstChoice(purchase=None, worth=Fraction(8))


def test_example_b_one_rule_word_flips_the_answer() -> None:
    """Worked by hand: with the points lost ½·10 = 5 is less than 8, so one never asks."""
    answer = best(LOSING_GAME, points=6)
    assert answer.worth == 8
    assert isinstance(answer.chart, Take)
    assert answer.first_choices[1].worth == 5


def test_example_c_at_nine_and_at_eighteen_points() -> None:
    """Worked by hand, branch by branch: 173/18, and ⅔(10 + 53/6) + ⅓·41/3 = 154/9."""
    nine, eighteen = levels(attack(), 9, 18)
    assert nine.worth == Fraction(173, 18)
    assert eighteen.worth == Fraction(154, 9)
    assert eighteen.first == Purchase(entry="light tanks", number=2)


def test_example_c_declining_part_of_a_grant_can_be_right() -> None:
    """Worked by hand: 9 and not 8 of both guns; ⅙·8 + ⅚·9 = 53/6; ⅙·9 + ½·13 + ⅓·17 = 41/3."""
    chart = best(attack(), points=18).chart
    assert isinstance(chart, Ask)
    granted, refused = chart.outcomes
    assert isinstance(granted.then, Ask)
    assert granted.then.worth == Fraction(53, 6)
    assert granted.then.purchase == Purchase(entry="anti-tank guns", number=2)
    both, one, none = granted.then.outcomes
    one_gun = Purchase(entry="anti-tank guns", number=1)
    assert [both.takes, both.worth, both.if_all] == [one_gun, 9, 8]
    assert [one.takes, one.worth, one.if_all] == [one_gun, 9, None]
    assert [none.takes, none.worth] == [None, 8]
    assert refused.then.worth == Fraction(41, 3)


def test_example_c_over_the_allowance() -> None:
    """By enumeration of the 36 ways of two dice: 16.60 in the mean, which is exactly this."""
    terms = attack()
    points = allowance_chances(terms.game.allowance).moved(-terms.taken_off)
    found = levels(terms, *points.counts)
    mean = sum((points.of(each.points) * each.worth for each in found), Fraction(0))
    assert mean == Fraction(32261, 1944)


def test_chances_of_a_chart_add_up_and_its_worths_are_means() -> None:
    def look(step: Ask | Take) -> None:
        if isinstance(step, Ask):
            assert sum(each.chance for each in step.outcomes) == 1
            assert sum(each.chance * each.worth for each in step.outcomes) == step.worth
            for each in step.outcomes:
                look(each.then)

    look(best(attack(), points=18).chart)
    look(best(guns_and_horse(), points=7).chart)


def test_what_a_request_needs_is_bought_before_it_and_only_then() -> None:
    """A guide costs 2 and is worth nothing; without it the tank can't be asked for."""
    guide = Offer(name="guide", cost={1: 2})
    terms = terms_with(replace(TANK, needs={"guide": 1}), guide, GUN)
    chart = best(terms, points=8).chart
    assert isinstance(chart, Ask)
    assert chart.before == (Purchase(entry="guide", number=1),)
    assert isinstance(chart.outcomes[1].then, Take)
    assert chart.outcomes[1].then.points == 6
    assert best(terms, points=7).worth == 5


def test_of_two_that_open_it_the_cheaper_is_bought_and_it_is_one_first_choice() -> None:
    guide, maps = (Offer(name=name, cost={1: cost}) for name, cost in (("guide", 2), ("map", 1)))
    answer = best(
        terms_with(replace(TANK, needs_any_of={"guide": 1, "map": 1}), guide, maps), points=8
    )
    assert isinstance(answer.chart, Ask)
    assert answer.chart.before == bought(map=1)
    assert [each.worth for each in answer.first_choices] == [5, 0]


def test_of_a_refund_the_points_can_pay_for_a_request() -> None:
    mud = Offer(name="mud", cost={1: -2}, worths=worth(n1=-1))
    answer = best(terms_with(TANK, mud), points=4)
    assert answer.worth == 4
    assert isinstance(answer.chart, Ask)
    assert answer.chart.before == bought(mud=1)


def test_a_refused_opener_closes_what_it_opens() -> None:
    terms = terms_with(
        replace(TANK, cost={1: 1}, worths={}),
        Offer(
            name="commander", cost={1: 1}, availability=HALF, needs={"tank": 1}, worths=worth(n1=8)
        ),
    )
    assert best(terms, points=2).worth == 2
    assert best(terms, points=1).worth == 0


def test_what_needs_something_that_is_not_on_offer_is_never_counted_on() -> None:
    """The first is worth 1 and comes with ½; the tank, worth 10, can't be asked for after it."""
    first = replace(TANK, name="first", cost={1: 1}, worths=worth(n1=1))
    tank = replace(TANK, needs={"mules": 1})
    assert best(terms_with(first, tank), points=7).worth == Fraction(1, 2)


def test_a_shared_roll_that_was_seen_is_not_rolled_again() -> None:
    chart = best(guns_and_horse(), points=7).chart
    assert isinstance(chart, Ask)
    for outcome in chart.outcomes:
        assert outcome.also
        if isinstance(outcome.then, Ask):
            assert [each.chance for each in outcome.then.outcomes] == [1]
    assert (
        best(guns_and_horse(), points=7).worth
        == PlainFallback(terms=guns_and_horse(), points=7).value()
    )


def test_equal_first_choices_are_told_and_the_one_before_in_the_file_is_taken() -> None:
    other = replace(TANK, name="other tank")
    answer = best(terms_with(TANK, other), points=12)
    assert isinstance(answer.chart, Ask)
    assert answer.chart.purchase.entry == "tank"
    assert answer.chart.is_tied
    assert answer.first_choices[0].worth == answer.first_choices[1].worth


def test_nothing_is_asked_for_that_brings_nothing() -> None:
    idle = replace(TANK, name="idle", worths=worth(n1=1))
    answer = best(terms_with(idle, GUN, MACHINE_GUN), points=6)
    assert isinstance(answer.chart, Take)
    assert answer.worth == 8


def test_with_less_than_no_points_there_is_nothing() -> None:
    answer = best(TANK_GAME, points=-1)
    assert answer.worth == 0
    assert answer.first_choices == (FirstChoice(purchase=None, worth=Fraction(0)),)
    assert levels(TANK_GAME, -1, 6)[0] == LevelChoice(points=-1, worth=Fraction(0), first=None)


def test_an_evening_that_has_begun_goes_on_from_there() -> None:
    """What was taken is paid and counted; what was refused isn't asked for again."""
    refused = Held(asked=frozenset({"light tanks"}))
    assert best(attack(), points=18, held=refused).worth == Fraction(41, 3)
    taken = Held(taken=(Purchase(entry="light tanks", number=2),), paid=9)
    assert best(attack(), points=18, held=taken).worth == 10 + Fraction(53, 6)
    sure = Held(taken=(Purchase(entry="machine gun", number=1),), paid=2)
    assert best(TANK_GAME, points=8, held=sure).worth == 3 + Fraction(15, 2)
    assert best(TANK_GAME, points=1, held=sure).worth == 0
    found = level_choices(attack(), points=[8, 18], held=taken)
    assert not isinstance(found, NotComputed)
    assert [each.worth for each in found] == [0, 10 + Fraction(53, 6)]


def test_a_roll_of_which_the_total_is_not_known_is_refused() -> None:
    held = Held(asked=frozenset({"guns"}))
    for answer in (
        fallback(guns_and_horse(), points=7, held=held),
        level_choices(guns_and_horse(), points=[7], held=held),
    ):
        assert isinstance(answer, NotComputed)
        assert answer.reason == "guns and horse share a roll, and what it came to isn't known."


def test_a_share_of_the_points_is_one_of_each_level() -> None:
    """Half of 8 points pay for no tank of 6; half of 12 do."""
    terms = replace(
        terms_with(replace(TANK, group="armour"), GUN),
        groups=(GroupLimit(group="armour", most_points=Fraction(1, 2)),),
    )
    low, high = levels(terms, 8, 12)
    assert [low.worth, low.first] == [5, None]
    assert high.worth == 10


def test_too_many_entries_are_refused_with_the_bound() -> None:
    many = [
        replace(TANK, name=f"tank {n}", cost={1: 1}, bars=frozenset({f"gun {n}"}))
        for n in range(18)
    ]
    guns = [replace(GUN, name=f"gun {n}") for n in range(18)]
    for asking in Asking:
        terms = terms_with(*many, *guns, asking=asking)
        for answer in (fallback(terms, points=3), level_choices(terms, points=[3])):
            assert isinstance(answer, NotComputed)
            assert "more than" in answer.reason


def test_where_all_is_named_first_one_names_what_can_be_paid_together() -> None:
    terms = replace(TANK_GAME, asking=Asking.ALL_DECLARED_FIRST)
    answer = best(terms, points=6)
    assert [answer.worth, answer.declared] == [9, bought(tank=1)]
    assert [each.worth for each in levels(terms, 5, 6)] == [5, 9]
    for begun in (
        fallback(terms, points=6, held=Held(asked=frozenset({"tank"}))),
        level_choices(terms, points=[6], held=Held(asked=frozenset({"tank"}))),
    ):
        assert begun == BEGUN


@settings(max_examples=60, suppress_health_check=SLOW_TO_DRAW)
@given(small_terms(most_entries=3), st.integers(0, 4))
def test_the_best_play_is_that_of_the_plain_recursion(terms: Terms, points: int) -> None:
    free = without_leasts(terms)
    if free.asking is Asking.ALL_DECLARED_FIRST:
        wanted = plain_declared(free, points=points)
    else:
        wanted = PlainFallback(terms=free, points=points).value()
    answer = best(terms, points=points)
    assert answer.worth == wanted
    assert answer.first_choices[0].worth == wanted
    assert levels(terms, points)[0].worth == wanted


@settings(max_examples=40, suppress_health_check=SLOW_TO_DRAW)
@given(small_terms(), st.integers(0, 8))
def test_the_value_never_falls_when_points_rise_unless_shares_do(terms: Terms, points: int) -> None:
    free = replace(terms, groups=tuple(replace(g, most_points=None) for g in terms.groups))
    low, high = levels(free, points, points + 1)
    assert low.worth <= high.worth


@settings(max_examples=40, suppress_health_check=SLOW_TO_DRAW)
@given(small_terms(), st.integers(0, 8), st.integers(0, 3))
def test_the_value_never_falls_when_a_worth_rises(terms: Terms, points: int, place: int) -> None:
    names = list(terms.offers)
    offer = terms.offers[names[place % len(names)]]
    raised = {
        choice: {number: worth + 1 for number, worth in table.items()}
        for choice, table in offer.worths.items()
    }
    richer = replace(terms, offers={**terms.offers, offer.name: replace(offer, worths=raised)})
    assert levels(terms, points)[0].worth <= levels(richer, points)[0].worth


@pytest.mark.parametrize("sides", [6, 12])
def test_partial_grants_are_weighed_by_their_own_chances(sides: int) -> None:
    """On the greatest face both, on the next one: 1/sides each."""
    offer = Offer(
        name="guns",
        cost={1: 1, 2: 2},
        availability=rolled(sides, sides=sides, partly=sides - 1),
        worths=worth(n1=4, n2=10),
    )
    assert best(terms_with(offer), points=2).worth == Fraction(14, sides)


@pytest.mark.parametrize("asking", Asking)
def test_what_pays_for_itself_and_may_be_taken_without_end_is_not_worked_out(
    asking: Asking,
) -> None:
    mud = Offer(name="mud", cost={1: -1}, most=10**9)
    tow = Offer(name="tow", cost={1: 1}, needs={"free": 1}, worths=worth(n1=1))
    free = Offer(name="free", cost={1: 0}, most=10**9)
    both = Offer(name="both", cost={1: 1, 2: 1}, most=201, worths=worth(n1=1))
    for offers in ((mud,), (tow, free), (both, replace(mud, most=150, needs={"both": 150}))):
        known = replace(terms_with(*offers), asking=asking)
        refused = fallback(known, points=3)
        assert isinstance(refused, NotComputed)
        assert refused.reason.endswith("A lower limit of it would do.")
        assert level_choices(known, points=[3]) == refused
