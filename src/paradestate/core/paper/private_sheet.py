"""The private order of battle sheet: everything, with a box to tick for every stand.

Its owner alone reads it. Units stand in the order of the parade; where the owner has laid the trays
himself, which needn't be in that order, each says in which tray and row it lies.
"""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.force import Force
from paradestate.core.outline import outline_text
from paradestate.core.paper.by_hand_note import ByHandNote, by_hand_notes
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.hiding import hides_who_moves
from paradestate.core.paper.order_of_battle import (
    TroopsLine,
    UnitLine,
    marker_names,
    markers_where,
    number_of_dummies,
    print_names,
    troops_lines,
    unit_lines,
)
from paradestate.core.paper.paper import Draft
from paradestate.core.sentence.plan import plan_paragraph
from paradestate.core.sentence.scenario import arrival_sentence
from paradestate.core.sentence.support import allowance_words
from paradestate.core.sentence.wording import capital, counted
from paradestate.core.stand import Sight, StandPattern
from paradestate.core.unfolding import capitals


@dataclass(frozen=True, slots=True, kw_only=True)
class KindLine:
    """A kind of stand: how many, what it is made of, and whether the opponent may see it."""

    name: str
    number: int
    size: str
    figures: str
    sight: Sight


@dataclass(frozen=True, slots=True, kw_only=True)
class PrivateSheet:
    """Everything that its owner puts on the table, keeps back or hides."""

    game: str
    """Its name, posture and allowance; empty without a game."""
    order: tuple[str, ...]
    """The paragraph of the order: under command, in support, off the table, in reserve."""
    arranged: tuple[str, ...]
    """Who is with whom, as it was told in the game."""
    units: tuple[UnitLine, ...]
    troops: tuple[TroopsLine, ...]
    markers: tuple[str, ...]
    """True ones: printed stands that hide who moves."""
    markers_where: str
    """In which tray and rows they lie; empty where the owner hasn't laid the trays."""
    dummies: int
    prints: tuple[str, ...]
    """Printed stands that hide nothing: a camp, a limber."""
    arrivals: tuple[str, ...]
    kinds: tuple[KindLine, ...]
    notes: tuple[ByHandNote, ...]


def private_sheet(ground: Ground) -> Draft[PrivateSheet]:
    """The private sheet."""
    units = unit_lines(ground)
    markers, prints = marker_names(ground), print_names(ground)
    if not units and not markers and not prints:
        return Draft(shown=None)
    shown = PrivateSheet(
        game=game_words(ground),
        order=order_paragraph(ground),
        arranged=ground.arranged,
        units=units,
        troops=troops_lines(ground),
        markers=markers,
        markers_where=markers_where(ground),
        dummies=number_of_dummies(ground),
        prints=prints,
        arrivals=arrivals(ground),
        kinds=tuple(kind_lines(ground)),
        notes=by_hand_notes(ground),
    )
    return Draft(shown=shown)


def game_words(ground: Ground) -> str:
    """The game in words: `Whole-day attack: attack, with 18 + 2d6 points; training: recruits`.

    Of the grades those that were chosen and aren't as usual.
    """
    game = ground.force.games.get(ground.game)
    if game is None:
        return ""
    grades = {} if ground.terms is None else ground.terms.grades
    unusual = (
        f"; {scale}: {grade}"
        for scale, grade in grades.items()
        if grade != ground.force.grades[scale].usual
    )
    words = f"{capital(game.name)}: {game.posture}, {allowance_words(game.allowance)}"
    return "".join((words, *unusual))


def order_paragraph(ground: Ground) -> tuple[str, ...]:
    """The sentences of the order; without a game or plan there is none to give."""
    if not ground.plan and not ground.reserve.formations:
        return ()
    force = ground.force
    return plan_paragraph(
        ground.plan,
        entries=force.supporting_troops,
        reserve=ground.reserve,
        reserves=force.reserves,
    )


def arrivals(ground: Ground) -> tuple[str, ...]:
    """What comes onto the table later, in words."""
    game = ground.force.games.get(ground.game)
    if game is None:
        return ()
    said = game.arrivals.items()
    return tuple(arrival_sentence(name, each, game=game.name) for name, each in said)


def kind_lines(ground: Ground) -> Iterator[KindLine]:
    """Each kind of stand that is raised, in the order of the parade."""
    numbers = Counter(stand.pattern for stand in ground.made.stands if stand.is_wanted)
    for name, number in numbers.items():
        pattern = ground.pattern(name)
        yield KindLine(
            name=capitals(name),
            number=number,
            size=outline_text(pattern.outline),
            figures="printed" if pattern.printed else counted(pattern.figures),
            sight=_sight(ground.force, pattern),
        )


def _sight(force: Force, pattern: StandPattern) -> Sight:
    """Whether he sees it; who is under a hidden-movement marker he is never told."""
    if pattern.printed and hides_who_moves(force, pattern.name):
        return Sight.NO
    return pattern.seen_by_opponent or Sight.YES
