"""The shape of a paper."""

from dataclasses import dataclass

from paradestate.core.imposition.layout import Layout
from paradestate.core.imposition.shelf import imposed
from paradestate.core.paper.labels import labels
from paradestate.core.paper.paper import frames_of, pages_of
from tests.core.imposition.boxes import disc, rectangle
from tests.core.paper.grounds import battalion


@dataclass(frozen=True, slots=True, kw_only=True)
class Booklet:
    """A paper that is read, and says itself what stands on each page."""

    pages: tuple[str, ...]


OUTLINES = (rectangle(38, 18), rectangle(400, 400), disc(28))


def test_each_piece_has_its_face_though_one_has_no_room() -> None:
    (page,) = pages_of(imposed(OUTLINES, Layout()), ("label", "huge", "disc"))
    assert [(each.face, each.is_round) for each in page.pieces] == [
        ("disc", True),
        ("label", False),
    ]
    assert len(page.marks) == 8
    assert not page.is_second_side


def test_rears_follow_behind_each_page() -> None:
    imposition = imposed((rectangle(190, 270),) * 2, Layout())
    pages = pages_of(imposition, ("a", "b"), rears=("c", "d"))
    assert [(page.pieces[0].face, page.is_second_side) for page in pages] == [
        ("a", False),
        ("c", True),
        ("b", False),
        ("d", True),
    ]


def test_a_paper_that_is_read_has_no_frames() -> None:
    assert list(frames_of(("words",))) == []
    assert list(frames_of(Booklet(pages=("words",)))) == []
    shown = labels(battalion()).shown
    assert len(list(frames_of(shown))) == 37
