"""What is known while a folder is read."""

from dataclasses import replace

import pytest

from paradestate.core.place import Place
from paradestate.text.context import Context, said_of

HERE = Place(file="f", line=1, column=1, path=("formations", "company", "parts", "3", "of"))


@pytest.mark.parametrize(
    ("path", "said"),
    [
        ((), "X"),
        (("figures", "gun crew"), "gun crew: x"),
        (("raise", "date"), "raise, date: x"),
        (("title",), "title: x"),
        (("formations", "company", "parts", "3", "of"), "company, part 3: x"),
        (("formations", "company", "parts", "3", "number"), "company, part 3, number: x"),
        (("limits", "2", "group"), "limit 2, group: x"),
        (("sources", "North", "packs", "N1", "price"), "North, N1, price: x"),
    ],
)
def test_a_message_names_the_thing(path: tuple[str, ...], said: str) -> None:
    assert said_of(path, "x") == said


def test_known_names_are_noted_and_unknown_ones_stop() -> None:
    context = Context(names={"stands": {"rifle": HERE}})
    assert context.refer("rifle", HERE, kind="stands")
    assert not context.refer("rifel", HERE, kind="stands")
    assert context.used == {("stands", "rifle", "formations"), ("stands", "rifel", "formations")}
    assert [found.code for found in context.findings] == ["unknown-name"]


def test_a_name_unknown_twice_is_looked_up_once() -> None:
    context = Context(names={"stands": {"rifle": HERE}})
    for line in (1, 2):
        context.refer("rifel", replace(HERE, line=line), kind="stands")
    assert [found.hint for found in context.findings] == ["Did you mean 'rifle'?"] * 2


def test_names_may_be_missing_where_a_file_broke_off() -> None:
    context = Context(partial=True)
    assert not context.refer("rifle", HERE, kind="stands")
    assert not context.findings
