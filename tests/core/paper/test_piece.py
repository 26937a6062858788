"""Pieces that no page holds."""

from paradestate.core.imposition.layout import Layout
from paradestate.core.paper.piece import Piece, too_large
from paradestate.core.place import Place
from tests.core.imposition.boxes import rectangle

HERE = Place(file="force.yaml", line=7, column=3)
SCENE = Piece(name="Headquarters scene", outline=rectangle(300, 250), place=HERE)


def test_each_sort_is_told_once_with_the_room_there_is() -> None:
    """Row 14."""
    other = Piece(name="Bridge", outline=rectangle(500, 60), place=HERE)
    first, second = too_large([SCENE, SCENE, other], (0, 1, 2), layout=Layout())
    assert first.message == (
        "Headquarters scene, 300 x 250 mm, doesn't fit on A4: 194 x 281 mm of it are free."
    )
    assert first.place == HERE
    assert second.message.startswith("Bridge, ")


def test_nothing_is_said_of_what_has_room() -> None:
    assert list(too_large([SCENE], (), layout=Layout())) == []
