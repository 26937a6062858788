"""What may be decided at one standing with so many points, and what each decision comes to.

The same sum as in `backward`, in plain steps for one standing, so that it can be said in words.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.chance.fallback.backward import Values
from paradestate.chance.fallback.completion import Completions
from paradestate.chance.fallback.play import Request, cases_of
from paradestate.chance.fallback.rolled import Option, Rolled
from paradestate.chance.fallback.rules import Rules
from paradestate.chance.fallback.sure_way import listed_totals
from paradestate.core.game import Purchase


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What a roll may allow, and the best that can be made of it."""

    ways: int
    allowed: int
    """The greatest priced number of what was asked; nought: refused."""
    case: int
    taken: Option | None
    standing: int
    """The number of where it leads."""
    points: int
    value: int
    """Scaled to what is still to come after the roll."""
    is_tied: bool
    """Whether another number is as good to take."""
    if_all: int | None
    """The value of taking all that is allowed, where that is more than is taken."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Decision:
    """To ask for something, or for nothing more."""

    asked: Option | None
    """None: nothing more is asked for, and the end is bought."""
    index: int
    """The entry's place among those rolled for; -1 for none."""
    before: tuple[Purchase, ...]
    """Sure troops that are bought first, because the request needs them."""
    standing: int
    """Its number once those are bought."""
    points: int
    """Left then."""
    value: int
    """On the scale of the standing at which it is decided."""
    number_rank: int = 0
    """Smaller is preferred among equally good numbers of the entry."""

    @property
    def rank(self) -> tuple[int, ...]:
        """Smaller is preferred: of equal value what takes fewer points, then as in the file."""
        if self.asked is None:
            return (-self.value, 0)
        return (-self.value, 1, -self.points, self.index, self.number_rank)


@dataclass(frozen=True, slots=True, kw_only=True)
class Decider:
    """Reads decisions from the values of all standings."""

    values: Values
    completions: Completions

    @property
    def rules(self) -> Rules:
        """The rules of the play."""
        return self.values.play.rules

    def scale(self, standing: int) -> int:
        """What values of a standing are scaled by."""
        return self.values.scales[standing]

    def decisions(self, standing: int, *, points: int, opinion: int = 0) -> tuple[Decision, ...]:
        """Everything that may be decided, the best first."""
        every = [
            Decision(
                asked=None,
                index=-1,
                before=(),
                standing=standing,
                points=points,
                value=self._end(standing, points=points, opinion=opinion) * self.scale(standing),
            ),
            *self._requests(standing, points=points, before=(), opinion=opinion),
        ]
        for buy in self.values.play.buys_at(standing):
            if buy.points <= points:
                every += self._requests(
                    buy.standing,
                    points=points - buy.points,
                    before=buy.purchases,
                    opinion=opinion,
                    scale=self.scale(standing),
                )
        return tuple(sorted(every, key=lambda decision: decision.rank))

    def outcomes(
        self, standing: int, *, index: int, asked: Option, points: int, opinion: int = 0
    ) -> tuple[Outcome, ...]:
        """What the roll for a request may come to; the greatest number allowed first."""
        rolled = self.rules.prospect.rolled[index]
        request = self.values.play.requests_at(standing)[index]
        is_shared = rolled.roll in self.rules.shared
        merged: dict[tuple[int, int], int] = {}
        for number, case in cases_of(
            self.rules.prospect.rolls[rolled.roll], seen=request.case, is_shared=is_shared
        ):
            key = (min(case.allowed[rolled.seat], asked.purchase.number), number)
            merged[key] = merged.get(key, 0) + case.ways
        scale = self.scale(standing) // sum(merged.values())
        return tuple(
            self._outcome(
                request,
                asked=asked,
                points=points,
                opinion=opinion,
                allowed=allowed,
                case=case,
                ways=ways,
                scale=scale,
            )
            for (allowed, case), ways in sorted(merged.items(), reverse=True)
        )

    def _requests(
        self,
        standing: int,
        *,
        points: int,
        before: tuple[Purchase, ...],
        opinion: int,
        scale: int = 0,
    ) -> Iterator[Decision]:
        own = self.scale(standing)
        for index, request in self.values.play.requests_at(standing).items():
            rolled = self.rules.prospect.rolled[index]
            for place in request.options:
                option = rolled.options[place]
                if option.price > points:
                    continue
                outcomes = self.outcomes(
                    standing, index=index, asked=option, points=points, opinion=opinion
                )
                value = sum(outcome.ways * outcome.value for outcome in outcomes)
                yield Decision(
                    asked=option,
                    index=index,
                    before=before,
                    standing=standing,
                    points=points,
                    value=value * ((scale or own) // own),
                    number_rank=self._number_rank(rolled, option),
                )

    def _number_rank(self, rolled: Rolled, option: Option) -> int:
        """The greatest number that is worth more than fewer are, else the smallest.

        Asking for it takes no more points, and leaves the choice to take fewer.
        """
        said = self.values.opinions[0]
        number, choice = option.purchase.number, option.purchase.choice
        fewer = [
            said.worth_taken(rolled.offer, other.purchase)
            for other in rolled.options
            if other.purchase.choice == choice and other.purchase.number < number
        ]
        adds = said.worth_taken(rolled.offer, option.purchase) > max(fewer, default=0)
        return -number if adds else number

    def _outcome(
        self,
        request: Request,
        *,
        asked: Option,
        points: int,
        opinion: int,
        allowed: int,
        case: int,
        ways: int,
        scale: int,
    ) -> Outcome:
        rolled = self.rules.prospect.rolled[request.index]
        takes = [
            option
            for option in rolled.takes(asked, allowed=allowed)
            if rolled.options.index(option) in request.options
            and rolled.paid(asked, option) <= points
        ]
        found = []
        for taken in (None, *takes):
            place = None if taken is None else rolled.options.index(taken)
            (after,) = request.after[case, self.rules.effect(request.index, place)].tolist()
            left = points - rolled.paid(asked, taken)
            value = self._value(after, points=left, opinion=opinion) * (scale // self.scale(after))
            if taken is not None:
                totals = listed_totals(rolled.offer, (taken.purchase,))
                value += scale * self.values.opinions[opinion].worth(rolled.offer, totals)
            found.append((value, taken, after, left))
        best = max(value for value, _, _, _ in found)
        tied = [each for each in found if each[0] == best]
        value, taken, after, left = max(tied, key=lambda each: each[3])
        all_ = [each for each in found if each[1] and each[1].purchase.number == allowed]
        return Outcome(
            ways=ways,
            allowed=allowed,
            case=case,
            taken=taken,
            standing=after,
            points=left,
            value=value,
            is_tied=len(tied) > 1,
            if_all=all_[0][0] if all_ and all_[0][1] is not taken else None,
        )

    def _end(self, standing: int, *, points: int, opinion: int) -> int:
        return int(self.values.ends[self.values.held_in[standing], opinion, points])

    def _value(self, standing: int, *, points: int, opinion: int) -> int:
        within = min(points, self.rules.prospect.top)
        return self.values.of(standing, points=within, opinion=opinion)
