"""What is typed beside a command."""

from fractions import Fraction

import pytest

from paradestate.core.game import Purchase
from paradestate.core.span import month, year
from paradestate.text.typed import (
    read_amounts,
    read_dates,
    read_named_words,
    read_names,
    read_numbers,
    read_purchases,
    read_typed_date,
)
from tests.text.slips import code_of, value_of


@pytest.mark.parametrize(
    ("text", "numbers"),
    [
        ("company=3", {"company": 3}),
        ("rifleman=50, officer=4", {"rifleman": 50, "officer": 4}),
        (" rifleman = 50 ,rifleman=1", {"rifleman": 51}),
        ("\"rifle, old\"=3, 'a=b'=0", {"rifle, old": 3, "a=b": 0}),
    ],
)
def test_names_with_numbers(text: str, numbers: dict[str, int]) -> None:
    assert value_of(read_numbers(text)) == numbers


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("company", "not-names-and-numbers"),
        ("", "not-names-and-numbers"),
        ("=3", "not-names-and-numbers"),
        ("company=-1", "not-a-whole-number"),
        ("company=x", "not-a-number"),
    ],
)
def test_odd_numbers(text: str, code: str) -> None:
    assert code_of(read_numbers(text)) == code


def test_names() -> None:
    assert value_of(read_names("North, South")) == ("North", "South")
    assert value_of(read_names('"a, b"')) == ("a, b",)
    assert code_of(read_names("=")) == "not-names-and-numbers"


def test_a_date_is_read_as_in_files() -> None:
    assert value_of(read_typed_date(" 1943 ")) == year(1943)


def test_amounts_and_dates_by_name() -> None:
    amounts = {"main": Fraction(97, 2), "a=b": Fraction(24)}
    assert value_of(read_amounts("main=48.50, 'a=b'=24")) == amounts
    assert value_of(read_dates("main=2026-12")) == {"main": month(2026, 12)}


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("main", "not-names-and-numbers"),
        ("main=48,50", "not-names-and-numbers"),
        ("main=-1", "price-negative"),
        ("main=", "not-a-number"),
        ("main=1, main=2", "name-twice"),
    ],
)
def test_odd_amounts_by_name(text: str, code: str) -> None:
    assert code_of(read_amounts(text)) == code


def test_odd_dates_by_name() -> None:
    assert code_of(read_dates("main=soon")) == "not-a-date"
    assert code_of(read_dates("soon")) == "not-names-and-numbers"


def test_purchases_are_read_with_their_choices() -> None:
    typed = "machine-gun platoon=2, pioneers (flame) = 1, pioneers(flame)=1"
    assert value_of(read_purchases(typed, entries=())) == (
        Purchase(entry="machine-gun platoon", number=2),
        Purchase(entry="pioneers", choice="flame", number=1),
        Purchase(entry="pioneers", choice="flame", number=1),
    )


def test_an_entry_whose_own_name_holds_brackets_is_known_by_all_of_it() -> None:
    bought = value_of(read_purchases("'guns (light)'=2", entries={"guns (light)"}))
    assert bought == (Purchase(entry="guns (light)", number=2),)


@pytest.mark.parametrize(
    ("text", "code"),
    [("guns", "not-a-purchase"), ("guns=0", "not-a-whole-number"), ("guns=two", "not-a-number")],
)
def test_odd_purchases(text: str, code: str) -> None:
    assert code_of(read_purchases(text, entries=())) == code


def test_words_by_name() -> None:
    assert value_of(read_named_words("training=recruits")) == {"training": "recruits"}
    assert code_of(read_named_words("training")) == "not-names-and-numbers"
