"""What may come of the dice, all that comes to the same forces in one line."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.advice.advice import OutcomeRow
from paradestate.core.support.force_map import ValuedForce


@dataclass(frozen=True, slots=True, kw_only=True)
class OutcomeGroup:
    """All outcomes of a game after which both forces are the same."""

    game: str
    least_points: int
    most_points: int
    chance: Fraction
    """Of all of them in this game."""
    allowed: Mapping[str, int]
    """What the rolls allow in all of them alike, entry to the greatest number."""
    are_told_apart: bool
    """Whether the rolls are; else it is the force if they allow everything."""
    now: ValuedForce | None
    """None where no force is legal that can be fielded."""
    then: ValuedForce | None


def outcome_groups(rows: Sequence[OutcomeRow]) -> tuple[OutcomeGroup, ...]:
    """The outcomes, those of a game that end in the same forces now and then together."""
    alike: dict[tuple[str, ValuedForce | None, ValuedForce | None], list[OutcomeRow]] = {}
    for row in rows:
        alike.setdefault((row.game, row.now, row.then), []).append(row)
    return tuple(
        OutcomeGroup(
            game=game,
            least_points=min(row.points for row in same),
            most_points=max(row.points for row in same),
            chance=sum((row.chance for row in same), Fraction(0)),
            allowed=_allowed(same),
            are_told_apart=all(row.allowed for row in same),
            now=now,
            then=then,
        )
        for (game, now, then), same in alike.items()
    )


def _allowed(rows: Sequence[OutcomeRow]) -> Mapping[str, int]:
    every = [set(allowed.items()) for row in rows for allowed in row.allowed]
    return dict(sorted(set.intersection(*every))) if every else {}
