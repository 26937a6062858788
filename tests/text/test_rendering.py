"""Values as pieces of YAML."""

import pytest
import yaml
from hypothesis import given

from paradestate.text.codec import Plain
from paradestate.text.rendering import behind_colon, flow_text, line_text, lines_text
from tests.text.drawn_files import TEXTS, plains


def read(text: str) -> object:
    return yaml.load(text, Loader=yaml.CBaseLoader)  # noqa: S506 - text only


@given(plains())
def test_any_value_reads_the_same_on_one_line(value: Plain) -> None:
    assert read(f"[{flow_text(value)}]") == [value]
    assert read(f"key: {line_text(value)} # note\n") == {"key": value}
    assert "\n" not in flow_text(value) + line_text(value)


@given(plains())
def test_any_value_reads_the_same_on_lines_of_its_own(value: Plain) -> None:
    if isinstance(value, str) or not value:
        return
    assert read(f"key:\n{lines_text(value, column=3, line_break=chr(10))}\n") == {"key": value}


@given(TEXTS)
def test_a_text_keeps_the_quotes_it_is_given_where_it_can(text: str) -> None:
    for quote in ("'", '"'):
        assert read(flow_text(text, quote=quote)) == text
        assert flow_text(text, quote=quote)[0] in {quote, '"'}


@pytest.mark.parametrize(
    ("value", "text"),
    [
        ("", "''"),
        ("<<", "'<<'"),
        ("1943", "1943"),
        ("no", "no"),
        ("a: b", "'a: b'"),
        ("a\nb", '"a\\nb"'),
        ([], "[]"),
        ({}, "{}"),
        ({"a": ["b", "c"], "d": {"e": "f"}}, "{a: [b, c], d: {e: f}}"),
    ],
)
def test_quotes_stand_where_yaml_needs_them(value: Plain, text: str) -> None:
    assert flow_text(value) == text
    assert line_text(value) == text


def test_a_comma_needs_quotes_in_braces_only() -> None:
    assert (flow_text("a, b"), line_text("a, b")) == ("'a, b'", "a, b")


def test_what_is_too_long_for_its_line_stands_below_the_key() -> None:
    value: Plain = {"a": "x" * 60, "b": ["y" * 50, "z" * 50]}
    written = behind_colon(value, column=2, taken=10, line_break="\r\n")
    assert written.split("\r\n") == [
        "",
        f"    a: {'x' * 60}",
        "    b:",
        f"      - {'y' * 50}",
        f"      - {'z' * 50}",
    ]
    assert behind_colon({"a": "x" * 90}, column=0, taken=1, line_break="\n")[:2] == " {"
    assert behind_colon("x" * 200, column=0, taken=1, line_break="\n") == f" {'x' * 200}"
