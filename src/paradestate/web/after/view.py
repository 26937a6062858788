"""Everything that the sheet of losses says of a game."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.campaign.casualty import Casualty, Fate, RollGroup
from paradestate.core.campaign.loss_flow import LossFlow
from paradestate.core.campaign.recovery import Campaign
from paradestate.core.play.event import Rolled, Told
from paradestate.core.play.game_record import GameRecord, Line
from paradestate.core.sentence.campaign import (
    back_sentence,
    casualty_words,
    legal_sentence,
    loss_words,
    out_words,
    pool_sentence,
    pool_words,
    supporting_words,
    taken_sentence,
    to_add_sentence,
)
from paradestate.core.sentence.chance import chance_words
from paradestate.core.sentence.play import game_words, shown_words
from paradestate.core.sentence.wording import capital, day_words, how_often, listed, several
from paradestate.core.support.chances import Chances
from paradestate.core.unfolding import Stand, name_within, spoken
from paradestate.journeys.game.losses import AfterGame
from paradestate.journeys.game.losses_rolled import PURPOSE
from paradestate.journeys.game.losses_struck import LossLine, loss_lines
from paradestate.journeys.game.losses_told import words_for
from paradestate.sheet import losses_flow
from paradestate.sheet.svg import Drawing
from paradestate.web.after.question import Question
from paradestate.web.log_form import field

ROLL = "roll"
"""Fields with what dice showed begin so."""
MOST_ODDS = 30
"""Numbers of stands that come back and have a line; of more, those that are not too rare."""
RARE = 1000
EXAMPLE = """\
campaign:
  recovery:
    {pattern}: {{roll: 1d6, on: 3 or more, promoted on: 6}}
  never back: [captured]
  replacements: {{{pattern}: 2}}
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class RollRow:
    """A roll that is still to be made."""

    field: str
    label: str
    words: str
    """Its dice, the totals that help, and the chance."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CasualtyRow:
    """A stand of which a game left something behind, and what may still be told of it."""

    name: str
    label: str
    pattern: str
    out: str
    fate: str
    words: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenRow:
    """Something that was written about losses."""

    id: str
    words: str
    seen: str
    following: tuple[str, ...]
    struck_because: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class AfterView:
    """The sheet of a game."""

    boxes: tuple[tuple[str, str], ...]
    lead: str
    more: tuple[str, ...]
    notes: tuple[str, ...]
    flows: tuple[LossFlow, ...]
    """Those to which anything happened."""
    undrawn: int
    """Of these, how many stand in the table alone."""
    idle: str
    """Those to which nothing did."""
    flow: tuple[Drawing, Drawing] | None
    rolls: Mapping[str, tuple[RollRow, ...]]
    """Company to its rolls."""
    odds: tuple[tuple[str, str, str, str], ...]
    """How many come back; the chance of just so many, of at least and of at most so many."""
    casualties: tuple[CasualtyRow, ...]
    before: tuple[CasualtyRow, ...]
    """Still missing from games before."""
    others: Mapping[str, tuple[tuple[str, str], ...]]
    """Company to its stands that weren't out, each with what it is called."""
    written: tuple[WrittenRow, ...]
    """Newest first."""
    experience: tuple[tuple[str, str], ...]
    example: str
    """What may be written into the files, where they say nothing of losses."""
    seen: tuple[str, str]
    """Who rolled last, and who saw it."""


def after_view(after: AfterGame, record: GameRecord, *, asked: Question) -> AfterView:
    """The sheet of a game that was written down."""
    every = after.by_company if asked.is_by_company else after.by_kind
    flows = tuple(each for each in every if each.is_eventful)
    idle = [each for each in every if not each.is_eventful and each.sure]
    here = {each.stand.name for each in after.casualties}
    away = [
        each
        for each in after.missing
        if each.stand.name not in here and each.fate in {Fate.LOST, Fate.OPEN}
    ]
    taken = any(each.is_taken_as_back for each in after.casualties)
    return AfterView(
        boxes=tuple(_boxes(after, record)),
        lead=capital(to_add_sentence(after.strengths, game=after.next_game, is_taken=taken)),
        more=tuple(_more(after)),
        notes=tuple(_notes(after)),
        flows=flows,
        undrawn=len(flows[losses_flow.MOST_ROWS :]),
        idle=listed(f"{spoken(each.name)} ({each.sure})" for each in idle),
        flow=_drawn(flows),
        rolls=_rolls(after),
        odds=() if after.odds is None or not after.groups else tuple(_odds(after.odds.back)),
        casualties=tuple(_row(after, each) for each in after.casualties),
        before=tuple(_row(after, each) for each in away),
        others=_others(after, here=here),
        written=tuple(_written(each) for each in loss_lines(after)[::-1]),
        experience=tuple(
            (spoken(name), how_often(times)) for name, times in after.experience.items()
        ),
        example=example_of(
            after.campaign,
            [each.pattern for each in (*(lost.stand for lost in after.casualties), *after.fielded)],
        ),
        seen=_seen(record),
    )


def dated_words(record: GameRecord) -> str:
    """How a game is named among others: `evening attack, 27 November 2026`."""
    return f"{game_words(record.terms)}, {day_words(record.opening.on)}"


def _boxes(after: AfterGame, record: GameRecord) -> Iterator[tuple[str, str]]:
    yield "Game", dated_words(record)
    waiting = after.to_roll_for
    yield "To roll for", several(waiting, "stand") if waiting else "nobody"
    yield "Next", after.next_game


def _more(after: AfterGame) -> Iterator[str]:
    """What stands behind the answer: whether it is legal, and the chances."""
    odds = after.odds
    if odds is None:
        return
    limited = bool(after.campaign.replacements)
    yield legal_sentence(after.strengths, complete=odds.none_needed, is_pool_limited=limited)
    taken = taken_sentence(after.campaign, after.casualties)
    if taken:
        yield taken
    if after.groups:
        yield back_sentence(after.to_roll_for, mean=odds.back.mean)
        if any(each.pool for each in after.strengths):
            yield pool_sentence(odds.pool_enough)
    left = pool_words(after.strengths)
    if left:
        yield f"May still be sent up: {left}."


def _notes(after: AfterGame) -> Iterator[str]:
    """What the numbers leave out."""
    if after.campaign.by_hand:
        yield f"By hand: {after.campaign.by_hand}"
    if after.has_supporting:
        yield supporting_words(after.supporting)


def _drawn(flows: Sequence[LossFlow]) -> tuple[Drawing, Drawing] | None:
    if not flows:
        return None
    wide, phone = (
        losses_flow.losses_flow(flows, width=width)
        for width in (losses_flow.WIDE, losses_flow.PHONE)
    )
    return wide, phone


def _rolls(after: AfterGame) -> Mapping[str, tuple[RollRow, ...]]:
    by_name = {each.stand.name: each.stand for each in after.missing}
    found: dict[str, list[RollRow]] = {}
    for group in after.groups:
        company = by_name[group.stands[0]].company
        found.setdefault(company, []).append(_roll(after, group, company=company))
    return {spoken(company): tuple(rows) for company, rows in found.items()}


def _roll(after: AfterGame, group: RollGroup, *, company: str) -> RollRow:
    by = after.campaign.recovery[group.pattern]
    chance = "" if after.odds is None else f", {chance_words(after.odds.of_each[group.pattern])}"
    stands = "" if len(group.stands) == 1 else f" for {several(len(group.stands), 'stand')}"
    return RollRow(
        field=field(ROLL, group.name),
        label=spoken(name_within(group.name, company)),
        words=f"{by.roll}{stands}: back on {by.on}{chance}",
    )


def _odds(back: Chances) -> Iterator[tuple[str, str, str, str]]:
    numbers = [
        number
        for number in back.counts
        if len(back.counts) <= MOST_ODDS or back.of(number) * RARE >= 1
    ]
    for number in numbers:
        chances = (back.of(number), back.at_least(number), 1 - back.at_least(number + 1))
        exactly, more, fewer = map(chance_words, chances)
        yield str(number), exactly, more, fewer


def _row(after: AfterGame, each: Casualty) -> CasualtyRow:
    return CasualtyRow(
        name=each.stand.name,
        label=spoken(each.stand.name),
        pattern=each.stand.pattern,
        out=out_words(each.out) if each.out else "",
        fate=casualty_words(each),
        words=words_for(after, each.stand.name),
    )


def _others(after: AfterGame, *, here: set[str]) -> Mapping[str, tuple[tuple[str, str], ...]]:
    """Stands of which nothing is told, by company, each with its name and what it is called."""
    found: dict[str, list[Stand]] = {}
    for stand in after.fielded:
        if stand.name not in here:
            found.setdefault(stand.company, []).append(stand)
    return {
        spoken(company): tuple(
            (each.name, spoken(name_within(each.name, company))) for each in stands
        )
        for company, stands in found.items()
    }


def _written(each: LossLine) -> WrittenRow:
    event = each.line.event
    seen: tuple[str, ...] = ()
    if isinstance(event, Rolled):
        name = spoken(event.purpose.removeprefix(PURPOSE))
        words = f"{name}: {shown_words(event)} on {event.dice}"
        seen = (
            f"rolled by {event.roller}" if event.roller else "",
            f"seen by {event.witness}" if event.witness else "",
        )
    else:
        words = _told_words(each.line)
    return WrittenRow(
        id=each.line.id,
        words=words,
        seen=", ".join(filter(None, seen)),
        following=tuple(map(_told_words, each.following)),
        struck_because=each.line.struck_because,
    )


def _told_words(line: Line) -> str:
    assert isinstance(line.event, Told)  # noqa: S101 - what isn't a roll is told
    return f"{spoken(line.event.subject.name)}: {loss_words(line.event)}"


def _seen(record: GameRecord) -> tuple[str, str]:
    rolled = [each.event for each in record.lines if isinstance(each.event, Rolled)]
    return (rolled[-1].roller, rolled[-1].witness) if rolled else ("", "")


def example_of(campaign: Campaign, patterns: Iterable[str]) -> str:
    """What may be written where the files say nothing of losses; empty where they do."""
    first = next(iter(patterns), "rifle section")
    return "" if campaign != Campaign() else EXAMPLE.format(pattern=first)
