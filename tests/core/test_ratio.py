"""Men to figures."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.number import NumberRange, exactly
from paradestate.core.ratio import Ratio, evenness, largest_remainder, men_of_nodes, ratio
from paradestate.core.structure import structure
from tests.forces import force_from


def even(numerator: int, denominator: int = 1) -> Ratio:
    number = Fraction(numerator, denominator)
    return Ratio(least=number, most=number)


@pytest.mark.parametrize(
    ("men", "figures", "expected"),
    [(10, 4, even(5, 2)), (5, 3, even(5, 3)), (6, 2, even(3)), (12, 3, even(4)), (4, 2, even(2))],
)
def test_men_to_a_figure(men: int, figures: int, expected: Ratio) -> None:
    assert ratio(exactly(men), figures=figures) == expected


def test_a_section_of_8_to_12_men_shown_by_three_figures() -> None:
    """Common practice, no source: 2 2/3 to 4 men to a figure."""
    section = ratio(NumberRange(least=8, most=12), figures=3)
    assert section == Ratio(least=Fraction(8, 3), most=Fraction(4))


def test_24_figures_for_about_800_men() -> None:
    """Common practice, no source: about 33 men to a figure."""
    assert ratio(exactly(800), figures=24).least == Fraction(100, 3)


def test_evenness_of_the_example() -> None:
    ratios = [even(5, 2), even(5, 3), even(3), even(4), even(2)]
    assert evenness(ratios) == Fraction(12, 5)


def test_617_men_at_one_to_thirty() -> None:
    men = (110, 104, 98, 107, 99, 99)
    assert largest_remainder(men, men_per_figure=Fraction(30)) == (4, 4, 3, 4, 3, 3)


def test_ties_go_to_the_larger_body_then_to_the_first() -> None:
    assert largest_remainder((45, 15), men_per_figure=Fraction(30)) == (2, 0)
    assert largest_remainder((15, 45), men_per_figure=Fraction(30)) == (0, 2)
    assert largest_remainder((15, 15), men_per_figure=Fraction(30)) == (1, 0)


@given(
    st.lists(st.integers(0, 500), min_size=1, max_size=12),
    st.fractions(min_value=1, max_value=60),
)
def test_nobody_is_off_by_a_whole_figure_and_the_total_is_right(
    men: list[int], men_per_figure: Fraction
) -> None:
    given_figures = largest_remainder(men, men_per_figure=men_per_figure)
    total = sum(men) / men_per_figure
    assert sum(given_figures) == int(total + Fraction(1, 2))
    for number, figures in zip(men, given_figures, strict=True):
        assert abs(figures - number / men_per_figure) < 1


def test_men_of_a_body_leave_wished_parts_out() -> None:
    force = force_from(
        "stands: {a: {base: none, men: 10}, b: {base: none}}",
        "formations: {top: {parts: [{of: a, number: 2}, {of: b, number: 1},"
        " {of: a, number: 1, need: wished}]}}",
    )
    settled, _ = structure(force)
    assert settled is not None
    assert men_of_nodes(force, settled)[settled.root] == exactly(20)
