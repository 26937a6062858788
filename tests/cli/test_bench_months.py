"""The command `months --bench`."""

from dataclasses import replace
from pathlib import Path

import pytest

from paradestate.cli.bench_months_json import months_at_bench_json
from paradestate.cli.bench_months_report import print_bench_months
from paradestate.core.certainty import Within
from tests.cli.calling import call
from tests.journeys.bench.test_bench_months import ONE, THREE, asked, column

FROM = ("--from", "2026-03-02")


def test_what_to_order_when_for_people(tmp_path: Path) -> None:
    answer = call("months", column(tmp_path, THREE), "--bench", *FROM)
    assert answer.status == 0
    for line in (
        "3 parcels for £90.50, with £30.00 a month: the smallest legal force can be played on",
        "April 2026    £60.00  North £48.50  £48.50  £11.50",
        "North   smallest legal force   1 April 2026  15 April 2026",
        "smallest legal force   North         8 h  29 April 2026",
        "The bench stands idle for 45 days from 2 March 2026 to 15 April 2026: nothing owned is",
        "The days rest on your own week of 4 h, every week alike",
        "Exact, at that pace: no other sequence of these purchases or of the forces has less",
    ):
        assert line in answer.out
    assert "[limit-moves-the-date]" in answer.err


def test_what_to_order_when_for_programs(tmp_path: Path) -> None:
    document = call("months", column(tmp_path, THREE), "--bench", *FROM, "--json").document
    assert [each["name"] for month in document["months"] for each in month["orders"]] == [
        "North",
        "East",
        "South",
    ]
    assert document["total"] == "90.50"
    assert (document["certainty"], document["bound"]) == ("exact", None)
    assert document["week"] == "240"
    assert document["purchases"][0] == {
        "name": "North",
        "source": "North",
        "for": ["smallest legal force"],
    }
    assert document["milestones"][0] == {
        "name": "smallest legal force",
        "minutes": "480",
        "day": "2026-04-29",
        "decided_by": ["North"],
        "needs": ["North"],
        "if_paid_at_once": "2026-03-30",
        "buy_by": "2026-03-02",
    }
    assert document["idle"][0] == {
        "first": "2026-03-02",
        "last": "2026-04-15",
        "days": 45,
        "until": ["North"],
    }
    assert document["sequence"] == "exact"
    assert document["waiting"] == document["least_waiting"]
    assert document["ways"][0]["total"] == "90.50"
    assert document["ways"][0]["orders"][0] == ["smallest legal force"]


def test_another_way_to_order_is_said(tmp_path: Path) -> None:
    answer = call("months", column(tmp_path, ONE), "--bench", "--limit", "40", *FROM)
    assert "In 1 order it costs £6.00 less; the smallest legal force can then be played" in (
        answer.out
    )


def test_where_nothing_is_lacking_there_is_no_month_by_month(tmp_path: Path) -> None:
    stock = "stock: {rifleman: {in packet: 8}, lorry: {based: 3}, cook: {based: 2}}\n"
    out = call("months", column(tmp_path, stock=stock), "--bench", *FROM).out
    assert "Nothing is lacking, so there is nothing to buy: the smallest legal force can" in out
    assert "Month by month" not in out
    assert "the work" in out


def test_where_nothing_is_left_to_do_that_is_said(tmp_path: Path) -> None:
    stock = "stock: {rifleman: {based: 8}, lorry: {based: 3}, cook: {based: 2}}\n"
    answer = call("months", column(tmp_path, stock=stock), "--bench", *FROM)
    assert "Nothing is left to do at the bench, and nothing is lacking." in answer.out


def test_an_order_that_isnt_proved_is_said(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    answer = asked(column(tmp_path, THREE))
    assert answer.chosen is not None
    unsure = replace(answer, chosen=replace(answer.chosen, certainty=Within(bound=9000)))
    print_bench_months(unsure)
    said = "Within: the orders cost at most £0.50 above the least possible."
    assert said in capsys.readouterr().out
    assert months_at_bench_json(unsure)["bound"] == "90.00"
    empty = replace(answer, chosen=None)
    print_bench_months(empty)
    assert capsys.readouterr().out == ""
    assert months_at_bench_json(empty) == {}


def test_a_stop_ends_it(folder: Path) -> None:
    answer = call("months", folder, "--bench")
    assert answer.status == 1
    assert "[limit-missing]" in answer.err


@pytest.mark.parametrize(
    "options",
    [("--order", "a=1"), ("--needed", "North=2026-04"), ("--band", "5"), ("--want", "rifleman=1")],
)
def test_what_follows_from_the_bench_cant_be_said_beside_it(
    options: tuple[str, ...], folder: Path
) -> None:
    answer = call("months", folder, "--limit", "30", "--bench", *options)
    assert answer.status == 2
    assert "--bench says what is bought" in answer.err
