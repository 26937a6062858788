"""What a game left to be repaired."""

import datetime
from dataclasses import replace

from paradestate.core.campaign.to_repair import Repairs, to_repair
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.play.event import Ended, Subject, Told
from paradestate.core.play.game_record import game_records
from tests.core.play.test_game_record import AT, DAY, OPENED, strike, written


def broken(stand: str, what: str = "chipped") -> Told:
    return Told(subject=Subject("to repair", stand), value=what)


OUT = Told(subject=Subject("out", "1 Section"), value="yes")
ENTRIES = written(OPENED, OUT, broken("1 Section"), broken("2 Section", "lost"), Ended())


def went_back(*names: str, id_: str = "back") -> JournalEntry:
    return JournalEntry(
        id=id_,
        kind=EntryKind.MOVED,
        written=AT,
        on=DAY,
        stands=names if len(names) > 1 else (),
        stand="" if len(names) > 1 else names[0],
        wanted=DAY + datetime.timedelta(days=9),
    )


def repairs(*more: JournalEntry, struck: tuple[str, ...] = ()) -> Repairs:
    entries = [*ENTRIES, *more]
    (record,) = game_records(entries, force="")
    return to_repair(record, entries, struck_out=struck)


def left(*more: JournalEntry, struck: tuple[str, ...] = ()) -> dict[str, str]:
    return dict(repairs(*more, struck=struck).waiting)


def test_what_went_back_is_known_by_its_last_entry() -> None:
    assert not repairs().went_back
    both = went_back("1 Section", "2 Section")
    assert repairs(both).went_back == {"1 Section": both, "2 Section": both}
    later = went_back("1 Section", id_="later")
    assert repairs(both, later).went_back == {"1 Section": later, "2 Section": both}
    assert repairs(both, later, struck=("later",)).went_back == repairs(both).went_back
    elsewhere = went_back("3 Section")
    assert not repairs(elsewhere).went_back


def test_what_is_told_is_to_be_repaired_until_it_has_gone_back() -> None:
    assert left() == {"1 Section": "chipped", "2 Section": "lost"}
    assert left(went_back("1 Section")) == {"2 Section": "lost"}
    assert left(went_back("1 Section", "2 Section")) == {}
    assert left(went_back("1 Section"), struck=("back",)) == left()
    assert left(replace(went_back("1 Section"), force="ferry")) == left()
    assert left(replace(went_back("1 Section"), wanted=None)) == left()


def test_what_two_tell_differently_is_all_of_it_to_be_repaired() -> None:
    other = written(*[broken("1 Section", "bent")] * 9)[8]
    assert left(other)["1 Section"] == "chipped; bent"


def test_what_is_told_anew_is_broken_again_and_what_is_taken_back_never_was() -> None:
    again = written(*[broken("1 Section", "bent")] * 9)[8]
    assert left(went_back("1 Section"), again)["1 Section"] == "bent"
    assert "1 Section" not in left(strike("2", because="another stand"))
