"""What must be on the table, what is owned, what is lacking.

folder -> checked -> choice applied -> establishment -> strength -> what differs
"""

import datetime
from dataclasses import dataclass, replace
from pathlib import Path

from paradestate.core.ceiling import Ceiling, ceiling
from paradestate.core.change import Change, changes
from paradestate.core.choice import Choice, chosen
from paradestate.core.establishment import (
    CrossCheck,
    Establishment,
    cross_check,
    establishment,
)
from paradestate.core.finding import Finding, in_reading_order, stops
from paradestate.core.force import Force
from paradestate.core.frontage import BodyFront, body_fronts
from paradestate.core.strength import Strength, strength
from paradestate.journeys.check import Checked, checked


@dataclass(frozen=True, slots=True, kw_only=True)
class Count:
    """A force counted."""

    force: Force
    """With the choice applied."""
    made: Establishment
    strength: Strength
    ceiling: Ceiling
    check: CrossCheck
    fronts: tuple[BodyFront, ...]
    changes: tuple[Change, ...] | None
    """From this force to the other; None where none was asked for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CountAnswer:
    """The count, or None with the stops that prevent it."""

    checked: Checked
    count: Count | None


def count(
    folder: Path, *, today: datetime.date, choice: Choice, against: Choice | None = None
) -> CountAnswer:
    """Counts the force of a folder; with `against`, also what another choice would change."""
    read = checked(folder, today=today)
    if read.is_stopped:
        return CountAnswer(checked=read, count=None)
    picked, findings = chosen(read.force, choice)
    made, more = establishment(picked)
    differences, yet_more = _differences(picked, made, against=against)
    whole = replace(read, findings=in_reading_order((*read.findings, *findings, *more, *yet_more)))
    if made is None or stops(whole.findings):
        return CountAnswer(checked=whole, count=None)
    return CountAnswer(
        checked=whole, count=_counted(picked, made, choice=choice, differences=differences)
    )


def _counted(
    force: Force, made: Establishment, *, choice: Choice, differences: tuple[Change, ...] | None
) -> Count:
    return Count(
        force=force,
        made=made,
        strength=strength(force, made),
        ceiling=ceiling(force, made, game=force.games[choice.game] if choice.game else None),
        check=cross_check(force, made),
        fronts=body_fronts(force, made),
        changes=differences,
    )


def _differences(
    force: Force, made: Establishment | None, *, against: Choice | None
) -> tuple[tuple[Change, ...] | None, tuple[Finding, ...]]:
    """What changes from the counted force to the other choice."""
    if against is None or made is None:
        return None, ()
    other_force, findings = chosen(force, against)
    other, more = establishment(other_force)
    if other is None:
        return None, (*findings, *more)
    return changes(force, made, after=other), (*findings, *more)
