"""The weeks of a club from a folder, its papers, and what mends a day."""

import datetime
from pathlib import Path

import pytest

from paradestate.core.club.enough import Loan, Move
from paradestate.journeys.club.book_change import ClubPen, borrow_box, mend
from paradestate.journeys.club.club_weeks import WEEKS, club_weeks
from paradestate.journeys.paper.club_papers import notice_of, sign_out_of
from tests.journeys.paper.test_workshop_papers import desk_of

ON = datetime.date(2026, 3, 5)
MONDAY = datetime.date(2026, 3, 2)
AT = datetime.datetime(2026, 3, 5, 20, tzinfo=datetime.UTC)
CLUB = """\
format: 1
title: Trucks
figures: {light truck: {sort: vehicle}}
stands: {truck: {base: 40 x 20 mm, figures: {light truck: 1}}}
formations: {top: {parts: {truck: 2}}}
raise: {formation: top}
stock: {light truck: {based: 12, assembled: 2}}
club:
  boxes:
    box 9: {keeper: Ann, holds: {light truck: 6}}
  bookings:
    river game: {hours: 2026-03-12 20:00-22:00, needs: {light truck: 8}}
    hill game: {hours: 2026-03-12 20:00-22:00, stands: {truck: 8}, for: borrower 7}
    far game: {hours: 2026-04-30 20:00-22:00, needs: {light truck: 1}}
"""


@pytest.fixture
def trucks(tmp_path: Path) -> Path:
    folder = tmp_path / "trucks"
    folder.mkdir()
    (folder / "force.yaml").write_text(CLUB, encoding="utf-8")
    return folder


def pen(folder: Path) -> ClubPen:
    return ClubPen(folder=folder, today=ON, at=AT)


def test_story_27_two_games_of_eight_with_twelve_sound(trucks: Path) -> None:
    found = club_weeks(trucks, today=ON, first=MONDAY)
    assert len(found.weeks) == WEEKS
    (row,) = found.weeks[1].rows
    assert [(each.game, each.number) for each in row.uses] == [("river game", 8), ("hill game", 8)]
    assert row.spells[0].short == 4
    assert found.later == ("far game",)
    assert [each.spell.short for each in found.spells] == [{"light truck": 4}]
    whole = club_weeks(trucks, today=ON, first=MONDAY, number=9)
    assert (len(whole.spells), whole.later) == (2, ())


def test_each_way_out_can_be_written_and_then_both_can_be_played(trucks: Path) -> None:
    (short,) = club_weeks(trucks, today=ON, first=MONDAY).spells
    move = next(each for each in short.remedies if isinstance(each, Move))
    loan = next(each for each in short.remedies if isinstance(each, Loan))
    before = (trucks / "force.yaml").read_text(encoding="utf-8")
    for remedy in (move, loan):
        assert mend(pen(trucks), remedy).written is not None
        spells = club_weeks(trucks, today=ON, first=MONDAY).spells
        assert not any(each.spell.short for each in spells)
        (trucks / "force.yaml").write_text(before, encoding="utf-8")


def test_only_a_box_and_a_game_that_are_there_are_written(trucks: Path) -> None:
    for game, box in (("river game", "box 8"), ("sea game", "box 9")):
        refused = borrow_box(pen(trucks), game, box=box)
        assert refused.written is None
        assert refused.checked.findings[-1].effect == "Nothing was written."


def test_the_notice_has_the_games_and_nobodys_name(trucks: Path) -> None:
    shown = notice_of(desk_of(trucks)).shown
    assert shown is not None
    assert [len(table.days) for table in shown.tables] == [2]
    assert shown.tables[0].short == ("4 light trucks, 20:00-22:00", "")
    assert "Ann" not in repr(shown)
    assert "borrower" not in repr(shown)


def test_the_sign_out_sheet_has_an_evening_with_what_each_game_takes(trucks: Path) -> None:
    shown = sign_out_of(desk_of(trucks)).shown
    assert shown is not None
    (evening,) = shown.evenings
    assert evening.day == "Thursday 12 March 2026"
    assert [(card.title, card.lines[0].number) for card in evening.cards] == [
        ("For river game", 8),
        ("For hill game", 8),
    ]
    assert [each.keeper for each in evening.others] == ["Ann"]
