"""Sources and their packs."""

from dataclasses import replace
from fractions import Fraction

from paradestate.core.money import Currency, Minor
from paradestate.core.source import Pack, Source, force_currency, sold_kinds


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


def test_a_kind_is_sold_that_some_pack_holds() -> None:
    def pack(name: str, holds: dict[str, int]) -> Pack:
        return Pack(name=name, price=Minor(100), holds=holds)

    one = replace(source("GBP"), packs={"1": pack("1", {"man": 2, "dog": 0})})
    two = replace(source("GBP"), packs={"2": pack("2", {"horse": 1}), "3": pack("3", {"man": 1})})
    assert sold_kinds({"a": one, "b": two}) == {"man", "horse"}
    assert sold_kinds({}) == frozenset()
