"""Sheets, columns and what they are for."""

import pytest

from paradestate.text.spreadsheet.cell import Use
from paradestate.text.spreadsheet.layout import LAYOUTS, use_of


@pytest.mark.parametrize(
    ("sheet", "heading", "use"),
    [
        ("packs", "pack", Use.TEXT),
        ("packs", "price", Use.NUMBER),
        ("packs", "holds", Use.TEXT),
        ("sources", "noted", Use.DATE),
        ("stock", "painted", Use.NUMBER),
        ("stock", "figure", Use.TEXT),
        ("supporting troops", "allows 1", Use.RANGE),
        ("supporting troops", "roll", Use.TEXT),
        ("supporting troops", "until", Use.DATE),
    ],
)
def test_what_a_column_is_for(sheet: str, heading: str, use: Use) -> None:
    assert use_of(heading, LAYOUTS[sheet]) is use


def test_every_word_of_an_entry_is_a_column_or_its_roll() -> None:
    words = set(LAYOUTS["supporting troops"].words)
    assert "availability" not in words
    assert {"cost", "by hand", "needs any of", "from"} <= words
