"""The requisition in words: paint, bases and sheet, and what of it is a guess."""

from collections.abc import Iterator
from fractions import Fraction
from math import floor

from paradestate.core.number import percent_text
from paradestate.core.outline import Disc, decimal_text, outline_text
from paradestate.core.sentence.supplies import SQUARE_CENTIMETRE
from paradestate.core.sentence.wording import counted, listed, several
from paradestate.core.supplies import Millilitres, SquareMillimetres, Supplies
from paradestate.core.work.basing import Basing
from paradestate.core.work.paint import Coating, Paint
from paradestate.core.work.requisition import Requisition

HALF = Fraction(1, 2)
TENTHS = 10
USUAL = "common practice, no source"


def tenth_text(number: Fraction) -> str:
    """A number to one decimal: `14.8`; a half of the last goes up."""
    whole, rest = divmod(floor(number * TENTHS + HALF), TENTHS)
    return f"{whole}.{rest}"


def volume_words(volume: Millilitres) -> str:
    """A volume: `14.8 ml`; of very little `less than 0.1 ml`."""
    if 0 < volume < Fraction(1, TENTHS):
        return "less than 0.1 ml"
    return f"{tenth_text(volume)} ml"


def area_words(covered: SquareMillimetres) -> str:
    """An area in whole square centimetres: `279 cm2`; a half goes up."""
    return f"{floor(covered / SQUARE_CENTIMETRE + HALF)} cm\N{SUPERSCRIPT TWO}"


def paint_name(paint: Paint) -> str:
    """What it is called: its colour, else what it is for."""
    if paint.coating is Coating.COLOUR:
        return paint.colour or "paint of any colour"
    return str(paint.coating)


def sheet_words(basing: Basing, supplies: Supplies) -> Iterator[str]:
    """How much sheet the bases take, and how sure that is."""
    sheets, each = basing.sheets, outline_text(supplies.sheet_taken)
    if sheets.enough:
        many = several(sheets.enough, "sheet")
        sure = (
            "no fewer would do"
            if sheets.is_exact
            else f"cut in strips; by their area {several(sheets.least, 'sheet')} might do"
        )
        takes = "is" if sheets.enough == 1 else "are"
        yield f"{many} of {each} {takes} enough for all bases with their spares: {sure}."
    if sheets.too_large:
        large = listed(outline_text(outline) for outline in sheets.too_large)
        yield f"Larger than the sheet, and so left out: {large}."


def area_sentence(basing: Basing, supplies: Supplies) -> str:
    """The area that ground, sand or the like has to cover."""
    spare = percent_text(supplies.spare_taken)
    return (
        f"Ground to cover: {area_words(basing.area)}, "
        f"with {spare} spare {area_words(basing.with_spare)}."
    )


def guess_sentences(made: Requisition, supplies: Supplies) -> Iterator[str]:
    """What is a guess, and how it becomes a measurement."""
    if any(paint.is_guess for paint in made.paint.paints):
        yield (
            f"The paint is a guess until you have measured ({USUAL}): {_guessed(made, supplies)}. "
            "Weigh the bottles before and after the first company: a millilitre weighs a little "
            "over a gram, and 'paint per 100' takes what a hundred figures took."
        )
    if made.paint.uncoloured:
        yield (
            f"No colours are said of {counted(made.paint.uncoloured)}: two coats of any colour "
            f"are reckoned ({USUAL})."
        )
    if made.paint.unknown:
        yield f"Left out, for no size is given: {counted(made.paint.unknown)}."


def _guessed(made: Requisition, supplies: Supplies) -> str:
    said = []
    if supplies.film is None:
        said.append(f"a wet film of {decimal_text(supplies.film_taken)} mm a coat")
    if supplies.wasted is None:
        said.append(f"{percent_text(supplies.wasted_taken)} wasted")
    if made.paint.is_surface_guessed:
        said.append("surfaces by the size of the figures")
    return listed(said)


def bottle_sentence(supplies: Supplies) -> str:
    """What bottles and spares rest on."""
    usual = f" ({USUAL})" if supplies.bottle is None or supplies.spare is None else ""
    return (
        f"Bottles of {decimal_text(supplies.bottle_taken)} ml, "
        f"{percent_text(supplies.spare_taken)} spare{usual}."
    )


def exact_sentence(basing: Basing) -> str:
    """How sure the bases are."""
    has_discs = any(isinstance(base.outline, Disc) for base in basing.bases)
    return f"Exact: the bases{'; discs with pi to 14 decimals' if has_discs else ''}."
