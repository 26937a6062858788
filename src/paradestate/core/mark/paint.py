"""Colours that a mark can be painted in: the owner's own, and nine that most paint racks hold.

Imports the force only.
"""

from collections.abc import Mapping

from paradestate.core.force import Marks

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


def at_hand(marks: Marks) -> Mapping[str, str]:
    """Every colour that could be taken: the owner's in file order, then the usual ones."""
    usual = {name: value for name, value in USUAL.items() if name not in marks.colours}
    return {**marks.colours, **usual}
