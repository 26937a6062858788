"""What must be on the table, what is owned, what is lacking.

folder -> checked -> holdings -> choice applied -> establishment -> strength -> what differs
"""

import datetime
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

from paradestate.core.ceiling import Ceiling, ceiling
from paradestate.core.change import Change, changes
from paradestate.core.choice import Choice, chosen
from paradestate.core.crowding import crowding_of
from paradestate.core.establishment import (
    CrossCheck,
    Establishment,
    cross_check,
    establishment,
)
from paradestate.core.finding import Finding, stops
from paradestate.core.force import Force
from paradestate.core.frontage import BodyFront, body_fronts
from paradestate.core.strength import Strength, strength
from paradestate.journeys.check import Checked, checked
from paradestate.journeys.holdings import with_holdings
from paradestate.journeys.memory import NOTHING, Memory


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
    crowding: Mapping[str, Fraction]
    """Raised pattern to the share of its base that figures cover, where both are known."""
    changes: tuple[Change, ...] | None
    """What was asked for: from this force to another, or from the written one to this."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CountAnswer:
    """The count, or None with the stops that prevent it."""

    checked: Checked
    count: Count | None


def count(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    against: Choice | None = None,
    since_written: bool = False,
    on: datetime.date | None = None,
    lent_too: bool = False,
    ordered_too: bool = False,
    memory: Memory = NOTHING,
) -> CountAnswer:
    """Counts the force of a folder, with what is owned today, or was on the day `on`.

    The files are those of today in either case. With `against` also what another choice would
    change; with `since_written` what this choice changes against the folder as it is written. With
    `lent_too` what is away counts as well, and with `ordered_too` what is on order.
    """
    return count_read(
        checked(folder, today=today, memory=memory),
        folder,
        today=today,
        choice=choice,
        against=against,
        since_written=since_written,
        on=on,
        lent_too=lent_too,
        ordered_too=ordered_too,
        memory=memory,
    )


def count_read(
    read: Checked,
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    against: Choice | None = None,
    since_written: bool = False,
    on: datetime.date | None = None,
    lent_too: bool = False,
    ordered_too: bool = False,
    memory: Memory = NOTHING,
) -> CountAnswer:
    """The same for a folder of which the files were read already."""
    stocked = with_holdings(
        read,
        folder,
        today=today,
        on=on,
        lent_too=lent_too,
        ordered_too=ordered_too,
        memory=memory,
    )
    return memory.kept(
        ("count", folder, lent_too, ordered_too, on, repr(choice), repr(against), since_written),
        lambda: counted(stocked, choice=choice, against=against, since_written=since_written),
        rests_on=(stocked,),
    )


def counted(
    read: Checked,
    *,
    choice: Choice,
    against: Choice | None = None,
    since_written: bool = False,
) -> CountAnswer:
    """Counts a force that was read, with the holdings that it says."""
    if read.is_stopped:
        return CountAnswer(checked=read, count=None)
    picked, findings = chosen(read.force, choice)
    made, more = establishment(picked)
    other = Choice() if since_written else against
    base = read.force if since_written else picked
    differences, yet_more = _differences(base, made, against=other, backwards=since_written)
    whole = read.with_findings(*findings, *more, *yet_more)
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
        crowding=crowding_of(force.stands, figures=force.figures, patterns=made.must.stands),
        changes=differences,
    )


def _differences(
    force: Force, made: Establishment | None, *, against: Choice | None, backwards: bool
) -> tuple[tuple[Change, ...] | None, tuple[Finding, ...]]:
    """What changes from the counted force to the other choice, or backwards from that to it."""
    if against is None or made is None:
        return None, ()
    other_force, findings = chosen(force, against)
    other, more = establishment(other_force)
    if other is None:
        return None, (*findings, *more)
    before, after = (other, made) if backwards else (made, other)
    return changes(force, before, after=after), (*findings, *more)
