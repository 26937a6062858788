"""Which boxes are out when."""

from dataclasses import replace

from paradestate.core.club.loan import (
    games_with,
    handed_over_away,
    has_box,
    late,
    lent_on,
    with_late_away,
    without_box,
)
from tests.core.club.bookings import BOX_NINE, BOX_THREE, DAY, HILL, RIVER, club, lent

BOTH = (BOX_NINE, BOX_THREE)


def test_a_box_that_is_late_stays_away_until_somebody_says_it_is_back() -> None:
    made = club(boxes=BOTH, loans=(lent("box 9", until=4), lent("box 3", until=2)))
    today = DAY.replace(day=6)
    assert [each.box for each in late(made, today)] == ["box 3", "box 9"]
    assert lent_on(made, "box 9", day=DAY.replace(day=20)) is None
    away = with_late_away(made, today)
    assert lent_on(away, "box 9", day=DAY.replace(day=20)) == lent("box 9")
    assert with_late_away(made, DAY.replace(day=2)) == made


def test_a_loan_that_ends_before_it_begins_is_away_and_not_late() -> None:
    made = club(boxes=BOTH, loans=(lent("box 3", since=6, until=4),))
    today = DAY.replace(day=9)
    assert late(made, today) == ()
    assert lent_on(with_late_away(made, today), "box 3", day=today) == lent("box 3", since=6)


def test_who_has_a_box_on_loan_plays_with_it_and_nobody_else() -> None:
    river = replace(RIVER, borrows=("box 3",), whom="treasurer")
    hill = replace(HILL, borrows=("box 3",), whom="steward")
    out = club(river, hill, boxes=BOTH, loans=(lent("box 3"),))
    assert [has_box(out, each, box="box 3") for each in (river, hill)] == [True, False]
    assert list(without_box(out)) == [(hill, lent("box 3"))]
    assert games_with(out, "box 3", games=(river, hill)) == ("river",)
    nobody = replace(hill, whom="")
    assert not has_box(replace(out, loans={"box 3": lent("box 3", to="")}), nobody, box="box 3")
    here = replace(out, loans={})
    assert games_with(here, "box 3", games=(river, hill, RIVER)) == ("river", "hill")


def test_a_box_that_changes_hands_while_it_is_out_is_named() -> None:
    tenth, third = DAY.replace(day=10), DAY
    handed = replace(BOX_THREE, handed_over={tenth: "steward", third: "treasurer"})
    made = club(boxes=(handed, BOX_NINE), loans=(lent("box 3", until=5),))
    assert list(handed_over_away(made)) == [(handed, third, lent("box 3", until=5))]
