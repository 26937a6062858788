"""A game as far as it was written down: its rolls, points left, and what to do now.

journal -> games -> the one that is meant -> its terms -> account -> doubts -> what to do now
"""

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from paradestate.core.dice import Dice
from paradestate.core.finding import Finding, stops
from paradestate.core.play.account import Account, account
from paradestate.core.play.fairness import Fairness, fairness
from paradestate.core.play.game_record import (
    Binding,
    GameRecord,
    bindings,
    disagreements,
    rolls,
)
from paradestate.core.play.loss_count import LossCount, fielded_bodies, loss_counts
from paradestate.core.play.machine_roll import thrown
from paradestate.core.play.opening_finding import clock_findings, opening_findings
from paradestate.core.play.play_finding import record_findings
from paradestate.core.play.telling_finding import telling_findings
from paradestate.core.support.room import Fielded
from paradestate.journeys.choosing import agreed_choice
from paradestate.journeys.count import Count
from paradestate.journeys.game.games import game_beginning, games_of, going_on
from paradestate.journeys.game.what_now import NOTHING_TO_SAY, WhatNow, waiting_words, what_now
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.terms import game_terms
from paradestate.text.dice import read_dice
from paradestate.text.slip import Slip

NO_DICE = Dice(terms=())


@dataclass(frozen=True, slots=True, kw_only=True)
class PlayedGame:
    """A game, or none where there is none that is meant; and what the season's dice showed."""

    findings: tuple[Finding, ...]
    texts: Mapping[str, str]
    record: GameRecord | None = None
    others: tuple[GameRecord, ...] = ()
    """All games of this force, oldest first."""
    count: Count | None = None
    account: Account | None = None
    """None where the folder doesn't offer that game any more, as the findings say."""
    bindings: tuple[Binding, ...] = ()
    differences: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """Commitment to what of its roll doesn't agree, where its secret is told; empty: all does."""
    now: WhatNow = NOTHING_TO_SAY
    losses: tuple[LossCount, ...] = ()
    """How every body with a limit to its losses stands."""
    season: Mapping[int, Fairness] = field(default_factory=dict)
    """Number of faces to how evenly real dice of that sort came, over all games."""

    @property
    def open_game(self) -> GameRecord | None:
        """The game, where it isn't ended."""
        return None if self.record is None or self.record.ended is not None else self.record

    @property
    def fielded(self) -> Fielded | None:
        """The force with what was bought; None where the folder doesn't offer the game any more."""
        return _fielded(self.count, self.account)


def played_game(
    folder: Path,
    *,
    today: datetime.date,
    of: str = "",
    before: str = "",
    now: datetime.datetime | None = None,
    advises: bool = True,
    memory: Memory = NOTHING,
) -> PlayedGame:
    """The newest game that isn't ended, else the newest; or the one whose id begins with `of`.

    With `before` as all was when the entry of that id wasn't written yet. Without `now` only what
    is dated later than today anywhere on Earth is dated ahead. Without `advises` it isn't worked
    out what to do now. Raises StoreError, and FileError.
    """
    found = games_of(folder, today=today, before=before, memory=memory)
    past, games = found.past, found.records
    season = dice_of(games)
    record = _meant(games, of=of)
    if record is None:
        return PlayedGame(findings=past.findings, texts=past.texts, others=games, season=season)
    opened = record.terms
    offered = game_terms(
        folder, today=today, choice=agreed_choice(opened), grades=opened.grades, memory=memory
    )
    findings = (*past.findings, *stops(offered.checked.findings))
    held = None if offered.terms is None else account(record, offered.terms)
    bound = bindings(record)
    wrong = {each.line.id: _differences(each) for each in bound if each.secret is not None}
    doubts = () if held is None else tuple(record_findings(record, held, wrong=wrong))
    odd = (*opening_findings(record, games), *clock_findings(record, now=now or _end_of(today)))
    fielded = _fielded(offered.count, held)
    unfit = () if fielded is None else tuple(telling_findings(record, fielded))
    to_do = NOTHING_TO_SAY
    if held is not None and advises and record.ended is None:
        to_do = waiting_words(bound) or what_now(
            folder, held, opened=opened, today=today, memory=memory
        )
    return PlayedGame(
        findings=tuple(dict.fromkeys((*findings, *odd, *doubts, *unfit))),
        texts={**past.texts, **offered.checked.texts},
        record=record,
        others=games,
        count=offered.count,
        account=held,
        bindings=bound,
        differences=wrong,
        now=to_do,
        losses=() if fielded is None else _losses(record, fielded),
        season=season,
    )


def _fielded(count: Count | None, held: Account | None) -> Fielded | None:
    if count is None or held is None:
        return None
    return Fielded(force=count.force, made=count.made, plan=held.bought)


def _losses(record: GameRecord, fielded: Fielded) -> tuple[LossCount, ...]:
    bodies = fielded_bodies(fielded.force, fielded.made, plan=fielded.plan)
    return loss_counts(bodies, record.board)


def _meant(games: Sequence[GameRecord], *, of: str) -> GameRecord | None:
    if of:
        return game_beginning(games, of)
    return going_on(games) or next(reversed(games), None)


def _end_of(day: datetime.date) -> datetime.datetime:
    """When a day is over everywhere: where it ends last, twelve hours after its end in UTC."""
    noon = datetime.time(12, tzinfo=datetime.UTC)
    return datetime.datetime.combine(day + datetime.timedelta(days=1), noon)


def _differences(binding: Binding) -> tuple[str, ...]:
    dice = dice_of_text(binding.committed.dice)
    if dice is None:
        return ("its dice can't be read",)
    return tuple(disagreements(binding, dice=dice))


def dice_of_text(text: str) -> Dice | None:
    """The dice that a line names; None where they can't be read."""
    read = read_dice(text)
    return None if isinstance(read, Slip) else read


def dice_of(games: Sequence[GameRecord]) -> Mapping[int, Fairness]:
    """How evenly real dice came over all games, those struck out among them; by their faces."""
    came: dict[int, list[int]] = {}
    for game in games:
        for roll in rolls(game):
            sides = thrown(dice_of_text(roll.rolled.dice) or NO_DICE)
            if roll.rolled.commitment or len(sides) != len(roll.rolled.faces):
                continue
            for face, most in zip(roll.rolled.faces, sides, strict=True):
                came.setdefault(most, [0] * most)[face - 1] += 1
    return {most: fairness(came[most]) for most in sorted(came) if most > 1}
