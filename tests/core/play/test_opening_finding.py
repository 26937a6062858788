"""Games that were opened twice, and lines of clocks that are ahead."""

import datetime
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.finding import Finding, Level
from paradestate.core.journal_entry import JournalEntry
from paradestate.core.play.event import Ended, Opened, Subject, Told
from paradestate.core.play.game_record import GameRecord, game_records
from paradestate.core.play.opening_finding import clock_findings, opening_findings
from tests.core.play.test_game_record import AT, strike, written

OPENED = Opened(game="whole-day attack", opponent="Ommerath")
NOW = AT


def by(device: str, entry: JournalEntry, *, at: datetime.datetime = AT) -> JournalEntry:
    assert entry.played is not None
    return replace(entry, written=at, played=replace(entry.played, device=device))


def games(*entries: JournalEntry) -> tuple[GameRecord, ...]:
    return game_records(entries, force="")


def doubts(*records: GameRecord) -> list[Finding]:
    return list(opening_findings(records[-1], records, zone=datetime.UTC))


def test_one_opening_of_one_game_is_nothing_to_say() -> None:
    assert doubts(*games(*written(OPENED))) == []


def test_a_second_opening_of_the_same_game_is_named_with_the_one_that_counts() -> None:
    one, other = written(OPENED, replace(OPENED, opponent="Lintal"))
    (found,) = doubts(*games(by("Ann's phone", one), by("Ben's phone", other)))
    assert (found.level, found.code) == (Level.WARN, "opened-twice")
    assert found.message == (
        "This game was opened 2 times: whole-day attack opened against Ommerath (Ann's phone, "
        "2026-11-27 19:42 by its clock, 0) and whole-day attack opened against Lintal (Ben's "
        "phone, 2026-11-27 19:42 by its clock, 1)."
    )
    assert found.effect == "The terms of 0 count: it came first."
    assert "play FOLDER strike 1 --because TEXT" in found.hint
    assert doubts(*games(one, other, strike("1", because="by mistake"))) == []


def two(first: Opened, second: Opened) -> list[Finding]:
    (one,) = written(first, game="1f0c9b2e-1")
    (other,) = written(second, game="2f0c9b2e-2")
    return doubts(*games(by("Ann's phone", one), by("Ben's phone", replace(other, id="o"))))


def test_two_games_of_one_kind_that_are_open_at_once_are_named_with_what_settles_it() -> None:
    (found,) = two(OPENED, Opened(game="whole-day attack"))
    assert (found.level, found.code) == (Level.WARN, "open-at-once")
    assert found.message == (
        "Whole-day attack is open 2 times at once: Ann's phone, 2026-11-27 19:42 by its clock, "
        "1f0c9b2e and Ben's phone, 2026-11-27 19:42 by its clock, 2f0c9b2e."
    )
    assert found.effect.startswith("This is 2f0c9b2e; ")
    assert found.hint.endswith("play FOLDER end --of 1f0c9b2e.")


def test_games_against_others_of_another_kind_or_that_are_over_are_others() -> None:
    assert two(OPENED, replace(OPENED, opponent="Lintal")) == []
    assert two(OPENED, Opened(game="evening defence")) == []
    (one,) = written(OPENED, game="1")
    ended = [replace(each, id=f"e{each.id}") for each in written(OPENED, Ended(), game="2")]
    first, second = games(one, *ended)
    assert list(opening_findings(first, (first, second))) == []
    assert list(opening_findings(second, (first, second))) == []


def test_of_many_openings_only_some_are_named() -> None:
    (found,) = doubts(*games(*written(*[OPENED] * 9)))
    assert "and 4 more." in found.message


def ahead(*hours: int) -> list[Finding]:
    told = [Told(subject=Subject("turn", ""), value="1")] * len(hours)
    opening, *lines = written(OPENED, *told)
    late = [
        by("Ben's phone", line, at=NOW + datetime.timedelta(hours=each))
        for line, each in zip(lines, hours, strict=True)
    ]
    (record,) = games(opening, *late)
    return list(clock_findings(record, now=NOW, zone=datetime.UTC))


def test_lines_that_are_dated_ahead_are_named_with_whose_clock_it_is() -> None:
    assert ahead(-48, 0) == []
    (found,) = ahead(-1, 1, 72)
    assert (found.level, found.code) == (Level.WARN, "clock-ahead")
    assert found.message == ("2 lines of Ben's phone are dated ahead, up to 2026-11-30 19:42 (3).")
    (one,) = ahead(1)
    assert one.message.startswith("1 line of Ben's phone is dated ahead")


def test_the_last_year_that_there_is_can_be_shown_everywhere() -> None:
    opening, line = written(OPENED, Told(subject=Subject("turn", ""), value="1"))
    last = datetime.datetime.max.replace(microsecond=0, tzinfo=datetime.UTC)
    (record,) = games(opening, by("", line, at=last))
    east = datetime.timezone(datetime.timedelta(hours=9))
    (found,) = clock_findings(record, now=NOW, zone=east)
    assert "of this computer is dated ahead, up to 9999-12-31 23:59 UTC (1)." in found.message


CLOCKS = st.integers(-24 * 365, 24 * 365)


@settings(max_examples=30)
@given(order=st.permutations(range(6)), clocks=st.tuples(CLOCKS, CLOCKS))
def test_whatever_two_phones_clocks_say_the_board_is_the_same_in_any_order(
    order: list[int], clocks: tuple[int, int]
) -> None:
    """The two tell in turns without having met, but for the last, who saw both."""
    out, used = Subject("out", "1 Section"), Subject("missions used", "guns")
    opening, *lines = written(
        OPENED,
        Told(subject=out, value="out"),
        Told(subject=used, value="1"),
        Told(subject=out, value="", over=("1",)),
        Told(subject=used, value="2"),
        Told(subject=out, value="out", over=("3",)),
        Told(subject=Subject("turn", ""), value="2"),
    )
    skewed = [
        by(f"phone {at % 2}", line, at=AT + datetime.timedelta(hours=clocks[at % 2] + at))
        for at, line in enumerate(lines)
    ]
    struck = strike("5", because="tapped by mistake")
    (record,) = games(opening, *(skewed[at] for at in order), struck)
    assert {subject: each.values for subject, each in record.board.items()} == {
        used: ("1", "2"),
        out: ("",),
        Subject("turn", ""): ("2",),
    }
    found = list(clock_findings(record, now=AT + datetime.timedelta(hours=12)))
    fast = {f"phone {which}" for which in (0, 1) if clocks[which] + 4 + which > 12}
    assert len(found) == len(fast)
    assert all(any(device in each.message for each in found) for device in fast)
