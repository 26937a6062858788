"""The platoons of one body side by side on the table, and as many of the opponent's."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.establishment import Establishment
from paradestate.core.force import Force
from paradestate.core.formation import Need
from paradestate.core.frontage import BodyFront, line_front, opponents_ratio
from paradestate.core.outline import Millimetres
from paradestate.core.table import USUAL_GAP, Line
from paradestate.core.unfolding import SEPARATOR


@dataclass(frozen=True, slots=True, kw_only=True)
class InLine:
    """One platoon with its must stands in line."""

    name: str
    """Such as `No 2 Company / 3 Platoon`; the title of the force for the whole of it."""
    front: BodyFront
    ratio: Fraction | None
    """The front of one of the opponent's platoons over its own; None where his isn't given."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Abreast:
    """All platoons of one body in one line."""

    name: str
    platoons: tuple[InLine, ...]
    """At least one."""
    gap: Millimetres
    """Between stands, and between platoons."""
    table_width: Millimetres | None
    """None where the files name no table."""
    his: Line | None
    """How one of the opponent's platoons stands; None where the files don't say."""
    his_gap: Millimetres

    @property
    def front(self) -> Millimetres:
        """From the first stand to the last."""
        return in_line([each.front.front for each in self.platoons], gap=self.gap)

    @property
    def his_front(self) -> Millimetres | None:
        """That of as many platoons of the opponent."""
        if self.his is None:
            return None
        each = line_front(self.his.width, number=self.his.number, gap=self.his_gap)
        return in_line([each] * len(self.platoons), gap=self.his_gap)

    @property
    def fits_the_table(self) -> bool | None:
        """Whether all of them stand side by side on it; None where nobody knows."""
        return None if self.table_width is None else self.front <= self.table_width


def in_line(fronts: Sequence[Millimetres], *, gap: Millimetres) -> Millimetres:
    """Fronts side by side with gaps between them. Needs at least one."""
    return Millimetres(sum(fronts, Fraction(0)) + (len(fronts) - 1) * gap)


def bodies_in_line(
    force: Force, made: Establishment, *, fronts: Sequence[BodyFront]
) -> tuple[Abreast, ...]:
    """Every body of the must layer that holds platoons with a front, in order of the files.

    A platoon that stands directly under the raised formation, or is it, is in the whole only.
    The whole comes last.
    """
    known = {front.formation: front for front in fronts}
    opponent = force.opponent
    platoons = [
        InLine(
            name=body.name or force.title,
            front=known[body.formation],
            ratio=opponents_ratio(known[body.formation].front, opponent) if opponent else None,
        )
        for body in made.bodies
        if body.layer is Need.MUST and body.formation in known
    ]
    if not platoons:
        return ()
    above = [body.name for body in made.bodies if body.layer is Need.MUST and body.name]
    found = []
    for name in above:
        below = tuple(each for each in platoons if each.name.startswith(name + SEPARATOR))
        if below and len(below) < len(platoons):
            found.append(_abreast(force, name, platoons=below))
    return (*found, _abreast(force, force.title, platoons=tuple(platoons)))


def _abreast(force: Force, name: str, *, platoons: tuple[InLine, ...]) -> Abreast:
    opponent, table = force.opponent, force.table
    return Abreast(
        name=name,
        platoons=platoons,
        gap=table.gap if table else USUAL_GAP,
        table_width=table.size.width if table else None,
        his=opponent.front if opponent else None,
        his_gap=opponent.gap if opponent else USUAL_GAP,
    )
