"""Money month by month."""

import datetime

import pytest

from paradestate.core.money import Currency
from paradestate.core.months import PlannedOrder, Spread, spread
from paradestate.core.savings import Savings
from paradestate.sheet.month_curve import BOTTOM, HIGH, PHONE, WIDE, month_curve
from paradestate.sheet.svg import Drawing
from tests.sheet.reading import root_of, texts_of

GBP = Currency("GBP")
STORY = (
    PlannedOrder(name="main", cost=4850, weight=63),
    PlannedOrder(name="lorries", cost=2400, weight=2),
    PlannedOrder(name="scenery", cost=1800),
)


def savings(a_month: int, *, carried: int = 0) -> Savings:
    begins = datetime.date(2026, 11, 27)
    return Savings(a_month=a_month, carried=carried, currency=GBP, begins=begins)


def drawn(
    plan: Spread, put_aside: Savings, *, deadline: int | None = None, width: int = WIDE
) -> Drawing:
    made = month_curve(plan, put_aside, deadline=deadline, width=width)
    assert made is not None
    return made


@pytest.mark.parametrize("width", [WIDE, PHONE])
def test_the_plan_of_the_story_has_three_flags_and_its_months(width: int) -> None:
    made = drawn(spread(STORY, a_month=3000), savings(3000), width=width)
    said = texts_of(made)
    assert [text for text in said if text.isdecimal() and len(text) == 1] == ["1", "2", "3"]
    assert {"Nov", "Dec", "Jan", "Feb", "2026", "2027"} <= set(said)
    assert made.words == (
        "Money month by month with £30.00 put aside each: main in December 2026, £11.50 left; "
        "lorries in January 2027, £17.50 left; scenery in February 2027, £29.50 left."
    )


def test_the_line_never_falls_below_nought() -> None:
    made = drawn(spread(STORY, a_month=3000), savings(3000))
    (curve,) = [each for each in root_of(made).iter("path") if each.get("stroke-linejoin")]
    heights = [float(piece.split("H")[0]) for piece in curve.get("d", "").split("V")[1:]]
    assert len(heights) == 7
    assert max(heights) < HIGH - BOTTOM


def test_the_month_by_which_it_is_needed_is_a_line() -> None:
    plan = spread(STORY, a_month=3000)
    assert "needed" in texts_of(drawn(plan, savings(3000), deadline=3))
    assert "needed" in texts_of(drawn(plan, savings(3000), deadline=9))
    assert "needed" not in texts_of(drawn(plan, savings(3000), deadline=300))
    assert "needed" not in texts_of(drawn(plan, savings(3000), deadline=0))


def test_a_plan_of_many_years_names_years_only() -> None:
    long = spread((PlannedOrder(name="all", cost=60000),), a_month=100)
    said = texts_of(drawn(long, savings(100)))
    assert "2030" in said
    assert "Nov" not in said
    assert len(said) < 40


def test_a_plan_of_one_month_names_it() -> None:
    once = spread((PlannedOrder(name="all", cost=100),), a_month=500)
    assert "Nov" in texts_of(drawn(once, savings(500)))


def test_parcels_of_one_month_share_a_flag() -> None:
    orders = tuple(PlannedOrder(name=f"order {each}", cost=1000) for each in range(12))
    made = drawn(spread(orders, a_month=2000), savings(2000), width=PHONE)
    assert {"1-2", "11-12"} <= set(texts_of(made))


def test_without_a_purchase_there_is_no_curve() -> None:
    assert month_curve(spread((), a_month=100), savings(100)) is None
