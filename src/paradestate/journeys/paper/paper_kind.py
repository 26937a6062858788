"""What every kind of paper has in common: its name, its title, and how it is drafted."""

import datetime
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import TypeAlias

from paradestate.core.choice import Choice
from paradestate.core.imposition.layout import Layout
from paradestate.core.imposition.paper_size import PaperSize
from paradestate.core.imposition.type_size import USUAL_DISTANCE
from paradestate.core.outline import Millimetres, millimetres
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.paper import Draft
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.paper.paper_use import Eyes, Purpose


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What papers were asked for."""

    layout: Layout = Layout()
    only: tuple[str, ...] = ()
    """Names of papers; empty for every one."""
    with_pictures: bool = False
    """Whether each page is drawn for a screen as well."""
    most_letters: int | None = None
    """How much a paper may have to say before it isn't set; None for any length."""
    plan: str = ""
    """Supporting troops as they were typed; empty for those that the game's plan says."""
    dummies: int | None = None
    """Markers that hide nobody; None for as many as there are true ones."""
    distance: Millimetres = USUAL_DISTANCE
    """From where the papers are read."""
    loaded: PaperSize | None = None
    """The paper in the printer, where it isn't the one that is laid out for."""
    is_corrected: bool = False
    """Whether the sheets make good what the printer makes of a length."""
    reserve: Mapping[str, int] = field(default_factory=dict)
    """Formation or entry of the plan to how many of it are kept back."""
    revealed: tuple[str, ...] = ()
    """Stands and supporting troops that the opponent has found out."""
    other: Path | None = None
    """The folder of the other side, for the umpire."""
    points: int | None = None
    """Points left before anything is bought; None: not rolled yet."""
    grades: Mapping[str, str] = field(default_factory=dict)
    """Scale to the grade of the game that isn't as usual."""
    of: str | None = None
    """Beginning of the id of a game that was written down, empty for the newest; its record then
    says the game, the plan, the reserve, the points and the grades. None: as it is typed."""


NOTHING_ASKED = Asked()


@dataclass(frozen=True, slots=True, kw_only=True)
class Desk:
    """What a paper may be drafted from."""

    ground: Ground
    folder: Path
    today: datetime.date
    choice: Choice
    memory: Memory = NOTHING
    asked: Asked = NOTHING_ASKED
    points: int | None = None
    """Points left before anything is bought, as typed or as rolled in the game; None: neither."""

    @property
    def is_of_record(self) -> bool:
        """Whether it is of a game that was written down."""
        return self.asked.of is not None

    @property
    def grades(self) -> Mapping[str, str]:
        """Scale to the grade of the game, where any were chosen."""
        return {} if self.ground.terms is None else self.ground.terms.grades

    @property
    def to_pack(self) -> Choice:
        """The choice for trays: without its game where nothing was taken, whatever was planned."""
        is_bare = self.is_of_record and not self.ground.plan
        return replace(self.choice, game=None) if is_bare else self.choice


Drafting: TypeAlias = Callable[[Desk], Draft[object]]


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperKind:
    """One kind of paper."""

    name: str
    """As it is asked for, and its template is called; its file too."""
    title: str
    """At the head of its pages."""
    about: str
    """What it is for, in a line."""
    purpose: Purpose
    drafted: Drafting
    eyes: Eyes = Eyes.OWNER
    """Private as long as nothing else is said: whatever counts stands gives the force away."""
    is_of_a_game: bool = False
    """Whether it is printed only where a game or a plan is chosen, or it is asked for by name."""
    names_force: bool = True
    """Whether its reader may know the title of the force."""
    read_from: Millimetres = millimetres(0)
    """From how far it is read at the least, however near the other papers are."""

    @property
    def may_be_handed_over(self) -> bool:
        """Whether even the opponent may read it."""
        return self.eyes is Eyes.ANYBODY


def on_ground(draft: Callable[[Ground], Draft[object]]) -> Drafting:
    """A paper that is drafted from the force alone."""
    return lambda desk: draft(desk.ground)
