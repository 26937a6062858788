"""How many minutes of work finish so many stands of each pattern, and which figures go onto them.

Stands that the must layer has begun come first, those with the least work left before others. What
is beyond them takes figures that nothing else holds, own kinds only, the most advanced first,
finished ones before all; patterns take them in their order. What can be put together of finished
figures alone is taken for finished, so that one more of a pattern is one more than that. Minutes
are those that the owner gives.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.advice.basket import Basket
from paradestate.core.number import summed
from paradestate.core.work.rates import Rates

Staged = Mapping[str, Mapping[str, int]]
"""Figure kind, then stage, to a number."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pattern:
    """A pattern of which stands may be finished."""

    name: str
    figures: Mapping[str, int]
    begun: tuple[Staged, ...]
    """For each stand of the must layer that has all its figures and isn't finished, these."""
    ready: int = 0
    """Stands that can be put together of finished figures."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Work:
    """What finishing some stands takes."""

    minutes: Fraction
    finished: Mapping[str, int]
    """Kind to finished figures that go onto them."""
    lacking: Mapping[str, int]
    """Kind to figures that aren't there."""


class BenchWork:
    """Work for baskets of stands, in minutes."""

    def __init__(
        self, patterns: Sequence[Pattern], *, free: Staged, rates: Rates, most: Sequence[int]
    ) -> None:
        self._patterns = tuple(patterns)
        self._free = free
        self._rates = rates
        self._last = rates.bench.stages[-1]
        self._most = tuple(most)
        self._known: dict[Basket, Work] = {}
        self._left: dict[tuple[str, str, str], Fraction] = {}
        """Minutes left by pattern, kind and stage; asked for again with every basket."""
        self._in_turn = {pattern.name: self._begun(pattern) for pattern in self._patterns}

    @property
    def most(self) -> Sequence[int]:
        """How many stands of each pattern can be wanted."""
        return self._most

    def cost(self, basket: Basket) -> Fraction:
        """Minutes of work."""
        return self.work(basket).minutes

    def least(self, basket: Basket) -> Fraction:
        """The same: more stands never take less work."""
        return self.work(basket).minutes

    def can_be_had(self, basket: Basket) -> bool:
        """Whether all figures are there."""
        return not self.work(basket).lacking

    def stands(self, basket: Basket) -> Mapping[str, int]:
        """Pattern to the stands that are finished of it then."""
        return {
            pattern.name: number + pattern.ready
            for pattern, number in zip(self._patterns, basket, strict=True)
            if number
        }

    def work(self, basket: Basket) -> Work:
        """What all stands of a basket take together."""
        if basket not in self._known:
            self._known[basket] = self._work(basket)
        return self._known[basket]

    def _work(self, basket: Basket) -> Work:
        free = {kind: dict(stages) for kind, stages in self._free.items()}
        minutes = Fraction(0)
        finished: list[Mapping[str, int]] = []
        lacking: list[Mapping[str, int]] = []
        stands = self.stands(basket)
        for pattern in self._patterns:
            number = stands.get(pattern.name, 0)
            begun = self._in_turn[pattern.name][:number]
            onto = [*begun]
            for kind, each in pattern.figures.items():
                wanted = each * (number - len(begun))
                taken = self._taken(free.get(kind, {}), number=wanted)
                onto.append({kind: taken})
                lacking.append({kind: wanted - sum(taken.values())})
            minutes += sum((self._minutes(pattern, staged) for staged in onto), Fraction(0))
            finished.extend(
                {kind: stages.get(self._last, 0)}
                for staged in onto
                for kind, stages in staged.items()
            )
        return Work(minutes=minutes, finished=_some(finished), lacking=_some(lacking))

    def _begun(self, pattern: Pattern) -> list[Staged]:
        """The begun stands of the must layer, the least work first."""
        return sorted(pattern.begun, key=lambda staged: self._minutes(pattern, staged))

    def _minutes(self, pattern: Pattern, staged: Staged) -> Fraction:
        return sum(
            (
                self._minutes_left(pattern, kind, stage=stage) * number
                for kind, stages in staged.items()
                for stage, number in stages.items()
                if number
            ),
            Fraction(0),
        )

    def _minutes_left(self, pattern: Pattern, kind: str, *, stage: str) -> Fraction:
        at = (pattern.name, kind, stage)
        if at not in self._left:
            self._left[at] = self._rates.left(pattern, kind, stage=stage)
        return self._left[at]

    def _taken(self, free: dict[str, int], *, number: int) -> Mapping[str, int]:
        """Takes so many figures out of what is free, the most advanced first."""
        taken = {}
        for stage in reversed(self._rates.bench.stages):
            taken[stage] = min(number, free.get(stage, 0))
            free[stage] = free.get(stage, 0) - taken[stage]
            number -= taken[stage]
        return taken


def _some(numbers: Iterable[Mapping[str, int]]) -> Mapping[str, int]:
    """Numbers added up, those of nought left out."""
    return {name: number for name, number in summed(numbers).items() if number}
