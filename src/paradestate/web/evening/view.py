"""Everything that the sheet of an evening shows of one game."""

from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.finding import Finding
from paradestate.core.play.game_record import GameRecord, rolls
from paradestate.core.sentence.account import sum_words
from paradestate.core.sentence.loss_limit import body_words, losses_words
from paradestate.core.sentence.play import event_words, game_words, season_words
from paradestate.core.sentence.support import purchases_words
from paradestate.core.sentence.wording import capital, listed
from paradestate.journeys.game.played_game import PlayedGame
from paradestate.web.evening.arranging import (
    Arrangement,
    Names,
    Stands,
    anything,
    arrangements,
    how_it_stands,
)
from paradestate.web.evening.record import (
    MachineRoll,
    RecordLine,
    RollLine,
    machine_rolls,
    record_lines,
    roll_lines,
)
from paradestate.web.evening.step import Choosable, Step, askable, buyable, step_of
from paradestate.web.visit import Visit


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherGame:
    """Another game of this force that goes on."""

    id: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class EveningView:
    """A game as far as it has come, and what can be done with it."""

    id: str
    title: str
    boxes: tuple[tuple[str, str], ...]
    ended: str
    """How it ended; empty while it goes on."""
    left: int | None
    """Points; None before the roll, or where the folder doesn't offer the game any more."""
    sums: tuple[str, ...]
    """Where the points come from and went, what was taken and what was refused."""
    now: str
    chart: tuple[str, ...]
    step: Step | None
    """None where the game is over."""
    untold: bool
    """Whether a secret of a roll that was made waits to be told."""
    asks: tuple[Choosable, ...]
    buys: tuple[Choosable, ...]
    arrangements: tuple[Arrangement, ...]
    aspects: tuple[str, ...]
    names: Names
    standing: tuple[Stands, ...]
    losses: tuple[str, ...]
    """How bodies with a limit to their losses stand."""
    rolls: tuple[RollLine, ...]
    lines: tuple[RecordLine, ...]
    more_lines: int
    machine: tuple[MachineRoll, ...]
    season: tuple[str, ...]
    others: tuple[OtherGame, ...]
    numbered: tuple[str, ...]
    """Names of the forms of which there may be several."""
    last_roller: str
    last_witness: str
    findings: tuple[Finding, ...]


def evening_view(visit: Visit, game: PlayedGame, *, record: GameRecord, asked: str) -> EveningView:
    """A game as the sheet shows it; `asked` is what somebody wants to roll for."""
    zone, account, ended = visit.now.tzinfo, game.account, record.ended
    step, findings = (None, ()) if ended is not None else step_of(game, asked=asked)
    lines = record_lines(record, account, zone=zone)
    aspects, names = anything(game)
    arranged, stands = arrangements(game), how_it_stands(record)
    rolled = [each.rolled for each in rolls(record) if not each.rolled.commitment]
    return EveningView(
        id=record.id,
        title=capital(game_words(record.terms)),
        boxes=tuple(_boxes(game, record)),
        ended="" if ended is None else capital(event_words(ended)),
        left=None if account is None else account.left,
        sums=tuple(_sums(game)),
        now=game.now.words,
        chart=game.now.chart,
        step=step,
        untold=any(each.is_to_be_told for each in game.bindings),
        asks=() if account is None else askable(account),
        buys=() if account is None else buyable(account),
        arrangements=arranged,
        aspects=aspects,
        names=names,
        standing=stands,
        losses=tuple(
            f"{capital(body_words(each.body))}: {losses_words(each)}."
            for each in game.losses
            if each.most
        ),
        rolls=roll_lines(record, account, zone=zone),
        lines=lines,
        more_lines=len(record.lines) - len(lines),
        machine=tuple(machine_rolls(game)),
        season=tuple(
            season_words(sides, each) for sides, each in game.season.items() if each.is_enough
        ),
        others=tuple(
            OtherGame(id=each.id, words=game_words(each.terms))
            for each in game.others
            if each.ended is None and each.id != record.id
        ),
        numbered=(
            *(f"arrange-{place + 1}" for place in range(len(arranged))),
            *(f"settle-{place + 1}" for place in range(sum(x.is_disputed for x in stands))),
        ),
        last_roller=rolled[-1].roller if rolled else "",
        last_witness=rolled[-1].witness if rolled else "",
        findings=findings,
    )


def _boxes(game: PlayedGame, record: GameRecord) -> Iterator[tuple[str, str]]:
    """The terms, as far as they are more than the game's name and what is usual."""
    terms = record.terms
    scales = {} if game.count is None else game.count.force.grades
    usual = {each.name: each.usual for each in scales.values()}
    grades = [f"{scale} {it}" for scale, it in terms.grades.items() if it != usual.get(scale)]
    if terms.posture:
        yield "Posture", terms.posture
    if terms.date:
        yield "Date", terms.date
    if terms.numbers:
        yield "Numbers", listed(f"{number} x {part}" for part, number in terms.numbers.items())
    if grades:
        yield "Grades", listed(grades)


def _sums(game: PlayedGame) -> Iterator[str]:
    account = game.account
    if account is None:
        return
    if account.left is not None:
        yield f"{sum_words(account)}."
    if account.bought:
        yield f"Taken: {purchases_words(account.bought)}."
    if account.refused:
        yield f"Refused or declined: {purchases_words(account.refused)}."
    if account.declared:
        yield f"Still to be rolled for: {purchases_words(account.declared)}."
