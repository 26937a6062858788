"""Offers of findings, taken in the text."""

import pytest

from paradestate.core.finding import Finding, Level
from paradestate.core.place import Place
from paradestate.text.folder import read_files
from paradestate.text.mending import index_of, mended, offered_word

START = "format: 1\ntitle: T\nraise: {formation: top}\n"


def found_in(text: str) -> Finding:
    findings = read_files({"force.yaml": text.encode()}).findings
    (found,) = (each for each in findings if each.level is Level.STOP)
    return found


@pytest.mark.parametrize(
    ("wrong", "right"),
    [
        ("formations: {top: {man: 3}}\n", "formations: {top: {men: 3}}\n"),
        ("formations: {top: {'man': 3}}\n", "formations: {top: {men: 3}}\n"),
        (
            "figures: {rifleman: {sort: mountd}}\nformations: {top: {men: 3}}\n",
            "figures: {rifleman: {sort: mounted}}\nformations: {top: {men: 3}}\n",
        ),
        (
            'stands: {"a, b": {base: none}}\nformations: {top: {parts: {"a, c": 3}}}\n',
            "stands: {\"a, b\": {base: none}}\nformations: {top: {parts: {'a, b': 3}}}\n",
        ),
        (
            "figures: {boat: {}}\nformations: {top: {men: 3}}\nbench: {minutes: {boatx: {}}}",
            "figures: {boat: {}}\nformations: {top: {men: 3}}\nbench: {minutes: {boat: {}}}",
        ),
    ],
)
def test_the_word_that_was_meant_is_put_in_its_place(wrong: str, right: str) -> None:
    found = found_in(START + wrong)
    assert offered_word(found) is not None
    assert mended(START + wrong, found) == START + right


def finding(**changed: object) -> Finding:
    usual: dict[str, object] = {
        "level": Level.STOP,
        "code": "unknown-word",
        "message": "'man' isn't known here.",
        "effect": "",
        "hint": "Did you mean 'men'?",
        "place": Place(file="force.yaml", line=1, column=1),
    }
    return Finding(**(usual | changed))  # type: ignore[arg-type]  # changed by name in each test


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("man: 3", finding(hint="Known here: 'men'.")),
        ("man: 3", finding(code="unused")),
        ("man: 3", finding(message="Something else.")),
        ("many: 3", finding()),
        ("men: 3", finding()),
        ("man: 3", finding(place=Place(file="force.yaml", line=3, column=1))),
        ("man: 3", finding(place=Place(file="force.yaml", line=1, column=9))),
    ],
)
def test_nothing_is_replaced_where_something_else_stands(text: str, found: Finding) -> None:
    assert mended(text, found) is None


def test_a_word_at_the_end_of_the_text_is_found_too() -> None:
    assert mended("man", finding()) == "men"


def test_lines_and_columns_are_counted_from_one() -> None:
    assert index_of("ab\r\ncd", line=2, column=1) == 4
    assert index_of("ab\r\ncd", line=2, column=3) == 6
    assert index_of("ab", line=1, column=0) is None
