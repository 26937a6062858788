"""Colours that a mark can be painted in: the owner's own, and nine that most paint racks hold.

Imports the force only.
"""

from collections.abc import Iterable, Mapping

from paradestate.core.force import Force, Marks

USUAL: Mapping[str, str] = {
    "brick red": "B03A2E",
    "leaf green": "4C7A34",
    "royal blue": "1F4E9E",
    "violet": "7B4FA3",
    "mid yellow": "F2C230",
    "sky blue": "7FB8DE",
    "brown": "6B4A2B",
    "black": "202020",
    "orange": "E08214",
}
"""Nine colours of our own choice, by six sRGB hexadecimal digits; an owner's of that name holds."""

MOST_AT_HAND = 60
"""Colours among which a choice is made."""


def value_of(name: str, marks: Marks) -> str:
    """Six hexadecimal digits of a colour by its name; empty where nobody says them."""
    return marks.colours.get(name, USUAL.get(name, ""))


def own_colours(marks: Marks) -> tuple[str, ...]:
    """The names of every colour that is given to a formation, each once."""
    return tuple(dict.fromkeys(name for names in marks.by_formation.values() for name in names))


def enemy_colours(force: Force) -> tuple[str, ...]:
    """The names of the colours that the other side bears."""
    return () if force.opponent is None else force.opponent.colours


def values_of(names: Iterable[str], marks: Marks) -> Mapping[str, str]:
    """The colours of these names that somebody says the digits of, each once, in order."""
    values = {name: value_of(name, marks) for name in names}
    return {name: value for name, value in values.items() if value}


def at_hand(marks: Marks) -> Mapping[str, str]:
    """Every colour that could be taken: the owner's in file order, then the usual ones."""
    usual = {name: value for name, value in USUAL.items() if name not in marks.colours}
    return {**marks.colours, **usual}
