"""The course of the work, against a bench that is watched minute by minute."""

import datetime
from collections.abc import Sequence
from fractions import Fraction
from itertools import permutations

from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.span import DateSpan
from paradestate.core.work.bench_time import BenchTime
from paradestate.core.work.course import (
    MOST_IN_ANY_SEQUENCE,
    Course,
    Finish,
    Idle,
    Judged,
    Task,
)

BEGINS = datetime.date(2026, 3, 5)
A_DAY = 3
"""Minutes."""
ONCE = Fraction(1)
NONE = frozenset[int]()


def on(number: int) -> datetime.date:
    return BEGINS + datetime.timedelta(days=number)


def task(minutes: int, of: set[int], *awaits: int) -> Task:
    return Task(minutes=Fraction(minutes), of=frozenset(of), awaits=frozenset(awaits))


def course(*tasks: Task, weights: Sequence[int] = (1,), away: tuple[DateSpan, ...] = ()) -> Course:
    time = BenchTime(begins=BEGINS, week=Fraction(7 * A_DAY), away=away)
    return Course(tasks, weights=[Fraction(each) for each in weights], time=time)


def watched(
    tasks: Sequence[Task], arrivals: Sequence[datetime.date], *, order: Sequence[int]
) -> dict[int, int]:
    """Milestone to the day, from 1, in which it is finished; worked on in that order."""
    left = [int(each.minutes) for each in tasks]
    begins = [
        max(((arrivals[parcel] - BEGINS).days + 1 for parcel in each.awaits), default=0) * A_DAY
        for each in tasks
    ]
    rank = [min(order.index(each) for each in own.of) for own in tasks]
    finished: dict[int, int] = {}
    minute = -1
    while len(finished) < len(order):
        minute += 1
        for milestone in order:
            own = [number for number, each in enumerate(tasks) if milestone in each.of]
            if milestone not in finished and all(
                not left[each] and begins[each] <= minute for each in own
            ):
                finished[milestone] = max(1, -(-minute // A_DAY))
        able = [each for each, more in enumerate(left) if more and begins[each] <= minute]
        if able:
            left[min(able, key=lambda each: rank[each])] -= 1
    return finished


TASKS = st.lists(
    st.builds(
        task,
        st.integers(0, 7),
        st.sets(st.integers(0, 2), min_size=1),
        st.integers(0, 2),
    )
    | st.builds(task, st.integers(1, 7), st.sets(st.integers(0, 2), min_size=1)),
    min_size=1,
    max_size=5,
)


@given(TASKS, st.lists(st.integers(0, 6), min_size=3, max_size=3), st.permutations([1, 2, 5]))
def test_no_sequence_of_milestones_has_less_waiting(
    tasks: list[Task], comes: list[int], weights: list[int]
) -> None:
    whole = [*tasks, *(task(1, {each}) for each in range(3))]
    arrivals = [on(each) for each in comes]
    made = course(*whole, weights=weights)
    ways = [watched(whole, arrivals, order=order) for order in permutations(range(3))]
    least = min(sum(weights[each] * way[each] for each in way) for way in ways)
    assert made.judged(arrivals).waiting == least
    order = made.sequence(arrivals)
    days = {
        number: (each.day - BEGINS).days + 1
        for number, each in enumerate(made.finishes(arrivals, sequence=order))
    }
    assert days == watched(whole, arrivals, order=order)
    assert made.finishes(arrivals) == made.finishes(arrivals, sequence=order)


def test_a_milestone_is_finished_by_the_work_or_by_what_comes_last() -> None:
    made = course(task(6, {0}), task(3, {0}, 0))
    assert made.finishes([on(0)]) == (Finish(day=on(2), awaits=NONE),)
    assert made.finishes([on(4)]) == (Finish(day=on(5), awaits=frozenset({0})),)
    assert made.judged([on(4)]) == Judged(waiting=Fraction(6), ends=Fraction(18))


def test_what_can_be_done_is_done_while_another_waits() -> None:
    """The first of the ladder waits three days for its figures; the second is done meanwhile."""
    made = course(task(3, {0}, 0), task(6, {1}), weights=(5, 1))
    assert [each.day for each in made.finishes([on(2)])] == [on(3), on(1)]


def test_the_bench_is_idle_until_something_comes() -> None:
    made = course(task(4, {0}), task(3, {0}, 0, 1), task(0, {0}, 2))
    days = [on(3), on(4), on(8)]
    assert made.idle(days) == (Idle(first=on(2), last=on(4), days=3, awaits=frozenset({1})),)
    assert made.finishes(days) == (Finish(day=on(8), awaits=frozenset({2})),)
    assert made.idle([on(0)] * 3) == ()


def test_a_parcel_without_work_that_comes_while_the_owner_is_away_decides_the_day() -> None:
    absence = DateSpan(first=on(1), last=on(9))
    made = course(task(3, {0}), task(0, {0}, 0), away=(absence,))
    assert made.finishes([on(4)]) == (Finish(day=on(4), awaits=frozenset({0})),)
    assert made.idle([on(4)]) == ()


def test_what_comes_so_late_at_the_soonest_makes_a_course_no_better_than_that() -> None:
    """Bought next either parcel is there on day 0; but the last of the two comes on day 4."""
    made = course(task(3, {0}, 0), task(6, {0}, 1))
    both = [on(0), on(0)]
    assert made.judged(both) == Judged(waiting=Fraction(4), ends=Fraction(12))
    assert made.sets == range(1, 2)
    late = made.judged(both, last={1: on(4)})
    assert late == Judged(waiting=Fraction(6), ends=Fraction(18))
    assert late.waiting <= made.judged([on(4), on(0)]).waiting
    assert late.waiting <= made.judged([on(0), on(4)]).waiting


def test_of_many_milestones_the_sequence_given_is_kept() -> None:
    number = MOST_IN_ANY_SEQUENCE + 1
    tasks = [task(number - each, {each}) for each in range(number)]
    assert course(*tasks, weights=[1] * number).sequence([]) == tuple(range(number))
    fewer = [task(3 * (5 - each), {each}) for each in range(5)]
    assert course(*fewer, weights=[1] * 5).sequence([]) == (4, 3, 2, 1, 0)


def test_a_milestone_needs_all_parcels_of_its_work() -> None:
    made = course(task(1, {0}, 0), task(1, {0, 1}, 1), task(1, {0, 1}, 1), weights=(1, 1))
    assert made.needs == (frozenset({0, 1}), frozenset({1}))


def test_without_milestones_nothing_is_waited_for() -> None:
    empty = course(weights=())
    assert empty.judged([]) == Judged(waiting=Fraction(0), ends=Fraction(0))
    assert empty.finishes([]) == ()


def test_a_milestone_that_takes_no_work_is_finished_on_the_first_day() -> None:
    assert course(weights=(1,)).finishes([]) == (Finish(day=BEGINS, awaits=NONE),)
