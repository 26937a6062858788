"""The command `months`."""

import datetime
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from paradestate.cli.months_json import months_json
from paradestate.cli.months_report import print_months
from paradestate.core.certainty import Within
from paradestate.journeys.months import Terms, months_of_named
from tests.cli.calling import call

TODAY = datetime.date(2026, 11, 25)
NAMED = ("--order", "main=48.50", "--order", "lorries=24, scenery=18", "--from", "2026-11-25")


def test_named_orders_month_by_month(folder: Path) -> None:
    answer = call("months", folder, "--limit", "30", "--needed", "main=2026-11", *NAMED)
    assert answer.status == 0
    for line in (
        "3 orders for £90.50, with £30.00 a month: all is bought by February 2027.",
        "November 2026    £30.00  -                £0.00  £30.00",
        "December 2026    £60.00  main £48.50     £48.50  £11.50",
        "January 2027     £41.50  lorries £24.00  £24.00  £17.50",
        "February 2027    £47.50  scenery £18.00  £18.00  £29.50",
        "main     1 December 2026  November 2026  late",
        "Exact: no other sequence is less late, and none as little late is sooner on the whole.",
    ):
        assert line in answer.out
    assert "£48.50 for main is needed by November 2026; £30.00 a month allows it in" in answer.err


def test_named_orders_for_programs(folder: Path) -> None:
    words = ("months", folder, "--limit", "30", "--carried", "0.25", *NAMED, "--json")
    document = call(*words, "--needed", "main=2026-11").document
    assert [month["calendar"] for month in document["months"]] == [
        "2026-11",
        "2026-12",
        "2027-01",
        "2027-02",
    ]
    assert [month["balance"] for month in document["months"]] == [
        "30.25",
        "11.75",
        "17.75",
        "29.75",
    ]
    assert document["months"][1] == {
        "month": 2,
        "calendar": "2026-12",
        "spent": "48.50",
        "orders": [
            {
                "name": "main",
                "cost": "48.50",
                "arrives": None,
                "needed": "2026-11-30",
                "late": True,
            }
        ],
        "balance": "11.75",
    }
    rest = {key: value for key, value in document.items() if key != "months"}
    assert rest == {
        "total": "90.50",
        "limit": "30.00",
        "carried": "0.25",
        "currency": "GBP",
        "certainty": "exact",
        "bound": None,
    }


def test_the_parcels_of_the_cheapest_order(folder: Path) -> None:
    answer = call("months", folder, "--limit", "30", "--carried", "9", "--from", "2026-11")
    assert "2 parcels for £89.50, with £30.00 a month and £9.00 carried: all is" in answer.out
    assert "Exact: no other sequence is sooner on the whole, each parcel counted by" in answer.out
    assert "Earliest days" not in answer.out
    one = call("months", folder, "--limit", "30", "--sources", "North", "--from", "2026-11")
    assert "1 parcel for " in one.out
    assert "it is bought in " in one.out
    assert "Exact: it is bought in the first month that pays for it." in one.out


def test_the_order_is_chosen_as_by_order(folder: Path) -> None:
    want = ("--want", "rifleman=50, mortar crew=9, officer=4")
    words = ("months", folder, "--limit", "30", "--json", *want)
    assert call(*words).document["total"] == "48.50"
    assert call(*words, "--stand-ins").document["total"] == "45.50"
    assert call(*words, "--sources", "North").document["total"] == "50.00"


def test_days_on_the_way_and_movement_of_rates(folder: Path) -> None:
    (folder / "east.yaml").write_text(
        "sources: {East: {currency: EUR, rate: 0.86, rate date: 2026-11, carriage: {0: 0},"
        " packs: {E1: {price: 35.00, lead days: 14, holds: {pioneer: 10}}}}}\n"
        "aim: {a month: 31.00, deadline: 2026-12-20}\n",
        encoding="utf-8",
    )
    words = ("months", folder, "--want", "pioneer=8", "--from", "2026-12")
    answer = call(*words, "--band", "5%")
    assert "East    1 December 2026  15 December 2026  20 December 2026" in answer.out
    assert "East costs £30.10; with its rate 5% lower or higher £28.60 to £31.61." in answer.out
    assert "December 2026 is overspent by £0.61. [rate-breaks-the-limit]" in answer.err
    (month,) = call(*words, "--band", "5", "--json").document["months"]
    (order,) = month["orders"]
    assert (order["arrives"], order["least"], order["most"]) == ("2026-12-15", "28.60", "31.61")
    plain = call(*words, "--json")
    assert "least" not in plain.out
    assert "rate" not in call(*words).out
    at_home = call("months", folder, "--want", "rifleman=8", "--band", "5")
    assert "All is paid in GBP, so no rate moves it." in at_home.out


def test_a_plan_in_time_says_so(folder: Path) -> None:
    words = ("months", folder, "--limit", "50", "--needed", "main=2027-12", *NAMED)
    assert "none as much in time is sooner on the whole." in call(*words).out


def test_an_order_that_is_not_proved_says_how_far_off_it_may_be(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    proved = months_of_named(
        folder,
        today=TODAY,
        orders={"main": Fraction(97, 2)},
        terms=Terms(begins=TODAY, limit=Fraction(30)),
    )
    journey = replace(proved, certainty=Within(bound=4800))
    assert months_json(journey)["certainty"] == "within"
    assert months_json(journey)["bound"] == "48.00"
    print_months(journey, folder=folder)
    assert "Within: it costs at most £0.50 above the least possible." in capsys.readouterr().out


def test_nothing_is_lacking(folder: Path) -> None:
    (folder / "stock.csv").write_text(
        "figure,painted\nrifleman,101\nofficer,7\nsignaller,3\nmortar crew,12\nlight truck,2\n",
        encoding="utf-8",
    )
    assert "Nothing is lacking" in call("months", folder, "--limit", "30").out
    assert call("months", folder, "--limit", "30", "--json").document["months"] == []


@pytest.mark.parametrize(
    ("options", "code"),
    [
        ((), "limit-missing"),
        (("--limit", "0"), "limit-never-covers"),
        (("--limit", "-1"), "price-negative"),
        (("--limit", "30", "--carried", "9,50"), "comma-decimal"),
        (("--limit", "30", "--order", "main"), "not-names-and-numbers"),
        (("--limit", "30", "--order", "main=1", "--order", "main=2"), "name-twice"),
        (("--limit", "30", "--needed", "main=soon"), "not-a-date"),
        (("--limit", "30", "--needed", "Nroth=2027"), "unknown-choice"),
        (("--limit", "30", "--from", "9001"), "not-a-date"),
        (("--limit", "30", "--from", "soon"), "not-a-date"),
        (("--limit", "30", "--band", "many"), "not-a-share"),
        (("--limit", "30", "--want", "pioneer"), "not-names-and-numbers"),
        (("--limit", "30", "--want", "pioneer=8"), "nobody-sells"),
    ],
)
def test_plans_that_can_not_be(folder: Path, options: tuple[str, ...], code: str) -> None:
    answer = call("months", folder, *options)
    assert answer.status == 1
    assert f"[{code}]" in answer.err
    assert not answer.out


def test_two_ways_of_saying_what_is_bought_are_wrong_usage(folder: Path) -> None:
    answer = call("months", folder, "--limit", "30", *NAMED, "--stand-ins")
    assert answer.status == 2
    assert "--order says what is bought" in answer.err
