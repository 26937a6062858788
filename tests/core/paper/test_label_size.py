"""The size of a label."""

from paradestate.core.paper.label_size import label_of
from tests.core.imposition.boxes import disc, rectangle


def test_a_label_is_a_millimetre_inside_its_stand() -> None:
    assert label_of(rectangle(40, 20)) == rectangle(38, 18)
    assert label_of(disc(30)) == disc(28)
    assert label_of(rectangle(15, 34)) == rectangle(13, 32)


def test_nothing_is_left_for_a_stand_of_two_millimetres() -> None:
    assert label_of(rectangle(2, 20)) is None
    assert label_of(rectangle(20, 2)) is None
    assert label_of(disc(2)) is None
    assert label_of(disc("2.1")) == disc("0.1")
