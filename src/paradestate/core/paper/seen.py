"""What the opponent may see, as values that nothing else fits into.

Each is made from the stand, mark or game itself, and takes of it only what the eye sees on the
table. None has a field that words could be put into from outside, and none can be made from what is
hidden: whoever tries gets an error, not a value.
"""

from collections.abc import Iterator
from dataclasses import InitVar, dataclass, field

from paradestate.core.figure import StandIn
from paradestate.core.game import Game
from paradestate.core.mark.code import Mark
from paradestate.core.mark.marking import MarkedStand
from paradestate.core.outline import Rectangle, outline_text
from paradestate.core.sentence.wording import counted, plural, several
from paradestate.core.stand import Sight, StandPattern
from paradestate.core.strength import StandState
from paradestate.core.unfolding import capitals


def may_be_seen(pattern: StandPattern, *, is_revealed: bool = False) -> bool:
    """Whether the opponent may know of stands of a pattern."""
    sight = pattern.seen_by_opponent or Sight.YES
    return sight is Sight.YES or (sight is Sight.WHEN_REVEALED and is_revealed)


class HiddenError(ValueError):
    """Something hidden was about to be shown to the opponent."""


def _hold_back(pattern: StandPattern, *, is_revealed: bool) -> None:
    if not may_be_seen(pattern, is_revealed=is_revealed):
        raise HiddenError("This stand may not be seen by the opponent.")


@dataclass(frozen=True, slots=True, kw_only=True)
class SeenStand:
    """A kind of stand that may be seen, as the eye knows it. Raises HiddenError of any other."""

    of: InitVar[StandPattern]
    is_revealed: InitVar[bool] = False
    states: InitVar[tuple[StandState, ...]] = ()
    """How its stands are filled."""
    number: int
    """How many there are by the establishment, and with supporting troops that are seen."""
    called: str = field(init=False)
    size: str = field(init=False)
    known_by: str = field(init=False)
    """The figures on it."""
    stand_ins: tuple[str, ...] = field(init=False)
    """Figures that stand in for others, in words."""

    def __post_init__(
        self, of: StandPattern, is_revealed: bool, states: tuple[StandState, ...]
    ) -> None:
        """Takes what is seen of the pattern."""
        _hold_back(of, is_revealed=is_revealed)
        own = (state for state in states if state.stand.pattern == of.name)
        taken = {
            "called": of.called or capitals(of.name),
            "size": outline_text(of.outline),
            "known_by": counted(of.modelled),
            "stand_ins": tuple(map(_stand_in_words, _stand_ins(own))),
        }
        for name, value in taken.items():
            object.__setattr__(self, name, value)


def _stand_ins(states: Iterator[StandState]) -> Iterator[StandIn]:
    numbers: dict[tuple[str, str], int] = {}
    for filling in (each for state in states for each in state.fillings):
        if filling.kind != filling.stands_for:
            pair = (filling.kind, filling.stands_for)
            numbers[pair] = numbers.get(pair, 0) + filling.number
    for (kind, other), number in numbers.items():
        yield StandIn(kind=kind, stands_for=other, number=number)


def _stand_in_words(each: StandIn) -> str:
    other = each.stands_for if each.number == 1 else plural(each.stands_for)
    return f"{several(each.number, each.kind)} for {other}"


@dataclass(frozen=True, slots=True, kw_only=True)
class SeenMark:
    """A mark on the rear edge of stands that may be seen. Raises HiddenError of any other.

    It is a plate on paper: the name of a colour stands beside it, no name of a unit.
    """

    of: InitVar[MarkedStand]
    pattern: InitVar[StandPattern]
    is_revealed: InitVar[bool] = False
    mark: Mark = field(init=False)
    colour: str = field(init=False)

    def __post_init__(self, of: MarkedStand, pattern: StandPattern, is_revealed: bool) -> None:
        """Takes the mark of the stand."""
        _hold_back(pattern, is_revealed=is_revealed)
        if of.rear is None or of.stand.pattern != pattern.name:
            raise HiddenError("This stand has no mark that may be seen by the opponent.")
        object.__setattr__(self, "mark", of.rear)
        object.__setattr__(self, "colour", of.rear.colour)


@dataclass(frozen=True, slots=True, kw_only=True)
class SeenColour:
    """All marks of one colour that may be seen."""

    marks: tuple[SeenMark, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SeenGame:
    """What both sides agreed of a game."""

    of: InitVar[Game]
    posture: str = field(init=False)

    def __post_init__(self, of: Game) -> None:
        """Takes the posture of the game."""
        object.__setattr__(self, "posture", of.posture)


@dataclass(frozen=True, slots=True, kw_only=True)
class SeenTable:
    """The table that both sides play on."""

    of: InitVar[Rectangle]
    size: str = field(init=False)

    def __post_init__(self, of: Rectangle) -> None:
        """Takes its size."""
        object.__setattr__(self, "size", outline_text(of))
