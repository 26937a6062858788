"""What a YAML reader's complaint means."""

import pytest
import yaml

from paradestate.text.yaml_slip import key_without_value, syntax_slip


def slip_of(text: str) -> tuple[str, str, int, int]:
    try:
        list(yaml.parse(text, Loader=yaml.CBaseLoader))
    except yaml.YAMLError as error:
        slip, line, column = syntax_slip(error, text.split("\n"))
        return slip.code, slip.hint, line, column
    raise AssertionError(text)


def test_text_with_a_colon_is_offered_in_quotes() -> None:
    code, hint, line, column = slip_of("about: first: second\n")
    assert (code, line, column) == ("colon-in-text", 1, 13)
    assert hint == 'Write about: "first: second"'


def test_a_control_character_is_named_with_its_place() -> None:
    assert slip_of("a: 1\nb: x\x07y\n")[::2] == ("control-character", 2)


def test_an_unknown_complaint_without_a_place_is_at_the_top() -> None:
    slip, line, column = syntax_slip(yaml.YAMLError("odd"), ["a: 1"])
    assert (slip.code, line, column) == ("not-yaml", 1, 1)


def test_a_half_written_quote_says_where_it_began() -> None:
    code, _, line, _ = slip_of("a: 1\nb: 'x\n")
    assert (code, line) == ("half-written", 3)


@pytest.mark.parametrize(
    ("key", "before", "code", "hint"),
    [
        ("50", "3", "comma-decimal", "Write 3.50."),
        ("a:1", None, "key-without-value", "Write a: 1"),
        ("a", "b", "key-without-value", "In braces a comma always separates"),
        (":a", "x", "key-without-value", "In braces a comma always separates"),
    ],
)
def test_commas_and_colons_that_went_astray(
    key: str, before: str | None, code: str, hint: str
) -> None:
    slip = key_without_value(key, before=before)
    assert slip.code == code
    assert slip.hint.startswith(hint)
