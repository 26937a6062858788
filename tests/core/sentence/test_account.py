"""Points of a game in words."""

from dataclasses import replace

from paradestate.core.game import Purchase
from paradestate.core.play.account import Account, Request
from paradestate.core.sentence.account import points_words
from tests.core.play.test_account import few
from tests.support_terms import attack


def test_points_say_where_they_come_from_and_where_they_went() -> None:
    """Story 15: 18 + 8 - 7 = 19."""
    rolled = Account(terms=attack(), allowance=26)
    assert points_words(rolled) == "19 points left: 26 to spend, less 7 for the formation."
    guns = Purchase(entry="machine-gun platoon", number=2)
    bought = replace(rolled, requests=(Request(asked=guns, taken=2),))
    assert points_words(bought) == (
        "14 points left: 26 to spend, less 7 for the formation, less 5 for supporting troops."
    )


def test_grades_take_points_or_give_them_back() -> None:
    dear = replace(attack(), grade_costs={"training": 4})
    assert "less 4 for grades" in points_words(Account(terms=dear, allowance=26))
    poor = replace(attack(), grade_costs={"training": -3})
    assert "and 3 for grades" in points_words(Account(terms=poor, allowance=26))


def test_before_the_roll_and_with_points_lost() -> None:
    assert (
        points_words(Account(terms=attack(), allowance=None)) == "The allowance isn't rolled yet."
    )
    guns = Purchase(entry="guns", number=2)
    lost = Account(terms=few(), allowance=20, requests=(Request(asked=guns, allowed=0, taken=0),))
    assert points_words(lost) == (
        "13 points left: 20 to spend, less 7 for supporting troops, 7 of them for nothing."
    )
