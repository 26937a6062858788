"""Points that may be left, and what of them nobody can spend."""

from fractions import Fraction

import pytest

from paradestate.core.support.chances import chances
from paradestate.sheet.svg import Drawing
from paradestate.sheet.waste_bars import (
    BARS,
    PHONE,
    WIDE,
    WasteRow,
    waste_bars,
    waste_rows,
    waste_words,
)
from tests.sheet.reading import root_of, texts_of, texts_on_others, texts_outside

ROWS = waste_rows(chances({2: 1, 3: 2, 4: 1}), unspent=(None, 1, 0))
MANY = tuple(WasteRow(points=n, chance=Fraction(1, 200), unspent=n % 3) for n in range(200))


def bars(made: Drawing) -> list[tuple[float, bool]]:
    """The height of each, and whether it is hatched."""
    return [
        (float(each.get("height", "")), each.get("fill", "").startswith("url("))
        for each in root_of(made).iter("rect")
    ]


def test_bars_are_as_high_as_their_chances_and_hatched_where_points_are_left_over() -> None:
    assert bars(waste_bars(ROWS)) == [(BARS / 2, True), (BARS, True), (BARS / 2, False)]


def test_how_many_are_left_over_stands_at_the_bar() -> None:
    assert texts_of(waste_bars(ROWS))[:2] == ["1", "2"]
    broad = tuple(WasteRow(points=n, chance=Fraction(1, 2), unspent=None) for n in (1, 2))
    assert "none legal" not in texts_of(waste_bars(broad))


def test_the_table_says_what_is_left_over() -> None:
    assert [row.words for row in ROWS] == ["nothing is legal", "1 point", "none"]
    assert [row.chance for row in ROWS] == [Fraction(1, 4), Fraction(1, 2), Fraction(1, 4)]


def test_the_sentence_says_each_number_of_points_or_the_first_of_many() -> None:
    assert waste_words(ROWS) == (
        "Points that may be left, with what of them can't be spent: 2 (1/4, 25 in 100): nothing "
        "is legal, 3 (1/2, 50 in 100): 1 point."
    )
    assert waste_words(MANY).endswith("and 125 more.")
    assert waste_words(ROWS[2:]) == "All points that may be left can be spent."


@pytest.mark.parametrize("width", [PHONE, WIDE])
@pytest.mark.parametrize("rows", [ROWS, MANY, ROWS[:1]])
def test_no_text_lies_on_another_or_runs_out(rows: tuple[WasteRow, ...], width: int) -> None:
    made = waste_bars(rows, width=width)
    assert texts_outside(made) == []
    assert texts_on_others(made) == []
