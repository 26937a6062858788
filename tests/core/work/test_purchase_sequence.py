"""The sequence of purchases, against every sequence there is."""

import datetime
from collections.abc import Sequence
from fractions import Fraction
from itertools import permutations

from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.months import PlannedOrder, bought_in
from paradestate.core.parcel import Parcel
from paradestate.core.savings import Savings
from paradestate.core.work.bench_time import BenchTime
from paradestate.core.work.course import Course, Task
from paradestate.core.work.purchase_sequence import BoughtInTurn, arrivals_of, best_sequence
from tests.orders import GBP

BEGINS = datetime.date(2026, 3, 5)
SAVINGS = Savings(a_month=3000, carried=0, currency=GBP, begins=BEGINS)
HOURS = 4 * 60


def parcel(name: str, cost: int, *, lead: int | None = 14, figures: int = 1) -> Parcel:
    return Parcel(name=name, cost=cost, source=name, figures=figures, lead_days=lead)


def work(*parts: tuple[int, int, int | None], nested: bool = False) -> Course:
    """Hours, the milestone that wants them, and the parcel that they wait for.

    Nested milestones want what those before them want, too.
    """
    number = max(of for _, of, _ in parts) + 1
    return Course(
        [
            Task(
                minutes=Fraction(hours * 60),
                of=frozenset(range(of, number)) if nested else frozenset({of}),
                awaits=frozenset() if awaits is None else frozenset({awaits}),
            )
            for hours, of, awaits in parts
        ],
        weights=[Fraction(1)] * number,
        time=BenchTime(begins=BEGINS, week=Fraction(HOURS)),
    )


MAIN, LORRIES, SCENERY = parcel("main", 4850), parcel("lorries", 2400), parcel("scenery", 1800)


def bought(parcels: Sequence[Parcel], course: Course, *, most: int = 3000) -> BoughtInTurn:
    return best_sequence(parcels, course=course, savings=SAVINGS, most=most)


def test_the_main_parcel_comes_first_where_the_first_force_waits_for_it() -> None:
    """Story 23: 30.00 a month; 48.50, 24.00 and 18.00 are bought in months 2, 3 and 4."""
    found = bought([MAIN, LORRIES, SCENERY], work((8, 0, 0), (4, 1, 1), (4, 2, 2), nested=True))
    assert found.months == (2, 3, 4)
    assert found.sequence == (0, 1, 2)
    assert found.judged.waiting == found.least


def test_what_gives_the_bench_work_meanwhile_comes_first_where_nothing_is_later_for_it() -> None:
    """With 11.50 for the paint rack both are there in month 2 as before: 60.00 pays for both."""
    rack = parcel("rack", 1150)
    found = bought([MAIN, rack], work((8, 0, 0), (4, 1, 1)))
    assert found.months == (2, 1)
    assert found.sequence == (1, 0)


def test_of_equals_the_sequence_given_is_kept() -> None:
    twins = [parcel(name, 3000) for name in "ba"]
    assert bought(twins, work((4, 0, 0), (4, 0, 1))).sequence == (0, 1)


def test_without_lead_days_a_parcel_is_there_on_the_day_it_is_bought() -> None:
    assert arrivals_of([parcel("a", 1, lead=None)], [2], savings=SAVINGS) == (
        datetime.date(2026, 4, 1),
    )
    assert bought([], work((1, 0, None))).months == ()


COSTS = st.lists(st.integers(1, 7), min_size=1, max_size=4)


@given(COSTS, st.data())
def test_no_sequence_is_better(costs: list[int], data: st.DataObject) -> None:
    number = len(costs)
    leads = data.draw(st.lists(st.integers(0, 40), min_size=number, max_size=number))
    parcels = [
        parcel(str(each), 1000 * cost, lead=lead)
        for each, (cost, lead) in enumerate(zip(costs, leads, strict=True))
    ]
    part = st.tuples(st.integers(0, 9), st.integers(0, 2), st.none() | st.integers(0, number - 1))
    course = work(*data.draw(st.lists(part, min_size=1, max_size=6)), (1, 2, None))
    ways = []
    for order in permutations(range(number)):
        planned = [PlannedOrder(name="", cost=parcels[each].cost) for each in order]
        months = dict(zip(order, bought_in(planned, a_month=3000), strict=True))
        own = [months[each] for each in range(number)]
        judged = course.judged(arrivals_of(parcels, own, savings=SAVINGS))
        ways.append((judged.waiting, judged.ends, sum(own)))
    found = bought(parcels, course)
    assert (found.judged.waiting, found.judged.ends, sum(found.months)) == min(ways)
    assert found.judged.waiting == found.least
    short = bought(parcels, course, most=1)
    assert short.least <= found.judged.waiting <= short.judged.waiting
    assert sorted(short.sequence) == list(range(number))


def test_a_search_that_is_cut_short_says_how_far_it_may_be_from_the_best() -> None:
    parcels = [parcel(str(each), 1000 * (7 - each), lead=7 * each) for each in range(7)]
    course = work(*((1 + each % 3, each % 3, each) for each in range(7)))
    short, whole = bought(parcels, course, most=1), bought(parcels, course)
    assert whole.judged.waiting == whole.least
    assert short.judged.waiting != short.least
    assert short.least < whole.judged.waiting <= short.judged.waiting
