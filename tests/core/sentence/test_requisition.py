"""The requisition in words."""

from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.core.outline import Rectangle, millimetres
from paradestate.core.sentence.requisition import (
    area_sentence,
    area_words,
    bottle_sentence,
    exact_sentence,
    guess_sentences,
    paint_name,
    sheet_words,
    tenth_text,
    volume_words,
)
from paradestate.core.supplies import Millilitres, SquareMillimetres, Supplies
from paradestate.core.work.cutting import SheetCount
from paradestate.core.work.requisition import Requisition, requisition
from tests.core.work.batches import MINUTES, SQUAD, climbed

KHAKI = MINUTES + "  colours: {tunic: [{colour: khaki}]}\n"


def made(bench: str = MINUTES, *, organisation: str = SQUAD) -> tuple[Requisition, Supplies]:
    found, force = climbed(bench=bench, organisation=organisation)
    return requisition(found.rungs, force), force.bench.supplies


@pytest.mark.parametrize(
    ("number", "text"), [("14.76", "14.8"), ("5.904", "5.9"), ("0.05", "0.1"), ("2", "2.0")]
)
def test_volumes_have_one_decimal_and_a_half_goes_up(number: str, text: str) -> None:
    assert tenth_text(Fraction(number)) == text


def test_very_little_is_not_none_at_all() -> None:
    assert volume_words(Millilitres(Fraction(1, 100))) == "less than 0.1 ml"
    assert volume_words(Millilitres(Fraction(0))) == "0.0 ml"
    assert volume_words(Millilitres(Fraction(1, 10))) == "0.1 ml"


def test_areas_are_whole_square_centimetres() -> None:
    assert area_words(SquareMillimetres(Fraction(27898))) == "279 cm\N{SUPERSCRIPT TWO}"
    assert area_words(SquareMillimetres(Fraction(50))) == "1 cm\N{SUPERSCRIPT TWO}"


def test_paints_are_called_by_their_colour_or_by_what_they_are_for() -> None:
    found, _ = made(KHAKI)
    assert [paint_name(each) for each in found.paint.paints] == [
        "undercoat",
        "khaki",
        "paint of any colour",
        "varnish",
    ]


def test_a_sheet_says_whether_fewer_would_do_and_what_is_too_large() -> None:
    found, supplies = made()
    one = "1 sheet of 297 x 210 mm is enough for all bases with their spares: no fewer would do."
    assert list(sheet_words(found.basing, supplies)) == [one]
    large = Rectangle(width=millimetres(300), depth=millimetres(300))
    sheets = SheetCount(enough=2, least=1, too_large=(large,))
    two, left_out = sheet_words(replace(found.basing, sheets=sheets), supplies)
    assert two == (
        "2 sheets of 297 x 210 mm are enough for all bases with their spares: cut in strips; by "
        "their area 1 sheet might do."
    )
    assert left_out == "Larger than the sheet, and so left out: 300 x 300 mm."
    none = SheetCount(enough=0, least=0, too_large=())
    assert list(sheet_words(replace(found.basing, sheets=none), supplies)) == []


def test_ground_and_bottles_say_their_spare() -> None:
    found, supplies = made()
    assert area_sentence(found.basing, supplies) == (
        "Ground to cover: 23 cm\N{SUPERSCRIPT TWO}, with 10% spare 25 cm\N{SUPERSCRIPT TWO}."
    )
    usual = "Bottles of 17 ml, 10% spare (common practice, no source)."
    assert bottle_sentence(supplies) == usual
    own = replace(supplies, bottle=Millilitres(Fraction(20)), spare=Fraction(0))
    assert bottle_sentence(own) == "Bottles of 20 ml, 0% spare."
    assert bottle_sentence(replace(own, spare=None)).endswith("(common practice, no source).")


def test_a_guess_says_what_it_rests_on_and_how_to_measure() -> None:
    (guess,) = guess_sentences(*made())
    assert guess.startswith(
        "The paint is a guess until you have measured (common practice, no source): a wet film of "
        "0.1 mm a coat, 50% wasted and surfaces by the size of the figures. Weigh the bottles"
    )
    (part,) = guess_sentences(*made(f"{MINUTES}  supplies: {{film: 0.1 mm, wasted: 50%}}\n"))
    assert "no source): surfaces by the size of the figures. Weigh" in part
    (area,) = guess_sentences(
        *made(f"{MINUTES}  supplies: {{area: {{foot: 3 cm2, vehicle: 6 cm2}}}}\n")
    )
    assert "a coat and 50% wasted. Weigh" in area


def test_what_is_measured_is_no_guess() -> None:
    measured = "film: 0.1 mm, wasted: 50%, area: {foot: 3 cm2, vehicle: 6 cm2}"
    assert list(guess_sentences(*made(f"{MINUTES}  supplies: {{{measured}}}\n"))) == []


def test_what_has_no_colour_and_what_has_no_size_is_named() -> None:
    no_size = SQUAD.replace("cart: {height: 10 mm,", "cart: {")
    _, uncoloured, unknown = guess_sentences(*made(KHAKI, organisation=no_size))
    assert uncoloured == (
        "No colours are said of 1 cart: two coats of any colour are reckoned (common practice, no "
        "source)."
    )
    assert unknown == "Left out, for no size is given: 1 cart."


def test_bases_are_exact_and_discs_nearly() -> None:
    found, _ = made()
    assert exact_sentence(found.basing) == "Exact: the bases; discs with pi to 14 decimals."
    square = tuple(base for base in found.basing.bases if base.with_spare == 3)
    assert exact_sentence(replace(found.basing, bases=square)) == "Exact: the bases."
