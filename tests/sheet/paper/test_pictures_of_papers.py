"""Papers as pictures: what a printer would put on the page, looked at dot by dot.

The pages are drawn by PDFium (through `pypdfium2`), which isn't what set them.
"""

from functools import cache
from typing import Any

import numpy as np
import pypdfium2  # type: ignore[import-untyped]

from paradestate.core.imposition.frame import Frame
from tests.sheet.paper.papers import made, paper

DOTS_PER_MILLIMETRE = 12
INSET = 0.7
"""Millimetres from an edge that the name and the sign leave free."""

SCALE = DOTS_PER_MILLIMETRE * 25.4 / 72 * (1 - 1e-6)
"""Dots per point, a hair less than whole millimetres: the page is rounded up to whole dots."""

OVER = 0.6
"""Millimetres over the cut, within the bleed."""


@cache
def picture(name: str, page: int) -> np.ndarray:
    drawn = pypdfium2.PdfDocument(made(name).pdf)[page]
    shown: np.ndarray = drawn.render(scale=SCALE).to_numpy()
    return shown[:, :, :3][:, :, ::-1]


def dot(shown: np.ndarray, *, across: float, down: float) -> tuple[int, ...]:
    row, column = (int(length * DOTS_PER_MILLIMETRE) for length in (down, across))
    return tuple(int(part) for part in shown[row, column])


def cut_out(shown: np.ndarray, frame: Frame) -> np.ndarray:
    """The dots of a frame, without the outermost, which lie half in it."""
    left, top, right, bottom = (
        round(float(length) * DOTS_PER_MILLIMETRE)
        for length in (frame.left, frame.top, frame.right, frame.bottom)
    )
    return shown[top + 1 : bottom - 1, left + 1 : right - 1].astype(np.int16)


def pieces(name: str, *, page: int) -> Any:  # noqa: ANN401 - pieces of whatever the paper has
    return paper(name).shown.pages[page].pieces


def test_a_label_has_its_companys_colour_up_to_the_cut_and_over_it_on_every_side() -> None:
    shown, looked_at = picture("labels", 0), 0
    for piece in pieces("labels", page=0):
        mark = piece.face.mark
        if mark is None or not mark.value or piece.is_round:
            continue
        left, top, right, bottom = (
            float(length)
            for length in (
                *(piece.frame.left, piece.frame.top),
                *(piece.frame.right, piece.frame.bottom),
            )
        )
        across, down = (left + right) / 2, (top + bottom) / 2
        colour = tuple(bytes.fromhex(mark.value))
        for at in (INSET, -OVER):
            assert dot(shown, across=left + at, down=down) == colour
            assert dot(shown, across=right - at, down=down) == colour
            assert dot(shown, across=across, down=top + at) == colour
            assert dot(shown, across=across, down=bottom - at) == colour
        looked_at += 1
    assert looked_at == 28


def is_alike(one: np.ndarray, other: np.ndarray) -> bool:
    """Whether no dot differs by more than drawing rounds: 2 of 255."""
    return bool(np.abs(one - other).max() <= 2)


def test_nobody_can_tell_a_true_marker_from_a_dummy_by_a_single_dot_of_its_front() -> None:
    shown = picture("markers", 0)
    first, *others = (cut_out(shown, piece.frame) for piece in pieces("markers", page=0))
    assert first.min() < 40
    assert first.max() == 255
    assert len(others) == 15
    assert all(is_alike(front, first) for front in others)
    backs = [cut_out(picture("markers", 1), each.frame) for each in pieces("markers", page=1)]
    assert not all(is_alike(back, backs[0]) for back in backs), "the backs do tell"
