"""The journey from a folder to a plan of months."""

import datetime
from fractions import Fraction
from pathlib import Path

import pytest

from paradestate.core.certainty import Exact
from paradestate.core.choice import CHOSEN_HERE, Choice
from paradestate.core.span import month
from paradestate.journeys.months import MonthsJourney, Terms, months_of_named, months_of_order
from paradestate.journeys.order import Request, Search
from tests.forces import EXAMPLES

TODAY = datetime.date(2026, 11, 25)
MARENZ = EXAMPLES / "marenz"
SMALL = """\
format: 1
title: Small
AIM
figures: {rifleman: {}, pioneer: {}}
stands: {rifle: {base: none, figures: {rifleman: 4, pioneer: 1}}}
formations: {top: {parts: {rifle: 2}}}
raise: {formation: top}
sources:
  North:
    currency: GBP
    carriage: {0: 0}
    packs: {N1: {price: 20.00, lead days: 10, holds: {rifleman: 8}}}
  East:
    currency: EUR
    rate: 0.86
    rate date: 2026-11
    carriage: {0: 0}
    packs: {E1: {price: 35.00, holds: {pioneer: 2}}}
"""


@pytest.fixture
def small(tmp_path: Path) -> Path:
    """A force that lacks 8 riflemen from North and 2 pioneers from East, with nothing aimed at."""
    return aimed(tmp_path, "{}")


def aimed(folder: Path, aim: str) -> Path:
    text = SMALL.replace("AIM\n", f"aim: {aim}\n" if aim != "{}" else "")
    (folder / "force.yaml").write_text(text, encoding="utf-8")
    return folder


def terms(
    limit: int | None = 30,
    *,
    carried: int = 0,
    band: Fraction | None = None,
    **needed: int,
) -> Terms:
    """Terms from today on; parcels are needed by months of 2026 and 2027, counted from 1."""
    return Terms(
        begins=TODAY,
        limit=None if limit is None else Fraction(limit),
        carried=Fraction(carried),
        needed={
            name: month(2026 + (number - 1) // 12, (number - 1) % 12 + 1)
            for name, number in needed.items()
        },
        band=band,
    )


def of_order(folder: Path, asked: Terms, *, request: Request | None = None) -> MonthsJourney:
    return months_of_order(
        folder,
        today=TODAY,
        choice=Choice(),
        request=request or Request(),
        search=Search(seconds=20),
        terms=asked,
    )


def of_named(folder: Path, asked: Terms, **orders: str) -> MonthsJourney:
    amounts = {name: Fraction(amount) for name, amount in orders.items()}
    return months_of_named(folder, today=TODAY, orders=amounts, terms=asked)


def bought(journey: MonthsJourney) -> list[tuple[str, ...]]:
    assert journey.plan is not None
    return [each.orders for each in journey.plan.months]


def codes(journey: MonthsJourney) -> list[str]:
    return [found.code for found in journey.checked.findings]


def test_the_parcels_of_the_cheapest_order_are_spread_by_their_figures(small: Path) -> None:
    journey = of_order(small, terms())
    assert bought(journey) == [("North",), ("East",)]
    assert journey.total == 2000 + 3010
    assert journey.certainty == Exact()
    assert [parcel.figures for parcel in journey.parcels] == [8, 2]
    assert codes(journey) == []


def test_the_folder_says_what_may_be_spent_and_when_all_is_needed(tmp_path: Path) -> None:
    """31 December less 10 days is in December; the parcel from East is there at once or isn't."""
    folder = aimed(tmp_path, "{a month: 30.10, deadline: 2026-12}")
    journey = of_order(folder, terms(None))
    assert bought(journey) == [("North",), ("East",)]
    assert codes(journey) == ["lead-time-unknown"]
    first = aimed(tmp_path, "{a month: 30.10, deadline: 2026-11}")
    warned = of_order(first, terms(None))
    late = [found for found in warned.checked.findings if found.code == "bought-too-late"]
    assert [found.place.path for found in late] == [("aim", "deadline")] * 2


def test_days_on_the_way_are_taken_off_the_day_it_is_needed(tmp_path: Path) -> None:
    folder = aimed(tmp_path, "{deadline: 2026-12-05}")
    journey = of_order(folder, terms(50, East=12))
    assert [parcel.buy_by for parcel in journey.parcels] == [TODAY, datetime.date(2026, 12, 31)]
    assert "bought-too-late" not in codes(journey)
    sooner = aimed(tmp_path, "{deadline: 2026-12-04}")
    assert "bought-too-late" in codes(of_order(sooner, terms(50, East=12)))


def test_what_is_typed_goes_before_the_folder(tmp_path: Path) -> None:
    folder = aimed(tmp_path, "{a month: 5.00, deadline: 2026-11}")
    journey = of_order(folder, terms(60, East=12, North=12))
    assert bought(journey) == [("North", "East")]
    assert codes(journey) == ["lead-time-unknown"]


def test_orders_that_are_named_are_spread_instead() -> None:
    journey = of_named(MARENZ, terms(main=11), main="48.50", lorries="24", scenery="18")
    assert bought(journey) == [(), ("main",), ("lorries",), ("scenery",)]
    assert journey.plan is not None
    assert [each.balance for each in journey.plan.months] == [3000, 1150, 1750, 2950]
    (late,) = [found for found in journey.checked.findings if found.code == "bought-too-late"]
    assert late.place == CHOSEN_HERE


def test_nothing_lacking_is_a_plan_of_no_month(small: Path) -> None:
    with (small / "force.yaml").open("a", encoding="utf-8") as file:
        file.write("stock: {rifleman: {painted: 8}, pioneer: {painted: 2}}\n")
    assert bought(of_order(small, terms())) == []


@pytest.mark.parametrize(
    ("asked", "code"),
    [
        (terms(None), "limit-missing"),
        (terms(0, carried=50), "limit-never-covers"),
        (terms(30, Nroth=12), "unknown-choice"),
        (Terms(begins=TODAY, limit=Fraction("0.05")), "too-many-months"),
        (Terms(begins=TODAY, limit=Fraction("0.005")), "amount-too-fine"),
        (Terms(begins=TODAY, limit=Fraction(1), carried=Fraction("0.005")), "amount-too-fine"),
    ],
)
def test_terms_that_prevent_a_plan(small: Path, asked: Terms, code: str) -> None:
    journey = of_order(small, asked)
    assert journey.plan is None
    assert codes(journey) == [code]


def test_a_limit_of_nought_does_where_enough_is_carried(small: Path) -> None:
    assert bought(of_order(small, terms(0, carried=51))) == [("North", "East")]


def test_a_limit_finer_than_the_currency_is_shown_where_it_is_written(tmp_path: Path) -> None:
    journey = of_order(aimed(tmp_path, "{a month: 30.005}"), terms(None))
    (found,) = journey.checked.findings
    assert (found.code, found.place.path) == ("amount-too-fine", ("aim", "a month"))


def test_fifteen_orders_are_too_many() -> None:
    orders = {f"order {number}": "1" for number in range(15)}
    journey = of_named(MARENZ, terms(), **orders)
    assert journey.plan is None
    assert "too-many-orders" in codes(journey)


def test_an_amount_finer_than_the_currency_is_no_order(small: Path) -> None:
    journey = of_named(small, terms(), main="0.005", other="1")
    assert journey.plan is None
    assert codes(journey) == ["amount-too-fine"]


def test_a_stop_in_the_folder_prevents_every_plan(tmp_path: Path) -> None:
    folder = aimed(tmp_path, "{a month: much}")
    for journey in (of_order(folder, terms()), of_named(folder, terms(), main="1")):
        assert journey.plan is None
        assert codes(journey) == ["not-a-number"]


def test_where_there_is_no_order_there_is_no_plan(small: Path) -> None:
    journey = of_order(small, terms(), request=Request(sources=("North",)))
    assert journey.plan is None
    assert codes(journey) == ["nobody-sells"]


def test_a_rate_that_moves_says_how_far_the_cost_does_and_which_month_breaks(small: Path) -> None:
    journey = of_order(small, terms(51, band=Fraction(1, 20)))
    bands = [parcel.band for parcel in journey.parcels]
    assert bands[0] is None
    assert bands[1] is not None
    assert (bands[1].least, bands[1].most) == (2860, 3161)
    assert bought(journey) == [("North", "East")]
    (found,) = journey.checked.findings
    assert found.code == "rate-breaks-the-limit"
    assert found.place.path == ("sources", "East", "rate")
    assert "November 2026 is overspent by £0.61" in found.message
    assert codes(of_order(small, terms(52, band=Fraction(1, 20)))) == []
    assert codes(of_order(small, terms(51))) == []
