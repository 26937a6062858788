"""What is written down of a game, from its terms to its end.

Each is one entry of the journal, so that nothing of a game is ever altered: a slip is struck out
with its reason, and stays readable.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import NamedTuple, TypeAlias


@dataclass(frozen=True, slots=True, kw_only=True)
class Opened:
    """The terms that both sides have agreed to."""

    game: str
    """Name of the kind of game, as the folder lists it."""
    date: str = ""
    """The day or span of history that it is played in, as it is typed."""
    posture: str = ""
    opponent: str = ""
    grades: Mapping[str, str] = field(default_factory=dict)
    """Scale to the grade that holds."""
    numbers: Mapping[str, int] = field(default_factory=dict)
    """Part to number, for parts that are ranges."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rolled:
    """One roll of real dice, or of the machine's."""

    purpose: str
    """What it is for: the allowance, the name of an entry, or whatever else the two sides roll."""
    dice: str
    """As the folder writes them: `18 + 2d6`."""
    faces: tuple[int, ...]
    """What the dice showed, in the order in which they were read; empty where only the total of
    several was said."""
    total: int
    number: int = 0
    """How many of an entry were asked for."""
    choice: str = ""
    roller: str = ""
    witness: str = ""
    commitment: str = ""
    """Id of the entry by which the machine bound itself beforehand; empty for real dice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Committed:
    """The machine binds itself to a secret, for one roll, before it knows the opponent's word."""

    digest: str
    """SHA-256 of the secret, in hexadecimal digits."""
    purpose: str
    dice: str
    number: int = 0
    choice: str = ""
    """As of the roll to come: so nobody chooses, once the faces can be known, what they are for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoken:
    """The opponent's word, said after the digest was published."""

    commitment: str
    word: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Revealed:
    """The secret, told after its roll."""

    commitment: str
    secret: str
    """In hexadecimal digits."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """Supporting troops that were asked for, and what came of it.

    Of an entry that is rolled for, and that nothing is said of how many are allowed, it is only
    declared that it is going to be asked for.
    """

    entry: str
    number: int
    choice: str = ""
    allowed: int | None = None
    """How many the dice allowed; None where nothing is rolled for it."""
    taken: int = 0


class Subject(NamedTuple):
    """What a state is told of: a stand, a platoon's ammunition, a battery's fire missions."""

    aspect: str
    """Which side of it: `out`, `missions used`, `attached to`, or a state of the owner's own."""
    name: str
    """Name of the stand, body or entry."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """How one thing stands now, as whoever tells it sees it."""

    subject: Subject
    value: str
    """Empty: as at the start."""
    over: tuple[str, ...] = ()
    """Ids of the entries that the teller saw of this subject, and which this one replaces."""
    turn: int | None = None


_TIME = re.compile(r"([01]?[0-9]|2[0-3]):[0-5][0-9]")


def is_time(text: str) -> bool:
    """Whether a text is a time of day, hours and minutes of 24 hours: `22:15`."""
    return _TIME.fullmatch(text) is not None


@dataclass(frozen=True, slots=True, kw_only=True)
class Noted:
    """What somebody wants to remember of the game; it may be written after its end too."""

    text: str
    about: str = ""
    """Name of the stand, body or entry that it concerns; empty: the game as a whole."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ended:
    """The game is over."""

    outcome: str = ""
    held: Mapping[str, str] = field(default_factory=dict)
    """What was fought for to who held it in the end, in the owner's words."""
    time: str = ""
    """The time of day, hours and minutes: `22:15`."""


Event: TypeAlias = Opened | Rolled | Committed | Spoken | Revealed | Asked | Told | Noted | Ended


@dataclass(frozen=True, slots=True, kw_only=True)
class Played:
    """One event of one game."""

    game: str
    """UUID of the game; its terms and all else of it bear the same."""
    event: Event
    device: str = ""
    """Which phone or computer told it, by the name that its owner gave it."""
    counter: int = 0
    """Which of that device's events it is, from 1: its own order, whatever its clock says."""
