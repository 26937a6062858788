"""The fields of the sheet of choosing, read and written."""

from urllib.parse import parse_qsl

from paradestate.core.game import Purchase
from paradestate.web.choosing.question import for_the_page, question

TANKS = Purchase(entry="light tanks", number=2)
FLAME = Purchase(entry="pioneers", number=1, choice="flame")
FULL = {
    "game": "whole-day attack",
    "rolled": "25",
    "plan": "light tanks=2",
    "grade:training": "recruits",
    "allowed:light tanks": "0",
    "set": "company=3",
    "date": "1943",
}


def fields(query: str) -> dict[str, str]:
    return dict(parse_qsl(query.removeprefix("?"), strict_parsing=True))


def test_an_address_asks_what_it_says() -> None:
    asked = question(FULL)
    assert asked.choice.game == "whole-day attack"
    assert asked.choice.numbers == {"company": 3}
    assert (asked.rolled, asked.grades) == (25, {"training": "recruits"})
    assert asked.allowed == {"light tanks": 0}
    assert asked.plan(entries={"light tanks"}) == ((TANKS,), ())
    assert asked.findings == ()


def test_the_same_question_is_written_as_it_was_read() -> None:
    assert fields(question(FULL).query()) == FULL


def test_words_of_other_pages_and_empty_fields_are_left_out() -> None:
    asked = question({"stand": "x", "rolled": " ", "plan": ""})
    assert asked.query() == ""
    assert asked.rolled is None
    assert asked.plan(entries=()) == ((), ())


def test_another_plan_is_written_so_that_it_reads_as_the_same() -> None:
    asked = question({"game": "evening attack"})
    again = question(fields(asked.with_plan((TANKS, FLAME))))
    assert again.plan(entries={"light tanks", "pioneers"}) == ((TANKS, FLAME), ())
    assert again.choice.game == "evening attack"


def test_before_the_rolls_the_plan_is_the_same_and_nothing_is_rolled() -> None:
    before = fields(question(FULL).without_rolls)
    assert before == {
        key: value for key, value in FULL.items() if key not in {"rolled", "allowed:light tanks"}
    }


def test_each_text_with_a_slip_is_a_stop() -> None:
    asked = question({"rolled": "many", "set": "company", "allowed:tanks": "-1", "date": "soon"})
    assert {found.code for found in asked.findings} == {
        "not-a-number",
        "not-names-and-numbers",
        "not-a-whole-number",
        "not-a-date",
    }
    _, found = asked.plan(entries=())
    assert found == ()
    _, found = question({"plan": "tanks"}).plan(entries=())
    assert [each.code for each in found] == ["not-a-purchase"]


def test_ways_out_are_said_in_the_words_of_the_page() -> None:
    (found,) = question({"set": "company"}).findings
    (said,) = for_the_page((found,))
    assert "--" not in said.hint
