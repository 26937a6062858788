"""What the bench uses up, as it is written."""

from fractions import Fraction

import pytest

from paradestate.core.outline import millimetres
from paradestate.core.supplies import Supplies
from tests.text.format.reading import codes, force, slips


def test_every_word_is_read_and_written() -> None:
    supplies = force(
        "bench: {supplies: {area: {rifleman: 3 cm2, vehicle: 2000 mm2}, "
        "paint per 100: {foot: 12 ml}, film: 0.08 mm, wasted: 40%, spare: 0%, bottle: 20 ml, "
        "undercoat: 2, varnish: 0, sheet: 300 x 200 mm, by hand: gold leaf}}"
    ).bench.supplies
    assert supplies.area == {"rifleman": 300, "vehicle": 2000}
    assert supplies.paint_per_100 == {"foot": 12}
    assert (supplies.film_taken, supplies.wasted, supplies.spare) == (
        millimetres("0.08"),
        Fraction(2, 5),
        Fraction(0),
    )
    assert supplies.bottle == 20
    assert (supplies.undercoat, supplies.varnish) == (2, 0)
    assert supplies.by_hand == "gold leaf"


def test_left_out_it_is_the_usual() -> None:
    assert force("bench: {week: 4 h}").bench.supplies == Supplies()


@pytest.mark.parametrize(
    ("said", "code"),
    [
        ("area: {riflman: 3 cm2}", "unknown-name"),
        ("area: {rifleman: 3}", "not-an-area"),
        ("paint per 100: {foot: 12}", "not-a-volume"),
        ("film: 0 mm", "not-above-nought"),
        ("wasted: 100%", "not-a-share"),
        ("wasted: 120%", "not-a-share"),
        ("bottle: 0 ml", "not-a-volume"),
        ("varnish: -1", "not-a-whole-number"),
        ("sheet: A4", "not-an-outline"),
        ("colour: red", "unknown-word"),
    ],
)
def test_slips_are_said_at_their_place(said: str, code: str) -> None:
    assert codes(f"bench: {{supplies: {{{said}}}}}") == [code]


def test_the_place_of_a_slip_is_below_the_bench() -> None:
    assert slips("bench: {supplies: {wasted: 100%}}") == [
        ("not-a-share", ("bench", "supplies", "wasted"))
    ]
