"""Which batches have their turn, at the usual pace, before the figures for them are there.

The order of work is sought as if what is on order were here. Where every batch has its turn when
its figures are there, no order that minds those days is better, since minding them only takes
orders away. Where one has its turn sooner, the order may not be the best any more.
"""

import datetime
from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from paradestate.core.work.habit import later
from paradestate.core.work.ladder import Ladder, Rung


def days_of_arrival(ladder: Ladder, *, today: datetime.date) -> frozenset[datetime.date]:
    """The days, not past, on which anything comes for which a batch of the ladder waits."""
    return frozenset(day for rung in ladder.rungs for day in _days(rung, today=today))


def with_held_up(
    ladder: Ladder, until: Mapping[datetime.date, Fraction | None], *, today: datetime.date
) -> Ladder:
    """The ladder with the day from which a batch can be worked on, where its turn comes sooner.

    `until` has for each day of arrival the minutes of work up to its evening; None where no pace is
    known, and then its batches count as held up. Figures are worked on from the day after.
    """
    return replace(
        ladder,
        rungs=tuple(
            replace(rung, held_until=_held(rung, until, today=today)) for rung in ladder.rungs
        ),
    )


def _held(
    rung: Rung, until: Mapping[datetime.date, Fraction | None], *, today: datetime.date
) -> datetime.date | None:
    begins = rung.ends - rung.minutes - rung.set_up
    late = [
        day
        for day in _days(rung, today=today)
        if (minutes := until[day]) is None or begins < minutes
    ]
    return later(max(late), 1) if late else None


def _days(rung: Rung, *, today: datetime.date) -> frozenset[datetime.date]:
    return frozenset(
        order.expected
        for work in rung.works
        for order in work.to_come
        if order.expected is not None and order.expected >= today
    )
