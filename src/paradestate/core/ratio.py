"""Men to figures: the ratio, its evenness, and fair sharing by a fixed ratio."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.force import Force
from paradestate.core.formation import Need
from paradestate.core.money import half_up
from paradestate.core.number import NONE, NumberRange, exactly
from paradestate.core.structure import Node, Structure


@dataclass(frozen=True, slots=True, kw_only=True)
class Ratio:
    """Men shown by one figure, from least to most where the men are a range."""

    least: Fraction
    most: Fraction


def ratio(men: NumberRange, *, figures: int) -> Ratio:
    """Men to a figure, of a stand or a whole force. `figures` must be above nought."""
    return Ratio(least=Fraction(men.least, figures), most=Fraction(men.most, figures))


def evenness(ratios: Sequence[Ratio]) -> Fraction:
    """The greatest ratio over the least; 1 is perfectly even. Needs at least one ratio."""
    return max(each.most for each in ratios) / min(each.least for each in ratios)


def largest_remainder(men: Sequence[int], *, men_per_figure: Fraction) -> tuple[int, ...]:
    """Figures for each body, of a total that is rounded once.

    Each gets the whole part of its quota men / ratio; what is left of the rounded total goes one
    by one to the largest remainders (Hamilton's method). Ties: the larger body, then list order.
    """
    quotas = [number / men_per_figure for number in men]
    given = [int(quota) for quota in quotas]
    left = half_up(sum(quotas, Fraction(0))) - sum(given)
    order = sorted(
        range(len(men)), key=lambda place: (given[place] - quotas[place], -men[place], place)
    )
    for place in order[:left]:
        given[place] += 1
    return tuple(given)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sharing:
    """The figures that a fixed ratio gives to one body directly below a formation."""

    of: str
    share: Fraction
    number_among_parts: int
    """Which of the formation's direct bodies it is, from 0 in file order."""
    figure: str
    number: int
    per_stand: int
    """Figures on one stand; the last may hold fewer."""

    @property
    def number_of_stands(self) -> int:
        """How many stands the figures fill."""
        return -(-self.number // self.per_stand) if self.number else 0

    def stands(self) -> Iterator[int]:
        """Figures on each of its stands."""
        for begun in range(0, self.number, max(self.per_stand, 1)):
            yield min(self.per_stand, self.number - begun)


def shared_figures(force: Force, settled: Structure, *, node: Node) -> Iterator[Sharing]:
    """The figures of each direct body of a formation with a fixed ratio; else nothing."""
    formation = node.formation
    if formation.men_per_figure is None or formation.figure not in force.figures:
        return
    men = men_of_nodes(force, settled)
    bodies = [
        (step.of, step.share)
        for step in node.steps
        if (step.of, step.share) in settled.nodes
        for _ in range(step.number)
    ]
    given = largest_remainder(
        [men[body].most for body in bodies], men_per_figure=formation.men_per_figure
    )
    for place, ((of, share), number) in enumerate(zip(bodies, given, strict=True)):
        yield Sharing(
            of=of,
            share=share,
            number_among_parts=place,
            figure=formation.figure,
            number=number,
            per_stand=formation.figures_per_stand or number,
        )


def men_of_nodes(force: Force, settled: Structure) -> Mapping[tuple[str, Fraction], NumberRange]:
    """Men of every node with all below it, wished parts left out."""
    men: dict[tuple[str, Fraction], NumberRange] = {}
    for key, node in reversed(list(settled.nodes.items())):
        total = exactly(node.men)
        for step in node.steps:
            if step.need is not Need.MUST:
                continue
            if step.of in force.stands:
                each = force.stands[step.of].men
                total += each * step.number if each else NONE
            else:
                total += men[step.of, step.share] * step.number
        men[key] = total
    return men
