"""Worths of places in boxes and in an address."""

from dataclasses import replace
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.finding import Level
from paradestate.core.support.attachment import INDEPENDENT, Attaching
from paradestate.web.hosts.place_worth import (
    LONGEST,
    MOST_SAID,
    address_text,
    boxes_of,
    mark_of,
    too_long,
    worths_of_address,
    worths_typed,
)
from tests.attachings import hosts, rule, sections

QUESTION = Attaching(
    sections=(*sections("MG", 2, of=rule()), *sections("FOO", 1, of=rule(to="company"))),
    hosts=(*hosts(2), *hosts(1, formation="company")),
)
PAIRS = tuple(boxes_of(QUESTION).values())


def test_a_box_is_there_for_every_place_that_is_open_to_a_section() -> None:
    assert boxes_of(QUESTION)["worth:1:3"] == ("MG 1", INDEPENDENT)
    assert boxes_of(QUESTION)["worth:3:1"] == ("FOO 1", "c1")
    assert len(PAIRS) == 3 + 3 + 2


def test_boxes_are_read_as_decimals_and_empty_ones_say_nothing() -> None:
    said = worths_typed(QUESTION, {"worth:1:1": " 2.5 ", "worth:1:2": "", "worth:9:9": "4"})
    assert said.worths == {("MG 1", "p1"): Fraction(5, 2)}
    assert said.findings == ()


def test_a_box_with_a_slip_is_a_stop_that_names_it_and_keeps_what_was_typed() -> None:
    said = worths_typed(QUESTION, {"worth:1:1": "2,5", "worth:2:3": "much"})
    comma, word = said.findings
    assert (comma.level, comma.code) == (Level.STOP, "comma-decimal")
    assert comma.message == "MG 1 with p1: '2,5' has a comma for a decimal point."
    assert word.message == "MG 2 independent: 'much' isn't a number."
    assert said.typed == {("MG 1", "p1"): "2,5", ("MG 2", INDEPENDENT): "much"}
    assert said.worths == {}


def test_many_slips_are_not_all_listed() -> None:
    wide = Attaching(sections=sections("MG", 3, of=rule()), hosts=hosts(5))
    said = worths_typed(wide, dict.fromkeys(boxes_of(wide), "much"))
    assert len(said.findings) == MOST_SAID + 1
    assert said.findings[-1].message == "10 more boxes have slips."


def test_one_slip_more_is_one() -> None:
    wide = Attaching(sections=sections("MG", 3, of=rule()), hosts=hosts(2))
    said = worths_typed(wide, dict.fromkeys(boxes_of(wide), "much"))
    assert said.findings[-1].message == "1 more box has a slip."


def test_only_what_is_not_as_usual_stands_in_the_address() -> None:
    worths = {
        ("MG 1", "p2"): Fraction(3),
        ("MG 1", "p1"): Fraction(1),
        ("MG 2", INDEPENDENT): Fraction(0),
        ("FOO 1", INDEPENDENT): Fraction(-1, 2),
    }
    assert address_text(QUESTION, worths) == "_3~~_-0.5"
    assert address_text(QUESTION, {}) == ""


@settings(max_examples=40)
@given(st.dictionaries(st.sampled_from(PAIRS), st.integers(-99999, 99999), max_size=8))
def test_worths_come_back_from_the_address_as_they_went_there(
    said: dict[tuple[str, str], int],
) -> None:
    worths = {pair: Fraction(number, 100) for pair, number in said.items()}
    text = address_text(QUESTION, worths)
    back = worths_of_address(QUESTION, text=text, of=mark_of(QUESTION))
    assert back.findings == ()
    for section, place in PAIRS:
        before, after = (replace(QUESTION, worths=each) for each in (worths, back.worths))
        assert before.worth(section, host=place) == after.worth(section, host=place)


def test_worths_of_other_sections_or_hosts_are_not_used() -> None:
    other = replace(QUESTION, hosts=hosts(3))
    assert mark_of(other) != mark_of(QUESTION)
    said = worths_of_address(other, text="_3", of=mark_of(QUESTION))
    assert said.worths == {}
    assert [(each.level, each.code) for each in said.findings] == [(Level.WARN, "worths-of-others")]


def test_an_address_with_too_many_boxes_or_a_slip_loses_nothing_else() -> None:
    said = worths_of_address(QUESTION, text="1_2_3_4_5~x~~9", of=mark_of(QUESTION))
    assert said.worths[("MG 1", INDEPENDENT)] == 3
    assert [each.code for each in said.findings] == ["not-a-number"]


def test_what_does_not_fit_into_an_address_is_a_stop() -> None:
    assert too_long("1" * LONGEST) == ()
    (stop,) = too_long("1" * (LONGEST + 1))
    assert (stop.level, stop.code) == (Level.STOP, "worths-too-long")
    assert "5,001 letters" in stop.message
