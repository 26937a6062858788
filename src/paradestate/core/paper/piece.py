"""Pieces that are cut out of a page, and the one that no page holds."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from paradestate.core.finding import Finding, Level
from paradestate.core.imposition.layout import Layout
from paradestate.core.outline import Outline, decimal_text, outline_text
from paradestate.core.place import Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """Something to be cut out."""

    name: str
    outline: Outline
    place: Place
    """Where its size was written."""


def too_large(
    pieces: Sequence[Piece], without_room: Sequence[int], *, layout: Layout
) -> Iterator[Finding]:
    """Row 14: pieces that are greater than a page, each sort once."""
    room = layout.room
    for name, piece in {pieces[number].name: pieces[number] for number in without_room}.items():
        yield Finding(
            level=Level.WARN,
            code="larger-than-page",
            message=f"{name}, {outline_text(piece.outline)}, doesn't fit on {layout.size.name}: "
            f"{decimal_text(room.width)} x {decimal_text(room.height)} mm of it are free.",
            effect="It isn't printed.",
            hint="Draw it by hand, or give it a smaller base.",
            place=piece.place,
        )
