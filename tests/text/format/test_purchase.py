"""The sections stock, stock stands and sources."""

import pytest

from tests.text.format.reading import codes, force, slips


def test_stock_by_stage_with_what_is_held_in_all() -> None:
    made = force(
        "stock: {rifleman: {held: 10, painted: 6}, officer: {held: 3}}\n"
        "stock stands: {gun: {based: 1}}"
    )
    assert made.stock == {"rifleman": {"painted": 6, "in packet": 4}, "officer": {"in packet": 3}}
    assert made.stock_stands == {"gun": {"based": 1}}
    exact = force("stock: {rifleman: {held: 6, painted: 6}}")
    assert exact.stock == {"rifleman": {"painted": 6}}


@pytest.mark.parametrize(
    ("stock", "expected"),
    [
        ("rifleman", ["wrong-shape"]),
        ("{rifleman: 3}", ["wrong-shape"]),
        ("{rifleman: {painted: x}}", ["not-a-number"]),
        ("{rifleman: {primed: 1}}", ["unknown-name"]),
        ("{rifelman: {painted: 1}}", ["unknown-name"]),
        ("{rifleman: {held: 1, painted: 1, based: 1}}", ["more-than-held"]),
    ],
)
def test_odd_stock(stock: str, expected: list[str]) -> None:
    assert codes(f"stock: {stock}") == expected


def test_a_bench_without_stages_says_only_that() -> None:
    assert codes("bench: {stages: []}\nstock: {rifleman: {held: 3}}") == ["empty-value"]


def source(words: str) -> str:
    return f"sources: {{N: {{{words}}}}}"


def test_amounts_have_the_places_of_their_currency() -> None:
    packs = "packs: {P: {price: 100, holds: {rifleman: 1}}}"
    yen = force(source(f"currency: JPY, carriage: {{0: 500}}, {packs}"))
    assert yen.sources["N"].packs["P"].price == 100
    pounds = force(source(f"currency: GBP, carriage: {{0: 5}}, {packs}"))
    assert pounds.sources["N"].packs["P"].price == 10_000


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("carriage: {0: 1}, packs: {}", ["missing-word"]),
        ("currency: pounds, carriage: {0: 0.5}, packs: {}", ["not-a-currency"]),
        ("currency: [GBP], carriage: {0: 1}, packs: {}", ["wrong-shape"]),
        ("currency: JPY, carriage: {0: 0.5}, packs: {}", ["amount-too-fine"]),
    ],
)
def test_odd_sources(words: str, expected: list[str]) -> None:
    assert codes(source(words)) == expected


def test_sources_are_a_mapping_of_mappings() -> None:
    assert codes("sources: [N]") == ["wrong-shape"]
    assert slips("sources: {N: 3}") == [("wrong-shape", ("sources", "N"))]
