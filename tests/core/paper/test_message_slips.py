"""Message slips."""

from dataclasses import replace

from paradestate.core.imposition.layout import Layout
from paradestate.core.imposition.paper_size import LETTER
from paradestate.core.outline import millimetres
from paradestate.core.paper.message_slips import OPEN, message_slips
from tests.core.paper.grounds import battalion, small


def test_each_company_has_a_slip_with_its_plate_and_the_page_is_full() -> None:
    made = message_slips(battalion()).shown
    assert made is not None
    (page,) = made.pages
    faces = [piece.face for piece in page.pieces]
    assert [face.to for face in faces[:4]] == [f"No {n} Company" for n in (1, 2, 3, 4)]
    assert all(face.mark is not None for face in faces[:4])
    assert faces[4:] == [OPEN] * 4


def test_eight_go_on_a_page_of_letter_too_and_a_force_without_companies_has_open_ones() -> None:
    made = message_slips(replace(small(), layout=Layout(size=LETTER))).shown
    assert made is not None
    assert [[piece.face for piece in page.pieces] for page in made.pages] == [[OPEN] * 8]


def test_on_paper_that_is_too_small_there_are_none() -> None:
    layout = Layout(rim=millimetres(100))
    assert message_slips(replace(small(), layout=layout)).shown is None
