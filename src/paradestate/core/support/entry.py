"""Supporting troops: what may be added for points, and under which conditions."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction
from math import ceil, floor

from paradestate.core.dice import Dice, Totals
from paradestate.core.span import ALWAYS, Window
from paradestate.core.support.mission import Missions


class Refusal(StrEnum):
    """What becomes of the points of a refused request."""

    KEPT = "points kept"
    LOST = "points lost"


class Asking(StrEnum):
    """When those who need a roll are named."""

    ONE_AT_A_TIME = "one at a time"
    ALL_DECLARED_FIRST = "all declared first"


class Position(StrEnum):
    """Where it fights from."""

    ON_TABLE = "on table"
    OFF_TABLE = "off table"
    EITHER = "either"


class Rounding(StrEnum):
    """How a scaled limit is rounded."""

    DOWN = "down"
    UP = "up"


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit:
    """How many purchases of an entry a force may hold, and how many it must.

    `most` None: any number. With `of`, `most` for every `for_every` of that formation in the must
    layer, and `plus` more. It counts purchases, whatever their number and choice.
    """

    most: int | None = 1
    for_every: int = 1
    of: str = ""
    round: Rounding = Rounding.DOWN
    plus: int = 0
    least: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Band(Totals):
    """Totals of a roll, and how many are then allowed; None: all that were asked for."""

    allows: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Availability:
    """One roll for each purchase, and what each total allows.

    Entries that name the same `shared_roll` have one roll between them in a game.
    """

    roll: Dice
    allows: tuple[Band, ...]
    shared_roll: str = ""

    def allowed(self, total: int, *, asked: int) -> int:
        """How many of those asked for a total of the roll allows; its bands hold every total."""
        for band in self.allows:
            if band.holds(total):
                return asked if band.allows is None else min(band.allows, asked)
        raise ValueError(f"no band holds a roll of {total}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Replacement:
    """Stands of one host that are exchanged when the entry is taken."""

    of: str
    number: int
    with_: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Improvement:
    """Formations that stand so many steps higher on a scale of grades than the force does.

    It happens once a purchase, and changes no price.
    """

    of: str
    scale: str
    number: int = 1
    steps: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Attachment:
    """To which formations its stands may be attached."""

    to: str
    most_per_host: int | None = None
    no_two_alike: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Circumstance:
    """A kind of game, as far as entries ask about it."""

    posture: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Variation:
    """What of an entry is otherwise in games of one posture; None: as it is elsewhere."""

    cost: Mapping[int, int] | None = None
    limit: Limit | None = None
    availability: Availability | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One sort of supporting troops on the list."""

    name: str
    held_at: str = ""
    cost: Mapping[int, int]
    """Number taken to points; only these numbers can be taken."""
    cost_by_grade: Mapping[str, Mapping[str, Mapping[int, int]]] = field(default_factory=dict)
    """Scale, then grade, to what holds in place of `cost` at that grade."""
    repeats_cost_more: tuple[int, ...] = ()
    """Points added to the second, third ... purchase of it; the last number holds on."""
    each: Mapping[str, int] = field(default_factory=dict)
    """Stands that each of them puts down."""
    limit: Limit = Limit()
    availability: Availability | None = None
    when_refused: Refusal | None = None
    needs: Mapping[str, int] = field(default_factory=dict)
    """Entry to number of purchases of it; all must hold."""
    needs_any_of: Mapping[str, int] = field(default_factory=dict)
    """As `needs`, of which one must hold."""
    needs_for_each: Mapping[str, int] = field(default_factory=dict)
    """Entry to purchases of it for each purchase of this one."""
    bars: tuple[str, ...] = ()
    opens: tuple[str, ...] = ()
    grants: Mapping[str, int] = field(default_factory=dict)
    """Stands that come free, once a purchase."""
    replaces: Replacement | None = None
    improves: Improvement | None = None
    choice: tuple[str, ...] = ()
    choice_costs: Mapping[str, int] = field(default_factory=dict)
    """Choice to points added for each one taken; those left out add none."""
    group: str = ""
    attach: Attachment | None = None
    place: Position = Position.ON_TABLE
    missions: Missions | None = None
    """What is rolled for them, where each one taken is a fire mission."""
    only_in: Circumstance | None = None
    not_in: Circumstance | None = None
    in_posture: Mapping[str, Variation] = field(default_factory=dict)
    window: Window = ALWAYS
    theatre: str = ""
    by_hand: str = ""

    @property
    def is_fire_mission(self) -> bool:
        """Whether each one taken is a fire mission: it fires from off the table, or rolls for it.

        What may stand on the table too is one only where the files say what is rolled for it.
        """
        return self.place is Position.OFF_TABLE or self.missions is not None


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupLimit:
    """A limit shared by all entries of a group: a number of purchases, or a share of the points.

    Shares are of the points left, before anything is bought.
    """

    group: str
    least: int = 0
    most: int | None = None
    least_points: Fraction = Fraction(0)
    most_points: Fraction | None = None
    by_hand: str = ""

    def most_spent(self, points: int) -> int | None:
        """The most that the group may take of so many points left; None: any number.

        Of less than no points a share is nought.
        """
        return None if self.most_points is None else floor(self.most_points * max(0, points))

    def least_spent(self, points: int) -> int | None:
        """The least that it must take; None: it may even bring points."""
        return ceil(self.least_points * max(0, points)) if self.least_points else None


@dataclass(frozen=True, slots=True, kw_only=True)
class Worth:
    """The owner's own opinion of an entry: number taken to worth, by choice ("" for any)."""

    entry: str
    by_choice: Mapping[str, Mapping[int, Fraction]]
