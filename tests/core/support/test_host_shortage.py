"""Why sections find no host."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.support.attachment import INDEPENDENT, Attaching
from paradestate.core.support.entry import Attachment
from paradestate.core.support.host_shortage import Shortage, alone_without_host, shortages
from tests.attachings import attachings, every_attachment, hosts, rule, sections


@pytest.mark.parametrize(
    ("numbers", "rules", "there", "alone"),
    [
        ({}, {}, 2, 0),
        ({"a": 4}, {"a": rule(1)}, 3, 1),
        ({"a": 4}, {"a": rule(2)}, 2, 0),
        ({"a": 9}, {"a": rule(None)}, 1, 0),
        ({"a": 1}, {"a": rule(None)}, 0, 1),
        ({"a": 2, "b": 2}, {"a": rule(1), "b": rule(2)}, 3, 0),
        ({"a": 2, "b": 3}, {"a": rule(1), "b": rule(2)}, 3, 1),
        ({"a": 8, "b": 12}, {"a": rule(1), "b": rule(2)}, 12, 2),
        ({"a": 2, "b": 2}, dict.fromkeys("ab", rule(2, no_two_alike=True)), 2, 0),
        ({"a": 3, "b": 1}, dict.fromkeys("ab", rule(2, no_two_alike=True)), 2, 1),
        ({"a": 2, "b": 2}, {"a": rule(2), "b": rule(2, no_two_alike=True)}, 2, 0),
        ({"a": 1, "b": 5}, {"a": rule(2), "b": rule(None)}, 2, 0),
        ({"a": 10**9}, {"a": rule(2)}, 6, 10**9 - 12),
    ],
)
def test_how_many_stand_alone(
    numbers: dict[str, int], rules: dict[str, Attachment], there: int, alone: int
) -> None:
    assert alone_without_host(numbers, rules=rules, hosts=there) == alone


def test_with_very_many_hosts_it_is_as_many_at_least() -> None:
    """Of 8 and 12,000 on 6,000 hosts 8 stand alone; it says no more than may be said at once."""
    rules = {"a": rule(1), "b": rule(2)}
    assert alone_without_host({"a": 9000, "b": 9000}, rules=rules, hosts=6000) == 6000


@settings(max_examples=60)
@given(attachings(), st.integers(0, 3))
def test_it_is_what_enumeration_leaves_alone(question: Attaching, there: int) -> None:
    one_kind = tuple(
        replace(each, must=False, rule=replace(each.rule, to="platoon"))
        for each in question.sections
    )
    asked = Attaching(sections=one_kind, hosts=hosts(there))
    numbers: dict[str, int] = {}
    for each in one_kind:
        numbers[each.entry] = numbers.get(each.entry, 0) + 1
    rules = {each.entry: each.rule for each in one_kind}
    alone = min(list(attached.values()).count(INDEPENDENT) for attached in every_attachment(asked))
    assert alone_without_host(numbers, rules=rules, hosts=there) == alone


def test_four_that_must_be_attached_and_three_places() -> None:
    """Worked by hand."""
    question = Attaching(sections=sections("a", 4, of=rule(), must=True), hosts=hosts(3))
    (shortage,) = shortages(question)
    assert shortage == Shortage(to="platoon", entries=("a",), sections=4, places=3)
    assert shortage.alone == 1


def test_only_those_that_are_short_are_named() -> None:
    alike = sections("a", 3, of=rule(None, no_two_alike=True), must=True)
    others = sections("b", 3, of=rule(None), must=True)
    free = sections("c", 9, of=rule(None))
    question = Attaching(sections=(*others, *alike, *free), hosts=hosts(2))
    (shortage,) = shortages(question)
    assert shortage == Shortage(to="platoon", entries=("a",), sections=3, places=2)


def test_where_all_find_a_host_nothing_is_short() -> None:
    question = Attaching(sections=sections("a", 3, of=rule(), must=True), hosts=hosts(3))
    assert shortages(question) == ()
    elsewhere = Attaching(
        sections=sections("a", 1, of=rule(to="company"), must=True), hosts=hosts(3)
    )
    assert [each.places for each in shortages(elsewhere)] == [0]


@settings(max_examples=60)
@given(attachings())
def test_something_is_short_exactly_where_there_is_no_attachment(question: Attaching) -> None:
    none = next(iter(every_attachment(question)), None) is None
    assert bool(shortages(question)) == none
