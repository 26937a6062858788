"""The mark of every unit and every stand of the raised force."""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from paradestate.core.establishment import Establishment
from paradestate.core.force import Force
from paradestate.core.mark.check_order import check_order
from paradestate.core.mark.code import SIGNS, Grid, Mark, grid_of
from paradestate.core.mark.difference import Differences
from paradestate.core.mark.in_formation import colours_of
from paradestate.core.mark.paint import value_of
from paradestate.core.mark.unit import Unit, Units
from paradestate.core.unfolding import Stand

NO_DIFFERENCES = Differences()


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkedStand:
    """One stand, as its marks name it."""

    stand: Stand
    unit: Unit
    number: int
    """Which of its pattern it is in its unit, from 1: the number of the section."""
    mark: Mark | None
    """On the underside, with its name; None where its company has no colour."""

    @property
    def rear(self) -> Mark | None:
        """On the rear edge, for its own side; none on a printed marker, which must not tell."""
        return None if self.stand.printed else self.mark


@dataclass(frozen=True, slots=True, kw_only=True)
class Company:
    """A body that a colour tells apart."""

    name: str
    formation: str
    colour: str
    """Name of its colour; empty where it has none."""
    value: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Marking:
    """All marks of a force."""

    companies: tuple[Company, ...]
    colours: tuple[str, ...]
    """Each colour once, those too of companies that aren't raised just now."""
    grid: Grid
    marks: Mapping[Unit, Mark | None]
    """Of each unit that has stands, in the order of the files."""
    stands: tuple[MarkedStand, ...]
    of_bodies: tuple[Mark | None, ...]
    """For each body the mark that its own stands bear, or would bear."""

    @property
    def by_mark(self) -> Mapping[Mark, tuple[Unit, ...]]:
        """Each mark with the units that bear it: one, if all is well."""
        found: dict[Mark, list[Unit]] = {}
        for unit, mark in self.marks.items():
            if mark is not None:
                found.setdefault(mark, []).append(unit)
        return {mark: tuple(units) for mark, units in found.items()}

    @property
    def by_stand(self) -> Mapping[str, MarkedStand]:
        """Each stand by its name."""
        return {marked.stand.name: marked for marked in self.stands}


def marking(
    force: Force, made: Establishment, *, differences: Differences = NO_DIFFERENCES
) -> Marking:
    """The marks. Differences matter only where not every mark is needed."""
    found = Units(made.bodies, named=tuple(force.marks.by_formation))
    names = colours_of(force.marks, made.bodies)
    companies = tuple(
        Company(
            name=made.bodies[place].name,
            formation=made.bodies[place].formation,
            colour=names[place],
            value=value_of(names[place], force.marks),
        )
        for place in found.companies
    )
    colours = colours_in_use(force, companies)
    bars = [each.bars for each in _used(found, made) if each.company is not None]
    grid = grid_of(len(colours), bars)
    if differences.pairs:
        grid = replace(grid, places=check_order(grid, colours, differences=differences))
    making = _Making(force, companies, colours=colours, grid=grid)
    stands = tuple(_stands(made, found, making=making))
    return Marking(
        companies=companies,
        colours=colours,
        grid=grid,
        marks={each.unit: each.mark for each in stands},
        stands=stands,
        of_bodies=tuple(map(making.mark, found.by_body)),
    )


def colours_in_use(force: Force, companies: Sequence[Company]) -> tuple[str, ...]:
    """Every colour of the formations that are told apart, once.

    Two names of one value are one colour. Those too of companies that aren't raised just now, so
    that a sign doesn't change with their number; but for more than there are signs.
    """
    formations = dict.fromkeys(each.formation for each in companies)
    every = [name for each in formations for name in force.marks.by_formation.get(each, ())]
    found = _once(every, force)
    if len(found) <= len(SIGNS):
        return found
    return _once([each.colour for each in companies if each.colour], force)


def _once(names: Sequence[str], force: Force) -> tuple[str, ...]:
    """The names without those that mean a colour which is named before."""
    by_value: dict[str, str] = {}
    for name in names:
        by_value.setdefault(value_of(name, force.marks) or name, name)
    return tuple(by_value.values())


def _used(found: Units, made: Establishment) -> set[Unit]:
    """Units that have stands, wanted or not."""
    return {found.by_body[stand.within] for stand in made.stands}


class _Making:
    """Makes the mark of a unit."""

    def __init__(
        self, force: Force, companies: Sequence[Company], *, colours: Sequence[str], grid: Grid
    ) -> None:
        self.force = force
        self.companies = companies
        self.grid = grid
        self.places = {
            value_of(name, force.marks) or name: place for place, name in enumerate(colours)
        }

    def mark(self, unit: Unit) -> Mark | None:
        """Its mark; None where its company has no colour, or there are too few signs."""
        if unit.company is None:
            return Mark(colour="", value="", bars=unit.bars, sign=None)
        company = self.companies[unit.company]
        if not company.colour or not self.grid.is_held:
            return None
        place = self.places[company.value or company.colour]
        return Mark(
            colour=company.colour,
            value=company.value,
            bars=unit.bars,
            sign=self.grid.sign(place, bars=unit.bars),
            has_rear_bar=company.formation in self.force.marks.rear_bars,
        )


def _stands(made: Establishment, found: Units, *, making: _Making) -> list[MarkedStand]:
    """Every stand, numbered within its unit."""
    numbers: Counter[tuple[Unit, str, bool]] = Counter()
    marked = []
    for stand in made.stands:
        unit = found.by_body[stand.within]
        kind = (unit, stand.pattern, stand.printed)
        numbers[kind] += 1
        marked.append(
            MarkedStand(stand=stand, unit=unit, number=numbers[kind], mark=making.mark(unit))
        )
    return marked
