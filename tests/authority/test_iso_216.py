"""Trimmed sizes of the A series, as ISO 216:2007 prints them (table 1), in millimetres."""

import pytest

from paradestate.core.imposition.paper_size import a_size
from paradestate.core.outline import millimetres

SIZES = (
    (841, 1189),
    (594, 841),
    (420, 594),
    (297, 420),
    (210, 297),
    (148, 210),
    (105, 148),
    (74, 105),
    (52, 74),
    (37, 52),
    (26, 37),
)


@pytest.mark.parametrize("number", range(len(SIZES)))
def test_sizes_are_those_of_the_standard(number: int) -> None:
    size = a_size(number)
    width, height = SIZES[number]
    assert (size.width, size.height) == (millimetres(width), millimetres(height))
