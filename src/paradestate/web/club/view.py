"""Everything that the sheet of the club says about some weeks."""

import datetime
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from paradestate.core.club.booking import Booking, Box
from paradestate.core.club.week import KindSpell, Use, Week, WeekRow
from paradestate.core.finding import Finding
from paradestate.core.promise import weekday_words
from paradestate.core.sentence.club import lent_sentence, where_words
from paradestate.core.sentence.club_week import day_sentences, times_words
from paradestate.core.sentence.wording import capital, counted, day_words, listed, several
from paradestate.journeys.club.book import BookedSpell
from paradestate.journeys.club.club_weeks import ClubWeeks
from paradestate.sheet.booked_hours import booked_hours
from paradestate.sheet.club_week import PAPER, club_days, club_week
from paradestate.sheet.svg import Drawing
from paradestate.web.club.slip import ShortSlip, short_slips

LENT_OUT = "lent-out"
OWN_CODES = frozenset({"booked-twice", "loan-late", LENT_OUT})
"""Findings that the sheet says in its own way."""
CLUB_CODES = frozenset(
    {
        "booking-not-counted",
        "booking-of-nothing",
        "box-at-once",
        "box-away",
        "boxes-hold-more",
        "contact-in-files",
        "handed-over-away",
        "loan-backwards",
    }
)


@dataclass(frozen=True, slots=True, kw_only=True)
class TableLine:
    """A kind or a box in some hours."""

    day: str
    hours: str
    name: str
    games: str
    booked: str
    sound: str
    stands_in: str
    short: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WeekView:
    """One week."""

    id: str
    title: str
    said: str
    """How many games, and on how many days something is short."""
    sentences: tuple[tuple[str, tuple[str, ...]], ...]
    """Each booked day with its games in words."""
    wide: Drawing | None
    paper: Drawing | None
    days: tuple[Drawing, ...]
    lines: tuple[TableLine, ...]
    sums: tuple[tuple[str, Drawing], ...]
    """Kinds that several games have at once, each with its day."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxLine:
    """A box."""

    key: str
    """As the files call it."""
    name: str
    keeper: str
    holds: str
    where: str
    is_out: bool
    is_late: bool
    booked: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ClubView:
    """What is shown of some weeks."""

    boxes: tuple[tuple[str, str], ...]
    lead: str
    is_short: bool
    slips: tuple[ShortSlip, ...]
    weeks: tuple[WeekView, ...]
    later: int
    box_lines: tuple[BoxLine, ...]
    late: tuple[str, ...]
    """What should be back by now."""
    out: tuple[str, ...]
    """What else is out: boxes by the files, figures by the journal."""
    doubts: tuple[Finding, ...]
    remarks: tuple[Finding, ...]


def club_view(found: ClubWeeks, *, today: datetime.date) -> ClubView:
    """Everything about these weeks."""
    answer = found.answer
    short = [each for each in found.spells if each.spell.short and each.spell.hours.on >= today]
    late = {each.box for each in answer.late}
    loans = answer.club.loans.values()
    return ClubView(
        boxes=tuple(_boxes(found, short=short)),
        lead=_lead(found, short=short),
        is_short=bool(short),
        slips=tuple(short_slips(short, found=found)),
        weeks=tuple(_week(each) for each in found.weeks),
        later=len(found.later),
        box_lines=tuple(
            _box(each, found=found, today=today) for each in answer.club.boxes.values()
        ),
        late=tuple(capital(lent_sentence(each)) for each in answer.late),
        out=(
            *(capital(lent_sentence(each)) for each in loans if each.box not in late),
            *(each.message for each in answer.findings if each.code == LENT_OUT),
        ),
        doubts=tuple(each for each in answer.findings if each.code in CLUB_CODES),
        remarks=tuple(each for each in answer.findings if each.code not in CLUB_CODES | OWN_CODES),
    )


def _games(found: ClubWeeks) -> tuple[Booking, ...]:
    return tuple(each for week in found.weeks for each in week.bookings)


def _boxes(found: ClubWeeks, *, short: Sequence[BookedSpell]) -> Iterator[tuple[str, str]]:
    days = {each.spell.hours.on for each in short}
    yield "Booked", several(len(_games(found)), "game")
    yield "Short", f"on {several(len(days), 'day')}" if days else "nothing"
    out = len(found.answer.club.loans)
    late = len(found.answer.late)
    yield "Out", several(out, "box") + (f", {late} late" if late else "")


def _lead(found: ClubWeeks, *, short: Sequence[BookedSpell]) -> str:
    games = _games(found)
    unknown = [name for week in found.weeks for name in week.uncounted]
    if short:
        days = list(dict.fromkeys(weekday_words(each.spell.hours.on) for each in short))
        return f"Not all games can be played as they are booked: {listed(days)}."
    if not games:
        return "Nothing is booked in these weeks."
    if unknown:
        return f"What {listed(unknown)} {_need(unknown)} isn’t known; the others can be played."
    return "All games that are booked in these weeks can be played."


def _need(names: Sequence[str]) -> str:
    return "needs" if len(names) == 1 else "need"


def _week(week: Week) -> WeekView:
    short = {each.hours.on for row in week.rows for each in row.spells if each.short}
    said = several(len(week.bookings), "game")
    if short:
        said += f", short on {several(len(short), 'day')}"
    return WeekView(
        id=f"week-{week.first.isoformat()}",
        title=f"Week of {day_words(week.first)}",
        said=said,
        sentences=tuple(
            (weekday_words(day), tuple(day_sentences(week, day))) for day in week.booked
        ),
        wide=club_week(week),
        paper=club_week(week, width=PAPER),
        days=club_days(week),
        lines=tuple(_lines(week)),
        sums=tuple(
            (f"{capital(row.name)}, {weekday_words(day)}", booked_hours(row, day))
            for day in week.booked
            for row in week.rows
            if _is_shared(row, day)
        ),
    )


def _is_shared(row: WeekRow, day: datetime.date) -> bool:
    """Whether several games have some of a kind at once."""
    return any(len(row.in_hours(each.hours)) > 1 for each in row.on(day).spells)


def _lines(week: Week) -> Iterator[TableLine]:
    for day in week.booked:
        for row in week.rows:
            own = row.on(day)
            yield from (_line(row, spell) for spell in own.spells)
            if row.is_box:
                yield from (_box_use(row, use) for use in own.uses)


def _box_use(row: WeekRow, use: Use) -> TableLine:
    return TableLine(
        day=weekday_words(use.hours.on),
        hours=times_words(use.hours),
        name=capital(row.name),
        games=use.game,
        booked="whole",
        sound="",
        stands_in="",
        short="",
    )


def _line(row: WeekRow, spell: KindSpell) -> TableLine:
    kept = f", {spell.kept} kept in boxes" if spell.kept else ""
    instead = {each.kind: each.number for each in spell.stand_ins}
    games = (f"{use.game} {use.number}" for use in row.in_hours(spell.hours))
    return TableLine(
        day=weekday_words(spell.hours.on),
        hours=times_words(spell.hours),
        name=capital(row.name),
        games=", ".join(games),
        booked=f"{spell.booked}",
        sound=f"{spell.sound}{kept}",
        stands_in=counted(instead) or "nothing",
        short=f"{spell.short}" if spell.short else "no",
    )


def _box(box: Box, *, found: ClubWeeks, today: datetime.date) -> BoxLine:
    lent = found.answer.club.loans.get(box.name)
    booked = (
        f"{each.name}, {day_words(each.hours.on)}"
        for each in _games(found)
        if box.name in each.borrows
    )
    return BoxLine(
        key=box.name,
        name=capital(box.name),
        keeper=box.keeper_on(today) or "nobody is named",
        holds=counted(box.holds),
        where=where_words(box, lent, today=today),
        is_out=lent is not None,
        is_late=lent is not None and lent.is_late(today),
        booked="; ".join(booked),
    )
