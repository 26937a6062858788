"""How a sheet is laid out."""

from fractions import Fraction

from paradestate.core.imposition.layout import Layout
from paradestate.core.imposition.paper_size import LETTER
from paradestate.core.imposition.print_scale import measured
from paradestate.core.outline import millimetres
from tests.core.imposition.boxes import frame


def test_the_room_is_the_page_without_its_rim() -> None:
    assert Layout().page == frame(left=0, top=0, width=210, height=297)
    assert Layout().room == frame(left=8, top=8, width=194, height=281)
    letter = Layout(size=LETTER, rim=millimetres(10)).room
    assert letter == frame(left=10, top=10, width="195.9", height="259.4")


def test_a_printer_that_makes_all_smaller_shows_the_page_on_less_paper() -> None:
    layout = Layout(scale=measured(Fraction(50), Fraction(50)))
    assert layout.page == frame(left=0, top=0, width=105, height="148.5")
    assert layout.room == frame(left=8, top=8, width=89, height="132.5")


def test_a_printer_that_makes_all_greater_shows_less_than_the_page() -> None:
    assert Layout(scale=measured(Fraction(103), Fraction(99))).page == frame(
        left=0, top=0, width=210, height="294.03"
    )
