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
from paradestate.core.campaign.loss_finding import doubts, nothing_played, supporting_out
from paradestate.core.campaign.loss_flow import LossFlow, Passage, loss_flows
from paradestate.core.campaign.next_strength import (
    PatternStrength,
    experience,
    missing_now,
    next_strength,
)
from paradestate.core.campaign.recovery import Campaign
from paradestate.core.campaign.supporting_loss import SupportingLoss, supporting_losses
from paradestate.core.campaign.to_repair import to_repair
from paradestate.core.choice import Choice, chosen
from paradestate.core.establishment import Establishment, establishment
from paradestate.core.finding import Finding, stops
from paradestate.core.force import Force
from paradestate.core.journal_entry import JournalEntry
from paradestate.core.play.game_record import GameRecord
from paradestate.core.unfolding import Stand
from paradestate.journeys.check import checked
from paradestate.journeys.choosing import agreed_choice
from paradestate.journeys.game.games import game_beginning, games_of
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
    to_repair: Mapping[str, str] = field(default_factory=dict)
    """Stand that this game left to be repaired, and isn't on the bench, to what is broken."""
    went_back: Mapping[str, JournalEntry] = field(default_factory=dict)
    """Stand that this game left to be repaired to the entry by which it went to the bench."""
    next_game: str = ""
    """The kind of game that the next one is taken to be."""
    games: tuple[GameRecord, ...] = ()
    """All games of the force, oldest first."""
    kinds_of_game: tuple[str, ...] = ()
    """Those that the next may be."""
    fielded: tuple[Stand, ...] = ()
    """The stands that were in this game."""
    supporting: tuple[SupportingLoss, ...] = ()
    """Supporting troops that were out in this game; they are asked for anew in the next."""
    has_supporting: bool = False
    """Whether the folder lists any."""
    last_game: Mapping[str, GameRecord] = field(default_factory=dict)
    """Stand to the last game that left something of it behind."""
    by_kind: tuple[LossFlow, ...] = ()
    """Where the stands of each kind went in this game."""
    by_company: tuple[LossFlow, ...] = ()

    @property
    def to_roll_for(self) -> int:
        """Stands that wait for a roll, over all games of the force."""
        return sum(len(each.stands) for each in self.groups)

    @property
    def is_newest(self) -> bool:
        """Whether no game came after it, so that the next one follows it."""
        return bool(self.games) and self.record is self.games[-1]

    def record_for(self, name: str, *, record: GameRecord) -> GameRecord:
        """Where what came of a stand is written: the game that is meant, or a later one.

        A later one that put it out, for what an earlier game says of it counts no more then.
        """
        last = self.last_game.get(name, record)
        return max(record, last, key=self.games.index)


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
    games, past = played.records, played.past
    findings = tuple(dict.fromkeys((*read.findings, *past.findings)))
    record = game_beginning(games, of) if of else next(reversed(games), None)
    if record is None:
        return AfterGame(findings=(*findings, nothing_played(of)), texts=read.texts)
    game = next_game or record.terms.game
    ahead, slips = _raised(read.force, Choice(game=game))
    roster, more = _raised(read.force, Choice())
    if ahead is None or roster is None:
        wrong = tuple(dict.fromkeys((*stops(slips), *stops(more))))
        return AfterGame(findings=(*findings, *wrong), texts=read.texts)
    told = _told(read.force, record, games=games, roster=roster, ahead=ahead)
    repairs = to_repair(record, past.entries[::-1], struck_out=past.struck_out)
    return replace(
        told,
        findings=(*findings, *told.findings),
        texts=read.texts,
        record=record,
        to_repair=repairs.waiting,
        went_back=repairs.went_back,
        next_game=game,
        games=games,
        kinds_of_game=tuple(read.force.games),
        has_supporting=bool(read.force.supporting_troops),
    )


def _told(
    force: Force,
    record: GameRecord,
    *,
    games: Sequence[GameRecord],
    roster: Establishment,
    ahead: Establishment,
) -> AfterGame:
    """What all games come to, and what this one left behind."""
    left = _all_left(force, games, roster=roster)
    place = games.index(record)
    own = left[place]
    names = [each.name for each in own.made.stands]
    out = supporting_losses(record.board, force.supporting_troops, stands=names)
    unknown = tuple(_unknown(record, own.made, known=out))
    bodies = {each.name for each in own.made.bodies}
    passage = _passage(left, place, roster=roster, ahead=ahead)
    return replace(
        _summed(force, left, roster=roster, ahead=ahead),
        findings=(
            *doubts(
                own.casualties,
                unknown=[name for name in unknown if name not in bodies],
                whole=[name for name in unknown if name in bodies],
            ),
            *supporting_out(out),
        ),
        casualties=own.casualties,
        fielded=tuple(each for each in own.made.stands if each.is_wanted and not each.printed),
        supporting=out,
        last_game={
            each.stand.name: game
            for game, behind in zip(games, left, strict=True)
            for each in behind.casualties
        },
        by_kind=loss_flows(passage, by=lambda each: each.pattern),
        by_company=loss_flows(passage, by=lambda each: each.company or own.made.formation),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Left:
    """What one game left behind, with the force that played it."""

    made: Establishment
    casualties: tuple[Casualty, ...]


def _all_left(
    force: Force, games: Sequence[GameRecord], *, roster: Establishment
) -> Sequence[_Left]:
    """What each game left behind, with the force as it was for it.

    As it is written where that game is no more; games on the same terms are raised once.
    """
    raised: dict[str, Establishment] = {}
    left = []
    for record in games:
        choice = agreed_choice(record.terms)
        if repr(choice) not in raised:
            raised[repr(choice)] = _raised(force, choice)[0] or roster
        made = raised[repr(choice)]
        found = casualties(record.board, made.stands, campaign=force.campaign)
        left.append(_Left(made=made, casualties=found))
    return left


def _passage(
    left: Sequence[_Left], place: int, *, roster: Establishment, ahead: Establishment
) -> Passage:
    """One game, with those who were missing before it and are missing after it."""
    own = left[place]
    return Passage(
        fielded=own.made.stands,
        roster=roster.stands,
        missing_before=missing_now(each.casualties for each in left[:place]),
        casualties=own.casualties,
        missing_after=missing_now(each.casualties for each in left[: place + 1]),
        wanted=ahead.stands if place == len(left) - 1 else None,
    )


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


def _unknown(
    record: GameRecord, made: Establishment, *, known: Sequence[SupportingLoss]
) -> Iterator[str]:
    """Names that the board has out of action, and that are nothing of the force."""
    names = {*(stand.name for stand in made.stands), *(each.name for each in known)}
    for subject, standing in record.board.items():
        if subject.aspect == OUT and any(standing.values) and subject.name not in names:
            yield subject.name
