"""Symbols of hosts and of the bodies above them, with the plates of their marks."""

from collections.abc import Mapping

from paradestate.core.unfolding import Body
from paradestate.journeys.count import Count
from paradestate.journeys.marking import marking_of
from paradestate.sheet.svg import Drawing
from paradestate.sheet.symbol import Symbol, dots_of, plated, symbol_drawing


class Signs:
    """Symbols of bodies, each drawn once."""

    def __init__(self, counted: Count) -> None:
        self.force = counted.force
        bodies = counted.made.bodies
        self.echelons = frozenset(body.echelon for body in bodies)
        marks = marking_of(counted).of_bodies
        self.marks = dict(zip((body.name for body in bodies), marks, strict=True))
        self.bodies: Mapping[str, Body] = {body.name: body for body in bodies}
        self.drawn: dict[Symbol, Drawing] = {}

    def of(self, name: str, *, formation: str = "") -> Drawing | None:
        """The symbol of a body; None where nothing is known of it."""
        body = self.bodies.get(name)
        kind = formation if body is None else body.formation
        found = self.force.formations.get(kind)
        if found is None:
            return None
        shown = Symbol(
            arm=found.arm,
            echelon=found.echelon,
            dots=dots_of(found.echelon, beside=self.echelons),
            mark=plated(self.marks.get(name)),
        )
        if shown not in self.drawn:
            self.drawn[shown] = symbol_drawing(shown)
        return self.drawn[shown]
