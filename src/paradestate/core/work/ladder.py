"""The work ladder as a value: batches in the order in which they are done, and what they reach."""

import datetime
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.number import summed
from paradestate.core.work.coats import Mixed
from paradestate.core.work.milestone import Milestone
from paradestate.core.work.stand_work import StandWork

NOTHING = Fraction(0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Rung:
    """One batch: stands of one pattern that are worked through together."""

    number: int
    """From 1."""
    stretch: int
    """Batches of one stretch may change places; from 1."""
    pattern: str
    works: tuple[StandWork, ...]
    set_up: Fraction
    minutes: Fraction
    """Of work, the set-up not included."""
    ends: Fraction
    """Minutes from the beginning until it is done, set-ups included."""
    by_stage: Mapping[str, Fraction]
    """Stage still to be reached to minutes."""
    early: tuple[str, ...]
    """Stands that only a later stretch wants, done here to save a set-up."""
    takes_turns_with: int | None
    """The number of the batch that is worked on while this one dries."""
    waiting: Fraction
    """Minutes of drying that neither of the two fills; said with the first of them."""
    colours: tuple[str, ...]
    completes: tuple[str, ...]
    """Milestones that are reached with it."""
    held_until: datetime.date | None = None
    """The day from which all of it can be worked on, where its turn comes sooner; else None."""

    @property
    def lacking(self) -> Mapping[str, int]:
        """Kind to figures that aren't owned yet."""
        return lacking_of(self.works)


@dataclass(frozen=True, slots=True, kw_only=True)
class Reached:
    """A milestone, and when it is reached."""

    milestone: Milestone
    ends: Fraction
    """Minutes from the beginning; nought where it can be played now."""
    rung: int | None
    """The number of the batch with which it is reached; None where it can be played now."""
    works: tuple[StandWork, ...]
    """All its stands, printed ones included."""
    due: Fraction | None = None
    """Of repairs: minutes from the beginning by which they are wanted, at the usual pace."""

    @property
    def late(self) -> Fraction:
        """Minutes by which it comes after that."""
        return NOTHING if self.due is None else max(NOTHING, self.ends - self.due)

    @property
    def to_finish(self) -> tuple[StandWork, ...]:
        """Its stands that aren't finished."""
        return tuple(work for work in self.works if not work.is_finished)

    @property
    def minutes(self) -> Fraction:
        """Minutes of work on its own stands, set-ups not included."""
        return sum((work.minutes for work in self.works), NOTHING)

    @property
    def lacking(self) -> Mapping[str, int]:
        """Kind to figures that aren't owned yet."""
        return lacking_of(self.works)


@dataclass(frozen=True, slots=True, kw_only=True)
class Critical:
    """The stand that holds up the next milestone."""

    milestone: str
    work: StandWork
    lacking: int
    """Stands of the milestone that can't be finished with what is owned; it is one of them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ladder:
    """The order of work."""

    rungs: tuple[Rung, ...]
    reached: tuple[Reached, ...]
    """Every milestone: first what can be played now, then in the order in which they come."""
    mixed: tuple[Mixed, ...]
    waiting: Fraction
    """The sum of weight times minutes that is as small as can be."""
    least: Fraction
    """No order comes to less."""
    critical: Critical | None
    """None where every milestone is reached."""
    repairs: tuple[Reached, ...] = ()
    """Repairs by the day on which they are wanted, the earliest first."""

    @property
    def minutes(self) -> Fraction:
        """All work and set-ups."""
        return self.rungs[-1].ends if self.rungs else NOTHING

    @property
    def reached_of(self) -> Mapping[str, Reached]:
        """Milestone by its name to when it is reached."""
        return {each.milestone.name: each for each in self.reached}

    @property
    def to_reach(self) -> tuple[Reached, ...]:
        """The milestones that can't be played yet, in their order."""
        return tuple(each for each in self.reached if each.rung is not None)

    @property
    def following(self) -> Reached | None:
        """The milestone that comes next; None where every one is reached."""
        return next(iter(self.to_reach), None)

    def up_to(self, milestone: str) -> tuple[Rung, ...]:
        """The batches until a milestone is reached; all of them where it bears no name."""
        if not milestone:
            return self.rungs
        last = next(each.rung for each in self.reached if each.milestone.name == milestone)
        return self.rungs[: last or 0]

    @property
    def held_up(self) -> tuple[Rung, ...]:
        """Batches that have their turn before all their figures are there."""
        return tuple(rung for rung in self.rungs if rung.held_until is not None)

    @property
    def is_proved(self) -> bool:
        """Whether no order of work has less weighted waiting, the days of parcels minded."""
        return self.waiting == self.least and not self.held_up

    @property
    def share_above(self) -> Fraction:
        """By what share of the least the waiting may be more than needs be."""
        return (self.waiting - self.least) / self.least if self.least else NOTHING


def lacking_of(works: Iterable[StandWork]) -> Mapping[str, int]:
    """Kind to figures that stands lack together."""
    return summed(work.lacking for work in works)
