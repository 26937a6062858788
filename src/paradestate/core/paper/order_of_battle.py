"""The order of battle on paper: every unit with its stands in the order of the parade."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import islice

from paradestate.core.game import Purchase
from paradestate.core.mark.code import Mark
from paradestate.core.mark.marking import MarkedStand
from paradestate.core.mark.unit import Unit
from paradestate.core.paper.brought import Brought, brought
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.hiding import hides_who_moves
from paradestate.core.paper.tray_rows import where_words
from paradestate.core.sentence.support import purchase_words
from paradestate.core.sentence.wording import capital
from paradestate.core.support.reserve import in_front, still_kept_back
from paradestate.core.unfolding import SEPARATOR, Stand, name_within, spoken


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitLine:
    """Stands that bear one mark."""

    name: str
    """Such as `No 2 Company, 3 Platoon`."""
    mark: Mark | None
    stands: tuple[str, ...]
    """Each by its name within the unit: `1 Section`."""
    where: str = ""
    """In which tray and rows they lie; empty where the owner hasn't laid the trays."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TroopsLine:
    """One purchase of supporting troops."""

    name: str
    """Such as `2 x light tanks`."""
    stands: tuple[str, ...]
    """None where it puts nothing on the table."""
    missions: int
    """Fire missions, of what fires from off the table."""
    host: str
    """Formation to which each may be attached; empty where it can't be."""
    is_kept_back: bool
    where: str = ""
    """In which tray and rows all of this entry lie, as above."""


def unit_lines(ground: Ground) -> tuple[UnitLine, ...]:
    """Every unit with its wanted stands; printed markers are none of them."""
    units: dict[str, list[MarkedStand]] = {}
    for marked in ground.marks.stands:
        if marked.stand.is_wanted and not marked.stand.printed:
            units.setdefault(marked.unit.name, []).append(marked)
    return tuple(_unit_line(ground, stands) for stands in units.values())


def _unit_line(ground: Ground, stands: Sequence[MarkedStand]) -> UnitLine:
    unit, names = stands[0].unit, [each.stand.name for each in stands]
    return UnitLine(
        name=unit_name(ground, unit),
        mark=stands[0].mark,
        stands=tuple(spoken(name_within(name, unit.name)) for name in names),
        where=where_words(ground.laid, names),
    )


def unit_name(ground: Ground, unit: Unit) -> str:
    """A unit as it is printed; the raised formation's own troops bear its name."""
    return spoken(unit.name) or capital(ground.made.formation)


def troops_lines(ground: Ground) -> tuple[TroopsLine, ...]:
    """The supporting troops of the plan, what is in front first."""
    front = in_front(ground.plan, ground.reserve.purchases)
    back = still_kept_back(ground.reserve.purchases, ground.plan)
    stands = iter(brought(replace(ground, plan=(*front, *back))))
    return tuple(
        _line(ground, purchase, stands=stands, is_kept_back=is_kept_back)
        for plan, is_kept_back in ((front, False), (back, True))
        for purchase in plan
    )


def _line(
    ground: Ground, purchase: Purchase, *, stands: Iterator[Brought], is_kept_back: bool
) -> TroopsLine:
    """The line of a purchase, which takes its own of the stands that all of them bring."""
    number = len(brought(replace(ground, plan=(purchase,))))
    entry = ground.force.supporting_troops.get(purchase.entry)
    attach = entry.attach if entry is not None else None
    own = (each.name.partition(SEPARATOR)[2] for each in islice(stands, number))
    body = f"{capital(purchase.entry)}{SEPARATOR}"
    lying = [name for name in ground.laid if name.startswith(body)]
    return TroopsLine(
        name=purchase_words(purchase),
        stands=tuple(map(spoken, own)),
        missions=missions_of(ground, purchase),
        host=attach.to if attach is not None else "",
        is_kept_back=is_kept_back,
        where=where_words(ground.laid, lying),
    )


def missions_of(ground: Ground, purchase: Purchase) -> int:
    """How many fire missions a purchase has: one for each taken of what is fire missions."""
    entry = ground.force.supporting_troops.get(purchase.entry)
    return purchase.number if entry is not None and entry.is_fire_mission else 0


def marker_names(ground: Ground) -> tuple[str, ...]:
    """The true markers of the raised force."""
    return tuple(spoken(stand.name) for stand in _markers(ground))


def markers_where(ground: Ground) -> str:
    """In which tray and rows they lie, as of units."""
    return where_words(ground.laid, (stand.name for stand in _markers(ground)))


def print_names(ground: Ground) -> tuple[str, ...]:
    """The printed stands of the raised force that hide nobody."""
    return tuple(
        spoken(each.name)
        for each in _printed(ground)
        if not hides_who_moves(ground.force, each.pattern)
    )


def _markers(ground: Ground) -> Iterator[Stand]:
    return (each for each in _printed(ground) if hides_who_moves(ground.force, each.pattern))


def _printed(ground: Ground) -> Iterator[Stand]:
    return (stand for stand in ground.made.stands if stand.printed and stand.is_wanted)


def number_of_dummies(ground: Ground) -> int:
    """Markers that hide nobody."""
    true = len(marker_names(ground))
    return true if ground.dummies is None else ground.dummies * (true > 0)
