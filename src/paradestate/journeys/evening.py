"""What to do now in an evening of asking, after what was asked for and rolled so far.

terms, points, answers of the dice -> the best play -> its chart, answer after answer -> the step

Whoever asks for something else than the chart says is followed: the best play is worked out anew
from there.
"""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from paradestate.core.choice import Choice
from paradestate.core.game import Purchase
from paradestate.core.support.asked_for import AskedFor, by_chart, of_own_accord, taken_of
from paradestate.core.support.entry import Asking
from paradestate.core.support.policy import Ask, Step
from paradestate.core.support.terms import Terms
from paradestate.journeys.fallback import FallbackJourney, SoFar, best_fallback
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.terms import game_terms
from paradestate.text.typed import purchases_text


@dataclass(frozen=True, slots=True, kw_only=True)
class EveningAsked:
    """Of which evening it is asked."""

    folder: Path
    today: datetime.date
    choice: Choice
    grades: Mapping[str, str]
    points: int | None
    """Points left before anything is bought; None: not rolled yet."""
    allowed: Mapping[str, int]
    """Entry to how many the dice allowed, in the order of asking."""
    plan: tuple[Purchase, ...]
    """What was asked for of one's own accord was asked as it stands in here."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Evening:
    """How far an evening has come."""

    step: Step
    """What to do now."""
    asked: tuple[AskedFor, ...] = ()
    not_followed: tuple[str, ...] = ()
    """Entries with an answer that isn't known what to make of."""


def evening(
    asked: EveningAsked, *, memory: Memory = NOTHING
) -> tuple[FallbackJourney, Evening | None]:
    """The best play from the start, and how far the evening has come; None: there is no chart."""
    start = _best(asked, SoFar(), memory=memory)
    if start.fallback is None or start.terms is None:
        return start, None
    now = Evening(step=start.fallback.chart)
    for entry, number in asked.allowed.items():
        now = _after(now, entry, allowed=number, asked=asked, terms=start.terms, memory=memory)
    now = _caught_up(now, allowed=asked.allowed)
    return start, _further(now, asked=asked, terms=start.terms, memory=memory)


def _after(
    now: Evening, entry: str, *, allowed: int, asked: EveningAsked, terms: Terms, memory: Memory
) -> Evening:
    """The evening after one more answer of the dice."""
    step = now.step
    if isinstance(step, Ask) and step.purchase.entry == entry:
        came = by_chart(step, allowed=allowed)
        if came is not None:
            return replace(now, asked=(*now.asked, came[0]), step=came[1].then)
    made = _of_own_accord(entry, allowed=allowed, asked=asked, terms=terms)
    after = None if made is None else replace(now, asked=(*now.asked, made))
    anew = None if after is None else _anew(after, asked=asked, terms=terms, memory=memory)
    return anew or replace(now, not_followed=(*now.not_followed, entry))


def _caught_up(now: Evening, *, allowed: Mapping[str, int]) -> Evening:
    """The evening with answers that were there before the chart came to ask for them."""
    while isinstance(now.step, Ask) and now.step.purchase.entry in now.not_followed:
        entry = now.step.purchase.entry
        came = by_chart(now.step, allowed=allowed[entry])
        if came is None:
            break
        now = Evening(
            step=came[1].then,
            asked=(*now.asked, came[0]),
            not_followed=tuple(each for each in now.not_followed if each != entry),
        )
    return now


def _further(now: Evening, *, asked: EveningAsked, terms: Terms, memory: Memory) -> Evening:
    """The evening with a chart that goes on, where the one from the start is cut short here."""
    if not isinstance(now.step, Ask) or now.step.outcomes:
        return now
    return _anew(now, asked=asked, terms=terms, memory=memory) or now


def _anew(now: Evening, *, asked: EveningAsked, terms: Terms, memory: Memory) -> Evening | None:
    """The evening with the best play from here; None where that can't be worked out.

    Where points were lost on a part of a request, what was paid can't be said by what is there.
    """
    if any(_is_partly_lost(each, terms=terms) for each in now.asked):
        return None
    so_far = SoFar(
        taken=purchases_text(taken_of(now.asked)),
        refused=purchases_text(each.purchase for each in now.asked if each.takes is None),
    )
    play = _best(asked, so_far, memory=memory).fallback
    return None if play is None else replace(now, step=play.chart)


def _is_partly_lost(each: AskedFor, *, terms: Terms) -> bool:
    is_part = each.takes is not None and each.takes != each.purchase
    return is_part and terms.offers[each.purchase.entry].loses_points


def _of_own_accord(
    entry: str, *, allowed: int, asked: EveningAsked, terms: Terms
) -> AskedFor | None:
    """A request as the plan has it; None where it isn't in it, or isn't one that is made singly."""
    planned = next((each for each in asked.plan if each.entry == entry), None)
    offer = terms.offers.get(entry)
    if planned is None or offer is None or offer.availability is None:
        return None
    if terms.asking is Asking.ALL_DECLARED_FIRST or offer.availability.shared_roll:
        return None
    return of_own_accord(offer, planned, allowed=allowed)


def _best(asked: EveningAsked, so_far: SoFar, *, memory: Memory) -> FallbackJourney:
    """The best play from there, kept while the force is the same."""
    played = game_terms(
        asked.folder, today=asked.today, choice=asked.choice, grades=asked.grades, memory=memory
    )
    chosen = (repr(asked.choice), repr(dict(asked.grades)), asked.points)
    return memory.kept(
        ("fall-back", asked.folder, chosen, so_far),
        lambda: best_fallback(
            asked.folder,
            today=asked.today,
            choice=asked.choice,
            grades=asked.grades,
            points=asked.points,
            so_far=so_far,
            memory=memory,
        ),
        rests_on=(played.count or played,),
    )
