"""What each candidate adds, in the order in which that is shown: what adds most first.

Those that add something only together stand together, and those that add nothing stand apart.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.advice.advice import Advice, Alone
from paradestate.core.advice.basket import Basket
from paradestate.core.certainty import Sampled


@dataclass(frozen=True, slots=True, kw_only=True)
class Gain:
    """What one of a candidate adds, or some things that add something only together."""

    basket: Basket
    cost: Fraction
    gain: Fraction
    sure: Sampled | None
    """How sure the gain is; None where it is exact."""
    is_affordable: bool
    """Whether it can be had for what there is."""

    @property
    def is_joined(self) -> bool:
        """Whether these are several things."""
        return sum(self.basket) > 1


def gains(advice: Advice) -> tuple[Gain, ...]:
    """Everything that adds something, what adds most first, the cheaper one of two alike."""
    found = {gain.basket: gain for gain in _gains(advice)}
    return tuple(sorted(found.values(), key=lambda each: (-each.gain, each.cost)))


def _gains(advice: Advice) -> Iterator[Gain]:
    for each in advice.alone:
        of = each.together or each
        if of.gain > 0:
            yield Gain(
                basket=of.priced.basket,
                cost=of.priced.cost,
                gain=of.gain,
                sure=of.sure,
                is_affordable=of.is_affordable,
            )


def idle(advice: Advice) -> tuple[Alone, ...]:
    """The candidates that add nothing, neither by themselves nor in the best basket with one."""
    return tuple(each for each in advice.alone if each.gain <= 0 and each.together is None)


def by_gain(advice: Advice) -> Sequence[Alone]:
    """Every candidate, what adds most by itself first, the cheaper one of two alike."""
    return sorted(advice.alone, key=lambda each: (-each.gain, each.priced.cost))
