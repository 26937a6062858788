"""The mark of a stand as a paper draws it, and the words that go with it."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from paradestate.core.paper.ground import Ground
from paradestate.core.parade import ranks
from paradestate.core.unfolding import SEPARATOR, Stand


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkFace:
    """The mark of one stand and its name, line by line."""

    colour: str
    """Six sRGB hexadecimal digits of the company's colour; empty where it has none."""
    colour_name: str
    company: int
    """Which company it is, from 1; nought for troops that belong to none."""
    bars: int
    """Which platoon it is in its company, from 1; nought for the company's own troops."""
    lines: tuple[str, ...]
    """The stand's name, from the company down."""


def mark_faces(ground: Ground) -> Mapping[str, MarkFace]:
    """Name of each stand to its mark, in the order of the parade."""
    return dict(_faces(ground))


def _faces(ground: Ground) -> Iterator[tuple[str, MarkFace]]:
    for rank in ranks(ground.force, ground.made, strength=ground.strength):
        for placed in (*rank.must, *rank.wished):
            face = MarkFace(
                colour=rank.colour,
                colour_name=rank.colour_name,
                company=rank.number,
                bars=placed.number,
                lines=name_lines(placed.stand),
            )
            yield placed.stand.name, face


def name_lines(stand: Stand) -> tuple[str, ...]:
    """The steps of a stand's name, each for a line of its own."""
    return tuple(stand.name.split(SEPARATOR))
