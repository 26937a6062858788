"""Money and bench together, against every sequence of purchases."""

import datetime
from dataclasses import replace
from fractions import Fraction
from itertools import permutations

from paradestate.core.months import bought_in
from paradestate.core.parcel import Parcel
from paradestate.core.savings import Savings
from paradestate.core.work.awaited_work import tasks
from paradestate.core.work.bench_plan import BenchPlan, OrderedParcel, Terms, best_plan
from paradestate.core.work.bench_time import BenchTime
from paradestate.core.work.course import Course
from paradestate.core.work.ladder import Ladder
from paradestate.core.work.purchase_sequence import arrivals_of
from tests.core.work.batches import climbed
from tests.core.work.test_awaited_work import BENCH, STOCK
from tests.core.work.works import TROOP
from tests.orders import GBP

BEGINS = datetime.date(2026, 3, 2)
SAVINGS = Savings(a_month=3000, carried=0, currency=GBP, begins=BEGINS)
TERMS = Terms(savings=SAVINGS, time=BenchTime(begins=BEGINS, week=Fraction(60)))


def parcel(name: str, cost: int, *, lead: int = 7, **figures: int) -> OrderedParcel:
    return OrderedParcel(
        parcel=Parcel(name=name, cost=cost, source=name, lead_days=lead),
        milestones=("any",),
        figures=figures,
    )


def troop() -> Ladder:
    return climbed(STOCK, bench=BENCH, organisation=TROOP)[0]


FOOT = parcel("foot", 2000, rifleman=8)
MORE = parcel("more", 2000, rifleman=16)
OFFICERS = parcel("officers", 2500, lead=21, officer=4)
ALL = (FOOT, MORE, OFFICERS)


def least_waiting(orders: tuple[OrderedParcel, ...]) -> Fraction:
    """Over all sequences of purchases, and all preferences in giving out figures."""
    ladder = troop()
    found = []
    for preferred in permutations(range(len(orders))):
        course = Course(
            tasks(
                ladder,
                parcels=[each.figures for each in orders],
                preferred=preferred,
                set_up=Fraction(0),
            ),
            weights=[each.milestone.weight for each in ladder.to_reach],
            time=TERMS.time,
        )
        for order in permutations(range(len(orders))):
            planned = [orders[each].parcel.planned(SAVINGS) for each in order]
            months = dict(zip(order, bought_in(planned, a_month=3000), strict=True))
            days = arrivals_of(
                [each.parcel for each in orders],
                [months[each] for each in range(len(orders))],
                savings=SAVINGS,
            )
            found.append(course.judged(days).waiting)
    return min(found)


def names(plan: BenchPlan) -> list[str]:
    return [each.parcel.name for each in plan.ordered]


def test_no_sequence_has_less_waiting_however_figures_are_given_out() -> None:
    for orders in permutations(ALL):
        plan = best_plan(troop(), orders, terms=TERMS)
        assert plan.waiting == least_waiting(orders)
        assert plan.is_proved


def test_no_more_is_spent_than_was_put_aside() -> None:
    plan = best_plan(troop(), ALL, terms=TERMS)
    assert min(month.balance for month in plan.spread.months) >= 0
    assert plan.total == 6500
    for name in names(plan):
        assert plan.bought(name) == SAVINGS.day(plan.month_of(name))


def test_a_day_that_money_moves_says_until_when_all_would_have_to_be_bought() -> None:
    plan = best_plan(troop(), ALL, terms=TERMS)
    first = plan.playable[0]
    assert first.buy_by is not None
    assert first.if_paid < first.day
    rich = replace(TERMS, savings=replace(SAVINGS, carried=99999))
    soonest = best_plan(troop(), ALL, terms=rich)
    assert [each.day for each in soonest.playable] == [each.if_paid for each in plan.playable]
    assert [each.buy_by for each in soonest.playable] == [None, None]


def test_the_last_day_to_buy_leaves_time_while_the_bench_has_work() -> None:
    """All riflemen are there: the officers may come while their sections are worked on."""
    stock = "stock: {rifleman: {in packet: 28}}\n"
    ladder = climbed(stock, bench=BENCH, organisation=TROOP)[0]
    officers = [parcel("officers", 9000, lead=0, officer=4)]
    first = best_plan(ladder, officers, terms=TERMS).playable[0]
    assert first.buy_by is not None
    assert BEGINS < first.buy_by < first.if_paid
    for days, is_kept in ((0, True), (1, False)):
        bought = first.buy_by + datetime.timedelta(days=days)
        finishes = course_of(ladder, officers).finishes([bought], sequence=[0, 1])
        assert (finishes[0].day <= first.if_paid) is is_kept


def course_of(ladder: Ladder, orders: list[OrderedParcel]) -> Course:
    """The work of a ladder, each stand served from the parcels as they are named."""
    return Course(
        tasks(
            ladder,
            parcels=[each.figures for each in orders],
            preferred=range(len(orders)),
            set_up=Fraction(0),
        ),
        weights=[each.milestone.weight for each in ladder.to_reach],
        time=TERMS.time,
    )


def test_with_nothing_to_buy_the_bench_has_what_is_there() -> None:
    stock = "stock: {rifleman: {in packet: 99}, officer: {in packet: 99}, gun: {in packet: 9}}\n"
    owned = climbed(stock, bench=BENCH, organisation=TROOP)[0]
    plan = best_plan(owned, (), terms=TERMS)
    assert names(plan) == []
    assert plan.is_proved


def test_a_search_that_ends_early_is_not_called_proved() -> None:
    many = [parcel(f"{each}", 1700 + 300 * each, rifleman=4) for each in range(6)]
    whole = [*many, OFFICERS]
    short = best_plan(troop(), whole, terms=replace(TERMS, most=1))
    assert short.least <= best_plan(troop(), whole, terms=TERMS).waiting <= short.waiting
