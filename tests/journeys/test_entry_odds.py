"""How likely each entry comes."""

import datetime
from fractions import Fraction

from paradestate.core.choice import Choice
from paradestate.journeys.entry_odds import entry_odds
from paradestate.journeys.terms import game_terms
from tests.forces import EXAMPLES


def test_the_entries_of_the_example_that_are_rolled_for() -> None:
    """Checked by hand: anti-tank guns none on 1 or 2 of 12, all on 9 to 12."""
    played = game_terms(
        EXAMPLES / "marenz",
        today=datetime.date(2026, 3, 1),
        choice=Choice(game="whole-day attack"),
        grades={},
    )
    assert played.terms is not None
    odds = entry_odds(played.terms)
    assert list(odds) == ["anti-tank guns", "armoured cars", "light tanks"]
    assert odds["anti-tank guns"].at_least(1) == Fraction(5, 6)
    assert odds["anti-tank guns"].at_least(3) == Fraction(1, 3)
    assert odds["light tanks"].at_least(2) == Fraction(2, 3)
