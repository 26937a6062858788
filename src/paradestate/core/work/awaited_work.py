"""What of the work on a ladder waits for which parcel, and what each milestone lacks beyond others.

Figures that come go to the stands of the milestone that is reached first, then to those of the
next; a stand takes them from as few parcels as it can, and from those first that are preferred.
Where a batch has a set-up, what of it waits for different parcels is set up anew for each.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.number import summed
from paradestate.core.work.course import Task
from paradestate.core.work.ladder import Ladder, Reached, Rung
from paradestate.core.work.stand_work import StandWork


@dataclass(frozen=True, slots=True, kw_only=True)
class Lack:
    """What milestones lack beyond those before them."""

    milestones: tuple[str, ...]
    figures: Mapping[str, int]
    """Kind to figures; at least one."""


def lacks(ladder: Ladder, *, most: int) -> tuple[Lack, ...]:
    """What must be got for each milestone in turn; of more than `most` the last ones as one."""
    found = [
        Lack(milestones=(each.milestone.name,), figures=figures)
        for each, works in _own_works(ladder)
        if (figures := summed(work.unordered for work in works))
    ]
    if len(found) <= most:
        return tuple(found)
    return (*found[: most - 1], joined(found[most - 1 :]))


def joined(several: Sequence[Lack]) -> Lack:
    """What several lack together."""
    return Lack(
        milestones=tuple(name for each in several for name in each.milestones),
        figures=summed(each.figures for each in several),
    )


def tasks(
    ladder: Ladder,
    *,
    parcels: Sequence[Mapping[str, int]],
    preferred: Sequence[int],
    set_up: Fraction,
) -> tuple[Task, ...]:
    """The work with the parcels that it waits for; milestones are numbered as in `Ladder.to_reach`.

    `preferred` holds every parcel, from 0. Raises ValueError where they don't bring all.
    """
    left = [dict(parcel) for parcel in parcels]
    awaits = {
        work.stand.name: _taken(work, left, preferred=preferred)
        for _, works in _own_works(ladder)
        for work in works
    }
    milestones = [frozenset(each.milestone.stands) for each in ladder.to_reach]
    return tuple(
        task
        for rung in ladder.rungs
        for task in _of_rung(rung, awaits=awaits, milestones=milestones, is_set_up=bool(set_up))
    )


def _own_works(ladder: Ladder) -> Iterator[tuple[Reached, Sequence[StandWork]]]:
    """Each milestone with the stands that none before it has."""
    known: set[str] = set()
    for each in ladder.to_reach:
        works = [work for work in each.to_finish if work.stand.name not in known]
        known.update(work.stand.name for work in works)
        yield each, works


def _taken(
    work: StandWork, left: Sequence[dict[str, int]], *, preferred: Sequence[int]
) -> frozenset[int]:
    """The parcels from which a stand takes what it lacks, which is taken out of them."""
    taken: set[int] = set()
    for kind, number in work.unordered.items():
        for each in sorted(preferred, key=lambda parcel: parcel not in taken):
            some = min(number, left[each].get(kind, 0))
            if some:
                left[each][kind] -= some
                number -= some  # noqa: PLW2901 - what is still lacking of the kind
                taken.add(each)
        if number:
            raise ValueError(f"{number} {kind} for {work.stand.name} come with no parcel")
    return frozenset(taken)


def _of_rung(
    rung: Rung,
    *,
    awaits: Mapping[str, frozenset[int]],
    milestones: Sequence[frozenset[str]],
    is_set_up: bool,
) -> Iterator[Task]:
    """The parts of a batch that can be done at different times, or are for other milestones."""
    parts: dict[tuple[frozenset[int], frozenset[int]], list[StandWork]] = {}
    every = _waiting_for({work.stand.name for work in rung.works}, milestones)
    for work in rung.works:
        name = work.stand.name
        of = every if is_set_up else _waiting_for({name}, milestones)
        parts.setdefault((of, awaits[name]), []).append(work)
    for (of, parcels), works in parts.items():
        minutes = sum((work.minutes for work in works), Fraction(0))
        set_up = rung.set_up if minutes else Fraction(0)
        yield Task(minutes=set_up + minutes, of=of, awaits=parcels)


def _waiting_for(stands: set[str], milestones: Sequence[frozenset[str]]) -> frozenset[int]:
    return frozenset(number for number, own in enumerate(milestones) if stands & own)
