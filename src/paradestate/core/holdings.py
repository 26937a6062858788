"""Holdings: figures and whole stands owned, by stage of completion."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import TypeAlias

Staged: TypeAlias = Mapping[str, Mapping[str, int]]
"""Figure kind or stand pattern, then stage, to a number."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Holdings:
    """Loose figures, and whole stands whose figures serve no other stand once they are finished."""

    figures: Staged = field(default_factory=dict)
    stands: Staged = field(default_factory=dict)

    def __bool__(self) -> bool:
        return bool(self.figures or self.stands)


@dataclass(frozen=True, slots=True, kw_only=True)
class Pile:
    """One number of the holdings with what it is a number of."""

    name: str
    stage: str
    number: int
    is_stand: bool


def piles(holdings: Holdings) -> Iterator[Pile]:
    """Every number of the holdings, figures first."""
    for is_stand, staged in ((False, holdings.figures), (True, holdings.stands)):
        for name, stages in staged.items():
            for stage, number in stages.items():
                yield Pile(name=name, stage=stage, number=number, is_stand=is_stand)


def all_stages(staged: Staged, *, usual: Sequence[str]) -> tuple[str, ...]:
    """The usual stages in their order, then those that something stands at beside."""
    beside = (stage for stages in staged.values() for stage in stages)
    return tuple(dict.fromkeys((*usual, *beside)))


def together(*every: Holdings) -> Holdings:
    """Several holdings added up."""
    total = Tally()
    for holdings in every:
        total.add(holdings)
    return total.holdings()


def part_of(holdings: Holdings, *, among: int) -> Holdings:
    """One of so many equal parts; every number is a multiple of them."""
    if among == 1:
        return holdings
    figures, stands = (
        {
            name: {stage: number // among for stage, number in stages.items()}
            for name, stages in staged.items()
        }
        for staged in (holdings.figures, holdings.stands)
    )
    return Holdings(figures=figures, stands=stands)


class Tally:
    """Holdings that change while they are added up; numbers may fall below nought meanwhile."""

    def __init__(self, start: Holdings | None = None) -> None:
        self._figures: dict[str, dict[str, int]] = {}
        self._stands: dict[str, dict[str, int]] = {}
        if start is not None:
            self.add(start)

    def add(self, holdings: Holdings, *, times: int = 1) -> None:
        """Adds holdings, or with `times=-1` takes them away."""
        for mine, theirs in self._pairs(holdings):
            for name, stages in theirs.items():
                own = mine.setdefault(name, {})
                for stage, number in stages.items():
                    own[stage] = own.get(stage, 0) + number * times

    def put(self, holdings: Holdings) -> None:
        """Sets each number that is named, whatever it was."""
        for mine, theirs in self._pairs(holdings):
            for name, stages in theirs.items():
                mine.setdefault(name, {}).update(stages)

    def _pairs(self, holdings: Holdings) -> tuple[tuple[dict[str, dict[str, int]], Staged], ...]:
        return (self._figures, holdings.figures), (self._stands, holdings.stands)

    def below_nought(self, holdings: Holdings) -> Iterator[Pile]:
        """Of the numbers that `holdings` names those that are below nought by now."""
        for pile in piles(holdings):
            mine = self._stands if pile.is_stand else self._figures
            number = mine[pile.name][pile.stage]
            if number < 0:
                yield Pile(name=pile.name, stage=pile.stage, number=number, is_stand=pile.is_stand)

    def holdings(self) -> Holdings:
        """What there is now; numbers of nought are left out."""
        return Holdings(figures=_kept(self._figures, bool), stands=_kept(self._stands, bool))

    def there(self) -> Holdings:
        """What there is now; what is below nought is left out as well."""
        return Holdings(
            figures=_kept(self._figures, _is_there), stands=_kept(self._stands, _is_there)
        )


def _is_there(number: int) -> bool:
    return number > 0


def _kept(staged: Staged, is_kept: Callable[[int], bool]) -> Staged:
    kept = {
        name: {stage: number for stage, number in stages.items() if is_kept(number)}
        for name, stages in staged.items()
    }
    return {name: stages for name, stages in kept.items() if stages}
