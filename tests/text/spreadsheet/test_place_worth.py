"""The sheet of what places are worth."""

from fractions import Fraction

import pytest

from paradestate.core.finding import Level
from paradestate.text.spreadsheet.place_worth import (
    KnownPlaces,
    PlaceWorths,
    read_place_worths,
    worth_page,
)
from paradestate.text.spreadsheet.writing import csv_text

KNOWN = KnownPlaces(
    places={
        "gun 1": ("1 Platoon", "2 Platoon", "independent"),
        "gun 2": ("1 Platoon", "2 Platoon", "independent"),
        "mortar": ("Company", "independent"),
    },
    hosts=("1 Platoon", "2 Platoon", "Company"),
    entries=("gun", "mortar", "pioneers"),
)
HEAD = "section,host,worth\n"


def read(text: str) -> PlaceWorths:
    return read_place_worths(text.encode(), file="worths.csv", known=KNOWN)


def said(text: str) -> list[tuple[str, str, str]]:
    return [(found.code, found.place.cell, found.message) for found in read(text).findings]


def test_what_is_written_comes_back() -> None:
    rows = (("gun 1", "1 Platoon", Fraction(5, 2)), ("mortar", "independent", Fraction(-1)))
    page = worth_page(rows)
    assert page.rows == (
        ("section", "host", "worth"),
        ("gun 1", "1 Platoon", "2.5"),
        ("mortar", "independent", "-1"),
    )
    reading = read(csv_text(page))
    assert reading.findings == ()
    assert reading.worths == {(section, host): worth for section, host, worth in rows}


def test_columns_may_stand_in_any_order_and_an_empty_cell_says_nothing() -> None:
    reading = read("worth;host;section\n3;2 Platoon;gun 2\n;1 Platoon;gun 2\n;;\n")
    assert (reading.worths, reading.findings) == ({("gun 2", "2 Platoon"): Fraction(3)}, ())


def test_a_comma_for_a_point_is_read_and_said() -> None:
    reading = read("section;host;worth\ngun 1;1 Platoon;2,5\n")
    assert reading.worths == {("gun 1", "1 Platoon"): Fraction(5, 2)}
    assert [found.code for found in reading.findings] == ["comma-decimal"]


@pytest.mark.parametrize(
    ("row", "code", "cell", "message"),
    [
        (
            "gin 1,1 Platoon,2",
            "unknown-section",
            "A2",
            "no section of this plan is called 'gin 1'.",
        ),
        ("gun 1,3 Platoon,2", "unknown-host", "B2", "no host is called '3 Platoon'."),
        ("mortar,1 Platoon,2", "unknown-host", "B2", "mortar can't be attached to '1 Platoon'."),
        ("gun 1,1 Platoon,much", "not-a-number", "C2", "'much' isn't a number."),
        ("gun 1,1 Platoon,1e9", "not-a-number", "C2", "'1e9' isn't a number."),
    ],
)
def test_each_slip_has_its_cell(row: str, code: str, cell: str, message: str) -> None:
    reading = read(f"{HEAD}{row}\n")
    (found,) = reading.findings
    assert (found.code, found.level) == (code, Level.STOP)
    assert found.message == f"worths!{cell}: {message}"
    assert (found.place.file, found.place.line) == ("worths.csv", 2)
    assert reading.worths == {}


def test_the_nearest_name_is_offered() -> None:
    (found,) = read(f"{HEAD}gun 1,2 Platon,2\n").findings
    assert found.hint == "Did you mean '2 Platoon'?"


@pytest.mark.parametrize("name", ["gun 7", "pioneers", "pioneers(flame)", "pioneers(flame) 2"])
def test_a_section_that_is_not_taken_now_is_a_remark(name: str) -> None:
    reading = read(f"{HEAD}{name},1 Platoon,2\n")
    (found,) = reading.findings
    assert (found.code, found.level) == ("section-not-taken", Level.REMARK)
    assert reading.worths == {}


def test_a_pair_that_is_said_twice_shows_both() -> None:
    (found,) = read(f"{HEAD}gun 1,1 Platoon,2\ngun 2,1 Platoon,2\ngun 1,1 Platoon,3\n").findings
    assert found.code == "pair-twice"
    assert found.message == "gun 1 with 1 Platoon has two worths (worths!B2 and worths!B4)."
    assert [place.cell for place in found.related] == ["worths!B2"]


def test_rows_and_sheets_that_lack_something() -> None:
    assert [code for code, _, _ in said(f"{HEAD},1 Platoon,2\n")] == ["row-without-name"]
    assert [code for code, _, _ in said(f"{HEAD}gun 1,,2\n")] == ["row-without-name"]
    assert [code for code, _, _ in said("section,worth\ngun 1,2\n")] == ["column-missing"]
    assert [code for code, _, _ in said("")] == ["column-missing"]
    assert said("section,host,worth,why\n")[0][0] == "unknown-word"
    assert said(f"{HEAD}gun 1,1 Platoon,2,because\n") == []


def test_what_is_no_text_is_not_read() -> None:
    reading = read_place_worths(b"PK\x03\x04", file="worths.csv", known=KNOWN)
    assert [found.code for found in reading.findings] == ["not-text"]
