"""Days at the bench, against a calendar that is walked through day by day."""

import datetime
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.span import DateSpan
from paradestate.core.work.bench_time import BenchTime

BEGINS = datetime.date(2026, 3, 5)


def on(number: int) -> datetime.date:
    return BEGINS + datetime.timedelta(days=number)


def away(*spans: tuple[int, int]) -> BenchTime:
    """A plan with absences, by days from its beginning and their length."""
    return BenchTime(
        begins=BEGINS,
        week=Fraction(70),
        away=tuple(DateSpan(first=on(first), last=on(first + more)) for first, more in spans),
    )


def test_a_day_is_a_seventh_of_a_week() -> None:
    assert away().a_day == 10
    assert [away().day(number) for number in (1, 2)] == [on(0), on(1)]
    assert away().days_before(on(3)) == 3


def test_days_away_bring_nothing() -> None:
    time = away((1, 1), (2, 2))
    assert [time.day(number) for number in (1, 2)] == [on(0), on(5)]
    assert [time.days_before(on(number)) for number in range(7)] == [0, 1, 1, 1, 1, 1, 2]


def test_an_absence_that_is_over_changes_nothing_and_one_that_goes_on_counts_from_now() -> None:
    assert away((-5, 3)).day(1) == on(0)
    assert away((-9, 2), (-5, 6)).day(1) == on(2)


def test_the_calendar_ends_where_it_ends() -> None:
    first = BenchTime(begins=datetime.date.min, week=Fraction(1))
    assert first.days_before(datetime.date.min) == 0
    assert first.day(10**7) == datetime.date.max


@given(st.lists(st.tuples(st.integers(-5, 20), st.integers(0, 6)), max_size=4), st.integers(1, 20))
def test_absences_are_stepped_over_as_if_day_by_day(
    spans: list[tuple[int, int]], number: int
) -> None:
    time = away(*spans)
    there = [day for day in range(80) if not any(a <= day <= a + more for a, more in spans)]
    assert time.day(number) == on(there[number - 1])
    for day in range(30):
        assert time.days_before(on(day)) == sum(each < day for each in there)
