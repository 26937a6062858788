"""The sign-out sheet: for each evening what goes out for whom, to be signed for and counted back.

Nobody's name is printed but a keeper's: who takes something writes his own.
"""

import datetime
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.club.booking import Booking, Box, Club
from paradestate.core.club.loan import lent_on, with_late_away
from paradestate.core.club.week import Week
from paradestate.core.paper.paper import Draft
from paradestate.core.promise import weekday_words
from paradestate.core.sentence.club_week import game_words, times_words
from paradestate.core.sentence.wording import capital, counted, listed, plural


@dataclass(frozen=True, slots=True, kw_only=True)
class SignOutLine:
    """So many of a kind."""

    number: int
    what: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SignOutCard:
    """What somebody signs for at once: a box, or what a game takes that lies in none."""

    title: str
    whose: str
    """Who keeps it, for which games it goes out, or that it isn't here."""
    lines: tuple[SignOutLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherBox:
    """A box that no game of the evening has booked."""

    name: str
    keeper: str
    holds: str
    is_away: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class SignOutEvening:
    """One day on which something is played."""

    day: str
    games: tuple[str, ...]
    cards: tuple[SignOutCard, ...]
    others: tuple[OtherBox, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SignOutSheet:
    """An evening to a page, or as many pages as it needs."""

    evenings: tuple[SignOutEvening, ...]


Needs = Mapping[str, Mapping[str, int]]
"""Booking to its figures by kind; one that couldn't be counted isn't in it."""


def sign_out_sheet(
    club: Club, weeks: Sequence[Week], *, needs: Needs, today: datetime.date
) -> Draft[SignOutSheet]:
    """The evenings from today on; none where nothing is booked."""
    club = with_late_away(club, today)
    evenings = tuple(
        _evening(club, week, day=day, needs=needs)
        for week in weeks
        for day in week.booked
        if day >= today
    )
    return Draft(shown=SignOutSheet(evenings=evenings) if evenings else None)


def _evening(club: Club, week: Week, *, day: datetime.date, needs: Needs) -> SignOutEvening:
    games = week.games(day)
    booked = tuple(dict.fromkeys(box for game in games for box in game.borrows))
    boxes = [club.boxes[name] for name in booked if name in club.boxes]
    others = (box for box in club.boxes.values() if box.name not in booked)
    return SignOutEvening(
        day=weekday_words(day),
        games=tuple(f"{capital(game_words(each))}." for each in games),
        cards=(
            *(_box_card(box, club, games=games) for box in boxes),
            *_game_cards(games, boxes, needs=needs),
        ),
        others=tuple(_other(box, club, day=day) for box in others),
    )


def _box_card(box: Box, club: Club, *, games: Sequence[Booking]) -> SignOutCard:
    own = [each for each in games if box.name in each.borrows]
    day = own[0].hours.on
    keeper = box.keeper_on(day)
    kept = f"kept by {keeper}; " if keeper else ""
    away = "; out already: is it back?" if lent_on(club, box.name, day=day) else ""
    return SignOutCard(
        title=capital(box.name),
        whose=f"{kept}for {listed(_when(each) for each in own)}{away}",
        lines=tuple(_lines(box.holds)),
    )


def _when(booking: Booking) -> str:
    return f"{booking.name}, {times_words(booking.hours)}"


def _game_cards(
    games: Sequence[Booking], boxes: Sequence[Box], *, needs: Needs
) -> Iterator[SignOutCard]:
    """What each game needs beyond its boxes; a box of several games serves the first of them."""
    left = {box.name: box.holds for box in boxes}
    for game in games:
        own = [left.pop(name) for name in game.borrows if name in left]
        wanted = needs.get(game.name)
        if wanted is None:
            yield SignOutCard(
                title=f"For {game.name}",
                whose=f"{times_words(game.hours)}; what it needs isn't known: write it down",
                lines=(),
            )
            continue
        loose = {
            kind: number - sum(holds.get(kind, 0) for holds in own)
            for kind, number in wanted.items()
        }
        lines = tuple(_lines(loose))
        if lines:
            beside = f", beside {listed(game.borrows)}" if game.borrows else ""
            yield SignOutCard(
                title=f"For {game.name}", whose=f"{times_words(game.hours)}{beside}", lines=lines
            )


def _lines(numbers: Mapping[str, int]) -> Iterator[SignOutLine]:
    for kind, number in numbers.items():
        if number > 0:
            yield SignOutLine(number=number, what=kind if number == 1 else plural(kind))


def _other(box: Box, club: Club, *, day: datetime.date) -> OtherBox:
    return OtherBox(
        name=capital(box.name),
        keeper=box.keeper_on(day),
        holds=counted(box.holds),
        is_away=lent_on(club, box.name, day=day) is not None,
    )
