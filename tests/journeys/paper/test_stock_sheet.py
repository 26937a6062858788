"""What is held as a spreadsheet, and a spreadsheet as a count."""

import datetime
from pathlib import Path
from uuid import uuid4

import pytest

from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_request import LogRequest
from paradestate.core.stock_take import StockChange
from paradestate.journeys.holdings import holdings
from paradestate.journeys.log import Logged
from paradestate.journeys.paper.stock_sheet import MOST_BYTES, accepted, proposed, stock_sheet
from paradestate.journeys.spreadsheet import CannotWriteError
from tests.journeys.logging_to import NOW, TODAY, logged

SHEET = """\
figure,in packet,assembled,undercoated,painted,based
rifleman,8,0,0,2,0
boat,0,0,0,0,0
"""


def sheet(folder: Path, ending: str = ".csv") -> bytes:
    data = stock_sheet(folder, today=TODAY, ending=ending)
    assert data is not None
    return data


def test_the_sheet_says_what_is_held_now_and_agrees_with_itself(guard: Path) -> None:
    assert sheet(guard).decode("utf-8-sig").replace("\r\n", "\n") == SHEET
    for ending in (".csv", ".xlsx", ".ods"):
        data = sheet(guard, ending)
        found = proposed(guard, today=TODAY, data=data, file=f"x{ending}")
        assert (found.changes, found.agreeing, found.findings) == ((), 10, ())


def test_what_a_sheet_changes_is_shown_as_was_and_becomes(guard: Path) -> None:
    text = SHEET.replace("8,0,0,2", "5,3,0,2").replace("boat,0,", "boat,,")
    found = proposed(guard, today=TODAY, data=text.encode(), file="stock.csv")
    assert found.changes == (
        StockChange(kind="rifleman", stage="in packet", was=8, becomes=5),
        StockChange(kind="rifleman", stage="assembled", was=0, becomes=3),
    )
    assert (found.agreeing, found.findings) == (7, ())
    assert not (guard / "journal.sqlite").exists()


def test_an_emptied_cell_over_figures_is_asked_about(guard: Path) -> None:
    text = SHEET.replace("8,0,0,2", ",8,0,2")
    found = proposed(guard, today=TODAY, data=text.encode(), file="stock.csv")
    assert [each.code for each in found.findings] == ["count-left-open"]
    assert not found.is_stopped


def accept(folder: Path, *, own: str = "", becomes: int = 5) -> Logged:
    request = LogRequest(
        id=own or str(uuid4()),
        kind=EntryKind.COUNTED,
        written=NOW,
        on=TODAY,
        staged={"rifleman": {"in packet": becomes, "painted": 0}},
    )
    was = {"rifleman": {"in packet": 8, "painted": 2}}
    return accepted(folder, today=TODAY, request=request, was=was)


def test_an_accepted_sheet_is_one_count_and_sent_twice_is_stored_once(guard: Path) -> None:
    own = str(uuid4())
    assert not accept(guard, own=own).was_there
    assert accept(guard, own=own).was_there
    known = holdings(guard, today=TODAY)
    assert known.state is not None
    assert known.state.held.figures == {"rifleman": {"in packet": 5}}
    other = accept(guard, own=own, becomes=6)
    assert [found.code for found in other.findings] == ["entry-id-taken"]


def test_what_was_written_down_meanwhile_stops_it(guard: Path) -> None:
    logged(guard, EntryKind.RECEIVED, figures={"rifleman": 4})
    done = accept(guard)
    assert [found.code for found in done.findings] == ["held-changed"]
    assert done.entry is None


def test_kinds_and_stages_that_are_held_beside_those_of_the_files_are_on_it(guard: Path) -> None:
    logged(guard, EntryKind.RECEIVED, figures={"boat": 2}, to_stage="painted")
    file = guard / "force.yaml"
    text = file.read_text(encoding="utf-8")
    file.write_text(f"{text}bench: {{stages: [in packet, ready]}}\n".replace(", painted: 2", ""))
    lines = sheet(guard).decode("utf-8-sig").split("\r\n")
    assert lines[0] == "figure,in packet,ready,painted"
    assert lines[2] == "boat,0,0,2"


def test_a_file_that_is_too_large_is_not_read(guard: Path) -> None:
    found = proposed(guard, today=TODAY, data=b"x" * (MOST_BYTES + 1), file="stock.csv")
    assert [each.code for each in found.findings] == ["too-large"]
    assert found.is_stopped


def test_an_ending_that_is_none_is_refused(guard: Path) -> None:
    with pytest.raises(CannotWriteError, match="should be one of"):
        stock_sheet(guard, today=TODAY, ending=".pdf")


def test_ods_says_what_it_needs(guard: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("paradestate.journeys.paper.stock_sheet.find_spec", lambda _: None)
    with pytest.raises(CannotWriteError, match=r"paradestate\[ods\]"):
        stock_sheet(guard, today=TODAY, ending=".ods")


def test_holdings_that_are_not_known_are_on_no_sheet(guard: Path) -> None:
    (guard / "force.yaml").write_text("figures: {", encoding="utf-8")
    assert stock_sheet(guard, today=TODAY, ending=".csv") is None
    assert proposed(guard, today=TODAY, data=SHEET.encode(), file="stock.csv").is_stopped


def test_a_past_day_is_counted_as_a_past_day(guard: Path) -> None:
    day = TODAY - datetime.timedelta(days=3)
    request = LogRequest(
        id=str(uuid4()),
        kind=EntryKind.COUNTED,
        written=NOW,
        on=day,
        staged={"rifleman": {"in packet": 1}},
    )
    done = accepted(guard, today=TODAY, request=request, was={"rifleman": {"in packet": 8}})
    assert done.entry is not None
    assert done.entry.on == day
