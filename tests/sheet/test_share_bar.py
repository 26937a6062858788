"""A share as a bar."""

from fractions import Fraction

import pytest

from paradestate.sheet.share_bar import HATCHED, WIDTH, share_bar, share_pattern
from paradestate.sheet.svg import Drawing
from tests.sheet.reading import root_of


def breadth(made: Drawing, fill: str) -> list[float]:
    rects = root_of(made).iter("rect")
    return [float(each.get("width", "")) for each in rects if each.get("fill") == fill]


def test_the_parts_are_as_broad_as_their_shares() -> None:
    made = share_bar(Fraction(1, 4), hatched=Fraction(1, 2))
    assert breadth(made, "var(--ink)") == [pytest.approx((WIDTH - 3) / 4, abs=0.01)]
    assert breadth(made, f"url(#{HATCHED})") == [pytest.approx((WIDTH - 3) / 2, abs=0.01)]


def test_nothing_is_an_empty_bar_and_very_little_can_still_be_seen() -> None:
    assert breadth(share_bar(Fraction(0)), "var(--ink)") == []
    assert breadth(share_bar(Fraction(1, 10**6)), "var(--ink)") == [1]


def test_it_isn_t_read_out_and_its_hatching_stands_once_on_a_page() -> None:
    assert 'aria-hidden="true"' in share_bar(Fraction(1)).svg
    assert "<pattern" not in share_bar(Fraction(0), hatched=Fraction(1)).svg
    assert share_pattern().svg.count("<pattern") == 1
