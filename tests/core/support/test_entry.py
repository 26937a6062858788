"""Supporting troops as values."""

import pytest

from paradestate.core.support.entry import Band


@pytest.mark.parametrize(
    ("least", "most", "text"), [(3, 3, "3"), (2, 4, "2-4"), (9, None, "9 or more")]
)
def test_a_band_is_written_as_its_owner_does(least: int, most: int | None, text: str) -> None:
    assert str(Band(least=least, most=most, allows=0)) == text
