"""What stands on the label of a stand: its mark, and its name line by line."""

from dataclasses import dataclass

from paradestate.core.mark.code import Mark
from paradestate.core.unfolding import SEPARATOR


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelFace:
    """The label of one stand."""

    mark: Mark | None
    """None where its company has no colour, and for supporting troops: colour is a company's and
    bars are a platoon's, so that whatever plate they bore would be read as a unit's."""
    lines: tuple[str, ...]
    """Its name, a line for each step from the company down."""


def name_lines(name: str) -> tuple[str, ...]:
    """The steps of a stand's name, each for a line of its own."""
    return tuple(name.split(SEPARATOR))
