"""How many equal pieces a page takes."""

from paradestate.core.imposition.grid import along, lies_turned
from paradestate.core.imposition.layout import Layout
from paradestate.core.imposition.paper_size import LETTER
from paradestate.core.outline import millimetres


def test_an_a4_takes_56_labels_upright_and_63_turned() -> None:
    """Computation 3.19: A4, rim 8, labels of 38 x 18, gutter 2."""
    room, gutter = Layout().room, millimetres(2)
    wide, deep = millimetres(38), millimetres(18)
    assert along(room.width, wide, gutter=gutter) * along(room.height, deep, gutter=gutter) == 56
    assert along(room.width, deep, gutter=gutter) * along(room.height, wide, gutter=gutter) == 63
    assert lies_turned(room, width=wide, height=deep, gutter=gutter)
    assert not lies_turned(room, width=deep, height=wide, gutter=gutter)


def test_a_letter_takes_65_of_them_upright() -> None:
    room, gutter = Layout(size=LETTER).room, millimetres(2)
    wide, deep = millimetres(38), millimetres(18)
    assert along(room.width, wide, gutter=gutter) * along(room.height, deep, gutter=gutter) == 65
    assert not lies_turned(room, width=wide, height=deep, gutter=gutter)


def test_what_is_larger_than_the_room_goes_in_not_at_all() -> None:
    assert along(millimetres(50), millimetres(60), gutter=millimetres(2)) == 0
