"""Notes of a game, and who held what at its end."""

import shutil
from pathlib import Path

import pytest

from paradestate.core.play.event import Ended, Noted
from paradestate.journeys.game.game_note import note
from paradestate.journeys.game.play import Wrote, end, strike
from tests.forces import EXAMPLES
from tests.journeys.evenings import begun, codes, pen

ALIKE = "the two brown companies looked alike in the hall"


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    copy = tmp_path_factory.mktemp("notes") / "marenz"
    shutil.copytree(EXAMPLES / "marenz", copy)
    assert codes(note(pen(copy), ALIKE)) == ["no-game"]
    begun(copy)
    return copy


def notes(done: Wrote) -> tuple[Noted, ...]:
    assert done.game is not None
    assert done.game.record is not None
    return done.game.record.notes


def test_what_cant_be_noted_is_stopped(folder: Path) -> None:
    assert codes(note(pen(folder), " ")) == ["log-incomplete"]
    assert codes(note(pen(folder), "a\ud800")) == ["note-not-text"]
    (found,) = note(pen(folder), ALIKE, about="No 1 Compny").findings
    assert (found.code, "'No 1 Company'" in found.hint) == ("unknown-choice", True)


def test_notes_come_during_the_game_and_after_it_and_are_struck_out(folder: Path) -> None:
    first = note(pen(folder), f" {ALIKE} ", about="No 1 Company")
    assert notes(first) == (Noted(text=ALIKE, about="No 1 Company"),)
    assert codes(end(pen(folder), time="late")) == ["not-a-time"]
    assert codes(end(pen(folder), held=("bridge",))) != []
    (ended,) = end(pen(folder), held=("bridge=Marenz",), time="22:15").entries
    assert ended.played is not None
    assert ended.played.event == Ended(held={"bridge": "Marenz"}, time="22:15")
    after = note(pen(folder), "too dark")
    assert len(notes(after)) == 2
    struck = strike(pen(folder), first.entries[0].id, because="they didn't")
    assert notes(struck) == (Noted(text="too dark"),)
