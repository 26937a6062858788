"""Rolls in words."""

from paradestate.core.dice import Dice, Fixed, Keep, SignedTerm, Throw, Totals
from paradestate.core.sentence.dice import dice_words, totals_words

D6 = Dice(terms=(SignedTerm(term=Throw(number=1, sides=6)),))


def test_totals_in_words() -> None:
    assert totals_words(Totals(least=3, most=3)) == "on 3"
    assert totals_words(Totals(least=2, most=4)) == "on 2 to 4"
    assert totals_words(Totals(least=9, most=None)) == "on 9 or more"


def test_dice_in_words() -> None:
    two = Throw(number=2, sides=6)
    assert dice_words(D6) == "one 6-sided die"
    assert dice_words(Dice(terms=(SignedTerm(term=two),))) == "two 6-sided dice"
    best = Throw(number=3, sides=6, keep=Keep.BEST, kept=2)
    for term in (best, Throw(number=1, sides=6, times=2), Fixed(number=3)):
        dice = Dice(terms=(SignedTerm(term=term),))
        assert dice_words(dice) == str(dice)
    for bounded in (Dice(terms=D6.terms, at_least=2), Dice(terms=D6.terms, at_most=5)):
        assert dice_words(bounded) == str(bounded)
    assert dice_words(Dice(terms=D6.terms * 2)) == "1d6 + 1d6"
