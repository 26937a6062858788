"""A line of a game that is sent again with its UUID is written once."""

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_request import LogRequest
from paradestate.core.play.event import Revealed, Rolled, Spoken, Subject
from paradestate.journeys.game import machine_roll
from paradestate.journeys.game.machine_roll import bind, reveal, speak
from paradestate.journeys.game.pen import Pen, sent_again
from paradestate.journeys.game.play import Wrote, end, mark, roll, strike, take
from paradestate.journeys.game.played_game import played_game
from paradestate.journeys.log import log
from tests.entries import uuid
from tests.forces import EXAMPLES
from tests.journeys.evenings import NOW, TODAY, begun_with, codes, pen

SECRET, OTHER = bytes(range(32)), bytes(32)


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    copy = tmp_path / "marenz"
    shutil.copytree(EXAMPLES / "marenz", copy)
    return copy


def lines(folder: Path) -> int:
    record = played_game(folder, today=TODAY, advises=False).record
    return 0 if record is None else len(record.lines)


def again(folder: Path, number: int) -> Pen:
    return sent_again(pen(folder), uuid(number))


def twice(folder: Path, number: int, *, act: Callable[[Pen], Wrote]) -> Wrote:
    """What was written at first; the second time it is there, and nothing is added."""
    first = act(again(folder, number))
    assert (codes(first), first.were_there) == ([], False)
    assert first.entries[0].id == uuid(number)
    before = lines(folder)
    second = act(again(folder, number))
    assert (codes(second), second.were_there) == ([], True)
    assert [each.id for each in second.entries][:1] == [uuid(number)]
    assert lines(folder) == before
    return first


def test_an_evening_every_line_of_which_is_sent_twice(folder: Path) -> None:
    twice(folder, 1, act=begun_with)
    twice(folder, 2, act=lambda each: roll(each, "allowance", numbers=(6, 2)))
    twice(folder, 3, act=lambda each: roll(each, "light tanks=2", numbers=(9,)))
    twice(folder, 4, act=lambda each: take(each, "light tanks=2"))
    bought = twice(folder, 5, act=lambda each: take(each, "machine-gun platoon=1, field battery=2"))
    assert len(bought.entries) == 2
    twice(folder, 6, act=lambda each: mark(each, Subject("turn", "turn"), value="3"))
    twice(folder, 7, act=lambda each: strike(each, uuid(6), because="not yet"))
    twice(folder, 8, act=end)
    # one in the midst is still the same, whatever came after it
    late = take(again(folder, 4), "light tanks=2")
    assert (codes(late), late.were_there) == ([], True)


def test_a_line_that_says_something_else_under_the_same_uuid_is_stopped(folder: Path) -> None:
    begun_with(again(folder, 1))
    roll(again(folder, 2), "allowance", numbers=(6, 2))
    other = roll(again(folder, 2), "allowance", numbers=(6, 6))
    assert codes(other) == ["entry-id-taken"]
    assert codes(end(again(folder, 2))) == ["entry-id-taken"]
    assert lines(folder) == 2


def test_of_several_lines_that_were_cut_short_the_rest_is_written(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    begun_with(again(folder, 1))
    roll(again(folder, 2), "allowance", numbers=(6, 2))

    def act() -> Wrote:
        return take(again(folder, 3), "machine-gun platoon=1, field battery=2")

    with monkeypatch.context() as patch:
        patch.setattr("paradestate.journeys.game.play._after", dies)
        with pytest.raises(KeyboardInterrupt):
            act()
    assert len(act().entries) == 2
    assert lines(folder) == 4


def dies(*_: object, **__: object) -> None:
    raise KeyboardInterrupt


def test_a_binding_that_is_sent_again_keeps_its_secret(folder: Path, tmp_path: Path) -> None:
    begun_with(again(folder, 1))
    twice(folder, 2, act=lambda each: bind(each, "light tanks=2", secret=SECRET))
    bind(again(folder, 2), "light tanks=2", secret=OTHER)
    kept = tmp_path / "state" / "paradestate" / "rolls" / uuid(2)
    assert kept.read_bytes() == SECRET
    assert codes(bind(again(folder, 2), "anti-tank guns=2", secret=OTHER)) == ["entry-id-taken"]
    said = twice(folder, 3, act=lambda each: speak(each, "heron"))
    assert [type(each.played.event) for each in said.entries if each.played] == [
        Spoken,
        Rolled,
        Revealed,
    ]
    assert codes(speak(again(folder, 3), "crane")) != []
    assert played_game(folder, today=TODAY).differences[uuid(2)] == ()


def test_a_binding_whose_secret_was_kept_and_not_published_goes_on_with_it(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    begun_with(again(folder, 1))
    with monkeypatch.context() as patch:
        patch.setattr(machine_roll, "written", dies)
        with pytest.raises(KeyboardInterrupt):
            bind(again(folder, 2), "light tanks=2", secret=SECRET)
    bind(again(folder, 2), "light tanks=2", secret=OTHER)
    speak(again(folder, 3), "heron")
    assert played_game(folder, today=TODAY).bindings[0].secret == SECRET.hex()


def test_a_word_that_was_cut_short_goes_on_when_it_is_sent_again(folder: Path) -> None:
    begun_with(again(folder, 1))
    bind(again(folder, 2), "light tanks=2", secret=SECRET)
    speak(again(folder, 3), "heron", keeps_secret=True)
    assert speak(again(folder, 3), "heron", keeps_secret=True).were_there
    told = speak(again(folder, 3), "heron")  # as if it had ended before the secret was told
    assert [type(each.played.event) for each in told.entries if each.played] == [Revealed]
    assert speak(again(folder, 3), "heron").were_there


def test_a_secret_that_is_told_twice_is_told_once(folder: Path) -> None:
    begun_with(again(folder, 1))
    bind(again(folder, 2), "light tanks=2", secret=SECRET)
    speak(again(folder, 3), "heron", keeps_secret=True)
    twice(folder, 4, act=reveal)


def test_the_same_uuid_in_another_force_is_another_line(tmp_path: Path) -> None:
    """In a collection of several forces a line is never taken for that of another force."""
    for name in ("east", "west"):
        shutil.copytree(EXAMPLES / "marenz", tmp_path / "club" / name)
    begins = LogRequest(id=uuid(90), kind=EntryKind.NOTED, written=NOW, on=TODAY, note="begun")
    log(tmp_path / "club", today=TODAY, request=begins)  # the journal that they share
    east, west = tmp_path / "club" / "east", tmp_path / "club" / "west"
    assert codes(begun_with(again(east, 1))) == []
    assert codes(begun_with(again(west, 1))) == ["entry-id-taken"]
    assert (lines(east), lines(west)) == (1, 0)
