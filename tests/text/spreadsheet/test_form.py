"""The empty form for supporting troops."""

import io

import openpyxl

from paradestate.core.finding import Level
from paradestate.text.spreadsheet.form import COLUMNS, FORM, WORKED, form_pages
from paradestate.text.spreadsheet.layout import ALLOWS, LAYOUTS, OF_AVAILABILITY
from paradestate.text.spreadsheet.writing import xlsx_bytes
from tests.forces import marenz
from tests.text.spreadsheet.books import read, xlsx


def form_with(*rows: tuple[str, ...]) -> bytes:
    form, guide = form_pages(marenz())
    return xlsx({form.name: [*form.rows, *rows], guide.name: guide.rows})


def test_the_empty_form_reads_as_no_entry_at_all() -> None:
    reading = read({"list.xlsx": form_with()})
    assert reading.findings == ()
    assert reading.force.supporting_troops == {}


def test_every_column_of_the_form_is_known() -> None:
    known = {*LAYOUTS[FORM].keys, *LAYOUTS[FORM].words, *OF_AVAILABILITY}
    headings = {heading for heading, _, _ in COLUMNS}
    assert {each for each in headings - known if not each.startswith(ALLOWS)} == set()


def test_the_rows_that_show_how_are_read_as_they_stand() -> None:
    _, guide = form_pages(marenz())
    at = guide.rows.index(("rows as they might be filled in",))
    reading = read({"list.xlsx": xlsx({FORM: guide.rows[at + 1 :]})})
    assert [found for found in reading.findings if found.level is Level.STOP] == []
    troops = reading.force.supporting_troops
    assert list(troops) == [row["entry"] for row in WORKED]
    assert troops["spear blocks"].cost[24] == 168
    assert troops["light tanks"].availability is not None


def test_the_example_of_each_column_is_read_as_it_stands() -> None:
    given = {heading: example for heading, _, example in COLUMNS if example}
    others = ({"entry": "light tanks", "cost": "9"}, {"entry": "bicycle troop", "cost": "4"})
    headings = [heading for heading, _, _ in COLUMNS]
    rows = [[row.get(heading, "") for heading in headings] for row in (given, *others)]
    head = (
        "format: 1\ntitle: T\nraise: {formation: company}\n"
        "stands: {machine-gun team: {base: none}}\n"
        "formations: {company: {parts: {machine-gun team: 1}}}\n"
    )
    reading = read({"list.xlsx": xlsx({FORM: [headings, *rows]})}, head=head)
    assert [found for found in reading.findings if found.level is Level.STOP] == []
    entry = reading.force.supporting_troops["machine-gun platoon"]
    assert entry.limit.for_every == 2
    assert entry.choice == ("flame", "charges")


def test_the_guide_names_what_the_force_knows_and_every_other_word() -> None:
    _, guide = form_pages(marenz())
    said = {row[0]: row[1] for row in guide.rows if len(row) > 1}
    assert "machine-gun team" in said["stands"]
    assert said["scales of grades"] == "training, steadfastness"
    assert {*LAYOUTS[FORM].words} <= {*said}


def test_what_is_typed_into_the_form_stays_text() -> None:
    """A spreadsheet would take `1-3` for a date."""
    book = openpyxl.load_workbook(io.BytesIO(xlsx_bytes(form_pages(marenz()))))
    assert book[FORM].column_dimensions["G"].number_format == "@"
    assert book["how to fill it in"].column_dimensions["A"].number_format == "General"
    assert book["how to fill it in"].column_dimensions["B"].width == 60
    assert book[FORM].column_dimensions["A"].width == 12
