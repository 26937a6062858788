"""What is typed beside a command."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.game import Purchase
from paradestate.core.span import month, year
from paradestate.text.number import read_whole
from paradestate.text.typed import (
    numbers_text,
    purchases_text,
    read_amounts,
    read_by_number,
    read_dates,
    read_named_words,
    read_names,
    read_numbers,
    read_purchases,
    read_results,
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


def test_a_choice_belongs_to_the_entry_that_is_there() -> None:
    """An entry may have brackets in its own name, and a choice beside."""
    read = value_of(read_purchases("guns (heavy)(flame)=1", entries={"guns (heavy)"}))
    assert read == (Purchase(entry="guns (heavy)", number=1, choice="flame"),)
    read = value_of(read_purchases("guns (heavy)=1", entries={"guns (heavy)"}))
    assert read == (Purchase(entry="guns (heavy)", number=1),)
    read = value_of(read_purchases("pioneers()=1, (x)=1", entries=()))
    assert [each.entry for each in read] == ["pioneers()", "(x)"]


def test_a_sign_of_quotation_within_quotes_is_written_twice() -> None:
    assert value_of(read_numbers("'Anna''s guns'=2")) == {"Anna's guns": 2}


NAMES = st.text("ab ,='\"().-", min_size=1, max_size=8).filter(lambda name: name == name.strip())


@given(st.lists(st.builds(Purchase, entry=NAMES, number=st.integers(1, 9)), min_size=1, max_size=4))
def test_what_is_written_as_it_is_typed_reads_as_the_same(plan: list[Purchase]) -> None:
    text = purchases_text(plan)
    assert value_of(read_purchases(text, entries={each.entry for each in plan})) == tuple(plan)


@given(st.dictionaries(NAMES, st.integers(0, 9), min_size=1, max_size=4))
def test_numbers_written_as_they_are_typed_read_as_the_same(numbers: dict[str, int]) -> None:
    assert value_of(read_numbers(numbers_text(numbers))) == numbers


def test_numbers_are_written_as_they_are_typed() -> None:
    assert numbers_text({"rifleman": 50, "gun, old": 1}) == "rifleman=50, 'gun, old'=1"


def test_a_choice_is_written_in_round_brackets() -> None:
    plan = (Purchase(entry="pioneers", number=1, choice="flame, or smoke"),)
    assert purchases_text(plan) == "'pioneers(flame, or smoke)'=1"
    assert value_of(read_purchases(purchases_text(plan), entries={"pioneers"})) == plan


def test_results_keep_their_order_and_a_name_may_come_again() -> None:
    typed = "light tanks=0, 'guns, old'=1, light tanks = 2"
    assert value_of(read_results(typed)) == (
        ("light tanks", 0),
        ("guns, old", 1),
        ("light tanks", 2),
    )


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("light tanks", "not-names-and-numbers"),
        ("light tanks=all", "not-a-number"),
        ("light tanks=-1", "not-a-whole-number"),
    ],
)
def test_what_is_no_result(text: str, code: str) -> None:
    assert code_of(read_results(text)) == code


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("guns=5", (("guns", None, 5),)),
        ("guns(2)=8, tanks = 9", (("guns", 2, 8), ("tanks", None, 9))),
        ("guns (old)=5", (("guns (old)", None, 5),)),
    ],
)
def test_values_by_number(text: str, found: tuple[tuple[str, int | None, int], ...]) -> None:
    assert value_of(read_by_number(text, entries=("guns (old)",), read=read_whole)) == found


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("guns", "not-names-and-numbers"),
        ("guns=dear", "not-a-number"),
        ("guns(all)=5", "not-a-number"),
    ],
)
def test_values_by_number_that_can_t_be_read(text: str, code: str) -> None:
    assert code_of(read_by_number(text, entries=(), read=read_whole)) == code
