"""The section club."""

from fractions import Fraction

from paradestate.core.club.booking import Booking, Box, Club
from paradestate.text.format.club import CLUB
from tests.core.club.bookings import DAY, hours, lent
from tests.text.format.reading import codes, force


def test_every_word_of_a_club() -> None:
    made = force(
        "club: {boxes: {box 9: {keeper: Ann, holds: {officer: 6}}}, bookings: {river: "
        "{hours: 2026-12-03 20:00-22:00, needs: {officer: 8}, borrows: [box 9], by hand: b}}, "
        "by hand: a}"
    )
    assert made.club == Club(
        boxes={"box 9": Box(name="box 9", keeper="Ann", holds={"officer": 6})},
        bookings={
            "river": Booking(
                name="river",
                hours=hours(20, 22),
                needs={"officer": 8},
                borrows=("box 9",),
                by_hand="b",
            )
        },
        by_hand="a",
    )


def test_a_box_that_nobody_has_and_hours_that_are_none() -> None:
    booked = "club: {{bookings: {{a: {{hours: {}, needs: {{}}, borrows: [box 1]}}}}}}"
    assert codes(booked.format("2026-12-03 20:00-22:00")) == ["unknown-name"]
    assert codes("club: {bookings: {a: {hours: late, needs: {}}}}") == ["not-hours"]
    assert codes("club: []") == ["wrong-shape"]


def test_every_word_of_a_box_of_ours_of_a_loan_and_of_a_whole_game() -> None:
    made = force(
        "club: {boxes: {box 3: {counted: yes, keeper: secretary, holds: {officer: 6}, "
        "handed over: {2026-12-03: steward}, insured for: 12.50}}, bookings: {river: "
        "{hours: 2026-12-03 20:00-22:00, game: attack, force: old, for: borrower 7f3k2}}, "
        "loans: {box 3: {to: treasurer, since: 2026-12-01, until: 2026-12-09}}}"
    )
    assert made.club.boxes["box 3"] == Box(
        name="box 3",
        keeper="secretary",
        holds={"officer": 6},
        is_counted=True,
        handed_over={DAY: "steward"},
        insured_for=Fraction(25, 2),
    )
    assert made.club.bookings["river"] == Booking(
        name="river", hours=hours(20, 22), game="attack", force="old", whom="borrower 7f3k2"
    )
    assert made.club.loans == {"box 3": lent("box 3", until=9)}
    assert CLUB.write(made.club) == {
        "boxes": {
            "box 3": {
                "keeper": "secretary",
                "holds": {"officer": "6"},
                "counted": "yes",
                "handed over": {"2026-12-03": "steward"},
                "insured for": "12.5",
            }
        },
        "bookings": {
            "river": {
                "hours": "2026-12-03 20:00-22:00",
                "game": "attack",
                "force": "old",
                "for": "borrower 7f3k2",
            }
        },
        "loans": {"box 3": {"to": "treasurer", "since": "2026-12-01", "until": "2026-12-09"}},
    }


def test_a_loan_of_a_box_that_nobody_has_and_days_that_are_none() -> None:
    out = "club: {{boxes: {{box 3: {{holds: {{}}}}}}, loans: {{{}: {{to: a, since: {}}}}}}}"
    assert codes(out.format("box 4", "2026-12-01")) == ["unknown-name"]
    assert codes(out.format("box 3", "2026-12")) == ["not-a-date"]
    assert codes("club: {bookings: {a: {hours: 2026-12-03 20:00-22:00, stands: {x: 1}}}}") == [
        "unknown-name"
    ]
