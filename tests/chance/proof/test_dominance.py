"""Entries that another makes needless."""

from dataclasses import replace

import pytest

from paradestate.chance.proof.dominance import chance_of_at_least, dominances
from paradestate.core.support.entry import (
    Attachment,
    Availability,
    Band,
    Entry,
    GroupLimit,
    Improvement,
    Position,
    Replacement,
)
from paradestate.core.support.offer import Offer
from paradestate.core.support.proof import Dominance
from tests.chance.force.lists import listed
from tests.support_terms import dice

GUN = Offer(name="gun", cost={1: 4, 2: 7}, most=2)
GUN_ENTRY = Entry(name="gun", cost=GUN.cost, each={"gun team": 1})
CHEAP = replace(GUN, name="cheap gun", cost={1: 4, 2: 6})
CHEAP_ENTRY = replace(GUN_ENTRY, name="cheap gun", cost=CHEAP.cost)


def rolled(most: int, *, allows: int | None = None) -> Availability:
    """Refused up to that on a six-sided die, else so many."""
    return Availability(
        roll=dice(1, sides=6),
        allows=(Band(least=1, most=most, allows=0), Band(least=most + 1, most=6, allows=allows)),
    )


def found(
    worse: Offer = GUN,
    better: Offer = CHEAP,
    *others: Offer,
    entries: tuple[Entry, ...] = (GUN_ENTRY, CHEAP_ENTRY),
    groups: tuple[GroupLimit, ...] = (),
) -> dict[str, Dominance]:
    known = {entry.name: entry for entry in entries}
    known |= {offer.name: Entry(name=offer.name, cost=offer.cost) for offer in others}
    return dict(dominances(listed(worse, better, *others, groups=groups), known))


def test_who_costs_no_more_and_gives_the_same_makes_the_other_needless() -> None:
    assert found() == {"gun": Dominance(by="cheap gun", is_alike=False)}


def test_of_two_that_are_alike_each_names_the_other() -> None:
    twin = replace(GUN, name="cheap gun")
    assert found(GUN, twin) == {
        "gun": Dominance(by="cheap gun", is_alike=True),
        "cheap gun": Dominance(by="gun", is_alike=True),
    }


GROUP = (GroupLimit(group="g", most=1),)


@pytest.mark.parametrize(
    ("worse", "better"),
    [
        (GUN, replace(CHEAP, cost={1: 5, 2: 6})),
        (GUN, replace(CHEAP, cost={1: 4})),
        (GUN, replace(CHEAP, repeats_cost_more=(1,))),
        (replace(GUN, choices={"smoke": 0}), CHEAP),
        (GUN, replace(CHEAP, most=1)),
        (replace(GUN, most=None), CHEAP),
        (GUN, replace(CHEAP, least=1)),
        (GUN, replace(CHEAP, needs={"horse": 1})),
        (GUN, replace(CHEAP, needs_for_each={"horse": 1})),
        (GUN, replace(CHEAP, needs_any_of={"horse": 1})),
        (replace(GUN, needs_any_of={"horse": 1}), replace(CHEAP, needs_any_of={"horse": 2})),
        (GUN, replace(CHEAP, bars=frozenset({"horse"}))),
        (GUN, replace(CHEAP, availability=rolled(1))),
        (replace(GUN, availability=rolled(2)), replace(CHEAP, availability=rolled(3))),
        (replace(GUN, availability=rolled(2)), replace(CHEAP, availability=rolled(2, allows=1))),
        (
            replace(GUN, availability=rolled(2)),
            replace(CHEAP, availability=rolled(2), loses_points=True),
        ),
        (GUN, replace(CHEAP, group="g")),
    ],
)
def test_who_asks_more_or_comes_less_doesn_t(worse: Offer, better: Offer) -> None:
    assert "gun" not in found(worse, better, groups=GROUP)


@pytest.mark.parametrize(
    ("worse", "better"),
    [
        (replace(GUN, needs={"horse": 2}), replace(CHEAP, needs={"horse": 1})),
        (
            replace(GUN, needs_any_of={"horse": 2}),
            replace(CHEAP, needs_any_of={"horse": 1, "mule": 1}),
        ),
        (replace(GUN, availability=rolled(3)), replace(CHEAP, availability=rolled(2))),
        (
            replace(GUN, availability=rolled(2), loses_points=True),
            replace(CHEAP, availability=rolled(2), loses_points=True),
        ),
        (replace(GUN, bars=frozenset({"cheap gun"})), replace(CHEAP, bars=frozenset({"gun"}))),
        (GUN, replace(CHEAP, most=None)),
        (replace(GUN, group="g"), replace(CHEAP, group="g")),
        (replace(GUN, group="unlimited"), CHEAP),
    ],
)
def test_who_asks_as_little_and_comes_as_surely_does(worse: Offer, better: Offer) -> None:
    assert found(worse, better, groups=GROUP)["gun"].by == "cheap gun"


@pytest.mark.parametrize(
    ("worse", "better", "is_needless"),
    [
        (replace(GUN_ENTRY, each={}), CHEAP_ENTRY, False),
        (GUN_ENTRY, replace(CHEAP_ENTRY, each={"gun team": 2, "truck": 1}), True),
        (replace(GUN_ENTRY, each={"gun team": 2}), CHEAP_ENTRY, False),
        (replace(GUN_ENTRY, grants={"observer": 1}), CHEAP_ENTRY, False),
        (replace(GUN_ENTRY, by_hand="may dig in"), CHEAP_ENTRY, False),
        (GUN_ENTRY, replace(CHEAP_ENTRY, by_hand="can't move"), False),
        (
            replace(GUN_ENTRY, improves=Improvement(of="company", scale="training")),
            CHEAP_ENTRY,
            False,
        ),
        (GUN_ENTRY, replace(CHEAP_ENTRY, replaces=Replacement(of="a", number=1, with_="b")), False),
        (replace(GUN_ENTRY, attach=Attachment(to="platoon")), CHEAP_ENTRY, False),
        (GUN_ENTRY, replace(CHEAP_ENTRY, attach=Attachment(to="platoon")), True),
        (GUN_ENTRY, replace(CHEAP_ENTRY, place=Position.OFF_TABLE), False),
        (GUN_ENTRY, replace(CHEAP_ENTRY, place=Position.EITHER), True),
        (replace(GUN_ENTRY, opens=("horse",)), CHEAP_ENTRY, False),
    ],
)
def test_all_that_the_one_gives_the_other_must_give(
    worse: Entry,
    better: Entry,
    is_needless: bool,  # noqa: FBT001 - a table's column
) -> None:
    assert ("gun" in found(entries=(worse, better))) is is_needless


def test_what_another_needs_isn_t_needless() -> None:
    tow = Offer(name="tow", cost={1: 1})
    assert found(GUN, CHEAP, replace(tow, needs={"gun": 1})) == {}
    assert found(GUN, CHEAP, replace(tow, needs_for_each={"gun": 1})) == {}


def test_unless_the_other_serves_as_well() -> None:
    tow = Offer(name="tow", cost={1: 1}, needs_any_of={"gun": 1, "cheap gun": 1})
    assert "gun" in found(GUN, CHEAP, tow)
    assert "gun" not in found(GUN, CHEAP, replace(tow, needs_any_of={"gun": 1, "cheap gun": 2}))


def test_the_chance_of_a_part() -> None:
    """Section 3.10 of the computations, example 3: both on 9 to 12 of twelve, one on 3 or more."""
    bands = (
        Band(least=1, most=2, allows=0),
        Band(least=3, most=8, allows=1),
        Band(least=9, most=12, allows=None),
    )
    guns = replace(GUN, availability=Availability(roll=dice(1, sides=12), allows=bands))
    assert str(chance_of_at_least(guns, 2, asked=2)) == "1/3"
    assert str(chance_of_at_least(guns, 1, asked=2)) == "5/6"
    assert chance_of_at_least(GUN, 2, asked=2) == 1
