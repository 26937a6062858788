"""Supporting troops typed row by row, said back and written together."""

import datetime
from pathlib import Path

import pytest

from paradestate.core.finding import Level
from paradestate.journeys.check import checked
from paradestate.journeys.entry_rows import RowsWritten, TypedRow, read_rows, write_rows
from paradestate.journeys.files import Saved
from paradestate.journeys.new import new_from_example
from paradestate.text.former import former_versions

TODAY = datetime.date(2026, 3, 5)
NOW = datetime.datetime(2026, 3, 5, 21, 14, tzinfo=datetime.UTC)
FILE = "supporting-troops.yaml"
LANCERS = {
    "entry": "lancers",
    "cost": "1: 3, 2: 5",
    "held at": "division",
    "each": "light tank: 1",
    "most": "2",
    "for every": "2",
    "of": "company",
    "roll": "1d12",
    "allows 0": "1-4",
    "allows all": "5-12",
    "when refused": "points kept",
    "needs": "light tanks, hussars",
    "only in": "attack",
}
HUSSARS = {"entry": "hussars", "cost": "4", "most": "any"}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    new_from_example(tmp_path / "marenz", name="marenz")
    return tmp_path / "marenz"


def write(folder: Path, *rows: TypedRow) -> RowsWritten:
    return write_rows(folder, rows, today=TODAY, at=NOW)


def test_each_row_is_said_back(folder: Path) -> None:
    read = read_rows(folder, (LANCERS, {}, HUSSARS), today=TODAY)
    assert not read.is_stopped
    assert read.said[1].sentence == (
        "Lancers, held at division: one costs 3 points, two 5. Each puts down 1 light tank. "
        "Two for every two companies. Roll one 12-sided die: on 1 to 4 none; on 5 to 12 all. "
        "Refused points are kept. Needs light tanks and hussars. Only in attack."
    )
    assert read.said[3].sentence == "Hussars: one costs 4 points. Any number in the force."
    assert set(read.said) == {1, 3}


def test_rows_without_a_text_say_nothing(folder: Path) -> None:
    read = read_rows(folder, ({}, {"entry": "  "}), today=TODAY)
    assert (read.said, read.entries, read.others) == ({}, (), ())
    made = write(folder, {})
    assert (made.saving, made.refusal) == (None, "")


def test_a_stop_stands_at_its_row_and_the_others_are_read(folder: Path) -> None:
    wrong = {"entry": "bridging train", "cost": "four", "needs": "huzars"}
    read = read_rows(folder, (HUSSARS, wrong, {"cost": "3"}, {"entry": "light tanks"}), today=TODAY)
    assert read.said[1].findings == ()
    assert read.said[1].sentence
    assert [each.message for each in read.said[2].findings] == [
        "bridging train, cost: 'four' isn't a whole number.",
        "bridging train, need 1: 'huzars' isn't defined under supporting troops.",
    ]
    assert read.said[2].findings[1].hint == "Did you mean 'hussars'?"
    assert [each.code for each in read.said[3].findings] == ["row-without-name"]
    assert [each.code for each in read.said[4].findings] == ["name-twice"]
    assert [read.said[number].sentence for number in (2, 3, 4)] == ["", "", ""]


def test_nothing_is_written_while_a_row_has_a_stop(folder: Path) -> None:
    before = (folder / FILE).read_bytes()
    made = write(folder, HUSSARS, {"entry": "lancers"})
    assert made.saving is None
    assert made.read.is_stopped
    assert (folder / FILE).read_bytes() == before


def test_all_rows_are_written_and_the_version_before_is_kept(folder: Path) -> None:
    before = (folder / FILE).read_text()
    made = write(folder, LANCERS, HUSSARS)
    assert isinstance(made.saving, Saved)
    assert made.file == FILE
    after = (folder / FILE).read_text()
    assert "    limit: {most: 2, for every: 2, of: company}\n" in after
    lines = after.split("\n")
    assert [line for line in before.split("\n") if line not in lines] == []
    (former,) = former_versions(folder / FILE)
    assert former.path.read_text() == before
    troops = checked(folder, today=TODAY).force.supporting_troops
    assert {"lancers", "hussars"} <= set(troops)
    assert troops["lancers"] == made.read.checked.force.supporting_troops["lancers"]


def test_a_doubt_prevents_nothing_and_stands_at_its_row(folder: Path) -> None:
    rolled = {
        "entry": "lancers",
        "cost": "4",
        "roll": "1d6",
        "allows 0": "1-3",
        "allows all": "4-6",
    }
    made = write(folder, rolled)
    assert isinstance(made.saving, Saved)
    (doubt,) = made.read.said[1].findings
    assert doubt.level is Level.WARN


def test_a_chosen_name_is_taken_as_it_is_whatever_stands_in_it(folder: Path) -> None:
    read = read_rows(
        folder, ({**HUSSARS, "most": "1", "for every": "1", "of": "a: 'b'"},), today=TODAY
    )
    (stop,) = read.said[1].findings
    assert "a: 'b'" in stop.message


ODD = ("most: [", "{", "'", "&a *a", "!!x", "a\x00b", "a\nb: c", "}, x: {", "=1", "<<")


@pytest.mark.parametrize("text", ODD)
def test_signs_of_the_files_in_a_field_are_text_or_a_stop_of_that_row(
    folder: Path, text: str
) -> None:
    words = ("cost", "each", "most", "needs", "roll", "allows 0")
    rows = [{"entry": f"row {word}", "cost": "4", word: text} for word in words]
    read = read_rows(folder, rows, today=TODAY)
    for number, word in enumerate(words, start=1):
        assert read.said[number].findings, word
    assert read.others == ()
    named = read_rows(folder, [{"entry": text, "cost": "4"}], today=TODAY)
    assert [each.name for each in named.entries] in ([], [text])


def test_any_text_is_kept_as_it_was_typed(folder: Path) -> None:
    rows = [
        {"entry": f"lancers {place}", "cost": "4", "by hand": text}
        for place, text in enumerate(ODD)
    ]
    made = write(folder, *rows)
    assert isinstance(made.saving, Saved), made.refusal
    troops = checked(folder, today=TODAY).force.supporting_troops
    assert [troops[f"lancers {place}"].by_hand for place in range(len(ODD))] == list(ODD)


def test_stops_of_the_files_are_said_besides(folder: Path) -> None:
    with (folder / "more.yaml").open("w") as file:
        file.write("stands: {lancer: {base: wide}}\n")
    read = read_rows(folder, (HUSSARS,), today=TODAY)
    assert read.is_stopped
    assert read.said[1].findings == ()
    assert [Path(each.place.file).name for each in read.others] == ["more.yaml"]
    assert write(folder, HUSSARS).saving is None


def test_what_no_program_can_write_is_refused_and_nothing_is_lost(folder: Path) -> None:
    """A key that is too long for one line of YAML."""
    before = (folder / FILE).read_bytes()
    made = write(folder, {"entry": "x" * 2000, "cost": "4"})
    assert (made.read.is_stopped, made.saving) == (False, None)
    assert "change it in an editor" in made.refusal
    assert (folder / FILE).read_bytes() == before
