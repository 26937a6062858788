"""A name taken off this machine."""

import datetime
from pathlib import Path

import pytest

from paradestate.core.journal_entry import EntryKind
from paradestate.journeys.club import erasing
from paradestate.journeys.club.book_change import cancel_booking, hand_over_box, put_club_back
from paradestate.journeys.club.erasing import Erased, erase
from paradestate.text.error import FileError
from paradestate.text.former import former_versions
from paradestate.text.people import Person, keep_person, people
from tests.core.club.bookings import DAY
from tests.journeys.clubs import AT, TODAY, club_of, pen, with_club
from tests.journeys.logging_to import logged

ANN = Person(code="borrower 22222", name="Ann", contact="01632 960123")
BY_HAND = """\
club:
  boxes:
    box 3: {counted: yes, keeper: ann, holds: {rifleman: 2}}
    box 9: {keeper: Annabel, holds: {rifleman: 2}, handed over: {2026-12-03: Ann}}
  bookings:
    river: {hours: 2026-12-03 20:00-22:00, needs: {rifleman: 2}, for: Ann}
"""


@pytest.fixture(autouse=True)
def state(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    return tmp_path / "state"


def erased(folder: Path, name: str) -> Erased:
    at = AT + datetime.timedelta(minutes=1)
    return erase(folder, name, today=TODAY, at=at, draw=lambda below: 0 * below)


def everything_in(folder: Path) -> str:
    return "\n".join(
        file.read_text(encoding="utf-8", errors="replace")
        for file in sorted(folder.rglob("*"))
        if file.is_file()
    )


def test_a_name_is_gone_from_the_list_the_club_and_all_it_was_before(
    guard: Path, state: Path
) -> None:
    keep_person(ANN)
    with_club(guard, BY_HAND)
    cancel_booking(pen(guard), "river")
    hand_over_box(pen(guard, later=1), "box 3", to=ANN.code, day=DAY)
    answer = erased(guard, "Ann")
    assert (answer.codes, answer.remains, answer.findings) == ((ANN.code,), 0, ())
    assert answer.files == (guard / "club.yaml",)
    assert len(answer.former) == 3
    assert people() == ()
    everywhere = everything_in(guard) + everything_in(state)
    assert "Ann\n" not in everywhere
    assert everywhere.replace("Annabel", "").casefold().count("ann") == 0
    assert "01632" not in everywhere
    assert "keeper: Annabel" in club_of(guard)
    # What is put back now says the code.
    former = former_versions(guard / "club.yaml")[0].path.name
    put_club_back(pen(guard, later=120), former)
    assert f"keeper: {ANN.code}" in club_of(guard)


def test_a_name_that_had_no_code_is_given_one_that_names_nobody(guard: Path) -> None:
    with_club(guard, BY_HAND)
    answer = erased(guard, "Ann")
    assert (answer.codes, answer.is_anything) == ((), True)
    assert "for: borrower 22222" in club_of(guard)
    assert people() == ()


def test_what_stands_elsewhere_is_told_with_its_place_and_not_altered(guard: Path) -> None:
    logged(guard, EntryKind.COUNTED, figures={"rifleman": 9}, to_stage="painted", note="with Ann")
    note = "# Ann has the key\n"
    with_club(guard, note + BY_HAND)
    answer = erased(guard, "Ann")
    by_code = {found.code: found for found in answer.findings}
    assert set(by_code) == {"name-remains", "name-in-journal"}
    assert answer.remains == 3  # in the file, in its former version, and in the journal
    first = answer.findings[1]
    assert (Path(first.place.file).name, first.place.line, first.place.column) == (
        "club.yaml",
        1,
        3,
    )
    assert club_of(guard).startswith(note)
    assert all("Ann" not in found.message for found in answer.findings)


def test_a_file_that_can_not_be_changed_is_told_with_what_is_left(guard: Path) -> None:
    with_club(guard, BY_HAND + "    late: {hours: soon}\n")
    answer = erased(guard, "Ann")
    assert answer.files == ()
    assert [found.place.line for found in answer.findings] == [3, 4, 6]
    with_club(guard, "club: {boxes: {a: {keeper: &x Ann, holds: {rifleman: 1}, keeper: *x}}}\n")
    assert erased(guard, "Ann").remains == 1


def test_many_places_are_counted_and_the_first_are_named(guard: Path) -> None:
    (guard / "notes.txt").write_text("Ann\n" * 60, encoding="utf-8")
    answer = erased(guard, "Ann")
    assert (answer.remains, len(answer.findings)) == (60, 51)
    assert answer.findings[-1].message == "The name stands at 10 more places, from here on."


def test_nobody_is_erased_by_a_name_of_several_or_a_code_that_names_nobody(guard: Path) -> None:
    keep_person(ANN)
    keep_person(Person(code="borrower 33333", name="Ann"))
    two = erased(guard, "Ann")
    assert (two.is_stopped, [found.code for found in two.findings]) == (True, ["name-of-several"])
    assert len(people()) == 2
    assert erased(guard, ANN.code).codes == (ANN.code,)
    gone = erased(guard, ANN.code)
    assert not gone.is_anything


@pytest.mark.parametrize("typed", [" ann  lee ", "ANN\tLEE"])
def test_a_name_with_blanks_around_it_is_the_same_name(guard: Path, typed: str) -> None:
    keep_person(Person(code=ANN.code, name="Ann Lee"))
    assert erased(guard, typed).codes == (ANN.code,)
    assert people() == ()


def test_whoever_can_not_be_erased_from_a_file_is_still_found_by_the_code(
    guard: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    keep_person(ANN)
    with_club(guard, BY_HAND)

    def refused(*_: object, **__: object) -> None:
        raise FileError("The disk refuses.")

    with monkeypatch.context() as patch:
        patch.setattr(erasing, "said_anew", refused)
        with pytest.raises(FileError):
            erased(guard, ANN.code)
    assert erased(guard, ANN.code).files == (guard / "club.yaml",)
