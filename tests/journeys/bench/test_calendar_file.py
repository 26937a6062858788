"""A calendar as a file: written, replaced where it is ours, and nothing else touched."""

import datetime
from pathlib import Path

import pytest

from paradestate.journeys.bench import calendar_file
from paradestate.journeys.bench.calendar_file import refuse_other, write_calendar
from paradestate.journeys.bench.forecast import Dates
from paradestate.journeys.spreadsheet import CannotWriteError
from tests.journeys.logging_to import NOW

NIGHT = datetime.date(2026, 3, 12)
NIGHTS = Dates(forecast=None, findings=(), nights=(NIGHT,))


def test_it_is_written_in_bytes_with_line_ends_of_the_standard(tmp_path: Path) -> None:
    file = tmp_path / "ferry.ics"
    made = write_calendar(file, NIGHTS, force="Ferry", made=NOW)
    assert made is not None
    assert (made.days, made.former) == (1, None)
    data = file.read_bytes()
    assert data.count(b"\r\n") == data.count(b"\n")
    assert b"\r\nDTSTART;VALUE=DATE:20260312\r\n" in data


def test_one_of_ours_is_replaced_and_kept(tmp_path: Path) -> None:
    file = tmp_path / "ferry.ics"
    write_calendar(file, NIGHTS, force="Ferry", made=NOW)
    first = file.read_bytes()
    two = Dates(forecast=None, findings=(), nights=(NIGHT, NIGHT + datetime.timedelta(days=14)))
    made = write_calendar(file, two, force="Ferry", made=NOW)
    assert made is not None
    assert made.former is not None
    assert (made.days, made.former.read_bytes()) == (2, first)
    assert file.read_bytes() != first


def test_one_that_says_the_same_is_left_alone(tmp_path: Path) -> None:
    file = tmp_path / "ferry.ics"
    write_calendar(file, NIGHTS, force="Ferry", made=NOW)
    first = file.read_bytes()
    made = write_calendar(file, NIGHTS, force="Ferry", made=NOW + datetime.timedelta(days=1))
    assert made is not None
    assert (made.days, made.former, made.is_new) == (1, None, False)
    assert [path.name for path in tmp_path.iterdir() if path.is_dir()] == []
    assert file.read_bytes() == first


@pytest.mark.parametrize("other", [b"BEGIN:VCALENDAR\r\nVERSION:2.0\r\n", b"\xff\x00", b""])
def test_what_is_not_ours_stays(tmp_path: Path, other: bytes) -> None:
    file = tmp_path / "club.ics"
    file.write_bytes(other)
    with pytest.raises(CannotWriteError, match="isn't a calendar of `bench`"):
        write_calendar(file, NIGHTS, force="Ferry", made=NOW)
    assert file.read_bytes() == other


def test_a_name_says_that_it_is_a_calendar(tmp_path: Path) -> None:
    with pytest.raises(CannotWriteError, match=r"should end in \.ics"):
        refuse_other(tmp_path / "ferry.txt")


def test_without_a_day_nothing_is_written(tmp_path: Path) -> None:
    file = tmp_path / "ferry.ics"
    assert write_calendar(file, Dates(forecast=None, findings=()), force="F", made=NOW) is None
    assert not file.exists()


def test_what_comes_meanwhile_is_not_overwritten(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = tmp_path / "ferry.ics"
    monkeypatch.setattr(calendar_file, "refuse_other", lambda each: each.write_text("theirs"))
    monkeypatch.setattr(calendar_file, "read_whole", lambda _: b"what was read")
    with pytest.raises(CannotWriteError, match="by another program meanwhile"):
        write_calendar(file, NIGHTS, force="Ferry", made=NOW)
    assert file.read_text() == "theirs"
