"""Dice of the machine, step by step, cut short at any of them."""

import shutil
from pathlib import Path

import pytest

from paradestate.core.play.event import Committed, Revealed, Rolled, Spoken
from paradestate.core.play.machine_roll import digest_of_secret, faces_of
from paradestate.journeys.game import machine_roll
from paradestate.journeys.game.machine_roll import bind, reveal, speak
from paradestate.journeys.game.play import Wrote, roll, strike, written
from paradestate.journeys.game.played_game import PlayedGame, played_game
from paradestate.text.error import FileError
from tests.forces import EXAMPLES
from tests.journeys.evenings import TODAY, begun, codes, pen

SECRET = bytes(range(32))
(FACE,) = faces_of(SECRET, "heron", sides=[12])


@pytest.fixture
def state_home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    return tmp_path / "state" / "paradestate" / "rolls"


@pytest.fixture
def folder(tmp_path: Path, state_home: Path) -> Path:
    copy = tmp_path / "marenz"
    shutil.copytree(EXAMPLES / "marenz", copy)
    begun(copy)
    roll(pen(copy), "allowance", numbers=(6, 2))
    assert not state_home.exists()
    return copy


def bound(folder: Path, *, secret: bytes = SECRET) -> Wrote:
    return bind(pen(folder), "light tanks=2", secret=secret)


def game_of(done: Wrote) -> PlayedGame:
    assert done.game is not None
    return done.game


def kinds(done: Wrote) -> list[type]:
    return [type(each.played.event) for each in done.entries if each.played]


def test_a_roll_of_the_machine_from_its_secret_to_its_end(folder: Path, state_home: Path) -> None:
    done = bound(folder)
    (entry,) = done.entries
    committed = entry.played and entry.played.event
    assert isinstance(committed, Committed)
    assert (committed.digest, committed.number) == (digest_of_secret(SECRET), 2)
    assert game_of(done).now.words == "Let your opponent say a word, for the roll for light tanks."
    (kept,) = state_home.iterdir()
    assert (kept.read_bytes(), kept.stat().st_mode & 0o777) == (SECRET, 0o600)
    assert SECRET.hex() not in (folder / "journal.sqlite").read_bytes().decode("latin-1")
    rolled = speak(pen(folder), " heron ")
    assert kinds(rolled) == [Spoken, Rolled, Revealed]
    assert not list(state_home.iterdir())
    (binding,) = game_of(rolled).bindings
    assert (binding.word, binding.secret) == ("heron", SECRET.hex())
    assert game_of(rolled).differences == {entry.id: ()}
    account = game_of(rolled).account
    assert account is not None
    assert account.requests[0].allowed == (2 if FACE >= 5 else 0)


def test_a_private_roll_tells_its_secret_later(folder: Path, state_home: Path) -> None:
    bound(folder)
    rolled = speak(pen(folder), "heron", keeps_secret=True)
    assert kinds(rolled) == [Spoken, Rolled]
    assert list(state_home.iterdir())
    told = reveal(pen(folder))
    assert kinds(told) == [Revealed]
    assert not list(state_home.iterdir())
    assert codes(reveal(pen(folder))) == ["nothing-bound"]


def test_a_word_that_was_cut_short_is_gone_on_with(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The machine dies after the word was written, and before it rolled."""
    bound(folder)

    def dies(*_: object, **__: object) -> None:
        raise KeyboardInterrupt

    with monkeypatch.context() as patch:
        patch.setattr(machine_roll, "_rolled", dies)
        with pytest.raises(KeyboardInterrupt):
            speak(pen(folder), "heron")
    assert played_game(folder, today=TODAY).bindings[0].word is None
    _only_spoken(folder)
    waiting = played_game(folder, today=TODAY)
    assert waiting.now.words == "Make the roll for light tanks: the word is said."
    assert codes(speak(pen(folder), "crane")) == ["word-unfit"]
    assert kinds(speak(pen(folder))) == [Rolled, Revealed]


def _only_spoken(folder: Path) -> None:
    game = played_game(folder, today=TODAY)
    assert game.record is not None
    spoken = Spoken(commitment=game.bindings[0].line.id, word="heron")
    written(pen(folder), game.record, events=(spoken,))


def test_one_roll_is_bound_at_a_time(folder: Path) -> None:
    bound(folder)
    assert codes(bound(folder)) == ["bound-already"]
    assert codes(bind(pen(folder), "dragons", secret=SECRET)) == ["unknown-choice"]


def test_without_a_fit_word_nothing_is_rolled(folder: Path) -> None:
    assert codes(speak(pen(folder), "heron")) == ["nothing-bound"]
    bound(folder)
    assert codes(speak(pen(folder), "  ")) == ["word-unfit"]
    assert codes(speak(pen(folder), "a\nb")) == ["word-unfit"]


def test_a_secret_that_is_lost_or_another_is_never_rolled_with(
    folder: Path, state_home: Path
) -> None:
    done = bound(folder)
    (kept,) = state_home.iterdir()
    kept.write_bytes(b"x" * 32)
    assert codes(speak(pen(folder), "heron")) == ["secret-differs"]
    kept.unlink()
    assert codes(speak(pen(folder), "heron")) == ["secret-missing"]
    strike(pen(folder), done.entries[0].id[:8], because="the file is lost")
    assert codes(bound(folder)) == []


def test_a_secret_that_others_may_read_is_not_rolled_with(folder: Path, state_home: Path) -> None:
    bound(folder)
    (kept,) = state_home.iterdir()
    kept.chmod(0o644)
    with pytest.raises(FileError, match="somebody may know it"):
        speak(pen(folder), "heron")


def test_a_secret_that_is_lost_after_the_roll_is_not_made_up(
    folder: Path, state_home: Path
) -> None:
    bound(folder)
    speak(pen(folder), "heron", keeps_secret=True)
    (kept,) = state_home.iterdir()
    kept.unlink()
    assert codes(reveal(pen(folder))) == ["secret-missing"]


def test_a_secret_that_was_altered_after_the_roll_is_not_told_as_if_it_were_the_one(
    folder: Path, state_home: Path
) -> None:
    bound(folder)
    speak(pen(folder), "heron", keeps_secret=True)
    (kept,) = state_home.iterdir()
    kept.write_bytes(b"x" * 32)
    assert codes(reveal(pen(folder))) == ["secret-differs"]
    assert played_game(folder, today=TODAY).bindings[0].secret is None
    kept.write_bytes(SECRET)
    assert kinds(reveal(pen(folder))) == [Revealed]


def test_no_game_no_binding(tmp_path: Path) -> None:
    copy = tmp_path / "other"
    shutil.copytree(EXAMPLES / "marenz", copy)
    for done in (bound(copy), speak(pen(copy), "heron"), reveal(pen(copy))):
        assert codes(done) == ["no-game"]


def test_where_the_secret_can_not_be_kept_nothing_is_published(
    folder: Path, state_home: Path
) -> None:
    state_home.parent.mkdir(parents=True)
    state_home.write_text("in the way", encoding="utf-8")
    with pytest.raises(FileError, match="the machine isn't bound"):
        bound(folder)
    assert played_game(folder, today=TODAY).bindings == ()
