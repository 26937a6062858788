"""The work bench: stages, minutes and dates. Times in minutes."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from paradestate.core.span import DateSpan
from paradestate.core.supplies import Supplies

USUAL_STAGES = ("in packet", "assembled", "undercoated", "painted", "based")


@dataclass(frozen=True, slots=True, kw_only=True)
class Coat:
    """One colour of a part of the uniform."""

    colour: str
    coats: int = 1
    share: Fraction = Fraction(1)
    """Share of the figure's surface."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Milestone:
    """A force that the owner wants to be able to play with."""

    name: str
    numbers: Mapping[str, int] = field(default_factory=dict)
    weight: Fraction = Fraction(1)
    by_hand: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """How the owner works; the last stage is finished."""

    stages: tuple[str, ...] = USUAL_STAGES
    minutes: Mapping[str, Mapping[str, Fraction]] = field(default_factory=dict)
    """Figure kind or sort, then stage, to minutes spent on one figure to reach that stage."""
    minutes_per_stand: Mapping[str, Fraction] = field(default_factory=dict)
    set_up: Fraction = Fraction(0)
    dry: Mapping[str, Fraction] = field(default_factory=dict)
    week: Fraction | None = None
    away: tuple[DateSpan, ...] = ()
    colours: Mapping[str, tuple[Coat, ...]] = field(default_factory=dict)
    playable: tuple[Milestone, ...] = ()
    supplies: Supplies = Supplies()
    by_hand: str = ""
