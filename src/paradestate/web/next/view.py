"""Everything that the sheet of what to get next says about an answer."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from urllib.parse import urlencode

from paradestate.core.advice.advice import Alone
from paradestate.core.advice.basket import Basket
from paradestate.core.advice.gain import by_gain
from paradestate.core.advice.outcome_group import OutcomeGroup, outcome_groups
from paradestate.core.certainty import Within, certainty_word
from paradestate.core.force import Force
from paradestate.core.sentence.advice import (
    Told,
    allowed_words,
    best_sentence,
    certainty_sentence,
    force_words,
    foresight_sentence,
    idle_sentences,
    left_out_sentences,
    near_above,
    now_sentence,
    points_words,
    reason_sentence,
    served_sentences,
    shares_sentences,
    wish_sentences,
)
from paradestate.core.sentence.chance import hundredths_words
from paradestate.journeys.goods import figures_in
from paradestate.journeys.next import NextFound
from paradestate.sheet.next_bars import PHONE, WIDE, next_bars
from paradestate.sheet.svg import Drawing
from paradestate.text.typed import numbers_text
from paradestate.web.next.question import Question


@dataclass(frozen=True, slots=True, kw_only=True)
class CandidateRow:
    """One candidate in the table."""

    name: str
    words: str
    cost: str
    is_affordable: bool
    adds: str
    then: str
    fun: str
    """What one gives away who takes one anyway; empty where that isn't known."""
    is_wished: bool
    query: str
    """The same question with it wished for, or not any more where it is."""
    order: str
    """The end of the address that asks for the cheapest order of its figures; empty for work."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StepRow:
    """A step on the way to the best: what is added at once, what it brings and costs."""

    lines: tuple[tuple[str, str], ...]
    """Each thing with its number, and what it is."""
    adds: str
    cost: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OutcomeLine:
    """All that the dice may bring after which both forces are the same."""

    points: str
    chance: str
    allowed: str
    now: str
    then: str


@dataclass(frozen=True, slots=True, kw_only=True)
class NextView:
    """What is shown of an advice."""

    boxes: tuple[tuple[str, str], ...]
    lead: tuple[str, ...]
    """The reason first of all."""
    beside: tuple[str, ...]
    """What it is a gain upon, and what it rests on."""
    drawings: tuple[Drawing, Drawing] | None
    """Wide, and for a phone; None where nothing adds anything."""
    of_what: str
    """What the gains are gains of."""
    idle: tuple[str, ...]
    rows: tuple[CandidateRow, ...]
    steps: tuple[StepRow, ...]
    total: str
    then: str
    order: str
    """The end of the address that asks for the cheapest order of all its figures."""
    wish: tuple[str, ...]
    foresight: str
    sure: str
    is_cut_short: bool
    outcomes: Mapping[str, tuple[OutcomeLine, ...]]
    """Game, with its share where there are several, to what may come of its dice."""
    are_told_apart: bool
    left_out: tuple[str, ...]


def next_view(found: NextFound, *, force: Force, asked: Question) -> NextView:
    """Everything about an advice."""
    advice = found.advice
    told = Told(advice=advice, currency=found.currency)
    groups = outcome_groups(advice.rows)
    return NextView(
        boxes=tuple(_boxes(found, told=told)),
        lead=tuple(_lead(found, told=told)),
        beside=(
            now_sentence(told, games=found.games),
            *shares_sentences(found.shares),
            *served_sentences(must_lacks=found.must_lacks, has_worths=found.has_worths),
        ),
        drawings=_drawings(told),
        of_what="the worth of the best force, on average"
        if advice.rows
        else "the share of legal forces that can be fielded, on average",
        idle=tuple(idle_sentences(told)),
        rows=tuple(_row(each, told=told, force=force, asked=asked) for each in by_gain(advice)),
        steps=tuple(_steps(told)),
        total=f"{told.cost(advice.best.cost)} of {told.cost(found.limit)}",
        then=told.value(advice.best.value),
        order=_order(told, advice.best.basket, force=force),
        wish=tuple(wish_sentences(told, wish=found.wish, limit=found.limit)),
        foresight=foresight_sentence(told),
        sure=certainty_sentence(told),
        is_cut_short=advice.bound is not None,
        outcomes=_outcomes(found, groups),
        are_told_apart=all(each.are_told_apart for each in groups),
        left_out=tuple(left_out_sentences(found.left_out)),
    )


def _boxes(found: NextFound, *, told: Told) -> Iterator[tuple[str, str]]:
    advice = found.advice
    yield "To spend", told.cost(found.limit)
    yield "Now", told.value(advice.now.value)
    yield "Then", told.value(advice.best.value)
    certainty = advice.certainty
    yield "Sureness", "not proved" if isinstance(certainty, Within) else certainty_word(certainty)


def _lead(found: NextFound, *, told: Told) -> Iterator[str]:
    yield reason_sentence(told)
    if found.advice.steps:
        yield best_sentence(told, limit=found.limit)


def _drawings(told: Told) -> tuple[Drawing, Drawing] | None:
    wide, phone = next_bars(told, width=WIDE), next_bars(told, width=PHONE)
    return None if wide is None or phone is None else (wide, phone)


def _row(each: Alone, *, told: Told, force: Force, asked: Question) -> CandidateRow:
    name = each.candidate.name
    half = "" if each.sure is None else f" ± {near_above(each.sure)}"
    is_wished = name in asked.wish
    fun = each.best_with
    return CandidateRow(
        name=name,
        words=each.candidate.words,
        cost=told.cost(each.priced.cost),
        is_affordable=each.is_affordable,
        adds=f"{told.value(each.gain)}{half}",
        then=told.value(each.priced.value),
        fun="" if fun is None else told.value(told.advice.price_of_fun(fun)),
        is_wished=is_wished,
        query=asked.without_wish(name) if is_wished else asked.with_wish(name),
        order=_order(told, each.priced.basket, force=force),
    )


def _order(told: Told, basket: Basket, *, force: Force) -> str:
    figures = figures_in(force, told.named(basket)) if told.currency else {}
    return f"?{urlencode({'want': numbers_text(figures)})}" if figures else ""


def _steps(told: Told) -> Iterator[StepRow]:
    words = {each.name: each.words for each in told.advice.candidates}
    for step in told.advice.steps:
        yield StepRow(
            lines=tuple(
                (f"{number} x {name}", words[name])
                for name, number in told.named(step.added).items()
            ),
            adds=told.value(step.gain),
            cost=told.cost(step.cost) if step.cost >= 0 else f"−{told.cost(-step.cost)}",
        )


def _outcomes(
    found: NextFound, groups: tuple[OutcomeGroup, ...]
) -> Mapping[str, tuple[OutcomeLine, ...]]:
    several = len(found.games) > 1
    made = {
        f"{name}, {hundredths_words(share)} of the games" if several else name: tuple(
            _line(each) for each in groups if each.game == name
        )
        for name, share in found.games.items()
    }
    return {name: lines for name, lines in made.items() if lines}


def _line(group: OutcomeGroup) -> OutcomeLine:
    return OutcomeLine(
        points=points_words(group),
        chance=hundredths_words(group.chance),
        allowed=allowed_words(group),
        now=force_words(group.now),
        then="the same" if group.then == group.now else force_words(group.then),
    )
