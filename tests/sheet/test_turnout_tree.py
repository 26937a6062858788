"""How a plan may come out, as a tree whose small branches are folded."""

from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.core.game import Purchase
from paradestate.core.support.chances import chances
from paradestate.sheet.turnout_tree import Ending, Way, turnout_rows, turnout_tree
from tests.sheet.turnouts import MACHINE_GUNS, TANKS, many, marenz, odds, turnout

HALF = Fraction(1, 2)
GUNS = {2: Fraction(1, 3), 1: HALF, 0: Fraction(1, 6)}


def ends(tree: Way) -> dict[str, Fraction]:
    return {leaf.words: leaf.chance for leaf in tree.leaves()}


def test_the_plan_of_marenz_has_three_ends() -> None:
    tree = turnout_tree(marenz(), most=8)
    assert ends(tree) == {
        "Everything asked for": Fraction(13, 27),
        "2 x machine-gun platoon; 12 points free again": Fraction(13, 54),
        "Too few points: fewer than 17": Fraction(5, 18),
    }
    assert [way.came for way in tree.ways] == ["17 or more points", ""]
    assert [way.came for way in tree.ways[0].ways] == ["2 x light tanks", "no light tanks"]
    assert tree.depth == 2


def test_what_comes_in_part_is_a_branch_between() -> None:
    tree = turnout_tree(many({"anti-tank guns": GUNS}, cost=13), most=8)
    assert [way.came for way in tree.ways] == [
        "2 x anti-tank guns",
        "1 of 2 x anti-tank guns",
        "no anti-tank guns",
    ]
    assert [way.ending for way in tree.ways] == [Ending.WHOLE, Ending.PART, Ending.PART]
    assert ends(tree)["Nothing"] == Fraction(1, 6)


def test_a_roll_that_makes_no_difference_on_a_branch_is_no_branch() -> None:
    """Tanks that are refused take those who need them along."""
    commander = Purchase(entry="commander", number=1)
    ways = (
        turnout(HALF, TANKS, commander),
        turnout(Fraction(1, 4), TANKS),
        turnout(Fraction(1, 4)),
    )
    tree = turnout_tree(odds(ways, cost=13, rolled=("light tanks", "commander")), most=8)
    assert [way.came for way in tree.ways] == ["2 x light tanks", "no light tanks"]
    assert len(tree.ways[0].ways) == 2
    assert tree.ways[1].words == "Nothing"


def test_ways_that_differ_only_in_points_are_one_end() -> None:
    ways = (
        turnout(HALF, TANKS),
        turnout(Fraction(1, 4), points_lost=9),
        turnout(Fraction(1, 4), points_free=9),
    )
    tree = turnout_tree(odds(ways, cost=13, rolled=("light tanks",)), most=8)
    assert ends(tree) == {"Everything asked for": HALF, "2 ways": HALF}


def test_points_lost_are_told() -> None:
    ways = (turnout(HALF, TANKS, MACHINE_GUNS), turnout(HALF, MACHINE_GUNS, points_lost=1))
    tree = turnout_tree(odds(ways, cost=13, rolled=("light tanks",)), most=8)
    assert "2 x machine-gun platoon; 1 point lost" in ends(tree)


@pytest.mark.parametrize("most", [2, 3, 4, 6, 9, 19])
def test_folded_or_not_all_chances_add_up_to_one(most: int) -> None:
    rolls = {f"guns {n}": GUNS for n in range(3)} | {
        "scouts": {1: Fraction(99, 100), 0: Fraction(1, 100)}
    }
    for cost in (13, 17):
        asked = many(rolls, cost=cost)
        tree = turnout_tree(asked, most=most)
        leaves = list(tree.leaves())
        assert len(leaves) <= most
        assert sum(leaf.chance for leaf in leaves) == 1
        assert all(len(way.ways) != 1 for way in branches(tree))
        assert sum(row.chance for row in turnout_rows(asked)) == 1


def branches(way: Way) -> list[Way]:
    return [way, *(each for below in way.ways for each in branches(below))]


def test_a_folded_end_says_what_all_its_ways_share() -> None:
    rolls = {"scouts": {1: Fraction(9, 10), 0: Fraction(1, 10)}, "guns": GUNS, "mortars": GUNS}
    folded = [
        leaf.words
        for leaf in turnout_tree(many(rolls, cost=13), most=4).leaves()
        if leaf.ending is Ending.FOLDED
    ]
    assert folded == [
        "3 ways, all with 1 x scouts and 1 x guns",
        "6 ways, all with 1 x scouts",
        "9 ways",
    ]


def test_a_plan_that_is_never_paid_for_has_one_end() -> None:
    never = odds((turnout(Fraction(1), TANKS),), cost=30, rolled=())
    tree = turnout_tree(never, most=8)
    assert ends(tree) == {"Too few points: fewer than 30": 1}
    assert [row.words for row in turnout_rows(never)] == ["Too few points: fewer than 30"]


def test_points_that_pay_for_it_and_still_do_not_allow_it_are_told() -> None:
    """A group that keeps to a share of the points may need more of them, or fewer."""
    shared = replace(marenz(), paid_by=(20, 21, 22, 23), affordable=Fraction(10, 36))
    tree = turnout_tree(shared, most=8)
    assert tree.ways[0].came == "the points allow it"
    assert tree.ways[1].words == "The points don't allow it"


@pytest.mark.parametrize("cost", [13, 17])
def test_ways_too_many_to_be_counted_are_all_of_it_or_not(cost: int) -> None:
    asked = replace(many({"anti-tank guns": GUNS}, cost=cost), turnouts=())
    affordable = asked.affordable
    expected = {
        "Everything asked for": affordable / 3,
        "Some of it is refused: in too many ways to be counted": affordable * 2 / 3,
        "Too few points: fewer than 17": 1 - affordable,
    }
    expected = {words: chance for words, chance in expected.items() if chance}
    assert ends(turnout_tree(asked, most=8)) == expected
    assert {row.words: row.chance for row in turnout_rows(asked)} == expected


def test_of_ways_too_many_to_be_counted_none_may_bring_all_of_it() -> None:
    asked = replace(marenz(), turnouts=(), available=Fraction(0), together=Fraction(0))
    assert [leaf.ending for leaf in turnout_tree(asked, most=8).leaves()] == [
        Ending.FOLDED,
        Ending.SHORT,
    ]


def test_a_plan_that_always_comes_has_one_end() -> None:
    sure = odds((turnout(Fraction(1), TANKS),), cost=3, rolled=(), allowance=chances({5: 1}))
    assert ends(turnout_tree(sure, most=8)) == {"Everything asked for": 1}
