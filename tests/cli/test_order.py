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
        "Exact: no order below £48.50 meets the want; the next best are £50.00, £51.50, £52.10.",
        "£51.50          3  1 x North N1, 2 x North N2, 1 x North N3, 1 x South S2",
    ):
        assert line in answer.out
    assert "[much-left-over]" in answer.err


def test_bought_figures_stand_in_where_that_is_asked(folder: Path) -> None:
    answer = call("order", folder, "--want", WANT, "--stand-ins")
    assert "The 63 figures wanted cost £45.50: 3 packs from South." in answer.out
    assert "2 officers stand in for riflemen." in answer.out
    document = call("order", folder, "--want", WANT, "--stand-ins", "--json").document
    assert document["stand_ins"] == [{"kind": "officer", "stands_for": "rifleman", "number": 2}]
    steps = [(step["total"], step["left_over"]) for step in document["steps"]]
    assert steps == [("45.50", 3), ("49.50", 1)]
    assert (document["all_steps"], document["all_next_best"]) == (True, True)


def test_the_order_that_leaves_least_over(folder: Path) -> None:
    answer = call("order", folder, "--want", WANT, "--fewest-left-over")
    assert "no order below £51.50 meets the want with at most 3 left over." in answer.out
    assert "Exact: no order leaves less over." in answer.out
    document = call("order", folder, "--want", WANT, "--fewest-left-over", "--json").document
    assert (document["total"], document["least_left_over"]) == ("51.50", 3)


def test_the_order_in_one_parcel(folder: Path) -> None:
    document = call("order", folder, "--json").document
    assert len(document["sources"]) == 2
    one = call("order", folder, "--one-parcel", "--json")
    assert len(one.document["sources"]) == 1
    assert float(one.document["total"]) > float(document["total"])


def test_the_soonest_order_says_when_it_can_be_there(folder: Path) -> None:
    unknown = call("order", folder, "--want", WANT, "--soonest")
    assert "[lead-time-unknown]" in unknown.err
    prices = folder / "prices.yaml"
    text = prices.read_text(encoding="utf-8")
    prices.write_text(text.replace("N2: {", "N2: {lead days: 9, "), encoding="utf-8")
    known = call("order", folder, "--want", "rifleman=5", "--soonest")
    assert "All of it can be there 9 days after ordering." in known.out
    assert "[lead-time-unknown]" not in known.err


def test_an_order_within_so_much_is_said_to_be_that(folder: Path) -> None:
    document = call("order", folder, "--want", WANT, "--within", "5", "--json").document
    assert document["certainty"] in {"exact", "within"}
    assert 48.50 <= float(document["total"]) <= float(document["bound"] or 48.50) + 5
    slip = call("order", folder, "--want", WANT, "--within", "much")
    assert slip.status == 1
    assert "much" in slip.err


def test_owned_figures_are_used_before_any_is_bought(folder: Path) -> None:
    """Of 6 officers 4 serve as such and 2 for riflemen, and 48 riflemen are owned."""
    stock = "stock: {officer: {painted: 9}, rifleman: {painted: 99}}\n"
    (folder / "stock.yaml").write_text(stock, encoding="utf-8")
    answer = call("order", folder)
    assert "2 officers stand in for riflemen." in answer.out
    document = call("order", folder, "--json").document
    assert document["want"] == {"signaller": 3, "mortar crew": 12, "light truck": 2}
    assert set(document["left_over"]) <= {"signaller", "mortar crew", "rifleman", "officer"}


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
