"""Everything that is worked out for the sheet of the list, one step after the other.

It may take a while, so it runs as a search does: beside the page, and told to stop between steps.
"""

import datetime
import time
from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction
from math import floor
from pathlib import Path

from paradestate.core.choice import Choice
from paradestate.core.finding import Finding
from paradestate.core.support.amendment import (
    Amendment,
    LimitAmendment,
    PriceAmendment,
    WorthAmendment,
)
from paradestate.core.support.offer import NO_CHOICE, Offer, listed_worth
from paradestate.core.support.proof import GameProof
from paradestate.journeys.amending import Amending, ListAsked
from paradestate.journeys.compare import CompareAnswer, comparison_of
from paradestate.journeys.memory import Memory
from paradestate.journeys.order import Search
from paradestate.journeys.proof import ProofAnswer, proof_of_list
from paradestate.journeys.sweep import Labour, SweepAnswer, sweep
from paradestate.web.proof.question import Question

EACH_WAY = 2
"""So many values on either side of the one that stands are tried."""
ROW_SECONDS = 10.0
"""After so long no other value is begun."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asker:
    """Who asks: a folder on a day, with what is kept in mind."""

    folder: Path
    today: datetime.date
    memory: Memory
    beside: Path | None
    """Of the other version; None where none is chosen."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Answered:
    """What was found."""

    proof: ProofAnswer
    """Of all games; of the chosen one alone where the others are stopped."""
    stops: tuple[Finding, ...] = ()
    """What keeps other games than the chosen one from being looked at."""
    game: GameProof | None = None
    """The one that is looked at; None where it wasn't worked out."""
    amendments: tuple[Amendment, ...] = ()
    changed: CompareAnswer | None = None
    """What the changes come to; None where nothing is changed."""
    row: SweepAnswer | None = None
    """Some values of the first change; None where no entry is chosen."""
    slips: tuple[Finding, ...] = ()
    """Boxes that can't be read."""
    beside: CompareAnswer | None = None
    """This version and the other; None where no other is chosen."""


def answered(asker: Asker, asked: Question, *, search: Search) -> Answered:
    """The answer to a question; what wasn't begun when it was told to stop is left out."""
    found = _proved(asker, asked)
    if found.proof.proof is None or search.stop():
        return found
    found = replace(found, game=_game(found, asked.choice.game))
    if found.game is not None and asked.entry in found.game.terms.offers:
        found = _changed(found, found.game, asker=asker, asked=asked, stop=search.stop)
    if asker.beside is None or search.stop():
        return found
    return replace(
        found,
        beside=comparison_of(
            asker.folder,
            asker.beside,
            today=asker.today,
            asked=ListAsked(
                choice=replace(asked.choice, game=None), grades=asked.grades, points=asked.points
            ),
            memory=asker.memory,
        ),
    )


def _proved(asker: Asker, asked: Question) -> Answered:
    name = asked.choice.game
    every = _proof(asker, asked, choice=replace(asked.choice, game=None))
    if not name or (every.proof is not None and name in every.checked.force.games):
        return Answered(proof=every)
    own = _proof(asker, asked, choice=asked.choice)
    if own.proof is None:
        return Answered(proof=own)
    return Answered(proof=own, stops=every.checked.findings)


def _proof(asker: Asker, asked: Question, *, choice: Choice) -> ProofAnswer:
    return proof_of_list(
        asker.folder,
        today=asker.today,
        choice=choice,
        grades=asked.grades,
        points=asked.points,
        memory=asker.memory,
    )


def _game(found: Answered, name: str | None) -> GameProof | None:
    """The game that is looked at: the chosen one, else the first that was worked out."""
    games = found.proof.proof.games if found.proof.proof else ()
    return next((each for each in games if name in {None, each.terms.game.name}), None)


def _changed(
    found: Answered,
    game: GameProof,
    *,
    asker: Asker,
    asked: Question,
    stop: Callable[[], bool],
) -> Answered:
    """What is changed of the entry, what that comes to, and what other values would."""
    offer = game.terms.offers[asked.entry]
    amendments, slips = asked.amendments(offer)
    if slips:
        return replace(found, slips=slips)
    choice = replace(asked.choice, game=game.terms.game.name)
    unchanged = ListAsked(choice=choice, grades=asked.grades, points=asked.points)
    changed = None
    if amendments:
        changed = comparison_of(
            asker.folder,
            None,
            today=asker.today,
            asked=replace(unchanged, amending=Amending(made=amendments)),
            memory=asker.memory,
        )
    until = time.monotonic() + ROW_SECONDS
    row = sweep(
        [asker.folder],
        today=asker.today,
        asked=replace(unchanged, amending=Amending(made=values_beside(offer, amendments))),
        labour=Labour(workers=0, stop=lambda: stop() or time.monotonic() > until),
        memory=asker.memory,
    )
    return replace(found, amendments=amendments, changed=changed, row=row)


def values_beside(offer: Offer, amendments: tuple[Amendment, ...]) -> tuple[Amendment, ...]:
    """The first change with the values around the one that stands; the others as they are.

    Without a change it is the price of the smallest number.
    """
    smallest = min(offer.cost)
    first: Amendment = PriceAmendment(
        entry=offer.name, number=smallest, points=offer.cost[smallest]
    )
    first = amendments[0] if amendments else first
    return (*_values(offer, first), *amendments[1:])


def _values(offer: Offer, first: Amendment) -> tuple[Amendment, ...]:
    match first:
        case PriceAmendment(number=number, points=points) if number is not None:
            stands = offer.cost[number]
            numbers = sorted({*_around(stands, least=min(0, stands)), points})
            return tuple(replace(first, points=each) for each in numbers)
        case WorthAmendment(number=number, worth=worth) if number is not None:
            now = listed_worth(offer.worths.get(NO_CHOICE, {}), number)
            worths = sorted({*map(Fraction, _around(floor(now), least=0)), now, worth})
            return tuple(replace(first, worth=each) for each in worths)
        case LimitAmendment(most=most):
            usual = offer.least + 1 if offer.most is None else offer.most
            limits = {*_around(usual, least=max(1, offer.least)), most, offer.most}
            known = sorted(each for each in limits if each is not None)
            every = (*known, *((None,) if None in limits else ()))
            return tuple(replace(first, most=each) for each in every)
        case _:
            return (first,)


def _around(number: int, *, least: int) -> range:
    return range(max(least, number - EACH_WAY), number + EACH_WAY + 1)
