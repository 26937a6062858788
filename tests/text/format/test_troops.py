"""The sections figures, stands, formations and raise."""

import pytest

from paradestate.core.force import Wishes
from paradestate.core.number import NumberRange
from paradestate.core.span import year
from paradestate.text.folder import read_files
from paradestate.text.format.troops import WishedItems
from tests.text.format.reading import BASE, codes, force


@pytest.mark.parametrize("parts", ["{gun: 2-4}", "[{of: gun, number: 2-4}]"])
def test_parts_in_both_forms(parts: str) -> None:
    (part,) = force(f"formations: {{x: {{parts: {parts}}}}}").formations["x"].parts
    assert (part.of, part.number) == ("gun", NumberRange(least=2, most=4))


@pytest.mark.parametrize(
    ("parts", "expected"),
    [
        ("gun", ["wrong-shape"]),
        ("{gnu: 1}", ["unknown-name"]),
        ("{gun: none}", ["not-a-number"]),
        ("[{of: gun, number: 1, until: 03/04/1943}]", ["date-ambiguous"]),
    ],
)
def test_odd_parts(parts: str, expected: list[str]) -> None:
    assert codes(f"formations: {{x: {{parts: {parts}}}}}") == expected


def raised(words: str) -> str:
    return BASE.replace("{formation: top}", f"{{formation: top, {words}}}")


def test_names_of_instances_and_wishes() -> None:
    text = raised('names: {gun: "No #", rifle: [Alpha, Beta]}, wished: [gun], date: 1943')
    reading = read_files({"a.yaml": text.encode()})
    assert reading.force.raise_ is not None
    assert reading.force.raise_.names == {"gun": "No #", "rifle": ("Alpha", "Beta")}
    assert reading.force.raise_.wished == ("gun",)
    assert reading.force.raise_.date == year(1943)
    everything = read_files({"a.yaml": raised("wished: all").encode()})
    assert everything.force.raise_ is not None
    assert everything.force.raise_.wished is Wishes.ALL


def test_wishes_are_written_as_they_are_read() -> None:
    assert WishedItems().write(("gun",)) == ["gun"]
    assert WishedItems().write(Wishes.ALL) == "all"


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("names: {gnu: x}", ["unknown-name"]),
        ("names: {gun: {a: b}}", ["wrong-shape"]),
        ("wished: some", ["unknown-word"]),
        ("wished: [gnu]", ["unknown-name"]),
        ("numbers: {gun: x}", ["not-a-number"]),
    ],
)
def test_odd_raises(words: str, expected: list[str]) -> None:
    reading = read_files({"a.yaml": raised(words).encode()})
    assert [found.code for found in reading.findings] == expected
    assert reading.force.raise_ is None
