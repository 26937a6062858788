"""The command `order`."""

from pathlib import Path

import pytest

from tests.cli.calling import call

WANT = "rifleman=50, mortar crew=9, officer=4"


def test_the_cheapest_order_of_the_example(folder: Path) -> None:
    document = call("order", folder, "--want", WANT, "--json").document
    assert (document["total"], document["currency"]) == ("48.50", "GBP")
    assert (document["certainty"], document["bound"]) == ("exact", None)
    assert document["lines"] == [
        {"source": "South", "pack": "S1", "number": 3, "cost": "42.00"},
        {"source": "South", "pack": "S3", "number": 1, "cost": "8.00"},
    ]
    (south,) = document["sources"]
    assert (south["goods"], south["discount"], south["carriage"]) == ("50.00", "5.00", "3.50")
    assert south["total"] == "48.50"
    assert document["left_over"] == {"rifleman": 10, "mortar crew": 3, "officer": 2}
    steps = [(step["total"], step["left_over"]) for step in document["steps"]]
    assert steps == [("48.50", 15), ("50.00", 5), ("51.50", 3)]
    assert document["next_best"][0]["total"] == "50.00"


def test_the_order_is_printed_as_slips(folder: Path) -> None:
    answer = call("order", folder, "--want", WANT)
    assert answer.status == 0
    for line in (
        "The 63 figures wanted cost £48.50: 4 packs from South.",
        "Purchase slip: South",
        "Exact: no order below £48.50 meets the want.",
        "£51.50          3  1 x North N1, 2 x North N2, 1 x North N3, 1 x South S2",
    ):
        assert line in answer.out
    assert "[much-left-over]" in answer.err


def test_what_is_lacking_is_ordered(folder: Path) -> None:
    document = call("order", folder, "--json").document
    assert document["want"]["rifleman"] == 101
    assert document["certainty"] == "exact"


def test_from_one_source(folder: Path) -> None:
    document = call("order", folder, "--want", WANT, "--sources", "North", "--json").document
    assert document["total"] == "50.00"


@pytest.mark.parametrize(
    ("options", "code"),
    [
        (("--want", "pioneer=8"), "nobody-sells"),
        (("--want", "pioner=8"), "unknown-choice"),
        (("--want", "pioneer"), "not-names-and-numbers"),
        (("--sources", "Nroth"), "unknown-choice"),
        (("--sources", "="), "not-names-and-numbers"),
    ],
)
def test_orders_that_can_not_be(folder: Path, options: tuple[str, ...], code: str) -> None:
    answer = call("order", folder, *options)
    assert answer.status == 1
    assert f"[{code}]" in answer.err


def test_a_stop_prevents_the_order(folder: Path) -> None:
    assert call("order", folder, "--date", "1942").status == 1


def test_nothing_is_lacking(folder: Path) -> None:
    (folder / "stock.csv").write_text(
        "figure,painted\nrifleman,101\nofficer,7\nsignaller,3\nmortar crew,12\nlight truck,2\n",
        encoding="utf-8",
    )
    assert "Nothing is lacking" in call("order", folder).out
    assert call("order", folder, "--json").document["total"] == "0.00"


def test_another_currency_is_exchanged(folder: Path) -> None:
    (folder / "east.yaml").write_text(
        "sources: {East: {currency: EUR, rate: 0.86, rate date: 2026-02-01, carriage: {0: 0},"
        " packs: {E1: {price: 1.00, holds: {pioneer: 10}}}}}\n",
        encoding="utf-8",
    )
    answer = call("order", folder, "--want", "pioneer=8")
    assert "in GBP" in answer.out
    assert "£0.86" in answer.out
