"""One entry changed through a form: only its own words change."""

import datetime
from collections.abc import Mapping
from pathlib import Path
from shutil import copytree

import pytest

from paradestate.journeys.check import checked
from paradestate.journeys.entry_change import (
    EntryChange,
    EntryName,
    FieldValue,
    entries_of,
    entry_change,
    entry_of,
)
from paradestate.journeys.entry_sort import SORTS
from paradestate.text.error import EditError
from tests.forces import EXAMPLES

TODAY = datetime.date(2026, 3, 5)


@pytest.fixture
def marenz(tmp_path: Path) -> Path:
    return copytree(EXAMPLES / "marenz", tmp_path / "marenz")


def change(folder: Path, which: str, **filled: FieldValue) -> EntryChange:
    """What comes of filling in the words given, of `sort: name` or `packs of North: name`.

    `may_stand_for` is `may stand for`, and `whole` the entry as a whole.
    """
    sort, _, name = which.partition(": ")
    sort, _, of = sort.partition(" of ")
    entry = EntryName(sort=SORTS[sort], name=name, of=of)
    before = entry_of(folder, entry, today=TODAY)
    words = {word.replace("_", " ") if word != "whole" else "": v for word, v in filled.items()}
    return entry_change(folder, before, filled={**before.values, **words})


def lines(made: EntryChange) -> tuple[list[str], list[str]]:
    """What goes, and what comes."""
    differing = [pair for pair in made.lines if not pair.is_same]
    return (
        [pair.text.strip() for pair in differing if pair.number],
        [pair.other_text.strip() for pair in differing if pair.other_number],
    )


@pytest.mark.parametrize(
    ("sort", "name", "filled", "gone", "come"),
    [
        (
            "figures",
            "signaller",
            {"height": "11 mm"},
            ["signaller: {height: 10 mm, footprint: 7 mm}"],
            ["signaller: {height: 11 mm, footprint: 7 mm}"],
        ),
        (
            "figures",
            "gun crew",
            {"may_stand_for": {"mortar crew": "poor", "": "good"}},
            ["gun crew: {height: 10 mm, footprint: 7 mm}"],
            ["gun crew: {height: 10 mm, footprint: 7 mm, may stand for: {mortar crew: poor}}"],
        ),
        (
            "figures",
            "officer",
            {"may_stand_for": {}},
            ["officer: {height: 10 mm, footprint: 6 mm, may stand for: {rifleman: good}}"],
            ["officer: {height: 10 mm, footprint: 6 mm}"],
        ),
        ("stands", "rifle section", {"men": "9-11"}, ["men: 10"], ["men: 9-11"]),
        (
            "stands",
            "rifle section",
            {"figures": {"rifleman": "3", "officer": " 1 "}},
            ["figures: {rifleman: 4}"],
            ["figures: {rifleman: 3, officer: 1}"],
        ),
        (
            "names",
            "company",
            {"whole": ("A", " ", "B, old", "C", "D")},
            ['names: {company: "No # Company"}'],
            ["names: {company: [A, 'B, old', C, D]}"],
        ),
        (
            "names",
            "company",
            {"whole": ("# Company",)},
            ['names: {company: "No # Company"}'],
            ['names: {company: "# Company"}'],
        ),
    ],
)
def test_only_what_was_filled_in_anew_changes(  # noqa: PLR0917 - pytest calls it by name
    marenz: Path,
    sort: str,
    name: str,
    filled: Mapping[str, FieldValue],
    gone: list[str],
    come: list[str],
) -> None:
    assert lines(change(marenz, f"{sort}: {name}", **filled)) == (gone, come)


@pytest.mark.parametrize("sort", SORTS)
def test_a_form_sent_as_it_was_shown_changes_nothing(marenz: Path, sort: str) -> None:
    """Whatever way the owner writes lengths and parts, it is left as it is."""
    for entry in entries_of(checked(marenz, today=TODAY), SORTS[sort]):
        before = entry_of(marenz, entry, today=TODAY)
        assert before.is_there
        made = entry_change(marenz, before, filled=before.values)
        assert made.lines == ()
        assert made.data == (marenz / made.file).read_bytes()


def test_entries_are_listed_with_what_they_belong_to(marenz: Path) -> None:
    read = checked(marenz, today=TODAY)
    packs = [(entry.of, entry.name) for entry in entries_of(read, SORTS["packs"])]
    assert ("North", "N1") in packs
    assert [entry.name for entry in entries_of(read, SORTS["names"])] == ["company"]
    assert EntryName(sort=SORTS["packs"], name="N1", of="North").path == (
        "sources",
        "North",
        "packs",
        "N1",
    )


def test_a_pack_goes_into_the_file_of_its_source(marenz: Path) -> None:
    made = change(marenz, "packs of North: N9", price="7.50", holds={"rifleman": "10"})
    assert made.file == "prices.yaml"
    assert lines(made) == ([], ["N9: {price: 7.50, holds: {rifleman: 10}}"])


def test_a_new_source_has_a_place_for_its_packs(guard: Path) -> None:
    made = change(guard, "sources: North", currency="GBP", carriage={"0": "3.50"})
    assert made.file == "force.yaml"
    (guard / "force.yaml").write_bytes(made.data)
    pack = change(guard, "packs of North: box", price="5", holds={"rifleman": "8"})
    (guard / "force.yaml").write_bytes(pack.data)
    force = checked(guard, today=TODAY).force
    assert force.sources["North"].packs["box"].price == 500


def test_a_name_that_nothing_was_filled_in_for_changes_nothing(guard: Path) -> None:
    assert change(guard, "names: guard", whole=()).lines == ()
    assert change(guard, "stock: boat", whole={}).lines == ()


def test_what_is_owned_is_changed_stage_by_stage(guard: Path) -> None:
    made = change(guard, "stock: rifleman", whole={"in packet": "8", "painted": "4"})
    assert lines(made) == (
        ["rifleman: {in packet: 8, painted: 2}"],
        ["rifleman: {in packet: 8, painted: 4}"],
    )
    assert lines(change(guard, "stock: boat", whole={"painted": "1"}))[1] == ["boat: {painted: 1}"]


def test_the_long_form_of_counts_is_shown_as_rows(guard: Path) -> None:
    file = guard / "force.yaml"
    text = file.read_text(encoding="utf-8")
    long = "figures: [{of: rifleman, number: 4}, nonsense]"
    file.write_text(text.replace("figures: {rifleman: 4}", long), encoding="utf-8")
    entry = EntryName(sort=SORTS["stands"], name="rifle section")
    assert entry_of(guard, entry, today=TODAY).values["figures"] == {"rifleman": "4"}


def test_comments_that_go_are_named(guard: Path) -> None:
    file = guard / "force.yaml"
    text = file.read_text(encoding="utf-8").replace(
        "stock:\n  rifleman: {in packet: 8, painted: 2}",
        "stock:\n  rifleman: {in packet: 8,  # a note\n    painted: 2}",
    )
    file.write_text(text, encoding="utf-8")
    assert change(guard, "stock: rifleman", whole={}).comments_gone == ("# a note",)


def test_what_stands_in_a_spreadsheet_is_changed_there(guard: Path) -> None:
    (guard / "stock.csv").write_text("figure,painted\nboat,1\n", encoding="utf-8")
    assert not checked(guard, today=TODAY).is_stopped
    with pytest.raises(EditError, match=r"stands in the spreadsheet stock\.csv"):
        change(guard, "stock: boat", whole={"painted": "2"})


def test_a_file_with_a_stop_in_its_form_is_not_changed(guard: Path) -> None:
    file = guard / "force.yaml"
    file.write_text(file.read_text(encoding="utf-8") + "title: twice\n", encoding="utf-8")
    with pytest.raises(EditError, match="stop in its form"):
        change(guard, "stands: boat", men="3")


def test_where_there_is_no_file_yet_that_is_said(tmp_path: Path) -> None:
    with pytest.raises(EditError, match="No file"):
        change(tmp_path, "stands: boat", base="none")


def test_where_nothing_is_raised_the_first_file_is_taken(tmp_path: Path) -> None:
    (tmp_path / "b.yaml").write_text("title: T\n", encoding="utf-8")
    (tmp_path / "a.yaml").write_text("format: 1\n", encoding="utf-8")
    assert change(tmp_path, "stands: boat", base="none").file == "a.yaml"
