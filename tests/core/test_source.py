"""Sources and their packs."""

from fractions import Fraction

from paradestate.core.money import Currency, Minor
from paradestate.core.source import Source, force_currency


def source(currency: str, rate: int | None = None) -> Source:
    known = None if rate is None else Fraction(rate)
    return Source(
        name=currency, currency=Currency(currency), rate=known, carriage={Minor(0): Minor(0)}
    )


def test_totals_are_in_the_currency_of_the_first_source_without_a_rate() -> None:
    sources = {"a": source("EUR", 2), "b": source("GBP"), "c": source("USD")}
    assert force_currency(sources) == "GBP"


def test_without_such_a_source_nobody_knows() -> None:
    assert force_currency({"a": source("EUR", 2)}) is None
    assert force_currency({}) is None
