"""What can be read on the colours of marks.

Contrast ratios beside the named colours are those of the design of the page (LOOK.md), measured
there with another library; the formula is that of WCAG 2.2.
"""

import pytest

from paradestate.sheet.colour import luminance, sign_on

NAMED = {
    "1F4E9E": ("#fff", 7.95),  # royal blue
    "F2C230": ("#111", 11.27),  # mid yellow
    "7FB8DE": ("#111", 8.82),  # sky blue
    "6B4A2B": ("#fff", 7.96),  # brown
}


def contrast(one: str, other: str) -> float:
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


@pytest.mark.parametrize("colour", NAMED)
def test_the_sign_on_a_plate_is_the_one_that_reads_better(colour: str) -> None:
    sign, ratio = NAMED[colour]
    assert sign_on(colour) == sign
    six = {"#fff": "FFFFFF", "#111": "111111"}[sign]
    assert contrast(colour, six) == pytest.approx(ratio, abs=0.01)


def test_black_and_white_differ_by_twenty_one_to_one() -> None:
    assert contrast("FFFFFF", "000000") == pytest.approx(21)


@pytest.mark.parametrize("colour", ["000000", "FFFFFF", "777777", "767676", "FF0000", "00FF00"])
def test_any_colour_reads_with_at_least_the_ratio_that_text_needs(colour: str) -> None:
    six = {"#fff": "FFFFFF", "#111": "111111"}[sign_on(colour)]
    assert contrast(colour, six) >= 4.3
