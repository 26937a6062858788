"""Writing a game down, from its terms to its end."""

import shutil
import sqlite3
from collections.abc import Sequence
from contextlib import closing
from dataclasses import replace
from pathlib import Path

import pytest

from paradestate.core.game import Purchase
from paradestate.core.play.event import Asked, Opened, Rolled, Subject, Told
from paradestate.core.play.game_record import rolls
from paradestate.journeys.game.games import game_going_on
from paradestate.journeys.game.play import Wrote, ask, end, mark, roll, strike, take
from paradestate.journeys.game.played_game import PlayedGame, played_game
from paradestate.journeys.history import LOOKED_AT, history
from paradestate.journeys.memory import Memory
from tests.forces import EXAMPLES
from tests.journeys.evenings import TODAY, begun, codes, pen

TANKS = Purchase(entry="light tanks", number=2)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    copy = tmp_path / "marenz"
    shutil.copytree(EXAMPLES / "marenz", copy)
    return copy


def rolled(folder: Path, what: str, *numbers: int) -> Wrote:
    return roll(pen(folder), what, numbers=numbers)


def state(done: Wrote) -> PlayedGame:
    assert done.game is not None
    return done.game


def left(done: Wrote) -> int | None:
    account = state(done).account
    assert account is not None
    return account.left


def evening(folder: Path, *lines: Sequence[str | int]) -> Wrote:
    """A game with its allowance of 26, and more rolls."""
    begun(folder)
    done = rolled(folder, "allowance", 6, 2)
    for what, *numbers in lines:
        done = rolled(folder, str(what), *map(int, numbers))
    return done


def test_honest_dice(folder: Path) -> None:
    """Story 15, whole."""
    done = evening(folder)
    assert (codes(done), left(done)) == ([], 19)
    assert state(done).now.words == "Ask for 2 x light tanks: 17.3 to come on average."
    refused = rolled(folder, "light tanks=2", 3)
    account = state(refused).account
    assert account is not None
    assert (account.refused, left(refused)) == ((TANKS,), 19)
    assert state(refused).now.words.startswith("Ask for 2 x anti-tank guns")
    (slip,) = rolled(folder, "anti-tank guns=2", 2).entries
    struck = strike(pen(folder), slip.id[:8], because="read upside down")
    record = state(struck).record
    assert record is not None
    shown = rolls(record)[-1]
    assert (shown.rolled.total, shown.line.struck_because) == (2, "read upside down")
    again = rolled(folder, "anti-tank guns=2", 11)
    assert codes(again) == []


def test_a_second_roll_stays_in_the_record_and_the_first_one_counts(folder: Path) -> None:
    done = evening(folder, ("light tanks=2", 3), ("light tanks=2", 12))
    assert [each.code for each in state(done).findings] == ["rolled-twice"]
    account = state(done).account
    assert account is not None
    assert account.refused == (TANKS,)
    assert len(done.entries) == 1


def test_terms_are_checked_against_the_folder(folder: Path) -> None:
    assert codes(begun(folder, game="night attack")) == ["unknown-choice"]
    assert codes(begun(folder, grades=("training=heroic",))) == ["unknown-choice"]
    assert codes(begun(folder, posture="defence")) == ["other-posture"]
    assert codes(begun(folder, date="soon")) == ["not-a-date"]
    assert not (folder / "journal.sqlite").exists()
    done = begun(folder, opponent="Ommerath", posture="attack", grades=("training=recruits",))
    (entry,) = done.entries
    assert entry.played is not None
    event = entry.played.event
    assert isinstance(event, Opened)
    assert (event.opponent, event.posture) == ("Ommerath", "attack")
    assert event.grades == {"training": "recruits", "steadfastness": "fair"}
    assert state(done).now.words == "Roll the allowance: 18 + 2d6."
    assert left(rolled(folder, "allowance", 6, 2)) == 22


def test_a_game_that_still_goes_on_is_named_when_another_begins(folder: Path) -> None:
    first = begun(folder)
    other = begun(folder, game="evening defence")
    assert codes(other) == ["game-still-open"]
    newest, before = state(other).record, state(first).record
    assert newest is not None
    assert before is not None
    assert newest.terms.game == "evening defence"
    named = played_game(folder, today=TODAY, of=before.id[:8])
    assert named.record is not None
    assert named.record.id == before.id
    assert played_game(folder, today=TODAY, of="zz").record is None
    end(pen(folder))
    going = played_game(folder, today=TODAY)
    assert going.record is not None
    assert going.record.id == before.id


def test_a_game_that_begins_beside_one_of_its_kind_may_be_the_same(folder: Path) -> None:
    begun(folder, opponent="Ommerath")
    same = begun(folder)
    assert (codes(same), [each.code for each in state(same).findings]) == ([], ["open-at-once"])
    against_another = begun(folder, opponent="Lintal")
    assert "game-still-open" not in codes(against_another)  # the newest says no opponent
    other = begun(folder, opponent="Ommerath")
    assert codes(other) == ["game-still-open"]


def test_what_the_dice_allow_is_taken_as_the_best_play_says(folder: Path) -> None:
    """Check value 3.11: of both guns that are allowed only one is taken."""
    evening(folder)
    granted = rolled(folder, "light tanks=2", 9)
    assert state(granted).now.words.startswith("Light tanks: take all of the 2 (")
    assert state(granted).now.take == TANKS
    assert left(take(pen(folder), "light tanks=2")) == 10
    both = rolled(folder, "anti-tank guns=2", 12)
    assert state(both).now.words == (
        "Anti-tank guns: take only 1 of the 2 (9.33 together with what is still to come; "
        "taking all only 8)."
    )
    assert codes(take(pen(folder), "anti-tank guns=3")) == ["above-allowed"]
    done = take(pen(folder), "anti-tank guns=1")
    assert left(done) == 6
    assert isinstance(done.entries[0].played and done.entries[0].played.event, Asked)


def test_what_is_allowed_may_be_declined(folder: Path) -> None:
    evening(folder, ("light tanks=2", 9))
    done = take(pen(folder), "light tanks=0")
    assert left(done) == 19
    assert codes(take(pen(folder), "light tanks=2")) == ["not-rolled-yet"]


def test_what_breaks_a_rule_isn_t_taken(folder: Path) -> None:
    evening(folder)
    assert codes(take(pen(folder), "tank squadron commander=1")) != []
    assert codes(take(pen(folder), "dragons=1")) != []
    assert codes(
        take(pen(folder), "machine-gun platoon=2, medium mortars=4, pioneers(flame)=2")
    ) == ["over-points"]
    assert codes(take(pen(folder), "nonsense")) == ["not-a-purchase"]
    done = take(pen(folder), "machine-gun platoon=2, pioneers(flame)=1")
    assert (len(done.entries), left(done)) == (2, 11)


def test_a_roll_needs_to_be_for_something(folder: Path) -> None:
    assert codes(rolled(folder, "allowance", 6, 2)) == ["no-game"]
    begun(folder)
    assert codes(rolled(folder, "light tanks", 3)) == ["number-unsaid"]
    assert codes(rolled(folder, "light tanks=7", 3)) == ["number-not-priced"]
    assert codes(rolled(folder, "machine-gun platoon=2", 3)) == ["no-roll-needed"]
    assert codes(rolled(folder, "light tank", 3)) == ["unknown-choice"]
    assert codes(rolled(folder, "light tanks=2, armoured cars=2", 3)) == ["several-at-once"]
    assert codes(rolled(folder, "light tanks=", 3)) != []
    assert codes(rolled(folder, "light tanks=2", 13)) == ["roll-impossible"]
    assert codes(roll(pen(folder), "allowance", numbers=(3,), dice="1d6")) == ["other-dice"]
    assert codes(roll(pen(folder), "first move", numbers=(3,), dice="one die")) == ["not-dice"]
    free = roll(pen(folder), "first move", numbers=(3,), dice="1d6", witness="Bert")
    assert codes(free) == []
    assert isinstance(free.entries[0].played and free.entries[0].played.event, Rolled)


def test_what_is_named_beforehand_needs_no_number_at_its_roll(folder: Path) -> None:
    evening(folder)
    assert codes(ask(pen(folder), "machine-gun platoon=2")) == ["no-roll-needed"]
    assert codes(ask(pen(folder), "light tanks=9")) == ["number-not-priced"]
    assert codes(ask(pen(folder), "light tanks=2")) == []
    account = state(rolled(folder, "light tanks", 3)).account
    assert account is not None
    assert account.refused == (TANKS,)


def test_how_things_stand_is_told_over_what_was_told_before(folder: Path) -> None:
    evening(folder)
    section = Subject("out", "No 1 Company / 1 Platoon / 1 Section")
    one = mark(pen(folder), section, value="yes", turn=3)
    other = mark(pen(folder), section, value="")
    told = other.entries[0].played and other.entries[0].played.event
    assert isinstance(told, Told)
    assert told.over == (one.entries[0].id,)
    record = state(other).record
    assert record is not None
    assert record.board[section].values == ("",)
    assert codes(mark(pen(folder), Subject("out", "nobody"), value="yes")) == ["unknown-choice"]


def test_an_ended_game_is_over_until_its_end_is_struck_out(folder: Path) -> None:
    evening(folder)
    done = end(pen(folder), outcome="held the bridge")
    assert state(done).now.words == ""
    for closed in (
        rolled(folder, "light tanks=2", 3),
        take(pen(folder), "machine-gun platoon=2"),
        ask(pen(folder), "light tanks=2"),
        mark(pen(folder), Subject("turn", "turn"), value="1"),
        end(pen(folder)),
    ):
        assert codes(closed) == ["no-game"]
        assert closed.findings[0].message.startswith("No game is open")
    game = done.entries[0].played
    assert game is not None
    assert end(pen(folder, of=game.game)).findings[0].message == "This game is over."
    strike(pen(folder), done.entries[0].id[:8], because="a turn more")
    assert codes(rolled(folder, "light tanks=2", 3)) == []


def test_a_line_is_struck_out_by_the_beginning_of_its_own_id_only(folder: Path) -> None:
    assert codes(strike(pen(folder), "0", because="why")) == ["no-game"]
    evening(folder)
    assert codes(strike(pen(folder), "", because="why")) == ["line-unclear"]
    assert codes(strike(pen(folder), "zz", because="why")) == ["line-unclear"]


def test_a_changed_line_is_reported_on_the_next_opening(folder: Path) -> None:
    """Story 15."""
    evening(folder)
    with closing(sqlite3.connect(folder / "journal.sqlite")) as database, database:
        database.execute("UPDATE entry SET text = replace(text, '26', '30')")
    found = played_game(folder, today=TODAY).findings
    assert "journal-altered" in {each.code for each in found}


def test_where_no_worth_is_given_it_is_said_why_nothing_is_advised(folder: Path) -> None:
    path = next(path for path in folder.glob("*.yaml") if "worths:" in path.read_text("utf-8"))
    text = path.read_text("utf-8")
    path.write_text(text[: text.index("worths:")] + text[text.index("reserves:") :], "utf-8")
    done = evening(folder)
    assert state(done).now.words == (
        "What is best isn't worked out: nothing that is on offer in this game has a worth."
    )
    allowed = rolled(folder, "light tanks=2", 9)
    assert state(allowed).now.words.startswith("2 of 2 x light tanks may be taken: say how many")


def test_what_the_best_play_did_not_ask_for_is_for_the_owner_to_decide(folder: Path) -> None:
    done = evening(folder, ("armoured cars=3", 12))
    assert "the best play didn't ask for it" in state(done).now.words


def test_a_line_is_not_struck_out_without_a_reason(folder: Path) -> None:
    (line,) = evening(folder).entries
    assert codes(strike(pen(folder), line.id, because=" ")) == ["reason-unsaid"]


def test_what_is_best_bought_at_the_end_is_named_and_then_that_it_is_all(folder: Path) -> None:
    done = evening(folder, ("light tanks=2", 3), ("anti-tank guns=2", 1), ("armoured cars=2", 1))
    best = (
        Purchase(entry="machine-gun platoon", number=2),
        Purchase(entry="bicycle troop", number=2),
    )
    assert (state(done).now.buy, state(done).now.is_all) == (best, False)
    done = take(pen(folder), "machine-gun platoon=2, bicycle troop=2")
    assert (state(done).now.buy, state(done).now.is_all) == ((), True)


def test_the_game_that_goes_on_is_found_until_it_ends(folder: Path) -> None:
    memory = Memory()
    assert game_going_on(folder, today=TODAY, memory=memory) is None
    begun(folder)
    before = game_going_on(folder, today=TODAY, memory=memory)
    assert before is not None
    assert before is game_going_on(folder, today=TODAY, memory=memory)
    end(pen(folder))
    assert game_going_on(folder, today=TODAY, memory=memory) is None


def test_a_line_of_a_game_is_not_what_a_single_touch_takes_back(folder: Path) -> None:
    begun(folder)
    past = history(folder, today=TODAY, last=LOOKED_AT)
    assert (past.number, past.newest_in_force) == (1, None)


def test_the_season_counts_real_dice_of_all_games(folder: Path) -> None:
    evening(folder, ("light tanks=2", 3))
    end(pen(folder))
    season = state(evening(folder)).season
    assert (season[6].rolls, season[12].rolls) == (4, 1)
    assert season[6].came == (0, 2, 0, 0, 0, 2)


def test_a_game_that_the_folder_does_not_know_any_more_is_still_read(folder: Path) -> None:
    evening(folder)
    path = next(
        path for path in folder.glob("*.yaml") if "whole-day attack" in path.read_text("utf-8")
    )
    path.write_text(path.read_text("utf-8").replace("whole-day attack", "long attack"), "utf-8")
    game = played_game(folder, today=TODAY)
    assert game.record is not None
    assert (game.account, game.now.words) == (None, "")
    assert "unknown-choice" in {each.code for each in game.findings}
    assert codes(take(pen(folder), "machine-gun platoon=2")) == ["unknown-choice"]
    (unsaid,) = rolled(folder, "allowance", 6, 2).findings
    assert unsaid.message.startswith("The folder doesn't offer a game on these terms")
    free = roll(replace(pen(folder)), "first move", numbers=(3,), dice="1d6")
    assert codes(free) == []
