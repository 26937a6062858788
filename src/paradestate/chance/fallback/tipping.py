"""What each worth must become before another first choice is as good.

What a first choice comes to, as one worth w changes, is the greatest of many straight lines (each
way of playing is one), so it is convex. The line that touches it at w lies nowhere above it; so the
first choice stays the best at least as long as no other rises above that line, and where one does
the next line is drawn. Crossings are found from the far side by following the others' own lines
inward, which no convex curve lets pass the crossing. All numbers are exact, so it ends, and what it
ends at is the nearest. Source: any text on convex functions (supporting lines, Newton's method).
"""

from collections.abc import Generator, Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

from paradestate.chance.fallback.backward import scales_of, values_of
from paradestate.chance.fallback.completion import Completions
from paradestate.chance.fallback.decision import Decider, Decision
from paradestate.chance.fallback.opinion import Change, Opinion, changed
from paradestate.chance.fallback.play import START, Play
from paradestate.core.support.policy import Tipping

MOST_WORK = 4_000_000
"""Standings times points times worths up to which it is worked out: a second or two."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A straight line through a point."""

    at: Fraction
    value: Fraction
    slope: Fraction

    def height(self, at: Fraction) -> Fraction:
        """Its value elsewhere."""
        return self.value + self.slope * (at - self.at)

    def meets(self, other: "Line") -> Fraction:
        """Where it meets a line of another slope."""
        return self.at + (other.height(self.at) - self.value) / (self.slope - other.slope)


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """Lines that touch, at one worth, what the first choice comes to and what the best other."""

    first: Line
    other: Line


Search: TypeAlias = Generator[Fraction, Reading, Fraction | None]
"""Asks for readings and returns the crossing."""


def crossing(start: Fraction, end: Fraction) -> Search:
    """The least place from `start` on where the other is as good as the first; None up to `end`.

    Where it is so at the start already, the least place beyond which it is better. Lines that are
    read touch from their right side. Beyond `end` nothing crosses any more.
    """
    far = yield end
    near = yield start
    is_tied = near.first.value == near.other.value
    while True:
        tangent, there = near.first, far
        while there.other.value > tangent.height(there.other.at):
            there = yield there.other.meets(tangent)
        if there is far and (there.other.value < there.first.value or is_tied):
            return None
        if there.first.value == there.other.value and (
            not is_tied or there.other.slope > there.first.slope
        ):
            return there.first.at
        near = there


def tippings_of(
    play: Play, completions: Completions, *, points: int, decisions: tuple[Decision, ...]
) -> tuple[Tipping, ...]:
    """For each of the owner's worths, how far it may change until the first choice does."""
    offers = play.rules.prospect.offers
    worths = [
        (name, choice, number, worth)
        for name, offer in offers.items()
        for choice, table in offer.worths.items()
        for number, worth in table.items()
    ]
    work = play.size * (play.rules.prospect.top + 1) * len(worths)
    if len({decision.index for decision in decisions}) == 1 or work > MOST_WORK:
        return ()
    reader = _Reader(
        play=play,
        completions=completions,
        points=points,
        best=decisions[0],
        ways=int(scales_of(play)[START]),
    )
    end = reader.beyond_all()
    asked = [
        (Change(entry=name, choice=choice, number=number, worth=worth), side)
        for name, choice, number, worth in worths
        for side in (1, -1)
    ]
    found = reader.answers(asked, end=end)
    return tuple(
        Tipping(
            entry=name,
            choice=choice,
            number=number,
            worth=worth,
            down_to=found[2 * place + 1],
            up_to=found[2 * place],
        )
        for place, (name, choice, number, worth) in enumerate(worths)
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Reader:
    """Solves the play for changed worths, many at once."""

    play: Play
    completions: Completions
    points: int
    best: Decision
    ways: int
    """The product of the ways of all rolls."""

    def beyond_all(self) -> Fraction:
        """A worth beyond which no two ways of playing change places.

        Their lines differ in value by at most twice the sum of all worths, and in slope, which are
        chances, by at least one way of all.
        """
        total = Fraction(1)
        for offer in self.play.rules.prospect.offers.values():
            for table in offer.worths.values():
                total += sum(map(abs, table.values()))
        return 2 * total * self.ways

    def answers(self, asked: list[tuple[Change, int]], *, end: Fraction) -> list[Fraction | None]:
        """The crossing for each change and side; sides to the left are searched mirrored."""
        searches = [
            crossing(change.worth * side, end if side > 0 else Fraction(0))
            if side > 0 or change.worth > 0
            else _none()
            for change, side in asked
        ]
        found: list[Fraction | None] = [None] * len(asked)
        waiting: dict[int, Fraction] = {}
        for place, search in enumerate(searches):
            _go_on(search, None, place=place, waiting=waiting, found=found)
        while waiting:
            places = list(waiting)
            readings = self._readings([(*asked[place], waiting.pop(place)) for place in places])
            for place, reading in zip(places, readings, strict=True):
                _go_on(searches[place], reading, place=place, waiting=waiting, found=found)
        return [
            None if worth is None else worth * side
            for worth, (_, side) in zip(found, asked, strict=True)
        ]

    def _readings(self, asked: list[tuple[Change, int, Fraction]]) -> Iterator[Reading]:
        offers = self.play.rules.prospect.offers.values()
        opinions = [
            changed(
                offers,
                Change(
                    entry=change.entry,
                    choice=change.choice,
                    number=change.number,
                    worth=at * side,
                ),
                slope=side,
                ways=self.ways,
            )
            for change, side, at in asked
        ]
        values = values_of(self.play, self.completions, opinions=opinions)
        decider = Decider(values=values, completions=self.completions)
        for place, (_, _, at) in enumerate(asked):
            yield self._reading(decider, opinions[place], opinion=place, at=at)

    def _reading(self, decider: Decider, said: Opinion, *, opinion: int, at: Fraction) -> Reading:
        decisions = decider.decisions(START, points=self.points, opinion=opinion)
        mine = (each.value for each in decisions if each.index == self.best.index)
        others = (each.value for each in decisions if each.index != self.best.index)
        return Reading(
            first=self._line(max(mine), said, at=at),
            other=self._line(max(others), said, at=at),
        )

    def _line(self, value: int, said: Opinion, *, at: Fraction) -> Line:
        """The line that a value with its slope is: the slope is what is left over of whole units.

        Mirrored, the value falls as `at` rises; the slope that was added is right as it stands.
        """
        ways = self.ways
        bias = 2 * ways + 1
        unit = said.unit // bias
        whole, slope = divmod(value + ways, bias)
        return Line(
            at=at,
            value=Fraction(whole, unit * ways),
            slope=Fraction(slope - ways, ways),
        )


def _none() -> Search:
    """The answer where there is nowhere to look."""
    yield from ()
    return None


def _go_on(
    search: Search,
    reading: Reading | None,
    *,
    place: int,
    waiting: dict[int, Fraction],
    found: list[Fraction | None],
) -> None:
    """Gives a search what it asked for, and notes what it asks for next, or its end."""
    try:
        waiting[place] = next(search) if reading is None else search.send(reading)
    except StopIteration as end:
        found[place] = end.value
