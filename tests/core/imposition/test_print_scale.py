"""What a printer makes of a length."""

from fractions import Fraction

from paradestate.core.imposition.print_scale import TRUE, measured


def test_a_line_that_comes_out_96_8_is_printed_at_10000_by_96_8_per_cent() -> None:
    scale = measured(Fraction("96.8"), Fraction("96.8"))
    assert scale.across == Fraction(968, 1000)
    assert scale.to_print_at == (Fraction(10000, 9680), Fraction(10000, 9680))
    assert scale.is_even
    assert scale.error == Fraction(32, 1000)
    assert scale.across * 38 == Fraction("36.784")  # 36.8 in computation 3.19


def test_the_error_is_the_greater_of_the_two() -> None:
    scale = measured(Fraction("99.5"), Fraction(102))
    assert not scale.is_even
    assert scale.error == Fraction(2, 100)
    assert TRUE.error == 0
    assert TRUE.is_even
