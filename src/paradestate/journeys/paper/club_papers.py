"""Papers of the club: the notice for its board, and the sheet to sign out by."""

from collections.abc import Iterator, Mapping

from paradestate.core.club.week import monday_of
from paradestate.core.game_night import nights_within
from paradestate.core.paper.club_notice import WEEKS, ClubNotice, Played, club_notice, last_day
from paradestate.core.paper.paper import Draft
from paradestate.core.paper.sign_out_sheet import SignOutSheet, sign_out_sheet
from paradestate.core.span import DateSpan
from paradestate.journeys.check import Checked
from paradestate.journeys.club.club_weeks import club_weeks
from paradestate.journeys.desk import cupboard_of
from paradestate.journeys.holdings import holdings
from paradestate.journeys.paper.paper_kind import Desk


def notice_of(desk: Desk) -> Draft[ClubNotice]:
    """What the forces of the collection do on the days to come, and what is booked here."""
    known = holdings(desk.folder, today=desk.today, memory=desk.memory)
    if known.state is None:
        return Draft(shown=None)
    span = DateSpan(first=desk.today, last=last_day(desk.today))
    found = club_weeks(
        desk.folder,
        today=desk.today,
        first=monday_of(desk.today),
        number=WEEKS + 1,  # the first one has begun already
        memory=desk.memory,
    )
    return club_notice(
        tuple(_played(known.forces, span=span)),
        promises=known.state.promises,
        cupboard=cupboard_of(known.forces, known.state.held, parts={}),
        today=desk.today,
        weeks=found.weeks,
    )


def _played(forces: Mapping[str, Checked], *, span: DateSpan) -> Iterator[Played]:
    for name, read in forces.items():
        aim = read.force.aim
        nights = () if aim is None else nights_within(aim.game_nights, span=span)
        yield Played(name=name, title=read.force.title, nights=nights)


def sign_out_of(desk: Desk) -> Draft[SignOutSheet]:
    """The evenings of this week and the next ones."""
    found = club_weeks(
        desk.folder, today=desk.today, first=monday_of(desk.today), memory=desk.memory
    )
    answer = found.answer
    return sign_out_sheet(
        answer.club,
        found.weeks,
        needs={name: each.figures for name, each in answer.needs.items()},
        today=desk.today,
    )
