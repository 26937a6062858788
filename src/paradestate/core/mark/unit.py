"""Units that are marked: the two levels of a force that colours and bars tell apart.

The upper level are the formations that `marks` names; where it names none, the bodies right under
the raised formation that are companies or more, or hold bodies themselves. The lower level are the
bodies right under those. What lies in none of them needs no colour: its bodies right under the
raised formation are told apart by bars and their number.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from paradestate.core.formation import Echelon
from paradestate.core.unfolding import Body

SMALL = {Echelon.TEAM, Echelon.SQUAD, Echelon.SECTION, Echelon.PLATOON}
"""Sizes below a company."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Unit:
    """Stands that bear one mark: a platoon, a company's own troops, or troops of no company."""

    name: str
    """Of its body; empty for the own troops of the raised formation."""
    formation: str
    company: int | None
    """Which of the coloured bodies it belongs to, from nought; None for troops of no company."""
    bars: int


class Units:
    """Finds the unit of every body."""

    def __init__(self, bodies: Sequence[Body], *, named: Sequence[str]) -> None:
        self.bodies = bodies
        self.named = named

    @cached_property
    def below(self) -> tuple[tuple[int, ...], ...]:
        """For each body the places of those right under it."""
        found: list[list[int]] = [[] for _ in self.bodies]
        for place, body in enumerate(self.bodies):
            if body.within is not None:
                found[body.within].append(place)
        return tuple(map(tuple, found))

    @cached_property
    def companies(self) -> tuple[int, ...]:
        """Places of the bodies that colours tell apart, in order; none lies in another."""
        if not any(body.formation in self.named for body in self.bodies):
            return tuple(filter(self._is_company, self.below[0]))
        found = [place for place, body in enumerate(self.bodies) if body.formation in self.named]
        return tuple(place for place in found if not self._lies_in(place, found))

    def _is_company(self, place: int) -> bool:
        echelon = self.bodies[place].echelon
        return (echelon is not None and echelon not in SMALL) or bool(self.below[place])

    def _lies_in(self, place: int, others: Sequence[int]) -> bool:
        return any(above in others for above in self._above(place))

    def _above(self, place: int) -> Iterator[int]:
        """The bodies above one, the nearest first."""
        above = self.bodies[place].within
        while above is not None:
            yield above
            above = self.bodies[above].within

    @cached_property
    def by_body(self) -> tuple[Unit, ...]:
        """For each body the unit that its own stands belong to."""
        tops = self._tops()
        found: list[Unit] = []
        for place, body in enumerate(self.bodies):
            if place in tops:
                company, bars = tops[place]
                unit = Unit(name=body.name, formation=body.formation, company=company, bars=bars)
            else:
                assert body.within is not None  # noqa: S101 - the raised one is always a top
                unit = found[body.within]
            found.append(unit)
        return tuple(found)

    def _tops(self) -> dict[int, tuple[int | None, int]]:
        """Place of every unit's body, to its company and bars."""
        tops: dict[int, tuple[int | None, int]] = {0: (None, 0)}
        outside = [place for place in self.below[0] if place not in self.companies]
        tops |= {place: (None, bars) for bars, place in enumerate(self._ranked(outside), start=1)}
        for company, place in enumerate(self.companies):
            tops[place] = (company, 0)
            for bars, part in enumerate(self._ranked(self.below[place]), start=1):
                tops[part] = (company, bars)
        return tops

    def _ranked(self, places: Sequence[int]) -> list[int]:
        """Bodies in the order of their bars: those of the commonest formation first.

        So the third rifle platoon has three bars, wherever a single one of others is written.
        """
        numbers = Counter(self.bodies[place].formation for place in places)
        first = dict.fromkeys(self.bodies[place].formation for place in places)
        order = sorted(first, key=lambda formation: -numbers[formation])
        return sorted(places, key=lambda place: order.index(self.bodies[place].formation))
