"""The fall-back where all is named first: the best set, what may come of it, what is kept then."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import prod

from paradestate.chance.fallback.declared import Declaration, Named, best_grants, declaration_of
from paradestate.chance.fallback.prospect import Prospect
from paradestate.core.game import Purchase
from paradestate.core.support.policy import (
    Ask,
    Fallback,
    FirstChoice,
    Granted,
    LevelChoice,
    Step,
    Take,
)

MOST_ENDS = 400
"""Ends of one chart; a longer one would be read by nobody."""


def declared_fallback(prospect: Prospect, *, points: int) -> Fallback | None:
    """The best set to name with so many points; None where too many would be compared."""
    declared = declaration_of(prospect)
    if declared is None:
        return None
    value, best = declared.named(points)[0]
    worth = _worth(declared, value)
    return Fallback(
        points=points,
        worth=worth,
        chart=_Teller(declared=declared, named=best, points=points).chart(worth),
        first_choices=tuple(_first_choices(declared, points=points)),
        declared=best.purchases,
    )


def declared_levels(prospect: Prospect, *, levels: list[int]) -> Mapping[int, LevelChoice] | None:
    """The best set in short for each number of points."""
    declared = declaration_of(prospect)
    if declared is None:
        return None
    found: dict[int, LevelChoice] = {}
    for level in levels:
        value, best = declared.named(level)[0]
        found[level] = LevelChoice(
            points=level,
            worth=_worth(declared, value),
            first=best.purchases[0] if best.purchases else None,
        )
    return found


def _worth(declared: Declaration, value: int) -> Fraction:
    return Fraction(value, declared.ways * declared.opinion.unit)


def _first_choices(declared: Declaration, *, points: int) -> Iterator[FirstChoice]:
    """For each purchase the best set that names it, and the set that names nothing."""
    seen: set[Purchase | None] = set()
    for value, named in declared.named(points):
        for purchase in named.purchases or (None,):
            if purchase not in seen:
                seen.add(purchase)
                yield FirstChoice(purchase=purchase, worth=_worth(declared, value))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Teller:
    """Tells what may come of one set that was named."""

    declared: Declaration
    named: Named
    points: int

    def chart(self, worth: Fraction) -> Step:
        """One request after the other, each with all that may be allowed of it."""
        prospect = self.declared.prospect
        asked = [index for index, place in enumerate(self.named.places) if place]
        ends = prod(
            len(prospect.rolls[roll].cases) for roll in {prospect.rolled[i].roll for i in asked}
        )
        if ends > MOST_ENDS:
            first = self.named.purchases[0]
            return Ask(purchase=first, points=self.points, worth=worth, outcomes=())
        return self._step(asked, allowed={}, cases={})

    def _step(self, asked: list[int], *, allowed: dict[int, int], cases: dict[int, int]) -> Step:
        """The rest of the chart: those still to be told of, what was allowed, cases of rolls."""
        if not asked:
            return self._end(allowed)
        index, *others = asked
        outcomes = tuple(self._outcomes(index, others, allowed=allowed, cases=cases))
        return Ask(
            purchase=self._purchase(index),
            points=self.points,
            worth=sum((each.chance * each.then.worth for each in outcomes), Fraction(0)),
            outcomes=outcomes,
        )

    def _outcomes(
        self, index: int, others: list[int], *, allowed: dict[int, int], cases: dict[int, int]
    ) -> Iterator[Granted]:
        prospect = self.declared.prospect
        rolled = prospect.rolled[index]
        roll = prospect.rolls[rolled.roll]
        sharing = [other for other in others if prospect.rolled[other].roll == rolled.roll]
        merged: dict[tuple[int, ...], tuple[int, int]] = {}
        if rolled.roll in cases:
            case = cases[rolled.roll]
            merged[self._told(index, sharing, case=case)] = (1, case)
        else:
            for number, case_ in enumerate(roll.cases):
                told = self._told(index, sharing, case=number)
                ways, _ = merged.get(told, (0, number))
                merged[told] = (ways + case_.ways, number)
        every = sum(ways for ways, _ in merged.values())
        for told, (ways, number) in sorted(merged.items(), reverse=True):
            then = self._step(
                others,
                allowed=allowed | {index: told[0]},
                cases=cases | {rolled.roll: number},
            )
            yield Granted(
                allowed=told[0],
                chance=Fraction(ways, every),
                takes=None,
                then=then,
                worth=then.worth,
                is_open=True,
                also={
                    prospect.rolled[other].offer.name: much
                    for other, much in zip(sharing, told[1:], strict=True)
                },
            )

    def _told(self, index: int, sharing: list[int], *, case: int) -> tuple[int, ...]:
        """How many a case allows of a request, and of those that share its roll."""
        prospect = self.declared.prospect
        roll = prospect.rolls[prospect.rolled[index].roll]
        return tuple(
            min(
                roll.cases[case].allowed[prospect.rolled[member].seat],
                self._purchase(member).number,
            )
            for member in (index, *sharing)
        )

    def _purchase(self, index: int) -> Purchase:
        option = self.declared.grants[index][self.named.places[index]].option
        assert option is not None  # noqa: S101 - only what was named is told of
        return option.purchase

    def _end(self, allowed: Mapping[int, int]) -> Take:
        declared, left = self.declared, self.points - self.named.prepaid
        granted = [
            declared.grant_allowed(index, named=place, allowed=allowed.get(index, 0))
            for index, place in enumerate(self.named.places)
        ]
        places = best_grants(declared, granted, points=left)
        taken = [each[place] for each, place in zip(declared.grants, places, strict=True)]
        held = declared.held(places)
        assert held is not None  # noqa: S101 - holding nothing is always possible
        ends = declared.completions.best_sets(held, declared.opinion)
        rest = min(left - sum(grant.price for grant in taken), declared.prospect.top)
        end = ends[rest]
        assert end is not None  # noqa: S101 - the table says that there is an end
        return Take(
            purchases=(
                *(grant.option.purchase for grant in taken if grant.option is not None),
                *end.purchases,
            ),
            points=self.points,
            worth=Fraction(int(declared.exactly[places][left]), declared.opinion.unit),
        )
