"""A game as it was written down, and whether its machine rolls are as they should be."""

import datetime
from dataclasses import replace

from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.play.event import (
    Committed,
    Ended,
    Event,
    Noted,
    Opened,
    Played,
    Revealed,
    Rolled,
    Spoken,
    Subject,
    Told,
)
from paradestate.core.play.game_record import (
    Binding,
    GameRecord,
    bindings,
    disagreements,
    game_records,
    of_game,
    rolls,
)
from paradestate.core.play.machine_roll import digest_of_secret, faces_of
from tests.core.play.test_faces import dice

DAY = datetime.date(2026, 11, 27)
AT = datetime.datetime(2026, 11, 27, 19, 42, tzinfo=datetime.UTC)
SECRET = b"s" * 32
OPENED = Opened(game="attack")
BOUND = Committed(digest=digest_of_secret(SECRET), purpose="tanks", dice="1d12", number=2)
(FACE,) = faces_of(SECRET, "heron", sides=[12])
STEPS: tuple[Event, ...] = (
    BOUND,
    Spoken(commitment="1", word="heron"),
    Rolled(purpose="tanks", dice="1d12", faces=(FACE,), total=FACE, number=2, commitment="1"),
    Revealed(commitment="1", secret=SECRET.hex()),
)


def written(*events: Event, game: str = "g", force: str = "") -> list[JournalEntry]:
    """Entries of one game, with `0`, `1`, ... as ids."""
    return [
        JournalEntry(
            id=str(place),
            kind=EntryKind.PLAYED,
            written=AT,
            on=DAY,
            force=force,
            played=Played(game=game, event=event, counter=place),
        )
        for place, event in enumerate(events)
    ]


def strike(id_: str, *, because: str) -> JournalEntry:
    return JournalEntry(
        id=f"strike of {id_}",
        kind=EntryKind.STRUCK_OUT,
        written=AT,
        on=DAY,
        struck_out=id_,
        note=because,
    )


def record(*entries: JournalEntry) -> GameRecord:
    (only,) = game_records(entries, force="")
    return only


def binding(*events: Event) -> Binding:
    (only,) = bindings(record(*written(OPENED, *events)))
    return only


def test_notes_hold_until_they_are_struck_out_and_come_after_the_end_too() -> None:
    notes = [Noted(text="chipped", about="1 Section"), Noted(text="too dark")]
    entries = written(OPENED, notes[0], Ended(), notes[1])
    (record,) = game_records(entries, force="")
    assert record.notes == tuple(notes)
    (record,) = game_records([*entries, strike("1", because="another stand")], force="")
    assert record.notes == (notes[1],)


def test_a_roll_that_is_struck_out_stays_readable_with_its_reason() -> None:
    """Story 15."""
    rolled = Rolled(purpose="tanks", dice="1d12", faces=(2,), total=2)
    kept = record(*written(OPENED, rolled), strike("1", because="read upside down"))
    ((line, shown),) = rolls(kept)
    assert (shown, line.holds, line.struck_because) == (rolled, False, "read upside down")
    assert kept.lines[1] is line


def test_games_are_told_apart_and_those_without_an_opening_are_none() -> None:
    one, other = written(OPENED), written(OPENED, game="h")
    elsewhere = written(OPENED, game="i", force="kelmar")
    stray = [replace(each, id="s") for each in written(Ended(), game="j")]
    other = [replace(each, id="o") for each in other]
    every = [*one, *other, *elsewhere, *stray]
    assert [each.id for each in game_records(every, force="")] == ["g", "h"]
    assert [each.id for each in game_records(every, force="kelmar")] == ["i"]
    struck = [*every, strike("o", because="never played")]
    assert [each.id for each in game_records(struck, force="")] == ["g"]


def test_what_belongs_to_another_game_is_left_out_with_what_strikes_it() -> None:
    (mine,), (other,) = written(Ended(), game="one"), written(Ended(), game="two")
    other = replace(other, id="b")
    strikes = [strike(of, because="slip") for of in ("0", "b", "elsewhere")]
    every = [mine, other, *strikes]
    assert [each.id for each in of_game(every, game="one")] == ["0", "strike of 0"]


def test_a_game_goes_on_until_it_is_ended() -> None:
    ends = written(OPENED, Ended(outcome="draw"))
    assert record(*ends).ended == Ended(outcome="draw")
    assert record(*ends, strike("1", because="not yet")).ended is None
    assert record(*ends).terms == OPENED
    assert record(*ends).board == {}
    assert (record(*ends).next_counter(""), record(*ends).next_counter("phone")) == (2, 1)


def test_the_board_is_that_of_its_lines() -> None:
    subject = Subject("out", "1 Section")
    told = Told(subject=subject, value="yes")
    entries = written(OPENED, told)
    assert record(*entries).board[subject].values == ("yes",)
    assert record(*entries, strike("1", because="slip")).board[subject].values == ("",)


def test_a_machine_roll_goes_step_by_step() -> None:
    found = [binding(*STEPS[:number]) for number in range(1, 5)]
    assert [(each.word, each.rolled is None, each.secret) for each in found] == [
        (None, True, None),
        ("heron", True, None),
        ("heron", False, None),
        ("heron", False, SECRET.hex()),
    ]
    assert [each.is_waiting for each in found] == [True, True, True, False]
    assert [each.is_to_be_rolled for each in found] == [True, True, False, False]
    assert [each.is_to_be_told for each in found] == [False, False, True, False]
    assert all(not list(disagreements(each, dice=dice("1d12"))) for each in found)


def test_a_binding_that_is_struck_out_waits_for_nothing() -> None:
    (found,) = bindings(record(*written(OPENED, BOUND), strike("1", because="file lost")))
    assert not found.is_waiting
    assert not found.is_to_be_rolled


def test_only_the_first_word_and_secret_count() -> None:
    other = Revealed(commitment="1", secret=b"other".hex())
    found = binding(*STEPS, Spoken(commitment="1", word="crane"), other)
    assert (found.word, found.secret) == ("heron", SECRET.hex())
    assert found.is_in_order


def test_a_word_that_was_said_after_the_roll_is_named() -> None:
    bound, word, rolled, secret = STEPS
    shown = list(disagreements(binding(bound, rolled, word, secret), dice=dice("1d12")))
    assert shown == ["it wasn't bound, spoken, rolled and told in this order"]


def test_a_roll_for_something_else_than_it_was_bound_for_is_named() -> None:
    bound, word, rolled, secret = STEPS
    assert isinstance(rolled, Rolled)
    shown = disagreements(
        binding(bound, word, replace(rolled, purpose="guns"), secret), dice=dice("1d12")
    )
    assert list(shown) == ["it was bound for tanks and rolled for guns"]


def test_a_face_that_was_altered_is_named() -> None:
    bound, word, rolled, secret = STEPS
    assert isinstance(rolled, Rolled)
    shown = disagreements(
        binding(bound, word, replace(rolled, faces=(13,)), secret), dice=dice("1d12")
    )
    assert list(shown) == [f"the dice show {FACE}, not 13"]
