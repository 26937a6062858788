"""What a force leaves open."""

import datetime

from paradestate.core.force import Force
from paradestate.core.leeway import OpenNumber, Period, differing, leeway
from paradestate.core.number import NumberRange
from paradestate.core.span import day, month, year
from tests.forces import force_from, marenz, partial_force_from

SHORT = "stands: {a: {base: none}, b: {base: none}}"


def dated(date: str, *parts: str, covers: str = "", rest: str = "") -> Force:
    head = f"format: 1\ntitle: T\nraise: {{formation: top{date}}}\n{covers}"
    return force_from(
        SHORT, f"formations: {{top: {{parts: [{', '.join(parts)}]}}}}", rest, head=head
    )


def periods(force: Force) -> list[tuple[str, bool]]:
    return [(str(period.date), period.is_now) for period in leeway(force).periods]


def test_the_example_leaves_companies_and_the_date_open() -> None:
    open_ = leeway(marenz())
    assert open_.numbers == (OpenNumber(of="company", within=NumberRange(least=2, most=4), now=4),)
    assert open_.theatres == ()
    assert open_.periods == (
        Period(
            first=None,
            last=datetime.date(1942, 5, 31),
            date=month(1942, 5),
            is_now=False,
        ),
        Period(
            first=datetime.date(1942, 6, 1),
            last=datetime.date(1942, 12, 31),
            date=month(1942, 6),
            is_now=False,
        ),
        Period(first=datetime.date(1943, 1, 1), last=None, date=year(1943), is_now=True),
    )


def test_the_usual_number_is_chosen_where_nobody_chose() -> None:
    force = dated("", "{of: a, number: 1-3, usual: 2}", "{of: b, number: 1-3}")
    assert [(each.of, each.now) for each in leeway(force).numbers] == [("a", 2), ("b", None)]


def test_a_part_of_two_ranges_leaves_open_what_both_allow() -> None:
    head = "format: 1\ntitle: T\nraise: {formation: top}\n"
    force = force_from(
        SHORT,
        "formations: {top: {parts: [{of: a, number: 1-3, usual: 2}, {of: x, number: 1}]}, "
        "x: {parts: [{of: a, number: 2-5, usual: 3}]}}",
        head=head,
    )
    assert leeway(force).numbers == (
        OpenNumber(of="a", within=NumberRange(least=2, most=3), now=None),
    )


def test_two_ranges_that_share_no_number_leave_nothing_open() -> None:
    force = dated("", "{of: a, number: 1-2}", "{of: a, number: 4-5}")
    assert leeway(force).numbers == ()


def test_only_ranges_that_may_be_in_force_are_open() -> None:
    parts = (
        "{of: a, number: 1-3, usual: 2, until: 1941}",
        "{of: b, number: 1-3, usual: 2, theatre: islands}",
    )
    assert leeway(dated(", date: 1943", *parts)).numbers == ()
    there = dated(", date: 1941, theatre: islands", *parts)
    assert [each.of for each in leeway(there).numbers] == ["a", "b"]
    assert leeway(there).theatres == ("islands",)
    undated = partial_force_from(SHORT, f"formations: {{top: {{parts: [{', '.join(parts)}]}}}}")
    assert [each.of for each in leeway(undated).numbers] == ["a"]


def test_nothing_that_changes_leaves_no_period() -> None:
    assert leeway(dated(", date: 1943", "{of: a, number: 1}")).periods == ()


def test_a_written_date_that_holds_a_change_lies_in_no_period() -> None:
    force = dated(", date: 1943", "{of: a, number: 1, from: 1943-03-10}")
    assert periods(force) == [("1943-03-09", False), ("1943-03-10", False)]


def test_periods_end_where_the_folder_ends() -> None:
    force = dated(
        ", date: 1942-03",
        "{of: a, number: 1, from: 1941-03-10, until: 1942-06}",
        "{of: b, number: 1, from: 1939}",
        covers="covers: {from: 1940, until: 1943}\n",
    )
    assert [
        (str(period.first), str(period.last), str(period.date)) for period in leeway(force).periods
    ] == [
        ("1940-01-01", "1941-03-09", "1940-01"),
        ("1941-03-10", "1942-06-30", "1942-03"),
        ("1942-07-01", "1943-12-31", "1942-07"),
    ]


def test_a_period_of_a_few_days_is_chosen_by_its_first() -> None:
    force = dated(
        "", "{of: a, number: 1, until: 1942-06-10}", "{of: b, number: 1, from: 1942-06-20}"
    )
    assert leeway(force).periods[1].date == day(datetime.date(1942, 6, 11))


def test_the_last_day_there_is_has_no_day_after() -> None:
    force = dated("", "{of: a, number: 1, until: 9999-12-31}")
    assert leeway(force).periods == ()


def test_a_force_that_raises_nothing_leaves_nothing_open() -> None:
    force = partial_force_from(SHORT, head="format: 1\ntitle: T\n")
    open_ = leeway(force)
    assert (open_.numbers, open_.periods, open_.theatres) == ((), (), ())


def test_what_is_already_so_is_no_difference() -> None:
    open_ = leeway(marenz())
    assert differing({"company": 4}, open_) == {}
    assert differing({"company": 3, "platoon": 2}, open_) == {"company": 3, "platoon": 2}
