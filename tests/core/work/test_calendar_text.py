"""Days as a calendar: by the grammar of RFC 5545, read back by a reader of our own."""

import datetime
import re

from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.work.calendar_text import CalendarDay, calendar_text, is_ours, says_the_same

MADE = datetime.datetime(2026, 3, 5, 21, 15, tzinfo=datetime.timezone(datetime.timedelta(hours=1)))
NIGHT = CalendarDay(
    about=("Marenz", "game night", "2026-03-12"),
    day=datetime.date(2026, 3, 12),
    summary="Game night: Marenz; bring dice, please",
)

# RFC 5545, 3.1: contentline = name *(";" param) ":" value, of printable characters and tabs.
CONTENT_LINE = re.compile(
    r"[A-Z-]+(;[A-Z-]+=[^\x00-\x08\x0a-\x1f\x7f:;,\"]+)*:[^\x00-\x08\x0a-\x1f\x7f]*"
)
# 3.3.11: a TEXT value has no bare backslash, semicolon, comma or line end.
TEXT = re.compile(r"([^\\;,\x00-\x08\x0a-\x1f\x7f]|\\[\\;,nN])*")


def content_lines(text: str) -> list[str]:
    """The lines of a calendar, unfolded, each checked against the grammar."""
    data = text.encode()
    assert data.endswith(b"\r\n")
    raw = data.removesuffix(b"\r\n").split(b"\r\n")
    assert all(len(line) <= 75 for line in raw)
    assert not any(b"\r" in line or b"\n" in line for line in raw)
    for line in raw:
        line.decode()
    lines = text.removesuffix("\r\n").replace("\r\n ", "").split("\r\n")
    assert all(CONTENT_LINE.fullmatch(line) for line in lines)
    return lines


def meaning(value: str) -> str:
    assert TEXT.fullmatch(value)
    return re.sub(r"\\(.)", lambda found: "\n" if found[1] in "nN" else found[1], value)


def events(text: str) -> list[dict[str, str]]:
    """What a reader makes of the events; BEGIN and END have to match."""
    lines = content_lines(text)
    assert lines[:3] == ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Parade State//bench//EN"]
    assert lines[-1] == "END:VCALENDAR"
    found: list[dict[str, str]] = []
    is_inside = False
    for line in lines[4:-1]:
        name, value = line.split(":", 1)
        if name in {"BEGIN", "END"}:
            assert (value, is_inside) == ("VEVENT", name == "END")
            is_inside = name == "BEGIN"
            found += [{}] if is_inside else []
        else:
            assert name not in found[-1]
            found[-1][name] = value
    assert not is_inside
    return found


def test_an_event_is_a_whole_day_with_the_time_it_was_made_in_utc() -> None:
    (event,) = events(calendar_text([NIGHT], made=MADE))
    assert set(event) == {"UID", "DTSTAMP", "DTSTART;VALUE=DATE", "TRANSP", "SUMMARY"}
    assert event["DTSTAMP"] == "20260305T201500Z"
    assert event["DTSTART;VALUE=DATE"] == "20260312"
    assert event["SUMMARY"] == r"Game night: Marenz\; bring dice\, please"
    assert re.fullmatch(r"[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}", event["UID"])


def test_the_id_of_an_event_is_that_of_what_it_is_about() -> None:
    moved = CalendarDay(
        about=NIGHT.about, day=datetime.date(2026, 3, 19), summary="Moved", description="Later."
    )
    other = CalendarDay(about=("Marenz game", "night", "2026-03-12"), day=NIGHT.day, summary="x")
    one, two, three = events(calendar_text([NIGHT, moved, other], made=MADE))
    assert one["UID"] == two["UID"]
    assert three["UID"] != one["UID"]
    assert two["DESCRIPTION"] == "Later."


def test_an_empty_calendar_has_no_events() -> None:
    assert events(calendar_text([], made=MADE)) == []


def test_what_can_not_be_seen_is_shown_to_be_there() -> None:
    odd = CalendarDay(about=("x",), day=NIGHT.day, summary="bell\x07", description="two\nlines")
    (event,) = events(calendar_text([odd], made=MADE))
    assert event["SUMMARY"] == "bell\N{REPLACEMENT CHARACTER}"
    assert event["DESCRIPTION"] == r"two\nlines"


def test_long_lines_are_folded_and_no_character_is_cut() -> None:
    """75 octets a line, of which the first of those that go on is a space (RFC 5545, 3.1)."""
    exactly = CalendarDay(about=("x",), day=NIGHT.day, summary="x" * (75 - len("SUMMARY:")))
    assert f"SUMMARY:{exactly.summary}\r\nEND" in calendar_text([exactly], made=MADE)
    long = CalendarDay(
        about=("x",), day=NIGHT.day, summary="\N{LATIN SMALL LETTER E WITH ACUTE}" * 90
    )
    text = calendar_text([long], made=MADE)
    assert text.count("\r\n \N{LATIN SMALL LETTER E WITH ACUTE}") == 2
    (event,) = events(text)
    assert meaning(event["SUMMARY"]) == long.summary


@given(st.lists(st.text(max_size=120), min_size=1, max_size=2))
def test_any_words_come_back_from_the_lines(words: list[str]) -> None:
    made = CalendarDay(about=("x",), day=NIGHT.day, summary=words[0], description=words[-1])
    for event in events(calendar_text([made], made=MADE)):
        seen = "\n".join(words[0].splitlines())
        assert len(meaning(event["SUMMARY"])) == len(seen)
        for mine, theirs in zip(seen, meaning(event["SUMMARY"]), strict=True):
            assert theirs in {mine, "\N{REPLACEMENT CHARACTER}"}


def test_a_calendar_is_known_as_ours_by_how_it_begins() -> None:
    assert is_ours(calendar_text([NIGHT], made=MADE))
    assert is_ours(calendar_text([], made=MADE).replace("\r\n", "\n"))
    assert not is_ours(calendar_text([NIGHT], made=MADE).replace("Parade State", "Another"))
    assert not is_ours("")


def test_calendars_that_differ_in_when_they_were_made_say_the_same() -> None:
    one = calendar_text([NIGHT], made=MADE)
    assert says_the_same(one, calendar_text([NIGHT], made=MADE + datetime.timedelta(days=1)))
    assert not says_the_same(one, one.replace("SUMMARY:", "SUMMARY:No "))
