"""What to ask for now: the step of the fall-back that one stands at, and what was asked before."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.game import Purchase
from paradestate.core.sentence.chance import chance_words, near_text
from paradestate.core.sentence.support import purchase_words
from paradestate.core.sentence.wording import listed, several
from paradestate.core.support.chart_path import ChartPath, Passed, chart_path
from paradestate.core.support.policy import Ask, Fallback, FirstChoice, Step, Take, Tipping
from paradestate.text.typed import purchases_text
from paradestate.web.choosing.question import ALLOWED, Question


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """Something that the dice may say now, as a link that says it."""

    words: str
    chance: str
    then: str
    query: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """Something that was asked for before, with what came of it."""

    words: str
    came: str
    back: str
    """The address of the question as it was before this answer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstView:
    """What to do now, at a known number of points."""

    points: int
    """Points left before anything was asked for."""
    title: str
    """`Ask for 2 light tanks`, or what is bought at the end."""
    lines: tuple[str, ...]
    answers: tuple[Answer, ...]
    """Empty at the end, where the dice have nothing more to say."""
    asked: tuple[Asked, ...]
    plan: str
    """The address that makes what comes of it the plan; empty before the end."""


def first_view(fallback: Fallback, *, asked: Question) -> FirstView:
    """What to do now by the chart of a fall-back."""
    path = chart_path(fallback.chart, allowed=asked.allowed)
    step = path.step
    return FirstView(
        points=fallback.points,
        title=step_words(step),
        lines=tuple(_lines(path)),
        answers=tuple(_answers(step, asked=asked)),
        asked=tuple(_before(each, asked=asked) for each in path.passed),
        plan="" if isinstance(step, Ask) else asked.with_plan((*path.taken, *step.purchases)),
    )


def step_words(step: Step) -> str:
    """What is done at a step: `Ask for 2 light tanks`, `Take 2 bicycle troop`, `Take nothing`."""
    if isinstance(step, Ask):
        return f"Ask for {purchase_words(step.purchase)}"
    return f"Take {take_words(step)}"


def take_words(step: Take) -> str:
    """What is bought at the end of a chart."""
    return listed(purchase_words(each) for each in step.purchases) or "nothing more"


def _lines(path: ChartPath) -> Iterator[str]:
    step = path.step
    if isinstance(step, Ask):
        yield f"{several(step.points, 'point')} left; worth {near_text(step.worth)} by the best play"
        return
    kept = listed(purchase_words(each) for each in path.taken)
    if kept:
        yield f"Beside {kept}, which came"
    worth = f", worth {near_text(step.worth)}" if step.purchases else ""
    yield f"{several(step.points, 'point')} left before it{worth}"


def _answers(step: Step, *, asked: Question) -> Iterator[Answer]:
    if not isinstance(step, Ask):
        return
    field = f"{ALLOWED}{step.purchase.entry}"
    for outcome in step.outcomes:
        takes = outcome.takes
        taken = "" if takes is None else f"take {purchase_words(takes)}, then "
        number = outcome.allowed
        yield Answer(
            words="Refused" if number == 0 else f"{number} allowed",
            chance=chance_words(outcome.chance),
            then=f"{taken}{_lower(step_words(outcome.then))}",
            query=asked.with_fields({field: str(number)}),
        )


def _lower(text: str) -> str:
    return text[:1].lower() + text[1:]


def _before(passed: Passed, *, asked: Question) -> Asked:
    entry = passed.ask.purchase.entry
    takes = passed.outcome.takes
    allowed = passed.outcome.allowed
    came = "refused" if allowed == 0 else f"{allowed} allowed"
    if takes is None and allowed:
        came = f"{came}, none taken"
    elif takes is not None and takes.number != allowed:
        came = f"{came}, {takes.number} taken"
    return Asked(
        words=purchase_words(passed.ask.purchase),
        came=came,
        back=asked.with_fields({f"{ALLOWED}{entry}": ""}),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherFirst:
    """Something else that could be asked for first, and what it costs to do so."""

    words: str
    worth: str
    less: str
    """How much less it is worth than the best; empty for the best."""
    query: str
    is_chosen: bool


def other_firsts(fallback: Fallback, *, asked: Question) -> tuple[OtherFirst, ...]:
    """What could be asked for first, the best first."""
    choices = fallback.first_choices
    best = choices[0].worth if choices else Fraction(0)
    chosen = asked.first or first_text(choices[0]) if choices else ""
    return tuple(
        OtherFirst(
            words="ask for nothing" if each.purchase is None else purchase_words(each.purchase),
            worth=near_text(each.worth),
            less=near_text(best - each.worth) if each.worth < best else "",
            query=asked.query(first=first_text(each) if place else ""),
            is_chosen=first_text(each) == chosen,
        )
        for place, each in enumerate(choices)
    )


NOTHING = "nothing"
"""Stands in the address for asking for nothing at all."""


def first_text(choice: FirstChoice) -> str:
    """A first choice as it stands in the address."""
    return NOTHING if choice.purchase is None else purchases_text((choice.purchase,))


def tipping_words(tipping: Tipping) -> str:
    """How far a worth may go before another first choice is as good."""
    named = purchase_words(
        Purchase(entry=tipping.entry, number=tipping.number, choice=tipping.choice)
    )
    bounds = []
    if tipping.down_to is not None:
        bounds.append(f"down to {near_text(tipping.down_to)}")
    if tipping.up_to is not None:
        bounds.append(f"up to {near_text(tipping.up_to)}")
    if not bounds:
        return f"{named}, worth {near_text(tipping.worth)}: whatever it is worth"
    return f"{named}, worth {near_text(tipping.worth)}: {listed(bounds)}"
