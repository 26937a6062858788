"""Rolls in words: what is rolled, and on which totals."""

from paradestate.core.dice import Dice, Keep, Throw, Totals
from paradestate.core.sentence.wording import spelled


def dice_words(dice: Dice) -> str:
    """One plain throw in words, anything else as it is written."""
    term = dice.terms[0].term
    plain = len(dice.terms) == 1 and dice.at_least is None and dice.at_most is None
    if not plain or not isinstance(term, Throw) or term.times != 1 or term.keep is not Keep.ALL:
        return str(dice)
    return f"{spelled(term.number)} {term.sides}-sided {'die' if term.number == 1 else 'dice'}"


def totals_words(totals: Totals) -> str:
    """Totals of a roll: `on 2 to 4`, `on 9 or more`."""
    if totals.most is None or totals.least == totals.most:
        return f"on {totals}"
    return f"on {totals.least} to {totals.most}"
