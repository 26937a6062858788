"""Formations: what is made of what."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction

from paradestate.core.number import NumberRange
from paradestate.core.span import ALWAYS, Window


class Echelon(StrEnum):
    """Sizes of body, with the names of APP-6."""

    TEAM = "team"
    SQUAD = "squad"
    SECTION = "section"
    PLATOON = "platoon"
    COMPANY = "company"
    BATTALION = "battalion"
    REGIMENT = "regiment"
    BRIGADE = "brigade"


class Arm(StrEnum):
    """What a formation does, for its symbol."""

    INFANTRY = "infantry"
    ARMOUR = "armour"
    ARTILLERY = "artillery"
    MORTAR = "mortar"
    ANTI_TANK = "anti-tank"
    RECONNAISSANCE = "reconnaissance"
    ENGINEER = "engineer"
    SIGNAL = "signal"
    HEADQUARTERS = "headquarters"
    SUPPLY = "supply"


class Need(StrEnum):
    """The two layers of an organisation."""

    MUST = "must"
    WISHED = "wished"


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """So many of a formation or stand, under another."""

    of: str
    number: NumberRange
    usual: int | None = None
    """Taken when `number` is a range and nobody chose."""
    need: Need = Need.MUST
    window: Window = ALWAYS
    theatre: str = ""
    by_hand: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Formation:
    """The definition of one level: its parts, or its men where it has none."""

    name: str
    echelon: Echelon | None = None
    arm: Arm | None = None
    men: int | None = None
    """With parts a printed total that is only compared; without parts the men themselves."""
    men_per_figure: Fraction | None = None
    """Fixed ratio by which figures are shared among the direct parts' men."""
    figure: str = ""
    """Kind of the shared figures."""
    figures_per_stand: int | None = None
    may_detach: Mapping[str, int] = field(default_factory=dict)
    """Stands of it that may leave it and act by themselves; they stay part of it in every sum."""
    weak: Fraction | None = None
    """Share of every number below it, rounded half up."""
    like: str = ""
    """The formation of which this is a variant."""
    add: tuple[Part, ...] = ()
    drop: tuple[str, ...] = ()
    called: str = ""
    parts: tuple[Part, ...] = ()
    by_hand: str = ""


Formations = Mapping[str, Formation]
