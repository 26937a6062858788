"""What the bench uses up in words, as its owner says it."""

from collections.abc import Iterator

from paradestate.core.number import percent_text
from paradestate.core.outline import decimal_text, outline_text
from paradestate.core.sentence.wording import by_hand_words, capital, several
from paradestate.core.supplies import Supplies

SQUARE_CENTIMETRE = 100
"""Square millimetres."""


def sentences_of_supplies(supplies: Supplies) -> Iterator[str]:
    """What the owner measured or wants, a sentence for each matter."""
    for kind, covered in supplies.area.items():
        yield f"Paint covers {decimal_text(covered / SQUARE_CENTIMETRE)} cm2 of one {kind}."
    for kind, volume in supplies.paint_per_100.items():
        yield f"A hundred of {kind} took {decimal_text(volume)} ml of paint."
    yield from _shares(supplies)
    for word, coats in (("undercoat", supplies.undercoat), ("varnish", supplies.varnish)):
        if coats != 1:
            yield f"{capital(several(coats, 'coat') if coats else 'no coat')} of {word}."
    if supplies.sheet is not None:
        yield f"Sheet for the bases: {outline_text(supplies.sheet)}."
    if supplies.by_hand:
        yield f"Supplies.{by_hand_words(supplies.by_hand)}"


def _shares(supplies: Supplies) -> Iterator[str]:
    """What paint is reckoned with."""
    if supplies.film is not None:
        yield f"A coat is {decimal_text(supplies.film)} mm thick."
    if supplies.wasted is not None:
        yield f"Of the paint {percent_text(supplies.wasted)} is wasted."
    if supplies.spare is not None:
        yield f"Spare: {percent_text(supplies.spare)}."
    if supplies.bottle is not None:
        yield f"A bottle holds {decimal_text(supplies.bottle)} ml."
