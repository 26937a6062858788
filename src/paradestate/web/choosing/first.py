"""What to ask for now, the chart of what then, and before the roll what each roll would have asked.

Nothing is worked out here; links carry the answers of the dice in the address.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import islice

from paradestate.core.certainty import NotComputed
from paradestate.core.game import Purchase
from paradestate.core.sentence.chance import chance_words, near_text
from paradestate.core.sentence.fallback import declared_words, tied_words, tipping_words
from paradestate.core.sentence.fork import points_words, step_words, taken_words
from paradestate.core.sentence.support import purchase_words, purchases_words
from paradestate.core.sentence.wording import capital, listed
from paradestate.core.support.asked_for import AskedFor, taken_of
from paradestate.core.support.entry import Asking
from paradestate.core.support.fork import forks
from paradestate.core.support.policy import Ask, Fallback, FirstChoice, Granted, Step
from paradestate.core.support.terms import Terms
from paradestate.journeys.evening import Evening
from paradestate.journeys.fallback import FallbackJourney, shown_choices
from paradestate.sheet import fallback_chart
from paradestate.sheet.svg import Drawing
from paradestate.web.choosing.question import ALLOWED, Question

MOST_ROWS = 200
"""Lines of the table beside a chart; a longer one is cut, and the page says so."""


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
class NowView:
    """What to do now, with a known number of points."""

    title: str
    """`Ask for 2 x light tanks`, or what is bought at the end."""
    lines: tuple[str, ...]
    answers: tuple[Answer, ...]
    """Empty at the end, where the dice have nothing more to say."""
    before: tuple[AskedBefore, ...]
    plan: str
    """The address that makes what comes of it the plan; empty before the end."""
    not_followed: str
    """Which answers aren't known what to make of; empty where none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StepRow:
    """One line of the chart as a table."""

    depth: int
    when: str
    """What the dice said before it; empty for the first."""
    chance: str
    step: str
    worth: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherFirst:
    """Something that could be asked for first, and what it gives up."""

    words: str
    worth: str
    less: str
    """How much less it is worth than the best; empty for the best."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ChartView:
    """The whole chart from the start of the evening."""

    points: str
    drawings: tuple[Drawing, Drawing] | None
    """Wide and for a phone; None where it is too large to be drawn."""
    steps: tuple[StepRow, ...]
    """The same as a table."""
    is_cut: bool
    """Whether the table ends before the chart."""
    others: tuple[OtherFirst, ...]
    tippings: tuple[str, ...]
    sentences: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LevelRow:
    """What to ask for first with one number of points."""

    points: int
    first: str
    worth: str
    query: str
    """The address once that was rolled."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LevelsView:
    """What to ask for first, before it is known how many points there are."""

    title: str
    is_varied: bool
    """Whether not every roll asks for the same."""
    mean: str
    rows: tuple[LevelRow, ...]


def now_view(now: Evening, fallback: Fallback, *, terms: Terms, asked: Question) -> NowView:
    """What to do now, and what the dice may say to it."""
    step = now.step
    taken = taken_of(now.asked)
    return NowView(
        title=step_words(forks(step)),
        lines=tuple(_lines(step, fallback, taken=taken, is_begun=bool(now.asked), terms=terms)),
        answers=tuple(_answers(step, asked=asked)),
        before=tuple(_before(each, asked=asked) for each in now.asked),
        plan="" if isinstance(step, Ask) else asked.with_plan((*taken, *step.purchases)),
        not_followed=listed(now.not_followed),
    )


def _lines(
    step: Step,
    fallback: Fallback,
    *,
    taken: tuple[Purchase, ...],
    is_begun: bool,
    terms: Terms,
) -> Iterator[str]:
    yield f"{points_words(range(step.points, step.points + 1))}."
    if terms.asking is Asking.ALL_DECLARED_FIRST and not is_begun:
        yield declared_words(fallback)
    if taken:
        yield f"On the table already: {purchases_words(taken)}."
    if isinstance(step, Ask):
        yield f"{near_text(step.worth)} to come on average."
        if step.is_tied:
            yield "Something else is as good."
    elif step.purchases:
        yield f"Worth {near_text(step.worth)} to you."


def _answers(step: Step, *, asked: Question) -> Iterator[Answer]:
    if not isinstance(step, Ask):
        return
    for outcome in step.outcomes:
        yield Answer(
            words=_came(outcome.allowed, asked=step.purchase),
            chance=chance_words(outcome.chance),
            then=f"{_taking(outcome)}{_lowered(step_words(forks(outcome.then)))}",
            query=asked.with_fields({f"{ALLOWED}{step.purchase.entry}": str(outcome.allowed)}),
        )


def _taking(outcome: Granted) -> str:
    if outcome.is_open or not outcome.allowed:
        return ""
    number = str(outcome.takes.number) if outcome.takes else "none"
    return f"{taken_words(outcome, number=number)}, then "


def _came(allowed: int, *, asked: Purchase) -> str:
    """What the dice said: `refused`, `allowed`, `1 allowed`."""
    if allowed == 0:
        return "refused"
    return "allowed" if allowed == asked.number else f"{allowed} allowed"


def _lowered(text: str) -> str:
    return text[:1].lower() + text[1:]


def _before(each: AskedFor, *, asked: Question) -> AskedBefore:
    takes = 0 if each.takes is None else each.takes.number
    came = _came(each.allowed, asked=each.purchase)
    return AskedBefore(
        words=purchase_words(each.purchase),
        came=came if takes == each.allowed else f"{came}, {takes or 'none'} taken",
        back=asked.with_fields({f"{ALLOWED}{each.purchase.entry}": ""}),
    )


def chart_view(fallback: Fallback, *, terms: Terms) -> ChartView:
    """The chart of a fall-back, and what would change it."""
    wide = fallback_chart.fallback_chart(fallback, width=fallback_chart.WIDE)
    phone = fallback_chart.fallback_chart(fallback, width=fallback_chart.PHONE)
    rows = tuple(islice(_rows(fallback.chart), MOST_ROWS + 1))
    said = [tied_words(fallback)] if fallback.first_choices else []
    if terms.asking is Asking.ALL_DECLARED_FIRST:
        said.append(declared_words(fallback))
    return ChartView(
        points=points_words(range(fallback.points, fallback.points + 1)),
        drawings=(wide, phone) if wide and phone else None,
        steps=rows[:MOST_ROWS],
        is_cut=len(rows) > MOST_ROWS,
        others=tuple(_others(shown_choices(fallback))),
        tippings=tuple(tipping_words(each) for each in fallback.tippings),
        sentences=tuple(filter(None, said)),
    )


def _rows(step: Step, *, depth: int = 0, when: str = "", chance: str = "") -> Iterator[StepRow]:
    """The chart from top to bottom, each step under the answer that leads to it."""
    words = step_words(forks(step))
    worth = f"{near_text(step.worth)}{' to come' if isinstance(step, Ask) else ''}"
    yield StepRow(depth=depth, when=when, chance=chance, step=words, worth=worth)
    if not isinstance(step, Ask):
        return
    for outcome in step.outcomes:
        came = _came(outcome.allowed, asked=step.purchase)
        taking = _taking(outcome).removesuffix(", then ")
        yield from _rows(
            outcome.then,
            depth=depth + 1,
            when=f"{came}, {taking}" if taking else came,
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


def levels_view(journey: FallbackJourney, *, terms: Terms, asked: Question) -> LevelsView | None:
    """What each number of points asks for first; None where that isn't known."""
    if not journey.levels or journey.value is None:
        return None
    firsts = {each.first for each in journey.levels}
    (only,) = firsts if len(firsts) == 1 else (None,)
    if len(firsts) > 1:
        title = "It depends on the roll"
    else:
        title = capital(f"ask for {purchase_words(only)}" if only else "ask for nothing")
    return LevelsView(
        title=title,
        is_varied=len(firsts) > 1,
        mean=near_text(journey.value),
        rows=tuple(
            LevelRow(
                points=each.points,
                first=purchase_words(each.first) if each.first else "nothing",
                worth=near_text(each.worth),
                query=asked.query(rolled=str(each.points + terms.taken_off)),
            )
            for each in journey.levels
        ),
    )


def why_not(journey: FallbackJourney) -> str:
    """Why it can't be said what to ask for, and what would help; empty where it can."""
    if isinstance(journey.certainty, NotComputed):
        return f"What to ask for first wasn't computed: {journey.certainty.reason.rstrip('.')}."
    reasons = {"worths-missing", "nothing-on-offer"}
    missing = [each for each in journey.checked.findings if each.code in reasons]
    return " ".join(f"{each.message} {each.hint}" for each in missing)
