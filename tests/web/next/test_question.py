"""What is asked of the sheet of what to get next."""

from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.core.advice.advice import Aim as AimOfAdvice
from paradestate.core.bench import Bench
from paradestate.core.force import Aim, Force
from paradestate.journeys.next import NextAsked
from paradestate.web.next.question import (
    MOST_WISHED,
    USUAL_SECONDS,
    Question,
    question,
    usual_text,
)

FORCE = Force(title="Osk", raise_=None)
SAVING = replace(FORCE, aim=Aim(a_month=Fraction(61, 2)), bench=Bench(week=Fraction(270)))


def asked(text: Question, *, of: Force = FORCE) -> NextAsked:
    found = text.asked(of)
    assert found is not None
    return found


def test_money_is_asked_about_with_all_that_was_filled_in() -> None:
    made = question(
        {
            "money": " 25 ",
            "hours": "8",
            "game": "evening",
            "aim": "share",
            "counting": "weight",
            "wish": "Quay/gun=2",
            "seconds": "60",
            "grade:training": "recruits",
            "set": "company=3",
            "other": "unknown",
        }
    )
    assert made.findings == ()
    found = asked(made)
    assert (found.money, found.hours) == (Fraction(25), Fraction(0))
    assert (found.aim, found.wish, found.seconds) == (AimOfAdvice.SHARE, {"Quay/gun": 2}, 60)
    assert found.by_weight
    assert (made.choice.game, made.choice.numbers) == ("evening", {"company": 3})
    assert made.grades == {"training": "recruits"}
    assert "other" not in made.typed


def test_hours_are_asked_about_and_the_money_stays_in_the_address() -> None:
    made = question({"spend": "hours", "hours": "2.5", "money": "25"})
    found = asked(made)
    assert (found.money, found.hours) == (None, Fraction(5, 2))
    assert made.query(spend="") == "?hours=2.5&money=25"


def test_where_no_amount_is_given_it_is_the_usual_one_of_the_files() -> None:
    assert asked(question({}), of=SAVING).money == Fraction(61, 2)
    assert asked(question({"spend": "hours"}), of=SAVING).hours == Fraction(9, 2)
    assert asked(question({"money": "7"}), of=SAVING).money == 7
    assert [usual_text(SAVING, is_hours=each) for each in (False, True)] == ["30.5", "4.5"]


@pytest.mark.parametrize("spend", ["money", "hours"])
def test_where_the_files_say_none_nothing_is_asked_yet(spend: str) -> None:
    assert question({"spend": spend}).asked(FORCE) is None
    assert usual_text(FORCE, is_hours=spend == "hours") == ""


@pytest.mark.parametrize(
    ("fields", "code"),
    [
        ({"money": "much"}, "not-a-number"),
        ({"spend": "hours", "hours": "-1"}, "price-negative"),
        ({"wish": "gun"}, "not-names-and-numbers"),
        ({"wish": f"gun={MOST_WISHED + 1}"}, "number-too-great"),
        ({"set": "company"}, "not-names-and-numbers"),
        ({"date": "soon"}, "not-a-date"),
    ],
)
def test_what_cannot_be_read_is_a_stop(fields: dict[str, str], code: str) -> None:
    assert [each.code for each in question(fields).findings] == [code]


def test_just_as_many_as_are_looked_at_may_be_wished_for() -> None:
    assert question({"wish": f"gun={MOST_WISHED}"}).findings == ()


@pytest.mark.parametrize(
    ("typed", "seconds"), [("", USUAL_SECONDS), ("much", USUAL_SECONDS), ("60", 60), ("9999", 300)]
)
def test_nobody_looks_for_longer_than_the_page_lets(typed: str, seconds: int) -> None:
    assert question({"seconds": typed}).seconds == seconds


def test_an_aim_that_is_none_is_the_usual_one() -> None:
    assert question({"aim": "glory"}).aim is None


def test_a_wish_is_added_and_taken_back_in_the_address() -> None:
    made = question({"money": "25", "wish": "Quay/gun=2"})
    both = question({"wish": made.with_wish("Quay/tank, old").partition("wish=")[2]})
    assert both.typed["wish"]
    assert made.with_wish("mule").endswith("wish=Quay%2Fgun%3D2%2C+mule%3D1")
    assert made.without_wish("Quay/gun") == "?money=25"
    assert question({}).query() == ""
