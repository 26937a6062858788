"""Whether there is enough for all games at every moment, and what would put it right.

Between two moments at which a game begins or ends nothing changes, so each such spell is looked at
once. A box of our own that a game borrows goes out whole: nobody else has what that game doesn't
need of it. One that is out with somebody is given to none but him.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise
from typing import TypeAlias

from paradestate.core.club.booking import DAY, Booking, Box, Club, Hours, Lent
from paradestate.core.club.giving_out import Supply, given_out
from paradestate.core.club.loan import games_with, lent_on
from paradestate.core.figure import FigureKind, StandIn
from paradestate.core.number import summed


@dataclass(frozen=True, slots=True, kw_only=True)
class Spell:
    """Some hours in which the same games are played."""

    hours: Hours
    games: tuple[str, ...]
    booked: Mapping[str, int]
    """Figure kind to how many all these games need together."""
    sound: Mapping[str, int]
    """Figure kind to how many there are to give out, borrowed ones among them."""
    short: Mapping[str, int]
    """Figure kind to how many are lacking; empty where all can play."""
    stand_ins: tuple[StandIn, ...] = ()
    kept: Mapping[str, Mapping[str, int]] = field(default_factory=dict)
    """Box of our own that is out whole with a game to what that game doesn't need of it."""
    away: tuple[str, ...] = ()
    """Boxes that are out with somebody on that day."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stock:
    """What a club has to give out."""

    sound: Mapping[str, int]
    """Figure kind to how many are finished and here."""
    in_repair: Mapping[str, int] = field(default_factory=dict)
    """Figure kind to how many are here and not finished."""
    figures: Mapping[str, FigureKind] = field(default_factory=dict)
    """Which kinds may stand in for which."""


def spells(club: Club, stock: Stock) -> tuple[Spell, ...]:
    """Each spell in which something is played, in the order of time."""
    return tuple(
        _spell(hours, games, club=club, stock=stock)
        for hours, games in _in_time(list(club.bookings.values()))
    )


def _in_time(bookings: Sequence[Booking]) -> Iterator[tuple[Hours, tuple[Booking, ...]]]:
    for on in sorted({each.hours.on for each in bookings}):
        that_day = [each for each in bookings if each.hours.on == on]
        ends = {end for each in that_day for end in (each.hours.start, each.hours.end)}
        edges = sorted(ends)
        for start, end in pairwise(edges):
            hours = Hours(on=on, start=start, end=end)
            games = tuple(each for each in that_day if each.hours.overlaps(hours))
            if games:
                yield hours, games


def _spell(hours: Hours, games: Sequence[Booking], *, club: Club, stock: Stock) -> Spell:
    booked = summed(each.needs for each in games)
    supplies = _supplies(games, club=club, stock=stock)
    sound = summed(each.figures for each in supplies)
    given = given_out({each.name: each.needs for each in games}, supplies, figures=stock.figures)
    return Spell(
        hours=hours,
        games=tuple(each.name for each in games),
        booked=booked,
        sound={kind: sound.get(kind, 0) for kind in booked},
        short=given.short,
        stand_ins=given.stand_ins,
        kept=_kept(games, club=club),
        away=tuple(name for name in club.boxes if lent_on(club, name, day=hours.on)),
    )


def _supplies(games: Sequence[Booking], *, club: Club, stock: Stock) -> tuple[Supply, ...]:
    """What any game may have, then what is in boxes of our own that are out whole.

    A box holds what the files say as far as so much is sound; those first in the files have it.
    """
    left = dict(stock.sound)
    whole: list[Supply] = []
    for box in club.boxes.values():
        players = games_with(club, box.name, games=games)
        is_gone = lent_on(club, box.name, day=games[0].hours.on) is not None
        if not box.is_counted and players:
            left = summed((left, box.holds))
        elif box.is_counted and (players or is_gone):
            held = {kind: min(number, left.get(kind, 0)) for kind, number in box.holds.items()}
            left |= {kind: left.get(kind, 0) - number for kind, number in held.items()}
            whole += [Supply(figures=held, games=players)] if players else []
    return (Supply(figures=left), *whole)


def _kept(games: Sequence[Booking], *, club: Club) -> Mapping[str, Mapping[str, int]]:
    """Box of our own to what the games that have it don't need of it."""
    needs = {each.name: dict(each.needs) for each in games}
    found: dict[str, Mapping[str, int]] = {}
    for box in club.boxes.values():
        players = games_with(club, box.name, games=games)
        if box.is_counted and players:
            over = {
                kind: _over(kind, box, needs=[needs[each] for each in players])
                for kind in box.holds
            }
            found[box.name] = {kind: number for kind, number in over.items() if number}
    return {name: over for name, over in found.items() if over}


def _over(kind: str, box: Box, *, needs: Sequence[dict[str, int]]) -> int:
    """How many of a box the games don't need; what they do is taken off their needs."""
    left = box.holds[kind]
    for each in needs:
        used = min(left, each.get(kind, 0))
        each[kind] = each.get(kind, 0) - used
        left -= used
    return left


@dataclass(frozen=True, slots=True, kw_only=True)
class Move:
    """A game at another time of the same day."""

    booking: str
    hours: Hours


@dataclass(frozen=True, slots=True, kw_only=True)
class Loan:
    """A box that is borrowed for a game."""

    booking: str
    box: Box


@dataclass(frozen=True, slots=True, kw_only=True)
class Sharing:
    """Only what is needed is taken out of a box of our own, and it isn't sent out whole."""

    box: Box


@dataclass(frozen=True, slots=True, kw_only=True)
class BackInTime:
    """A box that is out with somebody is back by then."""

    lent: Lent


Remedy: TypeAlias = Move | Loan | Sharing | BackInTime


def remedies(club: Club, stock: Stock, *, spell: Spell) -> tuple[Remedy, ...]:
    """Each single change after which nothing is short on that day any more.

    A game begins as another ends, or ends as another begins, or a box is borrowed for it; a box of
    our own isn't sent out whole, or is back from its loan.
    """
    that_day = {
        name: each for name, each in club.bookings.items() if each.hours.on == spell.hours.on
    }
    alone = replace(club, bookings=that_day)
    return tuple(
        remedy
        for remedy in _tried(alone, spell)
        if not any(each.short for each in spells(changed(alone, remedy), stock))
    )


def _tried(club: Club, spell: Spell) -> Iterator[Remedy]:
    """Changes of a club that has the bookings of that day alone."""
    for name in spell.games:
        own = club.bookings[name].hours
        long = own.end - own.start
        starts = {
            at
            for each in club.bookings.values()
            for at in (each.hours.end, each.hours.start - long)
        }
        for start in sorted(starts, key=lambda at: (abs(at - own.start), at)):
            if 0 <= start <= DAY - long and start != own.start:
                yield Move(booking=name, hours=own.moved_to(start))
    yield from _tried_boxes(club, spell)


def _tried_boxes(club: Club, spell: Spell) -> Iterator[Remedy]:
    for box in club.boxes.values():
        lent = lent_on(club, box.name, day=spell.hours.on)
        if not any(kind in box.holds for kind in spell.short):
            continue
        if lent is not None:
            yield BackInTime(lent=lent)
        elif not box.is_counted:
            yield Loan(booking=spell.games[0], box=box)
        elif box.name in spell.kept:
            yield Sharing(box=box)


def changed(club: Club, remedy: Remedy) -> Club:
    """The club with one change made."""
    match remedy:
        case BackInTime(lent=lent):
            loans = {name: each for name, each in club.loans.items() if each != lent}
            return replace(club, loans=loans)
        case Sharing(box=box):
            bookings = {
                name: replace(each, borrows=tuple(one for one in each.borrows if one != box.name))
                for name, each in club.bookings.items()
            }
            return replace(club, bookings=bookings)
        case Move(booking=name, hours=hours):
            return _with_booking(club, replace(club.bookings[name], hours=hours))
        case Loan(booking=name, box=box):
            before = club.bookings[name]
            return _with_booking(club, replace(before, borrows=(*before.borrows, box.name)))


def _with_booking(club: Club, booking: Booking) -> Club:
    return replace(club, bookings={**club.bookings, booking.name: booking})
