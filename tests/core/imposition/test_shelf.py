"""Pieces of several sizes on pages."""

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.certainty import Exact, Within
from paradestate.core.imposition.layout import Layout
from paradestate.core.imposition.paper_size import LETTER, PaperSize
from paradestate.core.imposition.shelf import Imposition, imposed
from paradestate.core.outline import Disc, Outline, millimetres
from paradestate.core.spot import depth_of, width_of
from tests.core.imposition.boxes import MARENZ, disc, frame, holds, overlap, rectangle


def small(width: int, height: int, *, gutter: int = 0) -> Layout:
    size = PaperSize(name="small", width=millimetres(width), height=millimetres(height))
    return Layout(size=size, rim=millimetres(0), gutter=millimetres(gutter))


def assert_sound(laid: Imposition, outlines: tuple[Outline, ...]) -> None:
    """Each piece once, within the room, a gutter from every other, as large as it is."""
    numbers = [each.piece for page in laid.pages for each in page]
    assert sorted([*numbers, *laid.without_room]) == list(range(len(outlines)))
    half = millimetres(laid.layout.gutter / 2)
    for page in laid.pages:
        assert page
        for each in page:
            sides = (each.frame.width, each.frame.height)
            box = outlines[each.piece]
            as_it_is = (width_of(box), depth_of(box))
            assert each.is_round is isinstance(box, Disc)
            assert sides == (as_it_is[::-1] if each.is_turned else as_it_is)
            assert holds(laid.layout.room, each.frame)
        for one, other in combinations(page, 2):
            assert not overlap(one.frame.grown(half), other.frame.grown(half))


def test_the_battalions_37_labels_come_on_one_a4_of_which_they_use_228_of_281_mm() -> None:
    """Computation 3.19 and story 12."""
    laid = imposed(MARENZ, Layout())
    assert_sound(laid, MARENZ)
    assert len(laid.pages) == 1
    deepest = max(each.frame.bottom for each in laid.pages[0])
    assert deepest - laid.layout.room.top == 228
    assert laid.layout.room.height == 281
    assert laid.certainty == Exact()


def test_rows_hold_9_9_9_and_1_labels_then_6_discs_then_the_rest() -> None:
    laid = imposed(MARENZ, Layout()).pages[0]
    rows: dict[object, int] = {}
    for each in laid:
        rows[each.frame.top] = rows.get(each.frame.top, 0) + 1
    assert list(rows.values()) == [9, 9, 9, 1, 6, 3]
    assert all(each.is_turned for each in laid[:28])


def test_63_labels_fill_a_page_and_one_more_begins_the_next() -> None:
    labels = (rectangle(38, 18),) * 63
    assert len(imposed(labels, Layout()).pages) == 1
    more = imposed((*labels, rectangle(38, 18)), Layout())
    assert [len(page) for page in more.pages] == [63, 1]
    assert_sound(more, (*labels, rectangle(38, 18)))
    assert more.certainty == Within(bound=1)  # by area 66 would go on a page


def test_a_letter_is_laid_out_for_itself() -> None:
    laid = imposed(MARENZ, Layout(size=LETTER))
    assert_sound(laid, MARENZ)
    assert len(laid.pages) == 1


def test_what_is_read_on_its_page_doesnt_turn() -> None:
    laid = imposed((rectangle(38, 18),) * 56, Layout(), may_turn=False)
    assert not any(each.is_turned for each in laid.pages[0])
    assert len(laid.pages) == 1
    assert len(imposed((rectangle(38, 18),) * 57, Layout(), may_turn=False).pages) == 2


def test_what_fits_only_turned_is_turned_and_what_doesnt_fit_is_told() -> None:
    long, huge = rectangle(250, 20), rectangle(300, 300)
    laid = imposed((huge, long, huge), Layout())
    assert laid.without_room == (0, 2)
    assert [each.is_turned for each in laid.pages[0]] == [True]
    assert imposed((long,), Layout(), may_turn=False).without_room == (0,)


def test_a_size_joins_the_row_before_only_where_all_of_it_has_room() -> None:
    layout = small(10, 20)
    together = imposed((rectangle(6, 6), rectangle(2, 2), rectangle(2, 2)), layout)
    assert {each.frame.top for each in together.pages[0]} == {0}
    apart = imposed((rectangle(6, 6), *(rectangle(2, 2),) * 3), layout)
    assert [each.frame.top for each in apart.pages[0]] == [0, 6, 6, 6]


def test_a_row_doesnt_grow_over_the_edge_of_the_page() -> None:
    pieces = (*(rectangle(7, 4),) * 2, rectangle(3, 5))
    laid = imposed(pieces, small(10, 8))
    assert_sound(laid, pieces)
    assert len(laid.pages) == 1 + (laid.pages[0][-1].piece != 2)


def test_sizes_are_mixed_where_that_saves_a_page() -> None:
    pieces = (*(rectangle(6, 5),) * 2, *(rectangle(4, 4),) * 3)
    layout = small(10, 10)
    laid = imposed(pieces, layout)
    assert_sound(laid, pieces)
    assert [len(page) for page in laid.pages] == [2, 3]  # two pages either way
    whole = (*(rectangle(6, 5),) * 2, *(rectangle(4, 5),) * 2)
    assert len(imposed(whole, layout).pages) == 1


def test_nothing_needs_no_page() -> None:
    laid = imposed((), Layout())
    assert laid.pages == ()
    assert laid.certainty == Exact()


def test_discs_are_bounded_by_their_own_area() -> None:
    """Staggered discs may overlap each other's boxes."""
    laid = imposed((disc(10),) * 5, small(20, 20))
    assert len(laid.pages) == 2
    assert laid.certainty == Within(bound=1)


OUTLINES = st.one_of(
    st.builds(rectangle, st.integers(1, 12), st.integers(1, 12)),
    st.builds(disc, st.integers(1, 12)),
)


@pytest.mark.unmeasured
@given(st.lists(OUTLINES, max_size=14), st.integers(0, 2), st.booleans())
@settings(max_examples=80)
def test_whatever_is_laid_lies_within_the_room_and_a_gutter_apart(
    outlines: list[Outline],
    gutter: int,
    may_turn: bool,  # noqa: FBT001 - drawn
) -> None:
    pieces = tuple(outlines)
    laid = imposed(pieces, small(16, 11, gutter=gutter), may_turn=may_turn)
    assert_sound(laid, pieces)
    if isinstance(laid.certainty, Within):
        assert laid.certainty.bound < len(laid.pages)
    assert frame(left=0, top=0, width=16, height=11) == laid.layout.room
