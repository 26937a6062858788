"""Folders with a club in them, for tests of bookings."""

import datetime
from pathlib import Path

from paradestate.journeys.club.book_change import ClubPen

TODAY = datetime.date(2026, 12, 1)
AT = datetime.datetime(2026, 12, 1, 21, 14, 9, tzinfo=datetime.UTC)
CLUB = """\
# what the club shares
club:
  boxes:
    box 3: {counted: yes, keeper: secretary, holds: {rifleman: 2}}  # green lid
  bookings:
    river: {hours: 2026-12-03 20:00-22:00, needs: {rifleman: 2}}  # on the lawn
"""


def with_club(folder: Path, text: str = CLUB) -> Path:
    """The folder with such a file in it."""
    (folder / "club.yaml").write_text(text, encoding="utf-8")
    return folder


def club_of(folder: Path) -> str:
    return (folder / "club.yaml").read_text(encoding="utf-8")


def pen(folder: Path, *, later: int = 0) -> ClubPen:
    """Writes so many seconds later."""
    return ClubPen(folder=folder, today=TODAY, at=AT + datetime.timedelta(seconds=later))
