"""What to get next: what each candidate adds by itself, the best basket, and how sure that is."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from paradestate.core.advice.basket import Basket, Priced
from paradestate.core.certainty import Exact, NotComputed, Sampled, Within
from paradestate.core.support.force_map import ValuedForce


class Aim(StrEnum):
    """What is to be as great as it can be."""

    WORTH = "worth"
    """The mean worth of the best force that can be fielded."""
    SHARE = "share"
    """The mean share of all legal forces that can be fielded."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Candidate:
    """A pack that may be bought, or a stand that may be finished."""

    name: str
    """What it is called where it is typed: source and pack, or pattern."""
    words: str
    """What it is, for people."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOut:
    """What is no candidate, and why."""

    name: str
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Joined:
    """Things of which one adds something only because the others are there."""

    priced: Priced
    gain: Fraction
    sure: Sampled | None
    """How sure the gain is; None where it is exact."""
    is_affordable: bool
    """Whether they can be had for what there is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Alone:
    """What one of a candidate does by itself."""

    candidate: Candidate
    priced: Priced
    gain: Fraction
    sure: Sampled | None
    """How sure the gain is; None where it is exact."""
    is_affordable: bool
    """Whether it can be had by itself for what there is."""
    best_with: Priced | None
    """The best basket that holds one; None where that wasn't found, or can't be had."""
    together: Joined | None
    """The least part of that basket, one of this included, with which this adds something; None
    where it adds something by itself, or nothing at all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """Some things that are added at once, because none of them adds anything before the others."""

    added: Basket
    priced: Priced
    """All that is there then."""
    gain: Fraction
    cost: Fraction
    """What these cost beside what was there; below nought where more makes all cheaper."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OutcomeRow:
    """What may come of the dice in one game, with the best forces of now and of then."""

    game: str
    points: int
    chance: Fraction
    """Of this outcome in this game."""
    allowed: tuple[Mapping[str, int], ...]
    """What the rolls may allow, entry to the greatest number; empty where it isn't told apart."""
    now: ValuedForce | None
    """None where no force is legal that can be fielded."""
    then: ValuedForce | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Advice:
    """What to get next."""

    aim: Aim
    candidates: tuple[Candidate, ...]
    now: Priced
    now_sure: Sampled | None
    """How sure the value of now is; None where it is exact."""
    alone: tuple[Alone, ...]
    """In the order of the candidates."""
    best: Priced
    gain_sure: Sampled | None
    bound: Fraction | None
    """No basket has a greater value; None where that is proved of the best."""
    steps: tuple[Step, ...]
    """How the best comes about, what adds most at each step first."""
    foresight: Fraction | NotComputed
    """The mean if the basket could be chosen once all dice are rolled."""
    wish: Priced | None
    """The best basket that holds what is wished for."""
    rows: tuple[OutcomeRow, ...]

    @property
    def gain(self) -> Fraction:
        """What the best adds to now."""
        return self.best.value - self.now.value

    @property
    def certainty(self) -> Exact | Within | Sampled:
        """How sure the best is; of a value within a bound, the bound as the next whole number."""
        if self.gain_sure is not None:
            return self.gain_sure
        return Exact() if self.bound is None else Within(bound=-(-self.bound // 1))

    def price_of_fun(self, other: Priced) -> Fraction:
        """What one gives away who takes another basket than the best."""
        return self.best.value - other.value
