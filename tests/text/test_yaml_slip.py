"""Slips in the use of YAML."""

import pytest

from paradestate.core.place import Place
from paradestate.text.tree import Items, Node, Scalar
from paradestate.text.yaml_slip import key_without_value

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
