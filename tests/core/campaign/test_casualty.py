"""Who was out of action, and what came of them."""

from dataclasses import replace

from paradestate.core.campaign.casualty import (
    AFTER,
    OUT,
    PROMOTED,
    Casualty,
    Fate,
    RollGroup,
    casualties,
    roll_groups,
)
from tests.core.campaign.campaigns import CAMPAIGN, PLATOONS, STANDS, stand, told

FIRST, SECOND, THIRD = (each.name for each in STANDS[:3])


def left(*said: tuple[str, str, str]) -> tuple[Casualty, ...]:
    return casualties(told(*said), STANDS, campaign=CAMPAIGN)


def test_only_stands_of_which_something_is_told_are_casualties() -> None:
    (only,) = left((OUT, SECOND, "yes"), (OUT, THIRD, ""), ("turn", "", "4"))
    assert (only.stand.name, only.out, only.fate) == (SECOND, "yes", Fate.OPEN)


def test_a_word_that_never_comes_back_is_lost_without_a_roll_and_wounded_is_not() -> None:
    captured, wounded = left((OUT, FIRST, "captured"), (OUT, SECOND, "wounded"))
    assert (captured.fate, wounded.fate) == (Fate.LOST, Fate.OPEN)


def test_what_is_told_afterwards_goes_before_the_word() -> None:
    (back,) = left((OUT, FIRST, "captured"), (AFTER, FIRST, "recovered"))
    assert back.fate is Fate.RECOVERED


def test_a_kind_without_a_line_comes_back_without_a_roll() -> None:
    truck = stand("Truck", pattern="truck")
    (only,) = casualties(told((OUT, "Truck", "yes")), [truck], campaign=CAMPAIGN)
    assert only.fate is Fate.RECOVERED


def test_a_stand_promoted_and_lost_the_same_day_is_lost() -> None:
    (only,) = left((OUT, FIRST, "yes"), (PROMOTED, FIRST, "yes"), (AFTER, FIRST, "lost"))
    assert (only.fate, only.is_promoted) == (Fate.LOST, True)


def test_a_stand_may_be_promoted_without_having_been_out() -> None:
    (only,) = left((PROMOTED, FIRST, "yes"))
    assert (only.out, only.fate, only.is_promoted) == ("", Fate.RECOVERED, True)


def test_of_two_that_disagree_the_worse_counts_and_it_is_said() -> None:
    (only,) = left((OUT, FIRST, "yes"), (AFTER, FIRST, "recovered"), (AFTER, FIRST, "lost"))
    assert (only.fate, only.is_disputed) == (Fate.LOST, True)


def test_each_stand_has_its_own_roll_unless_a_formation_shares_one() -> None:
    out = left(*((OUT, each.name, "yes") for each in (*STANDS[:2], STANDS[3])))
    alone = roll_groups(out, PLATOONS, campaign=CAMPAIGN)
    assert [each.stands for each in alone] == [(each.stand.name,) for each in out]
    shared = roll_groups(out, PLATOONS, campaign=replace(CAMPAIGN, rolled_once_for="platoon"))
    assert shared == (
        RollGroup(name="1 Platoon, section", pattern="section", stands=(FIRST, SECOND)),
        RollGroup(name="2 Platoon, section", pattern="section", stands=(STANDS[3].name,)),
    )


def test_a_stand_in_none_of_them_is_rolled_for_alone_and_who_is_settled_not_at_all() -> None:
    out = left((OUT, FIRST, "yes"), (OUT, SECOND, "captured"))
    (group,) = roll_groups(out, PLATOONS, campaign=replace(CAMPAIGN, rolled_once_for="troop"))
    assert group.name == FIRST


def test_the_raised_formation_itself_may_share_a_roll() -> None:
    out = left((OUT, FIRST, "yes"))
    (group,) = roll_groups(out, PLATOONS, campaign=replace(CAMPAIGN, rolled_once_for="company"))
    assert group.name == "company, section"
