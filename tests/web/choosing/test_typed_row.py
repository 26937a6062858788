"""The rows of the form in which a list is typed in."""

import datetime
from pathlib import Path

import pytest

from paradestate.journeys.entry_rows import read_rows
from paradestate.journeys.new import new_from_example
from paradestate.web.choosing.question import MOST_TYPED
from paradestate.web.choosing.typed_row import (
    MORE_ROWS,
    MOST_ROWS,
    USUAL_ROWS,
    row_views,
    rows_typed,
    with_more,
)
from paradestate.web.form import Form

TODAY = datetime.date(2026, 3, 5)


def typed(**texts: str) -> Form:
    return Form(texts={name.replace("_", ":"): text for name, text in texts.items()})


def test_as_many_rows_stand_ready_as_are_usual() -> None:
    rows = rows_typed(Form())
    assert len(rows) == USUAL_ROWS
    assert not any(any(row.values()) for row in rows)


def test_rows_are_those_that_were_sent() -> None:
    rows = rows_typed(typed(entry_9=" lancers ", cost_9="4"))
    assert len(rows) == 9
    assert (rows[8]["entry"], rows[8]["cost"]) == ("lancers", "4")


@pytest.mark.parametrize(
    "name", ["entry:0", "entry:61", "entry:\xb2", "entry:01", "odd:9", "entry"]
)
def test_what_is_no_field_of_a_row_is_not_read(name: str) -> None:
    rows = rows_typed(Form(texts={name: "lancers"}))
    assert len(rows) == USUAL_ROWS
    assert not any(any(row.values()) for row in rows)


def test_a_text_is_no_longer_than_can_be_typed() -> None:
    (first, *_) = rows_typed(typed(entry_1="x" * 9999))
    assert first["entry"] == "x" * MOST_TYPED


def test_more_rows_are_added_as_long_as_there_may_be_more() -> None:
    assert len(with_more([{}] * 6)) == 6 + MORE_ROWS
    assert len(with_more([{}] * (MOST_ROWS - 1))) == MOST_ROWS
    assert len(with_more([{}] * MOST_ROWS)) == MOST_ROWS


def test_findings_are_in_the_words_of_the_form(tmp_path: Path) -> None:
    folder = tmp_path / "marenz"
    new_from_example(folder, name="marenz")
    rows = (
        {"entry": "light tanks", "cost": "4", "place": "on the moon"},
        {"entry": "lancers"},
        {"cost": "4"},
        {"entry": "lancers", "cost": "4"},
    )
    first, second, third, fourth = row_views(
        rows, read_rows(folder, rows, today=TODAY), folder=folder
    )
    (twice,) = first.said.findings
    assert "(supporting-troops.yaml:" in twice.message
    assert twice.message.endswith("and row 1).")
    assert "on the moon" in next(box for box in first.more if box.field.word == "place").names
    assert (first.is_open, second.is_open) == (True, False)
    assert [each.hint for each in second.said.findings] == ["Fill in “Points”."]
    assert third.said.findings[0].message == "This row has nothing under “Name in your book”."
    assert "(row 2 and row 4)" in fourth.said.findings[0].message
