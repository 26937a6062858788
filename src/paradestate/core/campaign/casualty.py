"""Who was put out of action in a game, and what came of each of them afterwards."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from paradestate.core.campaign.recovery import Campaign
from paradestate.core.play.board import NOTHING_TOLD, Standing
from paradestate.core.play.event import Subject
from paradestate.core.unfolding import Body, Stand

OUT = "out"
"""Which side of a stand the board tells of while the game goes on."""
AFTER = "after the game"
PROMOTED = "promoted"


class Fate(StrEnum):
    """What came of a stand that was out of action."""

    OPEN = "not rolled yet"
    RECOVERED = "recovered"
    LOST = "lost"
    REPLACED = "replaced"
    """It was lost, and another was sent up in its place."""


TOLD_FATES = (Fate.RECOVERED, Fate.LOST, Fate.REPLACED)
"""Those that are told; the other is what stands before anything is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Casualty:
    """One stand of which a game left something behind: it was out of action, or was promoted."""

    stand: Stand
    out: str
    """How, in the owner's word; `yes` where no other was told; empty where it wasn't out."""
    fate: Fate
    is_promoted: bool = False
    is_told: bool = False
    """Whether its fate was told; else it is what the file says without a roll."""
    is_disputed: bool = False
    """Whether two tell otherwise of it without having seen each other."""

    @property
    def is_taken_as_back(self) -> bool:
        """Whether it was out and counts as recovered, though neither dice nor anybody said so."""
        return bool(self.out) and self.fate is Fate.RECOVERED and not self.is_told


def casualties(
    board: Mapping[Subject, Standing], stands: Sequence[Stand], *, campaign: Campaign
) -> tuple[Casualty, ...]:
    """Those stands of which a board tells so, in the order of the establishment."""
    return tuple(_casualties(board, stands, campaign=campaign))


def _casualties(
    board: Mapping[Subject, Standing], stands: Sequence[Stand], *, campaign: Campaign
) -> Iterator[Casualty]:
    for stand in stands:
        out, after, promoted = (
            board.get(Subject(aspect, stand.name), NOTHING_TOLD)
            for aspect in (OUT, AFTER, PROMOTED)
        )
        # Of several that are told, the one that takes the stand away counts until it is settled.
        how = next(filter(None, out.values), "")
        told = [fate for fate in TOLD_FATES if fate in after.values]
        if not how and not told and not any(promoted.values):
            continue
        yield Casualty(
            stand=stand,
            out=how,
            fate=_fate(how, told, pattern=stand.pattern, campaign=campaign),
            is_promoted=any(promoted.values),
            is_told=bool(told),
            is_disputed=out.is_disputed or after.is_disputed,
        )


def _fate(how: str, told: Sequence[Fate], *, pattern: str, campaign: Campaign) -> Fate:
    """What was told of it; else what the file says without a roll."""
    if told:
        return Fate.LOST if Fate.LOST in told else told[0]
    if not how:
        return Fate.RECOVERED
    if how in campaign.never_back:
        return Fate.LOST
    return Fate.OPEN if pattern in campaign.recovery else Fate.RECOVERED


@dataclass(frozen=True, slots=True, kw_only=True)
class RollGroup:
    """Stands of one pattern whose fate one roll decides."""

    name: str
    """The stand, or the body and the pattern."""
    pattern: str
    stands: tuple[str, ...]


def roll_groups(
    casualties_: Sequence[Casualty], bodies: Sequence[Body], *, campaign: Campaign
) -> tuple[RollGroup, ...]:
    """The rolls that are still to be made, in the order of the establishment."""
    found: dict[tuple[str, str], list[str]] = {}
    for each in casualties_:
        if each.fate is Fate.OPEN:
            name = _rolled_as(each.stand, bodies, of=campaign.rolled_once_for)
            found.setdefault((name, each.stand.pattern), []).append(each.stand.name)
    return tuple(
        RollGroup(name=name, pattern=pattern, stands=tuple(stands))
        for (name, pattern), stands in found.items()
    )


def _rolled_as(stand: Stand, bodies: Sequence[Body], *, of: str) -> str:
    """The body that a stand is rolled with, or the stand itself where it is in none."""
    within: int | None = stand.within
    while of and within is not None:
        body = bodies[within]
        if body.formation == of:
            return f"{body.name or body.formation}, {stand.pattern}"
        within = body.within
    return stand.name
