"""Kinds of figure: what one buys and paints. Imports outlines only."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from paradestate.core.outline import Millimetres, Outline


class Sort(StrEnum):
    """What sort of model a figure kind is, for counting."""

    FOOT = "foot"
    MOUNTED = "mounted"
    GUN = "gun"
    VEHICLE = "vehicle"
    SCENERY = "scenery"


class Match(StrEnum):
    """How well a figure stands in for another kind; itself is exact and needs no word."""

    GOOD = "good"
    POOR = "poor"


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureKind:
    """One kind of figure or model."""

    name: str
    height: Millimetres | None = None
    footprint: Outline | None = None
    sort: Sort = Sort.FOOT
    may_stand_for: Mapping[str, Match] = field(default_factory=dict)
    """Kind to grade of match, one step only."""
    by_hand: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class StandIn:
    """So many figures of one kind that stand in for another."""

    kind: str
    stands_for: str
    number: int
