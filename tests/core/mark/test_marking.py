"""The mark of every unit and stand."""

from dataclasses import replace

from paradestate.core.force import Marks
from paradestate.core.mark.code import Sign, least_fields_apart
from tests.core.mark.marked import TROOPS, marked, marks_of
from tests.forces import force_from, marenz


def test_the_example_has_sixteen_marks_and_the_plain_one() -> None:
    marks = marks_of(marenz())
    assert len(marks.by_mark) == 17
    assert all(len(units) == 1 for units in marks.by_mark.values())
    assert least_fields_apart(marks.by_mark) == 2
    assert marks.grid.places == ()


def test_every_stand_has_a_mark_and_the_number_of_its_section() -> None:
    marks = marks_of(marenz())
    second = marks.by_stand["No 2 Company / 3 Platoon / 2 Section"]
    assert second.number == 2
    assert second.mark is not None
    assert (second.mark.colour, second.mark.bars, second.mark.sign) == (
        "mid yellow",
        3,
        Sign.CROSS,
    )
    assert second.rear == second.mark
    assert marks.by_stand["Battalion Command"].mark is not None


def test_a_printed_marker_tells_nothing_but_on_its_underside() -> None:
    marks = marks_of(marenz())
    marker = next(each for each in marks.stands if each.stand.printed)
    assert marker.rear is None
    assert marker.mark is not None


def test_a_sign_stays_when_fewer_companies_are_raised() -> None:
    assert marenz().raise_ is not None
    three = replace(marenz(), raise_=replace(marenz().raise_, numbers={"company": 3}))  # type: ignore[type-var]
    signs = {unit.name: mark for unit, mark in marks_of(marenz()).marks.items()}
    for unit, mark in marks_of(three).marks.items():
        assert signs[unit.name] == mark


def test_two_names_of_one_value_are_one_colour() -> None:
    twice = Marks(
        by_formation={"company": ("red", "blue", "crimson")},
        colours={"red": "AA0000", "blue": "0000AA", "crimson": "AA0000"},
    )
    marks = marks_of(replace(marenz(), marks=twice))
    assert marks.colours == ("red", "blue")
    first, _, third, fourth = marks.companies
    assert (first.value, third.value, fourth.colour) == ("AA0000", "AA0000", "")
    own = {unit.name: mark for unit, mark in marks.marks.items()}
    one, other = own["No 1 Company"], own["No 3 Company"]
    assert one is not None
    assert other is not None
    assert one.sign is other.sign
    assert own["No 4 Company"] is None


def test_more_colours_than_signs_count_only_as_far_as_they_are_borne() -> None:
    many = Marks(by_formation={"company": tuple(f"c{place}" for place in range(9))})
    assert marks_of(replace(marenz(), marks=many)).colours == ("c0", "c1", "c2", "c3")


def test_more_companies_than_signs_have_no_marks() -> None:
    colours = ", ".join(f"c{place}" for place in range(9))
    force = force_from(
        TROOPS,
        "formations: {top: {parts: {company: 9}}, company: {parts: {rifle: 1}}}",
        f"marks: {{company: {{colours: [{colours}]}}}}",
    )
    marks = marks_of(force)
    assert not marks.grid.is_held
    assert not any(marks.marks.values())


def test_three_platoons_alone_leave_the_most_alike_marks_unused() -> None:
    force = force_from(
        TROOPS,
        "formations: {top: {parts: {company: 4}}, company: {parts: {platoon: 3}},"
        "platoon: {parts: {rifle: 2}}}",
        "marks: {company: {colours: [royal blue, mid yellow, sky blue, brown]}}",
    )
    marks = marked(force).marks
    assert marks.grid.bars == (1, 2, 3)
    assert marks.grid.places == (0, 1, 3, 2)
    assert least_fields_apart(marks.by_mark) == 2


def test_a_rear_bar_is_on_every_mark_of_its_formation() -> None:
    barred = replace(marenz(), marks=replace(marenz().marks, rear_bars=frozenset({"company"})))
    marks = marks_of(barred)
    assert all(mark.has_rear_bar for mark in marks.by_mark if mark.colour)
    assert not any(mark.has_rear_bar for mark in marks.by_mark if not mark.colour)
