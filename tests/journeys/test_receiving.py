"""A parcel booked in against what was ordered."""

import shutil
from collections.abc import Mapping
from pathlib import Path
from uuid import uuid4

import pytest

from paradestate.core.delivery import Delivery
from paradestate.core.journal_entry import EntryKind
from paradestate.journeys.history import history
from paradestate.journeys.holdings import holdings
from paradestate.journeys.receiving import BookedIn, Parcel, receive
from tests.forces import EXAMPLES
from tests.journeys.logging_to import NOW, TODAY, logged

Packs = Mapping[str, int]


@pytest.fixture
def marenz(tmp_path: Path) -> Path:
    return Path(shutil.copytree(EXAMPLES / "marenz", tmp_path / "marenz"))


def parcel(came: Packs, *, own: str = "", note: str = "", **said: Packs) -> Parcel:
    delivery = Delivery(source="South", came=came, **said)
    return Parcel(id=own or str(uuid4()), written=NOW, on=TODAY, delivery=delivery, note=note)


def booked(folder: Path, said: Parcel) -> BookedIn:
    return receive(folder, today=TODAY, parcel=said)


def held(folder: Path) -> dict[str, int]:
    known = holdings(folder, today=TODAY)
    assert known.state is not None
    return {kind: sum(stages.values()) for kind, stages in known.state.held.figures.items()}


def test_what_really_came_is_booked_in_as_one_entry_that_says_what_is_claimed(
    marenz: Path,
) -> None:
    order = {"S1": 3, "S3": 1}
    done = booked(
        marenz,
        parcel(order, ordered=order, short={"rifleman": 2}, miscast={"officer": 1}, note="late"),
    )
    # 3 x 16 + 12 riflemen less 2, 3 x 4 mortar crews, 3 x 2 officers less 1.
    assert held(marenz) == {"rifleman": 58, "mortar crew": 12, "officer": 5}
    assert done.received is not None
    assert done.received.claimed == {"rifleman": 2, "officer": 1}
    (entry,) = history(marenz, today=TODAY, last=9).entries
    assert (entry.kind, entry.on) == (EntryKind.RECEIVED, TODAY)
    assert entry.note == (
        "parcel from South: 3 x S1 and 1 x S3; short 2 riflemen; miscast 1 officer; "
        "claimed 2 riflemen and 1 officer; late"
    )


def test_a_parcel_sent_twice_is_booked_in_once(marenz: Path) -> None:
    said = parcel({"S3": 1}, own=str(uuid4()))
    assert not booked(marenz, said).logged.was_there
    assert booked(marenz, said).logged.was_there
    assert held(marenz) == {"rifleman": 12}


def test_the_same_id_with_another_parcel_is_refused_and_both_are_shown(marenz: Path) -> None:
    own = str(uuid4())
    booked(marenz, parcel({"S3": 1}, own=own))
    done = booked(marenz, parcel({"S3": 2}, own=own))
    (found,) = done.findings
    assert found.code == "entry-id-taken"
    assert "received 12 riflemen in packet from South: parcel from South: 1 x S3" in found.message
    assert "received 24 riflemen from South: parcel from South: 2 x S3" in found.message
    assert held(marenz) == {"rifleman": 12}


def test_it_is_undone_by_striking_it_out(marenz: Path) -> None:
    done = booked(marenz, parcel({"S3": 1}))
    assert done.logged.entry is not None
    logged(marenz, EntryKind.STRUCK_OUT, struck_out=done.logged.entry.id, note="wrong box")
    assert held(marenz) == {}


def test_a_parcel_of_which_nothing_is_of_use_is_a_note(marenz: Path) -> None:
    done = booked(marenz, parcel({"S6": 1}, miscast={"light tank": 1}))
    assert done.logged.entry is not None
    assert done.logged.entry.kind is EntryKind.NOTED
    assert done.logged.entry.note.endswith("claimed 1 light tank")
    assert held(marenz) == {}


def test_what_is_odd_is_told_beside_what_is_written(marenz: Path) -> None:
    done = booked(marenz, parcel({"S2": 1}, ordered={"S3": 1}))
    assert [found.code for found in done.findings] == ["pack-not-ordered", "pack-awaited"]
    assert done.logged.entry is not None


@pytest.mark.parametrize(
    ("said", "code"),
    [
        (parcel({}), "parcel-empty"),
        (parcel({"S9": 1}), "unknown-choice"),
        (parcel({"S3": 1}, short={"rifleman": 13}), "more-missing-than-came"),
    ],
)
def test_a_parcel_that_can_not_be_so_is_not_written(
    marenz: Path, *, said: Parcel, code: str
) -> None:
    done = booked(marenz, said)
    assert [found.code for found in done.findings] == [code]
    assert (done.logged.entry, done.received) == (None, None)
    assert not (marenz / "journal.sqlite").exists()


def test_a_source_that_the_files_do_not_have_is_named(guard: Path) -> None:
    done = booked(guard, parcel({"S3": 1}))
    assert [found.message for found in done.findings] == ["No source is called 'South'."]
