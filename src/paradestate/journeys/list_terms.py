"""The terms of every game of a list, or of the chosen one, with the points that the dice may leave.

folder -> files read once -> game after game: count -> terms
"""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path

from paradestate.core.choice import Choice
from paradestate.core.establishment import Establishment
from paradestate.core.force import Force
from paradestate.core.support.chances import Chances
from paradestate.core.support.terms import Terms
from paradestate.journeys.check import Checked
from paradestate.journeys.count import Count
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.terms import game_terms, points_left


@dataclass(frozen=True, slots=True, kw_only=True)
class Playable:
    """A game of a list with its terms and the force that plays it."""

    force: Force
    made: Establishment
    terms: Terms
    allowance: Chances | None
    """The points left by the dice; None where they were given."""
    points: tuple[int, ...]
    """All that may be left, rising."""
    at: int
    """Those of which most is said: the ones given, or the middle of the dice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ListTerms:
    """The games of a list; none where a stop prevents it."""

    checked: Checked
    games: tuple[Playable, ...] = ()


def list_terms(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    grades: Mapping[str, str],
    points: int | None = None,
    memory: Memory = NOTHING,
) -> ListTerms:
    """The terms of the chosen game, or of all games of the folder, in file order.

    One game that can't be played stops the whole: an answer about all games must be about all.
    """
    mind = Memory() if memory is NOTHING else memory
    first = game_terms(folder, today=today, choice=choice, grades=grades, memory=mind)
    names = () if choice.game else tuple(first.checked.force.games)
    answers = [first]
    if len(names) > 1:
        answers = [
            game_terms(
                folder,
                today=today,
                choice=replace(choice, game=name),
                grades=grades,
                memory=mind,
            )
            for name in names
        ]
    games = [
        _playable(each.count, each.terms, points=points)
        for each in answers
        if each.count is not None and each.terms is not None
    ]
    stopped = next((each.checked for each in answers if each.terms is None), None)
    if stopped is not None:
        return ListTerms(checked=stopped)
    return ListTerms(checked=answers[-1].checked, games=tuple(games))


def _playable(counted: Count, terms: Terms, *, points: int | None) -> Playable:
    allowance, levels, at = levels_of(terms, given=points)
    return Playable(
        force=counted.force,
        made=counted.made,
        terms=terms,
        allowance=allowance,
        points=levels,
        at=at,
    )


def levels_of(terms: Terms, *, given: int | None) -> tuple[Chances | None, tuple[int, ...], int]:
    """The chances of the points left, all of them rising, and those of which most is said."""
    if given is not None:
        return None, (given,), given
    allowance = points_left(terms)
    return allowance, tuple(allowance.counts), allowance.quantile(Fraction(1, 2))
