"""How much of the table, and of the ground, stands in line cover; and both sides alike."""

from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.establishment import Establishment
from paradestate.core.force import Force
from paradestate.core.formation import Echelon, Need
from paradestate.core.outline import Disc, Millimetres, Outline
from paradestate.core.structure import Structure, structure
from paradestate.core.table import USUAL_GAP, Opponent


def front_of(outline: Outline) -> Millimetres:
    """The front of a stand."""
    return outline.diameter if isinstance(outline, Disc) else outline.width


def line_front(front: Millimetres, *, number: int, gap: Millimetres) -> Millimetres:
    """Table front of so many equal stands in line: k w + (k - 1) u. `number` from 1."""
    return Millimetres(number * front + (number - 1) * gap)


def ground_shown(front: Millimetres, *, ground_scale: Fraction) -> Fraction:
    """Metres of ground that a table front shows, at so many metres a millimetre."""
    return front * ground_scale


def exact_scale(metres: Fraction, *, front: Millimetres) -> Fraction:
    """The metres a millimetre at which a table front would show just so many metres."""
    return metres / front


def depth_exaggeration(
    depth: Millimetres, *, ground_scale: Fraction, real_metres: Fraction
) -> Fraction:
    """How many times deeper a stand is, at scale, than what it stands for."""
    return depth * ground_scale / real_metres


def number_abreast(table_width: Millimetres, *, front: Millimetres, gap: Millimetres) -> int:
    """The most bodies of one front side by side on a table: floor((W + c) / (C + c))."""
    return int((table_width + gap) // (front + gap))


def opponents_ratio(our_front: Millimetres, opponent: Opponent) -> Fraction | None:
    """His front over ours; None where his isn't given."""
    if opponent.front is None:
        return None
    line = opponent.front
    return line_front(line.width, number=line.number, gap=opponent.gap) / our_front


@dataclass(frozen=True, slots=True, kw_only=True)
class BodyFront:
    """A kind of body with all its must stands in one line."""

    formation: str
    stands: int
    front: Millimetres
    ground: Fraction | None
    """Metres, where the table has a scale."""
    abreast: int | None
    """How many of them fit side by side on the table, where there is one."""


def body_fronts(force: Force, made: Establishment) -> tuple[BodyFront, ...]:
    """The fronts of the raised platoons, or of other bodies that hold several like stands.

    Only stands that are alike are lined up: the most numerous pattern of each body.
    """
    settled, _ = structure(force)
    if settled is None:
        return ()
    found = []
    for name in made.number_of:
        front = _front(force, settled, name=name)
        if front is not None and made.number_of[name]:
            found.append(front)
    return tuple(found)


def _front(force: Force, settled: Structure, *, name: str) -> BodyFront | None:
    node = next(node for (formation, _), node in settled.nodes.items() if formation == name)
    if node.formation.echelon is not Echelon.PLATOON:
        return None
    numbers: dict[str, int] = {}
    outlines: dict[str, Outline] = {}
    for step in node.steps:
        stand = force.stands.get(step.of)
        if stand and stand.outline and not stand.printed and step.need is Need.MUST and step.number:
            numbers[step.of] = numbers.get(step.of, 0) + step.number
            outlines[step.of] = stand.outline
    if not numbers:
        return None
    pattern, outline = max(outlines.items(), key=lambda known: numbers[known[0]])
    table = force.table
    gap = table.gap if table else USUAL_GAP
    front = line_front(front_of(outline), number=numbers[pattern], gap=gap)
    scale = table.ground_scale if table else None
    return BodyFront(
        formation=name,
        stands=numbers[pattern],
        front=front,
        ground=None if scale is None else ground_shown(front, ground_scale=scale),
        abreast=number_abreast(table.size.width, front=front, gap=gap) if table else None,
    )
