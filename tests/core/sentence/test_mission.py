"""Fire missions in words."""

from paradestate.core.dice import Dice, SignedTerm, Throw, Totals
from paradestate.core.game import Purchase
from paradestate.core.sentence.mission import fired_sentence, mission_clauses
from paradestate.core.support.chances import chances
from paradestate.core.support.mission import MissionOdds, Missions, RollOn

D6 = Dice(terms=(SignedTerm(term=Throw(number=1, sides=6)),))


def test_what_is_rolled_for_missions() -> None:
    arrives = RollOn(roll=D6, on=Totals(least=3, most=None))
    silent = RollOn(roll=D6, on=Totals(least=1, most=1))
    assert list(mission_clauses(Missions(arrives=arrives, falls_silent=silent))) == [
        "for each mission roll one 6-sided die: it arrives on 3 or more",
        "after each that arrives roll one 6-sided die: on 1 no more come",
    ]
    assert list(mission_clauses(Missions())) == []


def test_how_many_are_fired() -> None:
    two = MissionOdds(
        purchase=Purchase(entry="field battery", number=2), fired=chances({0: 1, 1: 4, 2: 4})
    )
    assert fired_sentence(two) == (
        "Field battery: of 2 missions are fired 0 (1/9, 11 in 100), 1 (4/9, 44 in 100), "
        "2 (4/9, 44 in 100); 1.33 in the mean."
    )
    one = MissionOdds(purchase=Purchase(entry="field battery", number=1), fired=chances({1: 1}))
    assert fired_sentence(one) == (
        "Field battery: of 1 mission is fired 1 (always); 1 in the mean."
    )
