"""Whether there is enough for all games at every moment, and what would put it right.

Between two moments at which a game begins or ends nothing changes, so each such spell is looked at
once. In it figures are given out by the cheapest flow: as many needs as can be are met, with as few
stand-ins as that takes, good ones before poor ones.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise
from typing import TypeAlias

from paradestate.core.allotment import MATCH_COST
from paradestate.core.club.booking import DAY, Booking, Box, Club, Hours
from paradestate.core.figure import FigureKind, StandIn
from paradestate.core.flow import Arc, cheapest_flow
from paradestate.core.number import summed

SOURCE, SINK = "sound", "needed"


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
    boxes = dict.fromkeys(name for each in games for name in each.borrows)
    lent = (club.boxes[name].holds for name in boxes if name in club.boxes)
    sound = summed((stock.sound, *lent))
    short, stand_ins = _given_out(booked, sound, figures=stock.figures)
    return Spell(
        hours=hours,
        games=tuple(each.name for each in games),
        booked=booked,
        sound={kind: sound.get(kind, 0) for kind in booked},
        short=short,
        stand_ins=stand_ins,
    )


def _given_out(
    booked: Mapping[str, int], sound: Mapping[str, int], *, figures: Mapping[str, FigureKind]
) -> tuple[Mapping[str, int], tuple[StandIn, ...]]:
    """What is lacking, and who stands in."""
    arcs = [
        *(Arc(tail=SOURCE, head=f"{kind} is", room=number) for kind, number in sound.items()),
        *(Arc(tail=f"{kind} for", head=SINK, room=number) for kind, number in booked.items()),
    ]
    pairs = [
        (kind, other, cost)
        for kind in sound
        for other in booked
        if (cost := _cost(kind, stands_for=other, figures=figures)) is not None
    ]
    ways = [
        Arc(tail=f"{kind} is", head=f"{other} for", room=sound[kind], cost=cost)
        for kind, other, cost in pairs
    ]
    flow = cheapest_flow([*arcs, *ways], source=SOURCE, sink=SINK)
    met = dict(zip(booked, flow[len(sound) : len(arcs)], strict=True))
    short = {kind: number - met[kind] for kind, number in booked.items() if number > met[kind]}
    stand_ins = tuple(
        StandIn(kind=kind, stands_for=other, number=number)
        for (kind, other, _), number in zip(pairs, flow[len(arcs) :], strict=True)
        if number and kind != other
    )
    return short, stand_ins


def _cost(kind: str, *, stands_for: str, figures: Mapping[str, FigureKind]) -> int | None:
    if kind == stands_for:
        return 0
    known = figures.get(kind)
    match = known.may_stand_for.get(stands_for) if known else None
    return None if match is None else MATCH_COST[match]


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


Remedy: TypeAlias = Move | Loan


def remedies(club: Club, stock: Stock, *, spell: Spell) -> tuple[Remedy, ...]:
    """Each single change after which nothing is short on that day any more.

    A game begins as another ends, or ends as another begins, or a box is borrowed for it.
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
    for box in club.boxes.values():
        if any(kind in box.holds for kind in spell.short):
            yield Loan(booking=spell.games[0], box=box)


def changed(club: Club, remedy: Remedy) -> Club:
    """The club with one change made."""
    before = club.bookings[remedy.booking]
    if isinstance(remedy, Move):
        after = replace(before, hours=remedy.hours)
    else:
        after = replace(before, borrows=(*before.borrows, remedy.box.name))
    return replace(club, bookings={**club.bookings, remedy.booking: after})
