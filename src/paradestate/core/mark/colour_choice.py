"""Which colours to take, so that the two most alike among them are as different as can be.

For a number k of colours: the least difference of a set is that of its closest pair, to the viewer
who sees it worst. A set with at least t exists where the colours, joined wherever they are t apart,
have k that are all joined to one another. Between a t that has such a set and one that hasn't the
greatest is found by halving; sets are looked for in the order of the colours, and a branch is left
where too few colours remain or where they fall into fewer groups than are still to be taken (no two
of a group are joined, so each group gives one at most). Of sets that are equally good the one is
taken whose colours stand first among the candidates, always the same.
"""

from bisect import bisect_left
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from paradestate.core.certainty import Exact, Within
from paradestate.core.mark.difference import Differences, Pair, closest

MOST_STEPS = 20_000
"""Branches in one search for a set; sixty colours of a paint rack need a few hundred."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourQuestion:
    """How many of which colours."""

    candidates: tuple[str, ...]
    number: int
    """Of colours to be taken from the candidates."""
    kept: tuple[str, ...] = ()
    """Colours that stay in any case."""
    enemy: tuple[str, ...] = ()
    """Colours of the other side, from which each has to be different too."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourChoice:
    """The colours taken."""

    colours: tuple[str, ...]
    """In the order of the candidates."""
    closest: Pair | None
    """The pair that is most alike, kept and enemy's ones too; None where there is no pair."""
    certainty: Exact | Within

    @property
    def least(self) -> int | None:
        """The least difference, in hundredths."""
        return None if self.closest is None else self.closest.least


def best_colours(
    asked: ColourQuestion, differences: Differences, *, most_steps: int = MOST_STEPS
) -> ColourChoice | None:
    """The best choice; None where there are fewer candidates than are to be taken."""
    if not 0 <= asked.number <= len(asked.candidates):
        return None
    search = _Search(asked, differences, most_steps=most_steps)
    found, bound = search.best()
    taken = tuple(asked.candidates[place] for place in found)
    pair = closest(_pairs(asked, taken, differences=differences))
    least = 0 if pair is None else pair.least
    is_proved = pair is None or bound is None or bound <= least
    return ColourChoice(
        colours=taken,
        closest=pair,
        certainty=Exact() if is_proved or bound is None else Within(bound=bound),
    )


def _pairs(
    asked: ColourQuestion, taken: Sequence[str], *, differences: Differences
) -> Iterator[Pair]:
    """Every pair that is judged: ours with ours, and ours with the enemy's."""
    ours = (*asked.kept, *taken)
    yield from differences.among(ours)
    for one in ours:
        for other in asked.enemy:
            if one != other:
                yield differences.of(one, other)


class _Search:
    """Looks for sets, with the differences as whole numbers by place among the candidates."""

    def __init__(self, asked: ColourQuestion, differences: Differences, *, most_steps: int) -> None:
        self.asked = asked
        self.differences = differences
        self.most_steps = most_steps
        self.steps = 0

    @cached_property
    def between(self) -> Mapping[tuple[int, int], int]:
        """Two places, the lower first, to the difference of their colours."""
        names = self.asked.candidates
        return {
            (low, high): self.differences.of(names[low], names[high]).least
            for high in range(len(names))
            for low in range(high)
        }

    @cached_property
    def alone(self) -> tuple[int | None, ...]:
        """The least difference of each candidate from what is there in any case; None: nothing is.

        A colour that the enemy has himself is no different from it.
        """
        fixed = (*self.asked.kept, *self.asked.enemy)
        return tuple(
            min(
                (0 if name == other else self.differences.of(name, other).least for other in fixed),
                default=None,
            )
            for name in self.asked.candidates
        )

    def best(self) -> tuple[tuple[int, ...], int | None]:
        """The places taken, and the greatest difference that isn't proved to be out of reach.

        The second is None where no difference plays a part.
        """
        values = sorted(
            {*self.between.values(), *(each for each in self.alone if each is not None)}
        )
        if not values:
            return tuple(range(self.asked.number)), None
        found = self.greedy()
        low = bisect_left(values, self.least_of(found))
        high = unproved = len(values)
        while low + 1 < high:
            middle = (low + high) // 2
            better, is_proved = self.set_with(values[middle])
            if better is not None:
                low, found = middle, better
            else:
                high = middle
                unproved = middle if is_proved else unproved
        first, _ = self.set_with(values[low])
        return first or found, values[min(unproved, len(values)) - 1]

    def least_of(self, places: Sequence[int]) -> int:
        """The least difference of a set; nought where nothing in it differs."""
        among = [self.between[low, high] for at, high in enumerate(places) for low in places[:at]]
        fixed = [each for place in places if (each := self.alone[place]) is not None]
        return min((*among, *fixed), default=0)

    def greedy(self) -> tuple[int, ...]:
        """A good set at once: from each candidate on, always the one furthest from those taken."""
        starts = range(len(self.asked.candidates))
        found = [tuple(range(self.asked.number)), *map(self._greedy_from, starts)]
        return max(found, key=self.least_of)

    def _greedy_from(self, start: int) -> tuple[int, ...]:
        """The set that begins with one candidate."""
        near = {at: (fixed is None, fixed or 0) for at, fixed in enumerate(self.alone)}
        taken: list[int] = []
        newest = start
        while len(taken) < self.asked.number:
            taken.append(newest)
            del near[newest]
            for at, nearest in near.items():
                apart = self.between[min(at, newest), max(at, newest)]
                near[at] = min(nearest, (False, apart))
            newest = max(near, key=lambda at: near[at], default=0)
        return tuple(sorted(taken))

    def set_with(self, least: int) -> tuple[tuple[int, ...] | None, bool]:
        """The first set in which nothing differs less, or None; and whether that is proved."""
        number = len(self.asked.candidates)
        allowed = sum(
            1 << place
            for place in range(number)
            if (fixed := self.alone[place]) is None or fixed >= least
        )
        joined = [0] * number
        for (low, high), value in self.between.items():
            if value >= least:
                joined[low] |= 1 << high
                joined[high] |= 1 << low
        self.steps = 0
        found = self._first((), allowed, joined=joined)
        return found, self.steps <= self.most_steps

    def _first(
        self, taken: tuple[int, ...], rest: int, *, joined: Sequence[int]
    ) -> tuple[int, ...] | None:
        """The first set that begins with those taken; None too where the steps are used up."""
        wanted = self.asked.number - len(taken)
        if not wanted:
            return taken
        self.steps += 1
        if self.steps > self.most_steps or not _may_hold(rest, wanted, joined=joined):
            return None
        while rest.bit_count() >= wanted and self.steps <= self.most_steps:
            place = (rest & -rest).bit_length() - 1
            rest &= ~(1 << place)
            found = self._first((*taken, place), rest & joined[place], joined=joined)
            if found is not None:
                return found
        return None


def _may_hold(rest: int, wanted: int, *, joined: Sequence[int]) -> bool:
    """Whether a set of that size isn't ruled out by groups in which no two are joined."""
    if rest.bit_count() < wanted:
        return False
    groups = 0
    while rest and groups < wanted:
        groups += 1
        free = rest
        while free:
            place = (free & -free).bit_length() - 1
            rest &= ~(1 << place)
            free &= ~(1 << place) & ~joined[place]
    return groups >= wanted


def in_place(before: Sequence[str], chosen: Sequence[str]) -> tuple[str, ...]:
    """The chosen colours in the order of the bodies: one that a body has already stays with it.

    So nothing that is painted and may stay has to be painted again.
    """
    staying = [name if name in chosen else None for name in before][: len(chosen)]
    staying += [None] * (len(chosen) - len(staying))
    for place, name in enumerate(staying):
        if name is not None and name in staying[:place]:
            staying[place] = None
    new = iter(name for name in chosen if name not in staying)
    return tuple(next(new) if name is None else name for name in staying)
