"""The force: what the folder says, checked, with the place of everything in it."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction
from typing import TypeAlias

from paradestate.core.bench import Bench
from paradestate.core.campaign.recovery import Campaign
from paradestate.core.club.booking import Club
from paradestate.core.figure import FigureKind
from paradestate.core.formation import Formation
from paradestate.core.game import FormationCost, Game, Grade, Reserves
from paradestate.core.game_night import GameNights
from paradestate.core.holdings import Holdings
from paradestate.core.on_order import OnOrder
from paradestate.core.place import Places
from paradestate.core.play.loss_limit import LossLimit
from paradestate.core.repair import Repair
from paradestate.core.source import Source
from paradestate.core.span import ALWAYS, DateSpan, Window
from paradestate.core.stand import StandPattern
from paradestate.core.support.entry import Asking, Entry, GroupLimit, Worth
from paradestate.core.table import Opponent, Table, Tray, TrayPlace


class Wishes(StrEnum):
    """Which wished items the owner wants."""

    ALL = "all"
    NONE = "none"


Wanted: TypeAlias = Wishes | tuple[str, ...]
"""All, none, or the wished items by name."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Raise:
    """What the owner raises."""

    formation: str
    date: DateSpan | None = None
    theatre: str = ""
    numbers: Mapping[str, int] = field(default_factory=dict)
    """Part to number, for parts that are ranges."""
    names: Mapping[str, str | tuple[str, ...]] = field(default_factory=dict)
    """Part to the names of its instances: a list, or a pattern in which `#` is the number."""
    wished: Wanted = Wishes.NONE
    by_hand: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Aim:
    """Why the force is raised."""

    text: str = ""
    deadline: DateSpan | None = None
    a_month: Fraction | None = None
    """What may be spent in a month, in whole units of the force's currency."""
    game_nights: tuple[GameNights, ...] = ()
    by_hand: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Marks:
    """How companies are told apart."""

    by_formation: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """Formation to the names of its instances' colours."""
    colours: Mapping[str, str] = field(default_factory=dict)
    """Name of a colour to its six sRGB hexadecimal digits."""
    rear_bars: frozenset[str] = frozenset()
    """Formations whose marks have a bar along the foot, which the enemy's haven't."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Force:
    """All sections of a force folder, joined."""

    title: str
    raise_: Raise | None
    about: str = ""
    drawn_from: tuple[str, ...] = ()
    private: bool = False
    aim: Aim | None = None
    covers: Window = ALWAYS
    figures: Mapping[str, FigureKind] = field(default_factory=dict)
    stands: Mapping[str, StandPattern] = field(default_factory=dict)
    formations: Mapping[str, Formation] = field(default_factory=dict)
    stock: Mapping[str, Mapping[str, int]] = field(default_factory=dict)
    """Figure kind, then stage, to number owned at the start."""
    stock_stands: Mapping[str, Mapping[str, int]] = field(default_factory=dict)
    worked: Mapping[str, Holdings] = field(default_factory=dict)
    """Stand of the raised force to what the journal says was worked on as it, of that stock."""
    on_order: tuple[OnOrder, ...] = ()
    """What the journal says was ordered and hasn't come; not part of that stock."""
    repairs: tuple[Repair, ...] = ()
    """Its stands that the journal has in repair."""
    sources: Mapping[str, Source] = field(default_factory=dict)
    games: Mapping[str, Game] = field(default_factory=dict)
    formation_cost: FormationCost = 0
    grades: Mapping[str, Grade] = field(default_factory=dict)
    supporting_troops: Mapping[str, Entry] = field(default_factory=dict)
    asking: Asking = Asking.ONE_AT_A_TIME
    limits: tuple[GroupLimit, ...] = ()
    reserves: Reserves | None = None
    worths: Mapping[str, Worth] = field(default_factory=dict)
    bench: Bench = Bench()
    campaign: Campaign = Campaign()
    club: Club = Club()
    states: tuple[str, ...] = ()
    loss_limits: tuple[LossLimit, ...] = ()
    marks: Marks = Marks()
    opponent: Opponent | None = None
    trays: Mapping[str, Tray] = field(default_factory=dict)
    packed: Mapping[str, Mapping[str, TrayPlace]] = field(default_factory=dict)
    """Tray, as `case 2`, then stand, to where the owner has laid it by hand."""
    table: Table | None = None
    by_hand: str = ""
    places: Places = field(default_factory=dict, compare=False, repr=False)
