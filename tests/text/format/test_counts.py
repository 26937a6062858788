"""Names with numbers, in the short form and the long."""

import pytest

from tests.text.format.reading import codes, force


@pytest.mark.parametrize(
    "written",
    ["{f: 2, e: 1}", "[{of: f, number: 2}, e]", "[f, f, e]", "[{of: f, number: 1}, f, e]"],
)
def test_both_forms_and_bare_names_mean_the_same(written: str) -> None:
    entries = (
        f"supporting troops: {{d: {{cost: 1, needs: {written}}}, e: {{cost: 1}}, f: {{cost: 1}}}}"
    )
    assert force(entries).supporting_troops["d"].needs == {"f": 2, "e": 1}


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        ("3", ["wrong-shape"]),
        ("{rifelman: 1}", ["unknown-name"]),
        ("{rifleman: 0}", ["not-a-whole-number"]),
        ("[{of: rifelman, number: 1}]", ["unknown-name"]),
        ("[{of: rifleman}]", ["missing-word"]),
        ("[rifleman]", ["wrong-shape"]),
        ("[{of: rifleman, number: 1, by hand: x}]", ["unknown-word"]),
    ],
)
def test_slips(written: str, expected: list[str]) -> None:
    assert codes(f"stands: {{s: {{base: none, figures: {written}}}}}") == expected


def test_an_unknown_bare_name() -> None:
    assert codes("supporting troops: {d: {cost: 1, needs: [x]}}") == ["unknown-name"]


def test_nought_only_where_it_makes_sense() -> None:
    ranged = "formations: {x: {parts: [{of: gun, number: 1-2}]}}\n"
    game = "games: {g: {allowance: 1d6, posture: attack, numbers: {gun: 0}}}"
    assert force(ranged + game).games["g"].numbers == {"gun": 0}
