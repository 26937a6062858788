"""The club through its page: weeks, what is short, what mends it, boxes and what is out."""

from pathlib import Path

import pytest
from httpx2 import Response

from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_request import LogRequest
from paradestate.journeys.log import log
from paradestate.journeys.new import new_from_example
from tests.web.visitor import NOW, Visitor, forms_of, words_of

STOCK = """\
club:
  boxes:
    box 9: {keeper: Ann, holds: {light truck: 6}}
    box 3: {keeper: secretary, holds: {light truck: 6}, counted: yes}
  bookings:
"""
RIVER = "    river game: {hours: 2026-03-12 20:00-22:00, needs: {light truck: 8}}\n"
HILL = "    hill game: {hours: 2026-03-12 20:00-22:00, needs: {light truck: 1}}\n"
PAST = "    past game: {hours: 2026-03-03 20:00-22:00, needs: {light truck: 50}}\n"
FAR = "    far game: {hours: 2026-06-04 20:00-22:00, needs: {light truck: 1}}\n"
UNKNOWN = "    odd game: {hours: 2026-03-19 20:00-22:00, force: none such}\n"
LATE = "  loans:\n    box 3: {to: borrower 7, since: 2026-02-01, until: 2026-02-20}\n"
OWNED = "stock: {light truck: {based: 8, painted: 2}}\n"


def written(place: Path, text: str) -> Visitor:
    folder = place / "marenz"
    new_from_example(folder, name="marenz")
    (folder / "club.yaml").write_text(text, encoding="utf-8")
    return Visitor(folder)


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Visitor:
    """Looks at one folder, which nothing here writes into."""
    text = OWNED + STOCK + PAST + RIVER + HILL + FAR + UNKNOWN
    return written(tmp_path_factory.mktemp("club"), text)


@pytest.fixture
def own(tmp_path: Path) -> Visitor:
    """Looks at a folder of its own."""
    return written(tmp_path, OWNED + STOCK + RIVER + HILL)


def test_what_is_short_is_said_first_and_drawn(shared: Visitor) -> None:
    """Row 82: double booking at the club."""
    seen = shared.get("club")
    said = words_of(seen)
    assert seen.status_code == 200
    assert "Not all games can be played as they are booked: Thursday 12 March 2026." in said
    assert "Light truck: 9 booked, 8 sound, 1 short, 20:00-22:00." in said
    assert "Not finished or in repair, and given out to nobody: 2 light trucks." in said
    assert "Move river game to 18:00-20:00" in said
    assert "Borrow box 9 from Ann for river game" in said
    assert 'fill="url(#tx-lack)"' in seen.text
    assert "Week of 2 March 2026" in said
    assert "1 game more is booked later." in said


def test_a_day_that_is_short_of_two_kinds_at_two_times_has_one_slip(tmp_path: Path) -> None:
    early = "    early game: {hours: 2026-03-12 19:00-21:00, needs: {rifleman: 500}}\n"
    seen = written(tmp_path, OWNED + STOCK + RIVER + HILL + early).get("club")
    assert seen.text.count('aria-label="Short on ') == 1
    said = words_of(seen)
    assert "Rifleman: 500 booked, 0 sound, 500 short, 19:00-20:00." in said
    assert "No single change lets all be played" in said


def test_a_week_stands_in_a_table_too(shared: Visitor) -> None:
    said = words_of(shared.get("club"))
    assert (
        "Light truck Thursday 12 March 2026 20:00-22:00 river game 8, hill game 1 9 8 nothing 1"
    ) in said


def test_a_day_that_is_over_shows_and_asks_for_nothing(shared: Visitor) -> None:
    seen = shared.get("club")
    assert "past game 50" in words_of(seen)
    ways = [each for each in forms_of(seen) if each.action.endswith("/mend")]
    assert all("2026-03-12" in each.fields["hours"] for each in ways)


def test_a_game_that_couldnt_be_counted_is_named(shared: Visitor) -> None:
    said = words_of(shared.get("club"))
    assert "no force of the collection is called 'none such'" in said
    assert "odd game, 20:00-22:00: all of none such, not counted" in said.replace("Odd", "odd")
    later = words_of(shared.get("club", **{"from": "2026-03-16"}))
    assert "What odd game needs isn’t known" in later


def test_other_weeks_are_a_step_away_as_far_as_the_calendar_goes(shared: Visitor) -> None:
    june = shared.get("club", **{"from": "2026-06-04"})
    assert "All games that are booked in these weeks can be played." in words_of(june)
    assert "This week" in words_of(june)
    assert "club?from=2026-05-04" in june.text
    for end in ("0001-01-01", "9999-12-31"):
        edge = shared.get("club", **{"from": end})
        assert edge.status_code == 200
        assert ("Earlier weeks" in edge.text) != ("Later weeks" in edge.text)


def test_a_day_that_cant_be_read_is_said_and_this_week_shown(shared: Visitor) -> None:
    seen = shared.get("club", **{"from": "soon"})
    assert seen.status_code == 422
    assert "Week of 2 March 2026" in words_of(seen)


def text_of(place: Path) -> str:
    return (place / "marenz" / "club.yaml").read_text(encoding="utf-8")


def followed(own: Visitor, done: Response) -> str:
    assert done.status_code == 200, done.text
    assert len(own.seen) == 1
    return words_of(done)


def test_one_press_moves_a_game_and_another_puts_it_back(own: Visitor, tmp_path: Path) -> None:
    done = own.fill(own.get("club"), "club/mend")
    said = followed(own, done)
    assert "Written into club.yaml; the version before is kept." in said
    assert "All games that are booked in these weeks can be played." in said
    assert "2026-03-12 18:00-20:00" in text_of(tmp_path)
    back = own.fill(done, "club/put-back")
    assert "stands again in club.yaml" in followed(own, back)
    assert "18:00" not in text_of(tmp_path)


def test_one_press_borrows_a_box(own: Visitor, tmp_path: Path) -> None:
    seen = own.get("club")
    forms = [each for each in forms_of(seen) if each.action.endswith("/mend")]
    which = next(n for n, each in enumerate(forms) if each.fields["way"].startswith("Borrow"))
    done = own.fill(seen, "club/mend", which=which)
    assert "Written into club.yaml" in followed(own, done)
    assert "borrows: [box 9]" in text_of(tmp_path)


def test_what_isnt_offered_any_more_isnt_written(own: Visitor, tmp_path: Path) -> None:
    seen = own.get("club")
    before = OWNED + STOCK + RIVER
    (tmp_path / "marenz" / "club.yaml").write_text(before, encoding="utf-8")
    assert own.fill(seen, "club/mend").status_code == 409
    assert text_of(tmp_path) == before
    assert own.post("club/put-back", {"former": "club.yaml"}, seen=seen).status_code == 409


def test_a_box_that_is_late_is_named_and_one_press_says_that_it_is_back(
    tmp_path: Path,
) -> None:
    own = written(tmp_path, OWNED + STOCK + RIVER + LATE)
    seen = own.get("club")
    said = words_of(seen)
    assert "Late: Box 3 is out with borrower 7, 1 February 2026 to 20 February 2026." in said
    assert "out with borrower 7 since 1 February 2026 until 20 February 2026, late" in said
    assert "1 box, 1 late" in said
    done = own.fill(seen, "club/back")
    assert "Out no box" in followed(own, done).replace("0 boxes", "no box")
    assert "borrower 7" not in text_of(tmp_path)
    assert own.post("club/back", {"box": "box 3"}).status_code == 422


def test_figures_that_the_journal_has_lent_are_out_too(own: Visitor, tmp_path: Path) -> None:
    lending = LogRequest(
        id="00000000-0000-4000-8000-000000000001",
        kind=EntryKind.LENT,
        written=NOW,
        on=NOW.date(),
        figures={"light truck": 3},
        from_stage="based",
    )
    assert log(tmp_path / "marenz", today=NOW.date(), request=lending).entry is not None
    said = words_of(own.get("club"))
    assert "Lent: 3 light trucks based." in said
    assert "9 booked, 5 sound, 4 short" in said


def test_a_force_without_a_club_is_told_how_to_begin(tmp_path: Path) -> None:
    seen = written(tmp_path, "")
    assert "Nothing is booked, and no box is written down." in words_of(seen.get("club"))


def test_files_that_cant_be_read_are_said(tmp_path: Path) -> None:
    seen = written(tmp_path, "club: {bookings: {a: {hours: late}}}\n").get("club")
    assert "isn't a day with hours" in words_of(seen)


def test_slips_in_bookings_and_loans_stand_above_the_weeks(tmp_path: Path) -> None:
    nothing = "    odd game: {hours: 2026-03-12 21:00-23:00, for: Ann 01632 960123}\n"
    backwards = "  loans:\n    box 3: {to: steward, since: 2026-03-20, until: 2026-03-02}\n"
    seen = words_of(written(tmp_path, OWNED + STOCK + RIVER + nothing + backwards).get("club"))
    above = seen.partition("Week of")[0]
    assert "odd game: nothing is said of what it needs." in above
    assert "'Ann 01632 960123' looks like somebody's telephone number" in above
    assert "box 3 would be back from steward on 2 March 2026, before it goes out" in above
    assert "here; goes out to steward on 20 March 2026" in seen
