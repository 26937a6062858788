"""Which things go into which trays: in the fewest, companies together, rows readable, how sure.

Rows come first; where they need more trays than the bound, or tear a company apart, closer ways are
tried. Whatever is found is looked at again by `clearance`.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum

from paradestate.core.certainty import Certainty, Exact, Within
from paradestate.core.tray.bound import Bound, bound
from paradestate.core.tray.clearance import breaches
from paradestate.core.tray.close import MEASURES, by_company, by_size, in_order, together
from paradestate.core.tray.filling import TooManyStepsError, filled
from paradestate.core.tray.ground import Ground
from paradestate.core.tray.in_rows import Filled, RowTrays
from paradestate.core.tray.in_turn import close_in_turn, rows_in_turn
from paradestate.core.tray.laid import LaidTray, laid
from paradestate.core.tray.thing import Case, Put, Thing
from paradestate.core.tray.tight import FITS

TRIES = 12
"""How often one tray is tried with what found no place laid first."""

JUST_ONE_MORE = 2
"""Trays, where one is what the area needs."""

STEPS_OF_PROOF = 10_000
"""Steps of the search for one tray where the area would allow it and rows don't; under a second."""


class Want(StrEnum):
    """Why a thing has no place."""

    TOO_HIGH = "too high"
    TOO_LARGE = "too large"
    NO_ROOM = "no room"


@dataclass(frozen=True, slots=True, kw_only=True)
class Misfit:
    """A thing without a place."""

    thing: Thing
    want: Want
    too_low: tuple[Case, ...]
    """Trays that it is too high for."""
    would_do: tuple[Case, ...]
    """Trays that would hold it if there were room in them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TrayPlan:
    """Everything in its place, or said to have none."""

    trays: tuple[LaidTray, ...]
    """Those that hold something, in the order of the folder."""
    empty: tuple[Case, ...]
    misfits: tuple[Misfit, ...]
    bound: Bound
    certainty: Certainty
    is_by_hand: bool = False

    @property
    def torn(self) -> tuple[str, ...]:
        """Companies that lie in more than one tray, in the order met."""
        homes: dict[str, set[str]] = {}
        for tray in self.trays:
            for each in tray.lying:
                homes.setdefault(each.thing.company, set()).add(tray.case.name)
        return tuple(company for company, names in homes.items() if company and len(names) > 1)


def laid_out(cases: Sequence[Case], things: Sequence[Thing]) -> TrayPlan:
    """The best arrangement found, and how many trays there must be at the least."""
    ground = Ground(cases=tuple(cases), things=tuple(things))
    least = least_trays(ground)
    tried = tuple(_tried(ground, least))
    found = min(tried, key=lambda each: each.rank)
    is_proved = found.number == JUST_ONE_MORE and any(each.is_proved for each in tried)
    certainty = certainty_of(found.number, least=least, is_proved=is_proved)
    trays = [
        laid(case, ground.lying(puts))
        for case, puts in zip(ground.cases, found.filled, strict=True)
    ]
    return plan_of(ground, trays, least=least, certainty=certainty)


def least_trays(ground: Ground) -> Bound:
    """The bound for everything that some tray holds when it is empty."""
    homed = [number for lot in ground.lots for number in lot]
    pieces_in = [ground.pieces_in(case, homed) for case in range(len(ground.cases))]
    return bound(ground.rooms, pieces_in=pieces_in) if homed else Bound(by_area=0, by_reach=0)


def certainty_of(number: int, *, least: Bound, is_proved: bool = False) -> Certainty:
    """Exact where no fewer trays can do; else how many there must be."""
    return Exact() if is_proved or number <= least.least else Within(bound=least.least)


def plan_of(
    ground: Ground,
    trays: Sequence[LaidTray],
    *,
    least: Bound,
    certainty: Certainty,
    is_by_hand: bool = False,
) -> TrayPlan:
    """The plan of trays as they are filled, with all that have no place in them.

    It is checked, whatever found it or whoever moved it.
    """
    wrong = [breach for tray in trays for breach in breaches(tray.case, tray.lying)]
    assert not wrong, wrong  # noqa: S101 - what lays things over each other is a bug
    placed = {each.thing.name for tray in trays for each in tray.lying}
    return TrayPlan(
        trays=tuple(tray for tray in trays if tray.rows),
        empty=tuple(tray.case for tray in trays if not tray.rows),
        misfits=tuple(
            _misfit(ground, number)
            for number, thing in enumerate(ground.things)
            if thing.name not in placed
        ),
        bound=least,
        certainty=certainty,
        is_by_hand=is_by_hand,
    )


def _misfit(ground: Ground, number: int) -> Misfit:
    thing, homes = ground.things[number], ground.homes(number)
    too_low = tuple(case for case in ground.cases if case.is_too_low_for(thing))
    if homes:
        want = Want.NO_ROOM
    else:
        want = Want.TOO_HIGH if len(too_low) == len(ground.cases) else Want.TOO_LARGE
    would_do = tuple(ground.cases[home] for home in homes)
    return Misfit(thing=thing, want=want, too_low=too_low, would_do=would_do)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Found:
    """One way to fill the trays."""

    filled: Filled
    rank: tuple[int, int, int, int]
    """Things left, trays, companies torn apart, which way it was: the smaller, the better."""
    is_proved: bool = False
    """Whether one tray is known not to do."""

    @property
    def number(self) -> int:
        return self.rank[1]


def _tried(ground: Ground, least: Bound) -> Iterator[_Found]:
    """One way after another, to the first that can't be bettered."""
    wanted = sum(len(lot) for lot in ground.lots)
    for way, made in enumerate(_ways(ground)):
        found = _found(ground, made, way=way, wanted=wanted)
        yield found
        if found.rank[:3] <= (0, least.least, 0):
            return
        if way == LAST_OF_ROWS and least.least == 1 < found.number:
            yield from _proved(ground, found, wanted=wanted)


LAST_OF_ROWS = 2
"""Which of the ways is the last in rows."""


def _ways(ground: Ground) -> Iterator[Filled]:
    """Rows, then close by company, then close with no regard to companies."""
    lots = ground.lots
    by_area = sorted(lots, key=lambda lot: -sum(_area(ground, number) for number in lot))
    yield RowTrays(ground).take(lots).filled()
    yield RowTrays(ground).take(by_area).filled()
    yield rows_in_turn(ground)
    for fit in FITS:
        yield by_company(ground, lots, fit=fit)
        yield by_company(ground, by_area, fit=fit)
    for fit in FITS:
        yield close_in_turn(ground, fit=fit, size="area")
        yield close_in_turn(ground, fit=fit, size="longer side")
    numbers = [number for lot in lots for number in lot]
    for size in MEASURES:
        for fit in FITS:
            yield by_size(ground, numbers, fit=fit, size=size)


def _area(ground: Ground, number: int) -> int:
    piece = ground.pieces[0][number]
    return piece.width * piece.depth


def _found(ground: Ground, made: Filled, *, way: int, wanted: int) -> _Found:
    homes: dict[str, set[int]] = {}
    for case, puts in enumerate(made):
        for put in puts:
            homes.setdefault(ground.things[put.piece.number].company, set()).add(case)
    apart = sum(len(cases) > 1 for company, cases in homes.items() if company)
    left = wanted - sum(len(puts) for puts in made)
    return _Found(filled=made, rank=(left, sum(map(bool, made)), apart, way))


def _proved(ground: Ground, found: _Found, *, wanted: int) -> Iterator[_Found]:
    """One tray, where a search to the end finds it; or that there is none, where trays are alike.

    Only of rectangles: discs may lie where no sum of sides reaches.
    """
    numbers = [number for lot in ground.lots for number in lot]
    case = ground.order[0]
    if not all(ground.may_hold(case, number) for number in numbers):
        return
    puts = _by_trying(ground, case, numbers=numbers)
    if puts is None and any(ground.things[number].is_round for number in numbers):
        return
    try:
        puts = puts or filled(
            ground.rooms[case], ground.pieces_in(case, numbers), steps=STEPS_OF_PROOF
        )
    except TooManyStepsError:
        return
    if puts is not None:
        made = tuple(puts if place == case else () for place in range(len(ground.cases)))
        yield _found(ground, in_order(ground, made), way=LAST_OF_ROWS, wanted=wanted)
    elif len(set(ground.rooms)) == 1 and found.number == JUST_ONE_MORE:
        yield _Found(filled=found.filled, rank=found.rank, is_proved=True)


def _by_trying(ground: Ground, case: int, *, numbers: Sequence[int]) -> tuple[Put, ...] | None:
    """All of them in one tray, where a few tries find that; None says nothing."""
    for fit in FITS:
        puts = together(ground, case, numbers=numbers, fit=fit, size="area", tries=TRIES)
        if puts is not None:
            return puts
    return None
