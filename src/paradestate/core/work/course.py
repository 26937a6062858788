"""The course of the work at a bench to which figures come by parcel.

At any hour that work is done which is there and stands first in some sequence of the milestones; it
is put aside when something that stands before it comes. Then the first so many milestones of the
sequence are done at the latest of the following, over all days on which something comes: that day,
and after it all their work that isn't there before it (as for one machine with release dates, where
work may be put aside: Horn, "Some simple scheduling algorithms", 1974). No way of working is sooner
done with them, so the least waiting is that of the best sequence, which is sought over sets of
finished milestones (Held and Karp, "A dynamic programming approach to sequencing problems", 1962).

A milestone is finished on a day: the waiting for it is its weight times the days until that is
over. Figures are worked on from the day after the one on which they come.
"""

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from paradestate.core.work.bench_time import BenchTime
from paradestate.core.work.habit import later

MOST_IN_ANY_SEQUENCE = 6
"""Milestones of which every sequence is weighed; more keep the sequence given."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """Work that becomes possible at one time, for the same milestones."""

    minutes: Fraction
    of: frozenset[int]
    """Milestones, from 0; at least one."""
    awaits: frozenset[int] = frozenset()
    """Parcels, from 0, that have to be there first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Finish:
    """When a milestone is finished."""

    day: datetime.date
    awaits: frozenset[int]
    """The parcels that decide it: had they come sooner, it would be; none where work decides."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Idle:
    """Days on which the owner is there and nothing is left to do."""

    first: datetime.date
    last: datetime.date
    days: int
    """On which he is there."""
    awaits: frozenset[int]
    """The parcels that end it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """What a course is judged by: the less, the better."""

    waiting: Fraction
    """Weight times days, over all milestones."""
    ends: Fraction
    """Minutes of bench time until all is done, idle ones included."""


class Course:
    """What the days on which parcels come do to the work."""

    def __init__(
        self, tasks: Sequence[Task], *, weights: Sequence[Fraction], time: BenchTime
    ) -> None:
        self._time = time
        self._tick = lcm(time.a_day.denominator, *(task.minutes.denominator for task in tasks))
        self._a_day = int(time.a_day * self._tick)
        self._weights = weights
        self._tasks = _alike(tasks)
        self._whole = [
            (sum(1 << each for each in task.of), int(task.minutes * self._tick), task.awaits)
            for task in self._tasks
        ]
        """The same in whole numbers: milestones as bits, ticks, parcels."""
        self._after: dict[int, int] = {}
        number = len(weights)
        if number <= MOST_IN_ANY_SEQUENCE:
            self._sets: Sequence[int] = range(1, 1 << number)
        else:
            self._sets = [(1 << first) - 1 for first in range(1, number + 1)]

    @property
    def needs(self) -> tuple[frozenset[int], ...]:
        """The parcels that the work of each milestone waits for."""
        return tuple(
            frozenset(each for task in self._tasks if number in task.of for each in task.awaits)
            for number in range(len(self._weights))
        )

    @property
    def _every(self) -> int:
        """The set of all milestones."""
        return (1 << len(self._weights)) - 1

    @property
    def sets(self) -> Sequence[int]:
        """The sets of milestones that may be the first to be finished; bit 0 is the first one."""
        return self._sets

    def judged(
        self,
        arrivals: Sequence[datetime.date],
        *,
        last: Mapping[int, datetime.date] | None = None,
    ) -> Judged:
        """How good it is that the parcels come on these days.

        With `last`, set of milestones to a day, it is no better than that, on that day or later,
        one of the parcels comes that the set needs.
        """
        waves = self._waves(arrivals)
        floors = {members: self._floor(members, comes) for members, comes in (last or {}).items()}
        waiting = self._least(waves, floors=floors)[0]
        ends = max(_ends(waves, self._every)[0], floors.get(self._every, 0))
        return Judged(waiting=waiting, ends=Fraction(ends, self._tick))

    def _floor(self, members: int, comes: datetime.date) -> int:
        """When a set of milestones is finished at the soonest if one of its parcels comes so late.

        That is so for the parcel on which the least work waits.
        """
        if members not in self._after:
            own = [(ticks, awaits) for of, ticks, awaits in self._whole if of & members]
            parcels = frozenset(each for _, awaits in own for each in awaits)
            waits = (sum(ticks for ticks, awaits in own if each in awaits) for each in parcels)
            self._after[members] = min(waits, default=0)
        begins = self._time.days_before(later(comes, 1)) * self._a_day
        return begins + self._after[members]

    def sequence(self, arrivals: Sequence[datetime.date]) -> tuple[int, ...]:
        """The milestones in the sequence that has the least waiting."""
        return self._least(self._waves(arrivals))[1]

    def finishes(
        self, arrivals: Sequence[datetime.date], *, sequence: Sequence[int] | None = None
    ) -> tuple[Finish, ...]:
        """When each milestone is finished; without a sequence in the best one."""
        waves = self._waves(arrivals)
        finished: dict[int, Finish] = {}
        done = 0
        for each in self._least(waves)[1] if sequence is None else sequence:
            done |= 1 << each
            day, wave = self._day(waves, done)
            finished[each] = Finish(day=day, awaits=wave.parcels)
        return tuple(finished[each] for each in sorted(finished))

    def idle(self, arrivals: Sequence[datetime.date]) -> tuple[Idle, ...]:
        """When nothing is left to do until something comes; less than a day doesn't count."""
        found = []
        clock = 0
        for wave in reversed(self._waves(arrivals)):
            minutes = sum(ticks for _, ticks in wave.tasks)
            before, then = -(-clock // self._a_day), wave.begins // self._a_day
            if minutes and then > before:
                idle = Idle(
                    first=self._time.day(before + 1),
                    last=self._time.day(then),
                    days=then - before,
                    awaits=wave.parcels,
                )
                found.append(idle)
            if minutes:
                clock = max(clock, wave.begins) + minutes
        return tuple(found)

    def _waves(self, arrivals: Sequence[datetime.date]) -> Sequence["_Wave"]:
        """Tasks that become possible together, the last first."""
        waves: dict[datetime.date | None, _Wave] = {}
        for of, ticks, awaits in self._whole:
            comes = max((arrivals[each] for each in awaits), default=None)
            if comes not in waves:
                begins = 0 if comes is None else self._time.days_before(later(comes, 1))
                waves[comes] = _Wave(comes=comes, begins=begins * self._a_day)
            waves[comes].tasks.append((of, ticks))
            waves[comes].parcels |= {each for each in awaits if arrivals[each] == comes}
        return sorted(waves.values(), key=_Wave.sorted_by, reverse=True)

    def _least(
        self, waves: Sequence["_Wave"], *, floors: Mapping[int, int] | None = None
    ) -> tuple[Fraction, tuple[int, ...]]:
        """The least waiting, and the sequence that has it; of equals the nearest to that given."""
        best: dict[int, tuple[Fraction, tuple[int, ...]]] = {0: (Fraction(0), ())}
        for members in self._sets:
            day = self._day(waves, members)[0]
            if floors and members in floors:
                day = max(day, self._day_at(floors[members]))
            days = (day - self._time.begins).days + 1
            ways = []
            for last, weight in enumerate(self._weights):
                before = members ^ 1 << last
                if members >> last & 1 and before in best:
                    waiting, order = best[before]
                    ways.append((waiting + weight * days, (*order, last)))
            best[members] = min(ways)
        return best[self._every]

    def _day(self, waves: Sequence["_Wave"], members: int) -> tuple[datetime.date, "_Wave"]:
        """The day on which a set of milestones is finished, and the wave that decides it."""
        ticks, wave, last = _ends(waves, members)
        day = self._day_at(ticks)
        if last.comes is not None and last.comes > day:
            return last.comes, last  # it comes while the owner is away, and takes no work
        return day, wave

    def _day_at(self, ticks: int) -> datetime.date:
        """The day on which so much bench time is over; the first one where it is none."""
        return self._time.day(max(1, -(-ticks // self._a_day)))


class _Wave:
    """Tasks that become possible together."""

    __slots__ = ("begins", "comes", "parcels", "tasks")

    def __init__(self, *, comes: datetime.date | None, begins: int) -> None:
        self.comes = comes
        self.begins = begins
        self.tasks: list[tuple[int, int]] = []
        self.parcels: frozenset[int] = frozenset()

    def sorted_by(self) -> datetime.date:
        """The day on which it comes; what is there stands before all."""
        return self.comes or datetime.date.min


def _ends(waves: Sequence[_Wave], members: int) -> tuple[int, _Wave, _Wave]:
    """When all work for a set of milestones is done, the wave that decides it, and the last one."""
    after, best, decides, last = 0, -1, NOTHING, None
    for wave in waves:
        ticks, is_wanted = 0, False
        for of, each in wave.tasks:
            if of & members:
                ticks, is_wanted = ticks + each, True
        if is_wanted:
            last = last or wave
            after += ticks
            if wave.begins + after >= best:
                best, decides = wave.begins + after, wave
    return max(best, 0), decides, last or NOTHING


NOTHING = _Wave(comes=None, begins=0)
"""Stands for the wave where there is no work."""


def _alike(tasks: Sequence[Task]) -> Sequence[Task]:
    """Tasks for the same milestones that wait for the same parcels as one."""
    minutes: dict[tuple[frozenset[int], frozenset[int]], Fraction] = {}
    for task in tasks:
        key = (task.of, task.awaits)
        minutes[key] = minutes.get(key, Fraction(0)) + task.minutes
    return [Task(minutes=each, of=of, awaits=awaits) for (of, awaits), each in minutes.items()]
