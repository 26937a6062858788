"""Money and bench together in sentences."""

import datetime
from dataclasses import replace
from fractions import Fraction

from paradestate.core.certainty import Exact, Within
from paradestate.core.months import Spread
from paradestate.core.sentence.bench_plan import (
    head_sentence,
    idle_sentences,
    other_way_sentence,
    pace_sentence,
    plan_sentences,
    proof_sentence,
)
from paradestate.core.work.bench_plan import BenchPlan, best_plan
from paradestate.core.work.course import MOST_IN_ANY_SEQUENCE
from tests.core.work.test_bench_plan import ALL, SAVINGS, TERMS, parcel, troop

PLAN = best_plan(troop(), ALL, terms=TERMS)
FIRST = PLAN.playable[0]


def on(plan: BenchPlan, day: datetime.date, *, total: int = 6500) -> BenchPlan:
    """The plan with another day for its first milestone, and another total."""
    (month, *_) = plan.spread.months
    spread = Spread(months=(replace(month, spent=total),), late=())
    playable = (replace(FIRST, day=day), *plan.playable[1:])
    return replace(plan, playable=playable, spread=spread)


def test_the_head_says_the_money_and_the_first_day() -> None:
    first = on(PLAN, datetime.date(2026, 4, 15))
    assert head_sentence(first) == (
        "3 parcels for £65.00, with £30.00 a month: the smallest legal force can be played on "
        f"15 April 2026, decided by the parcel from {FIRST.awaits[0]}."
    )
    carried = replace(TERMS, savings=replace(SAVINGS, carried=500))
    assert ", with £30.00 a month and £5.00 carried: " in head_sentence(
        best_plan(troop(), ALL, terms=carried)
    )


def test_where_nothing_is_bought_that_is_said() -> None:
    nothing = replace(PLAN, ordered=(), playable=(replace(FIRST, awaits=()),))
    assert head_sentence(nothing).startswith(
        "Nothing is lacking, so there is nothing to buy: the smallest legal force can be played on "
    )
    assert head_sentence(nothing).endswith(" 2026.")


def test_an_idle_bench_is_said_with_what_ends_it() -> None:
    single = parcel("single", 4000, lead=7, rifleman=24, officer=4)
    plan = best_plan(troop(), [single], terms=TERMS)
    (sentence,) = idle_sentences(plan)
    assert sentence == (
        "The bench stands idle for 37 days from 2 March 2026 to 7 April 2026: nothing owned is "
        "left to do until the parcel from single comes."
    ).replace("37 days", _days(plan)).replace("7 April", _last(plan))
    (idle,) = plan.idle
    two = replace(idle, days=14, awaits=frozenset({0}))
    assert "idle for 2 weeks " in next(idle_sentences(replace(plan, idle=(two,))))
    one = replace(idle, first=idle.last, days=1)
    assert f"idle for 1 day on {_last(plan)} 2026: " in next(
        idle_sentences(replace(plan, idle=(one,)))
    )
    assert list(idle_sentences(replace(plan, idle=()))) == [
        "The bench never stands idle for a day until all is done."
    ]
    assert not list(idle_sentences(replace(plan, idle=(), playable=())))


def _days(plan: BenchPlan) -> str:
    return f"{plan.idle[0].days} days"


def _last(plan: BenchPlan) -> str:
    last = plan.idle[0].last
    return f"{last.day} {last:%B}"


def test_parcels_that_come_together_end_it_together() -> None:
    both = replace(PLAN.idle[0], awaits=frozenset({0, 1}))
    names = " and ".join(each.parcel.name for each in PLAN.ordered[:2])
    assert next(idle_sentences(replace(PLAN, idle=(both,)))).endswith(
        f"until the parcels from {names} come."
    )


def test_another_way_to_order_says_what_it_changes() -> None:
    own = on(PLAN, datetime.date(2026, 4, 15))
    later = on(PLAN, datetime.date(2026, 4, 22), total=6050)
    assert other_way_sentence(own, later, orders=1) == (
        "In 1 order it costs £4.50 less; the smallest legal force can then be played on "
        "22 April 2026, 7 days later."
    )
    sooner = on(PLAN, datetime.date(2026, 4, 14), total=7000)
    assert other_way_sentence(own, sooner, orders=2) == (
        "In 2 orders it costs £5.00 more; the smallest legal force can then be played on "
        "14 April 2026, 1 day sooner."
    )
    assert other_way_sentence(own, own, orders=3) == (
        "In 3 orders it costs the same; the smallest legal force can then be played on "
        "15 April 2026, as soon."
    )


def test_below_a_plan_stand_idle_days_other_ways_the_pace_and_how_sure_it_is() -> None:
    said = [
        *idle_sentences(PLAN),
        other_way_sentence(PLAN, PLAN, orders=2),
        pace_sentence(TERMS.time.week),
        proof_sentence(PLAN),
    ]
    assert list(plan_sentences(PLAN, others=[(PLAN, 2)], certainty=Exact())) == said
    bound = Within(bound=PLAN.total - 50)
    assert list(plan_sentences(PLAN, others=[(PLAN, 2)], certainty=bound)) == [
        *said,
        "Within: the orders cost at most £0.50 above the least possible.",
    ]


def test_the_pace_is_said() -> None:
    assert pace_sentence(Fraction(240)).startswith(
        "The days rest on your own week of 4 h, every week alike: a plan, and no forecast."
    )


def test_how_sure_it_is() -> None:
    assert proof_sentence(PLAN) == (
        "Exact, at that pace: no other sequence of these purchases or of the forces has less "
        "weighted waiting."
    )
    unsure = replace(PLAN, waiting=Fraction(200), least=Fraction(197))
    assert proof_sentence(unsure) == (
        "Within, at that pace: no other sequence of these purchases or of the forces has more "
        "than 2% less weighted waiting."
    )
    many = replace(PLAN, playable=(FIRST,) * (MOST_IN_ANY_SEQUENCE + 1))
    assert proof_sentence(many) == (
        "Exact, at that pace: no other sequence of these purchases has less weighted waiting; the "
        "forces keep the order of the ladder."
    )
