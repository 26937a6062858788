"""Elements and drawings."""

from fractions import Fraction

import pytest

from paradestate.sheet.svg import drawing, element, group, length_text, link


@pytest.mark.parametrize(
    ("length", "text"),
    [(3, "3"), (2.50, "2.5"), (Fraction(1, 3), "0.33"), (0.0, "0"), (100, "100")],
)
def test_lengths_are_short(length: float | Fraction, text: str) -> None:
    assert length_text(length) == text


def test_whatever_an_owner_writes_is_text_and_nothing_else() -> None:
    hostile = '"><script>alert(1)</script>&'
    made = drawing(
        [link(element("text", text=hostile), href=hostile, words=hostile)],
        size=(10, 10),
        words=hostile,
    )
    assert "<script" not in made.svg
    assert made.svg.count("&lt;script&gt;") == 4
    assert made.words == hostile


def test_names_of_attributes_are_those_of_svg() -> None:
    made = drawing(
        [group(element("rect", stroke_width=2, class_="body", x=None))], size=(1, 2), words="w"
    )
    assert 'stroke-width="2"' in made.svg
    assert 'class="body"' in made.svg
    assert 'viewBox="0 0 1 2"' in made.svg
    assert "x=" not in made.svg.replace("viewBox=", "")


def test_a_drawing_is_a_picture_a_group_of_links_or_not_read_out() -> None:
    assert 'role="img"' in drawing([], size=(1, 1), words="w").svg
    assert 'role="group"' in drawing([], size=(1, 1), words="w", is_group=True).svg
    hidden = drawing([], size=(1, 1), words="w", is_hidden=True).svg
    assert 'aria-hidden="true"' in hidden
    assert "role=" not in hidden
