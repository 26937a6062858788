"""The bench through its page: the order of work, an evening written down, and that taken back."""

import datetime
import re
from concurrent.futures import ThreadPoolExecutor
from html import unescape
from pathlib import Path
from uuid import uuid4

import pytest
from httpx2 import Response

from paradestate.core.choice import Choice
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.log_request import LogRequest
from paradestate.journeys.bench.bench import order_of_work
from paradestate.journeys.bench.calendar_file import write_calendar
from paradestate.journeys.history import history
from paradestate.journeys.holdings import holdings
from paradestate.journeys.log import log
from paradestate.journeys.new import new_from_example
from tests.journeys.conftest import written
from tests.web.visitor import NOW, Visitor, forms_of, words_of

TODAY = NOW.date()
RIFLES = "12 rifle sections"
OWN = """\
format: 1
title: Test
figures: {rifleman: {}}
stands: {section: {base: none, figures: {rifleman: 4}}}
formations: {top: {parts: {section: 2}}}
raise: {formation: top}
"""
MINUTES = "bench: {minutes: {foot: {painted: 15}}}\n"


def marenz(place: Path, **figures: int) -> Path:
    """The example; figures of it in packet."""
    new_from_example(place / "marenz", name="marenz")
    if figures:
        received(place / "marenz", stage="in packet", **figures)
    return place / "marenz"


def received(folder: Path, *, stage: str, **figures: int) -> None:
    request = LogRequest(
        id=str(uuid4()),
        kind=EntryKind.RECEIVED,
        written=NOW,
        on=TODAY,
        figures={kind.replace("_", " "): number for kind, number in figures.items()},
        to_stage=stage,
    )
    assert log(folder, today=TODAY, request=request).entry is not None


def force_of(place: Path, text: str) -> None:
    written(place / "own", text)


def fields_of(seen: Response, *, action: str = "session") -> dict[str, str | list[str]]:
    """The fields of the first form of the sheet for an action, without its token."""
    form = next(each for each in forms_of(seen) if f"bench/{action}" in each.action)
    return {name: text for name, text in form.fields.items() if name != "token"}


def newest(folder: Path) -> JournalEntry:
    return history(folder, today=TODAY, last=1).entries[0]


def drawings(seen: Response) -> list[str]:
    return [unescape(each) for each in re.findall(r'role="img" aria-label="([^"]*)"', seen.text)]


@pytest.fixture(scope="module")
def bare(tmp_path_factory: pytest.TempPathFactory) -> Response:
    """The example as it comes, with nothing owned."""
    return Visitor(marenz(tmp_path_factory.mktemp("bare"))).get("bench")


def test_the_sheet_opens_with_the_first_force_beside_the_same_work_kind_by_kind(
    bare: Response,
) -> None:
    """19 h and week 5 against 34 h 30 min and week 9 (computations, 3.15)."""
    assert bare.status_code == 200
    said = words_of(bare)
    assert "The smallest legal force can be played after 19 h of work, in week 5." in said
    assert "Kind by kind the smallest legal force would be playable at 34 h 30 min" in said
    assert "To the next force 19 h All that is left 34 h 30 min Usual week 4 h" in said
    assert "smallest legal force 21 19 h 5 34 h 30 min 9 67" in said
    assert "Exact: no order of work has less weighted waiting for these milestones." in said


def test_every_picture_says_what_it_shows(bare: Response) -> None:
    shown = drawings(bare)
    ladder = (
        "Work ladder of 9 rungs up to 34 h 30 min of work: smallest legal force after 19 h; "
        "whole battalion after 34 h 30 min."
    )
    bars = (
        "Work until each milestone: smallest legal force after 19 h as ordered, 34 h 30 min kind "
        "by kind; whole battalion after 34 h 30 min as ordered, 34 h 30 min kind by kind."
    )
    assert shown.count(ladder) == shown.count(bars) == 2
    assert sum(each.startswith("0 min of work logged") for each in shown) == 2


def test_where_nothing_is_owned_nothing_can_be_written_down(bare: Response) -> None:
    said = words_of(bare)
    assert "Nothing can be begun None of the figures that the next batches need is owned." in said
    assert "bench/session" not in bare.text
    assert "What holds up the smallest legal force: Battalion Command lacks" in said


def test_dates_are_given_with_what_they_rest_on(bare: Response) -> None:
    said = words_of(bare)
    assert "Fit to play by half chance four in five nineteen in twenty" in said
    assert "The dates rest on your own week of 4 h, taken as uncertain: nothing logged." in said
    assert re.search(r"Half chance by \d+ \w+, four in five by \d+ \w+\.", said)
    assert "Figures that are neither owned nor on order have no date of arrival" in said


def test_one_tap_brings_a_batch_on_and_everything_moves_at_once(tmp_path: Path) -> None:
    folder = marenz(tmp_path, rifleman=80)
    owner = Visitor(folder)
    before = owner.get("bench")
    said = words_of(before)
    assert f"batch 1 {RIFLES}" in said
    fields = fields_of(before)
    after = owner.post("bench/session", {**fields, "stands": "6", "minutes": "90"})
    assert after.url.query.startswith(b"written=")
    said = words_of(after)
    assert "Written down: session of 90 minutes, 24 riflemen from in packet to assembled" in said
    entry = newest(folder)
    assert (entry.kind, entry.minutes, len(entry.stands)) == (EntryKind.SESSION, 90, 6)
    assert "90 minutes of today are written down" in said
    assert drawings(before)[0] != drawings(after)[0]
    assert [words for words in drawings(after) if words.startswith("1 h 30 min of work logged")]
    first = entry.stands[0].replace(" / ", ", ")
    parade = owner.get("parade")
    assert re.search(rf'aria-label="{re.escape(first)}: [^"]*assembled', parade.text)


def test_a_stand_in_repair_stands_first_until_it_is_tapped_on(tmp_path: Path) -> None:
    folder = marenz(tmp_path)
    stand = "No 1 Company / 1 Platoon / 1 Section"
    wanted = TODAY + datetime.timedelta(days=14)
    whole = LogRequest(id=str(uuid4()), kind=EntryKind.RECEIVED, written=NOW, on=TODAY, stand=stand)
    back = LogRequest(
        id=str(uuid4()),
        kind=EntryKind.MOVED,
        written=NOW,
        on=TODAY,
        stand=stand,
        from_stage="based",
        to_stage="painted",
        wanted=wanted,
        note="bayonet snapped",
    )
    for request in (whole, back):
        assert log(folder, today=TODAY, request=request).entry is not None
    owner = Visitor(folder)
    seen = owner.get("bench")
    said = words_of(seen)
    broken = f"{stand.replace(' / ', ', ')} (bayonet snapped)"
    assert f": {broken}; done after 15 min, of 8 h before it at your pace" in said
    assert "batch 1 1 rifle section" in said
    done = words_of(owner.post("bench/session", {**fields_of(seen), "stands": "1", "minutes": ""}))
    assert broken not in done


def test_a_second_tap_on_the_same_button_writes_nothing_more(tmp_path: Path) -> None:
    """The answer is that of the first; with other minutes it is another thing, and refused."""
    folder = marenz(tmp_path, rifleman=80)
    owner = Visitor(folder)
    fields = {**fields_of(owner.get("bench")), "stands": "6", "minutes": "90"}
    first = owner.post("bench/session", fields)
    second = owner.post("bench/session", fields)
    assert (second.status_code, second.url) == (200, first.url)
    assert history(folder, today=TODAY, last=9).number == 2
    other = owner.post("bench/session", {**fields, "minutes": "60"})
    assert other.status_code == 409
    assert history(folder, today=TODAY, last=9).number == 2


def test_two_phones_that_say_the_same_at_once_write_it_once(tmp_path: Path) -> None:
    """Both looked before either wrote; the second sees what the first has written."""
    folder = marenz(tmp_path, rifleman=80)
    owner = Visitor(folder)
    both = [{**fields_of(owner.get("bench")), "stands": "6", "minutes": "90"} for _ in range(2)]
    assert both[0]["entry"] != both[1]["entry"]
    with ThreadPoolExecutor(2) as phones:
        sent = phones.map(lambda fields: owner.post("bench/session", fields).status_code, both)
        assert sorted(sent) == [200, 409]
    assert history(folder, today=TODAY, last=9).number == 2


def test_what_was_written_down_is_taken_back_from_another_visit(tmp_path: Path) -> None:
    folder = marenz(tmp_path, rifleman=80)
    owner = Visitor(folder)
    seen = owner.get("bench")
    owner.post("bench/session", {**fields_of(seen), "stands": "6", "minutes": ""})
    assert newest(folder).kind is EntryKind.MOVED
    later = Visitor(folder)
    again = later.get("bench")
    undone = later.post("bench/undo", fields_of(again, action="undo"))
    assert "Undone: moved 24 riflemen" in words_of(undone)
    state = holdings(folder, today=TODAY).state
    assert state is not None
    assert state.held.figures == {"rifleman": {"in packet": 80}}
    assert drawings(undone)[0] == drawings(seen)[0]


def test_only_what_was_written_at_the_bench_lately_is_taken_back_there(tmp_path: Path) -> None:
    folder = marenz(tmp_path, rifleman=80)
    owner = Visitor(folder)
    seen = owner.get("bench")
    assert "received 80 riflemen" not in words_of(seen)
    assert 'name="undone"' not in seen.text
    owner.post("bench/session", {**fields_of(seen), "stands": "6", "minutes": ""})
    assert 'name="undone"' in owner.get("bench").text
    owner.seconds += 24 * 60 * 60
    assert 'name="undone"' not in owner.get("bench").text
    undone = newest(folder).id
    owner.post("bench/undo", {"entry": str(uuid4()), "undone": undone})
    assert "Undone: moved 24 riflemen" in words_of(owner.get("bench"))
    owner.seconds += 24 * 60 * 60
    assert "Undone" not in words_of(owner.get("bench"))


def test_the_last_stage_makes_whole_stands_of_them(tmp_path: Path) -> None:
    folder = marenz(tmp_path)
    received(folder, stage="painted", rifleman=80)
    owner = Visitor(folder)
    after = owner.post("bench/session", {**fields_of(owner.get("bench")), "stands": "2"})
    assert "as 2 rifle sections" in words_of(after)
    state = holdings(folder, today=TODAY).state
    assert state is not None
    assert state.held.stands == {"rifle section": {"based": 2}}


def test_the_minutes_of_the_last_session_are_offered_again_on_another_day(tmp_path: Path) -> None:
    folder = marenz(tmp_path, rifleman=80)
    earlier = TODAY - datetime.timedelta(days=7)
    request = LogRequest(
        id=str(uuid4()), kind=EntryKind.SESSION, written=NOW, on=earlier, minutes=75
    )
    assert log(folder, today=TODAY, request=request).entry is not None
    owner = Visitor(folder)
    seen = owner.get("bench")
    assert fields_of(seen)["minutes"] == "75"
    after = owner.post("bench/session", {**fields_of(seen), "stands": "1"})
    assert fields_of(after)["minutes"] == ""


def test_stands_of_which_only_some_figures_are_there_move_by_these(tmp_path: Path) -> None:
    folder = marenz(tmp_path, officer=1)
    owner = Visitor(folder)
    seen = owner.get("bench")
    assert "Only some of their figures are there: 1 officer." in words_of(seen)
    owner.post("bench/session", {**fields_of(seen), "stands": "1"})
    entry = newest(folder)
    assert (entry.stand, entry.stands) == ("", ())
    assert entry.comes.figures == {"officer": {"assembled": 1}}


@pytest.fixture(scope="module")
def refused(tmp_path_factory: pytest.TempPathFactory) -> tuple[Visitor, Path]:
    """Somebody of whose entries none is taken, and the folder."""
    folder = marenz(tmp_path_factory.mktemp("refused"), rifleman=80)
    return Visitor(folder), folder


@pytest.fixture
def owner(tmp_path: Path) -> Visitor:
    return Visitor(marenz(tmp_path, rifleman=80))


@pytest.mark.parametrize(
    ("said", "status", "words"),
    [
        ({"stands": "13"}, 422, "There are 12 rifle sections to bring on."),
        ({"stands": "0"}, 422, "There are 12 rifle sections to bring on."),
        ({"stands": ""}, 422, "There are 12 rifle sections to bring on."),
        ({"stands": "six"}, 422, "six"),
        ({"minutes": "long"}, 422, "long"),
        ({"minutes": "2000"}, 422, "33 h 20 min on 5 March 2026?"),
        ({"from": "painted", "to": "based"}, 409, "isn't any more what it was"),
        ({"first": "Nobody"}, 409, "isn't any more what it was"),
        ({"of": "11"}, 409, "isn't any more what it was"),
    ],
)
def test_what_can_not_be_written_down_is_said(
    refused: tuple[Visitor, Path], said: dict[str, str], status: int, words: str
) -> None:
    visitor, folder = refused
    fields = fields_of(visitor.get("bench"))
    answer = visitor.post("bench/session", {**fields, "stands": "1", **said})
    assert answer.status_code == status
    assert words in words_of(answer)
    assert newest(folder).kind is EntryKind.RECEIVED


def test_what_is_doubtful_about_an_entry_is_said_when_it_is_written(
    owner: Visitor, tmp_path: Path
) -> None:
    """The journal is at the day after already."""
    fields = fields_of(owner.get("bench"))
    tomorrow = TODAY + datetime.timedelta(days=1)
    request = LogRequest(
        id=str(uuid4()), kind=EntryKind.LOST, written=NOW, on=tomorrow, figures={"rifleman": 1}
    )
    assert log(tmp_path / "marenz", today=tomorrow, request=request).entry is not None
    answer = owner.post("bench/session", {**fields, "stands": "1"})
    assert answer.status_code == 200
    assert "the journal is at 6 March 2026 already" in words_of(answer)


def test_an_entry_that_is_not_there_can_not_be_taken_back(owner: Visitor) -> None:
    owner.get("bench")
    fields: dict[str, str | list[str]] = {"entry": str(uuid4()), "undone": str(uuid4())}
    assert owner.post("bench/undo", fields).status_code == 422
    assert owner.post("bench/undo", {**fields, "entry": "none"}).status_code == 400


def test_dates_are_kept_once_a_day(owner: Visitor, tmp_path: Path) -> None:
    seen = owner.get("bench")
    kept = owner.post("bench/keep", fields_of(seen, action="keep"))
    assert newest(tmp_path / "marenz").kind is EntryKind.FORECAST
    assert "Today’s dates are kept" in words_of(kept)
    again = owner.post("bench/keep", {"entry": str(uuid4())})
    assert again.status_code == 200
    assert history(tmp_path / "marenz", today=TODAY, last=9).number == 2


def test_dates_that_can_not_be_written_down_are_said(owner: Visitor, tmp_path: Path) -> None:
    """The id is that of another entry."""
    owner.get("bench")
    id_ = newest(tmp_path / "marenz").id
    answer = owner.post("bench/keep", {"entry": id_})
    assert answer.status_code == 422
    assert "is there already and says" in words_of(answer)


def calendar_made_by_the_command(folder: Path) -> str:
    """Its events are those of the sheet, so that one takes the place of the other."""
    file = folder.parent / "made.ics"
    found = order_of_work(folder, today=TODAY, choice=Choice())
    assert found.order is not None
    write_calendar(file, found.order.dates, force=found.checked.force.title, made=NOW)
    return file.read_text("utf-8")


def test_milestones_and_game_nights_are_a_calendar(tmp_path: Path) -> None:
    force_of(
        tmp_path,
        OWN + MINUTES.replace("}}}", "}}, week: 1 h}") + "aim: {game nights: [2026-03-20]}\n",
    )
    visitor = Visitor(tmp_path / "own")
    said = words_of(visitor.get("bench"))
    assert re.search(r"Game night smallest legal force whole top 20 Mar \d+ in 100", said)
    answer = visitor.get("bench/calendar.ics")
    assert answer.headers["content-type"].startswith("text/calendar")
    assert answer.text.startswith("BEGIN:VCALENDAR\r\n")
    assert "Game night" in answer.text
    made = calendar_made_by_the_command(tmp_path / "own")
    uids = [line for line in answer.text.splitlines() if line.startswith("UID:")]
    assert uids == [line for line in made.splitlines() if line.startswith("UID:")]
    assert len(uids) == 5


def test_game_nights_and_milestones_that_are_not_shown_are_counted(tmp_path: Path) -> None:
    own = ", ".join(f"{{name: {name}}}" for name in ("club", "show", "away"))
    force_of(
        tmp_path,
        OWN
        + MINUTES.replace("}}}", f"}}}}, week: 1 h, playable: [{own}]}}")
        + "aim: {game nights: [every week from 2026-03-20 until 2026-05-08]}\n",
    )
    said = words_of(Visitor(tmp_path / "own").get("bench"))
    assert (
        "2 more nights within a year and 1 more milestone on each: the calendar has them all."
    ) in said


def test_a_date_far_away_is_said_with_its_year(tmp_path: Path) -> None:
    force_of(tmp_path, OWN + MINUTES.replace("}}}", "}}, week: 1 min}"))
    said = words_of(Visitor(tmp_path / "own").get("bench"))
    assert re.search(
        r"Half chance by [A-Z][a-z]{2} 2028, four in five by [A-Z][a-z]{2} 20\d\d", said
    )


def test_without_a_week_there_are_no_dates_and_no_weeks(tmp_path: Path) -> None:
    force_of(tmp_path, OWN + MINUTES)
    seen = Visitor(tmp_path / "own").get("bench")
    said = words_of(seen)
    assert "can be played after 2 h of work." in said
    assert "Fit to play by" not in said
    assert "week 1" not in said
    assert not [each for each in drawings(seen) if "logged" in each]


def test_when_all_is_done_nothing_is_left(tmp_path: Path) -> None:
    force_of(tmp_path, OWN + MINUTES + "stock stands: {section: {based: 2}}\n")
    visitor = Visitor(tmp_path / "own")
    seen = visitor.get("bench")
    said = words_of(seen)
    assert "Nothing is left to do at the bench. Playable now: smallest legal force." in said
    assert "Work ladder" not in said
    assert "smallest legal force 0 now" in said


def test_a_stop_in_the_files_is_the_whole_sheet(tmp_path: Path) -> None:
    force_of(tmp_path, OWN)
    visitor = Visitor(tmp_path / "own")
    for address in ("bench", "bench/calendar.ics"):
        seen = visitor.get(address)
        assert "No minutes are given for rifleman" in words_of(seen)
    visitor.get("parade")
    sent = visitor.get("holdings/log", kind="noted")
    answer = visitor.post("bench/session", {"entry": str(uuid4())}, seen=sent)
    assert answer.status_code == 409


def test_what_is_doubtful_about_the_files_stands_at_the_foot(bare: Response) -> None:
    assert re.search(r"\d+ remarks? on the files", words_of(bare))
