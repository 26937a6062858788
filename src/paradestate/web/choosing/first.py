"""What to ask for now: the step of the fall-back that one stands at, and what was asked before."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import islice

from paradestate.core.game import Purchase
from paradestate.core.sentence.chance import chance_words, near_text
from paradestate.core.sentence.fork import points_words, step_words
from paradestate.core.sentence.support import purchase_words
from paradestate.core.sentence.wording import listed
from paradestate.core.support.chart_path import ChartPath, Passed, chart_path
from paradestate.core.support.fork import forks
from paradestate.core.support.policy import Ask, Fallback, FirstChoice, Granted, Step, Tipping
from paradestate.sheet import fallback_chart
from paradestate.sheet.svg import Drawing
from paradestate.web.choosing.question import ALLOWED, Question


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """Something that the dice may say now, as a link that says it."""

    words: str
    chance: str
    then: str
    query: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedBefore:
    """Something that was asked for before, with what came of it."""

    words: str
    came: str
    back: str
    """The address of the question as it was before this answer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherFirst:
    """Something else that could be asked for first, and what it costs to do so."""

    words: str
    worth: str
    less: str
    """How much less it is worth than the best; empty for the best."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstView:
    """What to do now, at a known number of points."""

    title: str
    """`Ask for 2 light tanks`, or what is bought at the end."""
    lines: tuple[str, ...]
    answers: tuple[Answer, ...]
    """Empty at the end, where the dice have nothing more to say."""
    before: tuple[AskedBefore, ...]
    plan: str
    """The address that makes what comes of it the plan; empty before the end."""
    drawings: tuple[Drawing, Drawing] | None
    """The whole chart, wide and for a phone; None where it is too large to be drawn."""
    steps: tuple["StepRow", ...]
    """The same as a table."""
    is_cut: bool
    """Whether the table ends before the chart."""
    others: tuple[OtherFirst, ...]
    tippings: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class StepRow:
    """One line of the chart as a table."""

    depth: int
    when: str
    """What the dice said before it; empty for the first."""
    chance: str
    step: str
    worth: str


MOST_ROWS = 200
"""Lines of the table beside a chart; a longer one is cut, and the page says so."""


def first_view(fallback: Fallback, *, asked: Question) -> FirstView:
    """What to do now by the chart of a fall-back, and the chart."""
    path = chart_path(fallback.chart, allowed=asked.allowed)
    step = path.step
    wide = fallback_chart.fallback_chart(fallback, width=fallback_chart.WIDE)
    phone = fallback_chart.fallback_chart(fallback, width=fallback_chart.PHONE)
    rows = tuple(islice(_rows(fallback.chart), MOST_ROWS + 1))
    return FirstView(
        title=step_words(forks(step)),
        lines=tuple(_lines(path)),
        answers=tuple(_answers(step, asked=asked)),
        before=tuple(_before(each, asked=asked) for each in path.passed),
        plan="" if isinstance(step, Ask) else asked.with_plan((*path.taken, *step.purchases)),
        drawings=(wide, phone) if wide and phone else None,
        steps=rows[:MOST_ROWS],
        is_cut=len(rows) > MOST_ROWS,
        others=tuple(_others(fallback.first_choices)),
        tippings=tuple(tipping_words(each) for each in fallback.tippings),
    )


def _lines(path: ChartPath) -> Iterator[str]:
    step = path.step
    yield f"{points_words(range(step.points, step.points + 1))}."
    if path.taken:
        yield f"On the table already: {listed(purchase_words(each) for each in path.taken)}."
    if isinstance(step, Ask):
        yield f"Worth {near_text(step.worth)} on average, asked and bought as well as can be."
    elif step.purchases:
        yield f"Worth {near_text(step.worth)} to you."


def _answers(step: Step, *, asked: Question) -> Iterator[Answer]:
    if not isinstance(step, Ask):
        return
    for outcome in step.outcomes:
        taken = _taken(outcome)
        yield Answer(
            words=_came(outcome, asked=step.purchase),
            chance=chance_words(outcome.chance),
            then=f"{taken}{_lowered(step_words(forks(outcome.then)))}",
            query=asked.with_fields({f"{ALLOWED}{step.purchase.entry}": str(outcome.allowed)}),
        )


def _taken(outcome: Granted) -> str:
    if outcome.takes is None:
        return "take none, then " if outcome.allowed else ""
    return f"take {outcome.takes.number}, then "


def _came(outcome: Granted, *, asked: Purchase) -> str:
    """What the dice said: `refused`, `allowed`, `1 allowed`."""
    if outcome.allowed == 0:
        return "refused"
    return "allowed" if outcome.allowed == asked.number else f"{outcome.allowed} allowed"


def _lowered(text: str) -> str:
    return text[:1].lower() + text[1:]


def _before(passed: Passed, *, asked: Question) -> AskedBefore:
    purchase, outcome = passed.ask.purchase, passed.outcome
    takes = 0 if outcome.takes is None else outcome.takes.number
    came = _came(outcome, asked=purchase)
    return AskedBefore(
        words=purchase_words(purchase),
        came=came if takes == outcome.allowed else f"{came}, {takes or 'none'} taken",
        back=asked.with_fields({f"{ALLOWED}{purchase.entry}": ""}),
    )


def _rows(step: Step, *, depth: int = 0, when: str = "", chance: str = "") -> Iterator[StepRow]:
    """The chart from top to bottom, each step under the answer that leads to it."""
    words, worth = step_words(forks(step)), near_text(step.worth)
    yield StepRow(depth=depth, when=when, chance=chance, step=words, worth=worth)
    if not isinstance(step, Ask):
        return
    for outcome in step.outcomes:
        came = _came(outcome, asked=step.purchase)
        taken = _taken(outcome).removesuffix(", then ")
        yield from _rows(
            outcome.then,
            depth=depth + 1,
            when=f"{came}, {taken}" if taken else came,
            chance=chance_words(outcome.chance),
        )


def _others(choices: tuple[FirstChoice, ...]) -> Iterator[OtherFirst]:
    """What could be asked for first, the best first."""
    for each in choices:
        less = choices[0].worth - each.worth
        yield OtherFirst(
            words="nothing" if each.purchase is None else purchase_words(each.purchase),
            worth=near_text(each.worth),
            less=near_text(less) if less else "",
        )


def tipping_words(tipping: Tipping) -> str:
    """How far a worth may go before another first choice is as good."""
    purchase = Purchase(entry=tipping.entry, number=tipping.number, choice=tipping.choice)
    said = f"{purchase_words(purchase)}, worth {near_text(tipping.worth)}"
    bounds = []
    if tipping.down_to is not None:
        bounds.append(f"down to {near_text(tipping.down_to)}")
    if tipping.up_to is not None:
        bounds.append(f"up to {near_text(tipping.up_to)}")
    return f"{said}: {listed(bounds)}" if bounds else f"{said}: whatever it is worth"
