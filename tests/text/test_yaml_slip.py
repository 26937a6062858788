"""What a YAML reader's complaint means."""

import pytest
import yaml

from paradestate.core.place import Place
from paradestate.text.tree import Items, Node, Scalar
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


AT = Place(file="f", line=1, column=5)


def scalar(text: str) -> Scalar:
    return Scalar(text=text, place=AT)


@pytest.mark.parametrize(
    ("key", "before", "code", "hint"),
    [
        ("50", scalar("3"), "comma-decimal", "Write 3.50."),
        ("50", Items(nodes=(), place=AT), "key-without-value", "In braces a comma"),
        ("a:1", None, "key-without-value", "Write a: 1"),
        ("a", scalar("b"), "key-without-value", "In braces a comma always separates"),
        (":a", scalar("x"), "key-without-value", "In braces a comma always separates"),
    ],
)
def test_commas_and_colons_that_went_astray(
    key: str, before: Node | None, code: str, hint: str
) -> None:
    slip, about = key_without_value(scalar(key), before=before)
    assert slip.code == code
    assert slip.hint.startswith(hint)
    assert about.text == ("3" if code == "comma-decimal" else key)
