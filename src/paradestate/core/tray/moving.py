"""An arrangement changed by hand: two stands change places, or one goes to another tray.

In a straight row what stands there closes up, and the rows behind it move; the row and the tray
must be large enough for that. In lines of discs, and where nothing is in rows, only alike stands
change places. What forbids a move is said, and then nothing is moved.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction
from typing import TypeAlias

from paradestate.core.tray.ground import Ground
from paradestate.core.tray.laid import LaidRow, LaidTray, laid
from paradestate.core.tray.thing import Case, Lying, Piece, Put, Thing
from paradestate.core.tray.tight import Tight, nearest_to_the_far_side


class Bar(StrEnum):
    """What may forbid a move."""

    TOO_HIGH = "too high"
    ROW_TOO_WIDE = "row too wide"
    TRAY_TOO_SHALLOW = "tray too shallow"
    NOT_ALIKE = "not alike"
    NO_ROOM = "no room"


@dataclass(frozen=True, slots=True, kw_only=True)
class Barred:
    """Why a move can't be made."""

    bar: Bar
    thing: Thing
    """The one that would come where it may not."""
    case: Case
    row: int = 0
    """Counts from 1; nought where no row is meant."""
    needed: Fraction = Fraction(0)
    """Millimetres that the row or all rows would take."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Swap:
    """Two stands change places."""

    one: str
    other: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Transfer:
    """A stand goes to another tray."""

    thing: str
    to: str


Move: TypeAlias = Swap | Transfer
Trays: TypeAlias = Mapping[str, LaidTray]
"""Every tray by its name, those that hold nothing too."""


def names_in(move: Move) -> tuple[str, ...]:
    """The things that a move is about."""
    match move:
        case Swap(one=one, other=other):
            return one, other
        case Transfer(thing=thing):
            return (thing,)


def moved(ground: Ground, trays: Trays, *, move: Move) -> Trays | Barred:
    """The trays after the move, or what forbids it."""
    match move:
        case Swap():
            return _swapped(trays, move)
        case Transfer():
            return _transferred(ground, trays, move=move)


def home(trays: Trays, name: str) -> str:
    """The tray that holds a thing. Raises KeyError where none does."""
    for tray in trays.values():
        if any(each.thing.name == name for each in tray.lying):
            return tray.case.name
    raise KeyError(name)


def _lying(trays: Trays, name: str) -> Lying:
    return next(each for tray in trays.values() for each in tray.lying if each.thing.name == name)


def _swapped(trays: Trays, move: Swap) -> Trays | Barred:
    one, other = _lying(trays, move.one), _lying(trays, move.other)
    after = dict(trays)
    for name in dict.fromkeys((home(trays, move.one), home(trays, move.other))):
        changed = _exchanged(trays[name], {move.one: other, move.other: one})
        if isinstance(changed, Barred):
            return changed
        after[name] = changed
    return after


def _exchanged(tray: LaidTray, coming: Mapping[str, Lying]) -> LaidTray | Barred:
    """A tray in which those that lie there give way to those that come."""
    rows: list[LaidRow] = []
    for number, row in enumerate(tray.rows, start=1):
        leaving = [each for each in row.lying if each.thing.name in coming]
        for each in leaving:
            new = coming[each.thing.name]
            if tray.case.is_too_low_for(new.thing):
                return Barred(bar=Bar.TOO_HIGH, thing=new.thing, case=tray.case)
            if not row.is_straight and new.thing.outline != each.thing.outline:
                return Barred(bar=Bar.NOT_ALIKE, thing=new.thing, case=tray.case, row=number)
        lying = tuple(
            _in_place_of(each, coming[each.thing.name]) if each.thing.name in coming else each
            for each in row.lying
        )
        rows.append(replace(row, lying=lying))
    here = next(each.thing.name for each in tray.lying if each.thing.name in coming)
    return closed_up(tray.case, rows, because_of=coming[here].thing)


def _in_place_of(there: Lying, new: Lying) -> Lying:
    """As it lay before; turned as the other where they are alike."""
    alike = there.thing.outline == new.thing.outline
    turned = there.is_turned if alike else new.is_turned
    return replace(new, across=there.across, deep=there.deep, is_turned=turned)


def closed_up(case: Case, rows: Iterable[LaidRow], *, because_of: Thing) -> LaidTray | Barred:
    """Straight rows with no hole in them, one row behind the other; or the side in the way."""
    deep, made = Fraction(0), list[Lying]()
    for number, row in enumerate((row for row in rows if row.lying), start=1):
        lying = list(_closed(row.lying, case, deep=deep) if row.is_straight else _at(row, deep))
        width = max(each.across + each.width for each in lying)
        if width > case.inside.width:
            return Barred(
                bar=Bar.ROW_TOO_WIDE, thing=because_of, case=case, row=number, needed=width
            )
        made += lying
        deep = max(each.deep + each.depth for each in lying) + case.gap
    needed = deep - case.gap
    if made and needed > case.inside.depth:
        return Barred(bar=Bar.TRAY_TOO_SHALLOW, thing=because_of, case=case, needed=needed)
    return laid(case, made)


def _closed(lying: Sequence[Lying], case: Case, *, deep: Fraction) -> Iterator[Lying]:
    across = Fraction(0)
    for each in lying:
        yield replace(each, across=across, deep=deep)
        across += each.width + case.gap


def _at(row: LaidRow, deep: Fraction) -> Iterator[Lying]:
    for each in row.lying:
        yield replace(each, deep=each.deep - row.starts + deep)


def _transferred(ground: Ground, trays: Trays, *, move: Transfer) -> Trays | Barred:
    lying, name = _lying(trays, move.thing), home(trays, move.thing)
    if name == move.to:
        return trays
    target = trays[move.to]
    if target.case.is_too_low_for(lying.thing):
        return Barred(bar=Bar.TOO_HIGH, thing=lying.thing, case=target.case)
    came = taken_in(ground, target, thing=lying.thing)
    if came is None:
        return Barred(bar=Bar.NO_ROOM, thing=lying.thing, case=target.case)
    rows = [
        replace(row, lying=tuple(each for each in row.lying if each != lying))
        for row in trays[name].rows
    ]
    left = closed_up(trays[name].case, rows, because_of=lying.thing)
    assert isinstance(left, LaidTray)  # noqa: S101 - what gives way takes no room
    return {**trays, name: left, move.to: came}


def taken_in(ground: Ground, tray: LaidTray, *, thing: Thing) -> LaidTray | None:
    """A tray with one thing more, at the end of a row, behind all rows, or in any free place.

    What is there stays where it is. None where there is no place.
    """
    if tray.case.is_too_low_for(thing):
        return None
    for lying in _places(ground, tray, thing=thing):
        end, rear = lying.across + lying.width, lying.deep + lying.depth
        if end <= tray.case.inside.width and rear <= tray.case.inside.depth:
            return laid(tray.case, (*tray.lying, lying))
    return None


def _places(ground: Ground, tray: LaidTray, *, thing: Thing) -> Iterator[Lying]:
    gap = tray.case.gap
    for row in tray.rows:
        at_end = Lying(thing=thing, across=row.width + gap, deep=row.starts)
        if row.is_straight and at_end.depth <= row.ends - row.starts:
            yield at_end
    behind = tray.rows[-1].ends + gap if tray.rows else Fraction(0)
    yield Lying(thing=thing, across=Fraction(0), deep=behind)
    yield from _anywhere(ground, tray, thing=thing)


def _anywhere(ground: Ground, tray: LaidTray, *, thing: Thing) -> Iterator[Lying]:
    """Where the square around it is clear of the squares around all others."""
    case = next(at for at, each in enumerate(ground.cases) if each.name == tray.case.name)
    number = next(at for at, each in enumerate(ground.things) if each.name == thing.name)
    free = Tight(ground.rooms[case])
    for each in tray.lying:
        free.put(_obstacle(ground, each, gap=tray.case.gap))
    found = free.best(ground.pieces[case][number], fit=nearest_to_the_far_side)
    if found is not None:
        yield from ground.lying([found[1]])


def _obstacle(ground: Ground, lying: Lying, *, gap: Fraction) -> Put:
    """The square around what lies there, in whole units outwards."""
    units = ground.units
    left, front = (int(side * units // 1) for side in (lying.across, lying.deep))
    right = -int(-(lying.across + lying.width + gap) * units // 1)
    rear = -int(-(lying.deep + lying.depth + gap) * units // 1)
    piece = Piece(
        number=0, pattern="", width=right - left, depth=rear - front, is_round=lying.thing.is_round
    )
    return Put(piece=piece, across=left, deep=front)
