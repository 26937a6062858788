"""What a scenario rolls: when troops come onto the table, and how strong they are."""

from dataclasses import dataclass

from paradestate.core.dice import Dice, Totals


@dataclass(frozen=True, slots=True, kw_only=True)
class Arrival:
    """When and where something that isn't there at the start comes onto the table.

    Without a roll it comes in `from_turn`. With one, each of them rolls for itself, once a turn
    from `from_turn` to `until_turn`, and comes when the total is among those of `on`; the rolls
    of different turns and things have nothing to do with each other.
    """

    roll: Dice | None = None
    on: Totals | None = None
    from_turn: int = 1
    until_turn: int | None = None
    """The last turn in which is rolled; None: it is rolled until it is there."""
    edge: str = ""
    by_hand: str = ""
