"""After a game: who is out of action, how likely they come back, what the next game finds.

journal -> games -> boards -> casualties -> rolls still to be made -> odds -> next strength
"""

import datetime
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from paradestate.chance.recovery import RecoveryOdds, recovery_odds
from paradestate.core.campaign.casualty import (
    OUT,
    Casualty,
    RollGroup,
    casualties,
    roll_groups,
)
from paradestate.core.campaign.loss_finding import doubts, nothing_played
from paradestate.core.campaign.next_strength import (
    PatternStrength,
    experience,
    missing_now,
    next_strength,
)
from paradestate.core.campaign.recovery import Campaign
from paradestate.core.choice import Choice, chosen
from paradestate.core.establishment import Establishment, establishment
from paradestate.core.finding import Finding, stops
from paradestate.core.force import Force
from paradestate.core.play.game_record import GameRecord
from paradestate.journeys.check import checked
from paradestate.journeys.choosing import agreed_choice
from paradestate.journeys.games import game_beginning, games_of
from paradestate.journeys.memory import NOTHING, Memory


@dataclass(frozen=True, slots=True, kw_only=True)
class AfterGame:
    """What a game left behind, or nothing with the stops in the way."""

    findings: tuple[Finding, ...]
    texts: Mapping[str, str]
    record: GameRecord | None = None
    campaign: Campaign = Campaign()
    casualties: tuple[Casualty, ...] = ()
    """Of this game."""
    missing: tuple[Casualty, ...] = ()
    """Of all games, each stand by its last fate."""
    stands: frozenset[str] = frozenset()
    """Names of all stands that a loss can be told of."""
    groups: tuple[RollGroup, ...] = ()
    """Rolls still to be made, over all games of the force."""
    strengths: tuple[PatternStrength, ...] = ()
    odds: RecoveryOdds | None = None
    experience: Mapping[str, int] = field(default_factory=dict)
    next_game: str = ""
    """The kind of game that the next one is taken to be."""


def losses(
    folder: Path,
    *,
    today: datetime.date,
    next_game: str = "",
    of: str = "",
    memory: Memory = NOTHING,
) -> AfterGame:
    """The losses of the newest game, or of the one whose id begins with `of`.

    The next game is of the same kind unless `next_game` says otherwise. Raises StoreError, and
    FileError.
    """
    read = checked(folder, today=today, memory=memory)
    if read.is_stopped:
        return AfterGame(findings=read.findings, texts=read.texts)
    played = games_of(folder, today=today, memory=memory)
    games = played.records
    findings = tuple(dict.fromkeys((*read.findings, *played.past.findings)))
    record = game_beginning(games, of) if of else next(reversed(games), None)
    if record is None:
        return AfterGame(findings=(*findings, nothing_played(of)), texts=read.texts)
    game = next_game or record.terms.game
    ahead, slips = _raised(read.force, Choice(game=game))
    roster, more = _raised(read.force, Choice())
    if ahead is None or roster is None:
        wrong = tuple(dict.fromkeys((*stops(slips), *stops(more))))
        return AfterGame(findings=(*findings, *wrong), texts=read.texts)
    left = [_left(read.force, each, roster=roster) for each in games]
    found = _summed(read.force, left, roster=roster, ahead=ahead)
    own = left[games.index(record)]
    unknown = tuple(_unknown(record, own.made))
    return replace(
        found,
        findings=(*findings, *doubts(own.casualties, unknown=unknown)),
        texts=read.texts,
        record=record,
        casualties=own.casualties,
        next_game=game,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Left:
    """What one game left behind, with the force that played it."""

    made: Establishment
    casualties: tuple[Casualty, ...]


def _left(force: Force, record: GameRecord, *, roster: Establishment) -> _Left:
    """The force as it was for that game; as it is written where that game is no more."""
    made, _ = _raised(force, agreed_choice(record.terms))
    fielded = made or roster
    found = casualties(record.board, fielded.stands, campaign=force.campaign)
    return _Left(made=fielded, casualties=found)


def _raised(force: Force, choice: Choice) -> tuple[Establishment | None, tuple[Finding, ...]]:
    picked, findings = chosen(force, choice)
    if stops(findings):
        return None, findings
    return establishment(picked)


def _summed(
    force: Force, left: Sequence[_Left], *, roster: Establishment, ahead: Establishment
) -> AfterGame:
    """All games together: rolls still to be made, and what the next game finds."""
    campaign = force.campaign
    games = [each.casualties for each in left]
    missing = missing_now(games)
    groups = tuple(_groups(left, missing, campaign=campaign))
    strengths = next_strength(
        roster.stands, ahead.stands, missing=missing, pool=campaign.replacements
    )
    return AfterGame(
        findings=(),
        texts={},
        campaign=campaign,
        missing=missing,
        stands=frozenset(stand.name for each in left for stand in each.made.stands),
        groups=groups,
        strengths=strengths,
        odds=recovery_odds(groups, strengths, recovery=campaign.recovery),
        experience=experience(games),
    )


def _groups(
    left: Sequence[_Left], missing: Sequence[Casualty], *, campaign: Campaign
) -> Iterator[RollGroup]:
    """The rolls of each game for those of its casualties that are still missing."""
    for each in left:
        still = [casualty for casualty in each.casualties if _is_in(casualty, missing)]
        yield from roll_groups(still, each.made.bodies, campaign=campaign)


def _is_in(casualty: Casualty, missing: Sequence[Casualty]) -> bool:
    return any(each is casualty for each in missing)


def _unknown(record: GameRecord, made: Establishment) -> Iterator[str]:
    """Names that the board has out of action, and that are no stand of the force."""
    known = {stand.name for stand in made.stands}
    for subject, standing in record.board.items():
        if subject.aspect == OUT and any(standing.values) and subject.name not in known:
            yield subject.name
