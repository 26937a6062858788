"""The printed list of supporting troops."""

from dataclasses import replace

from paradestate.core.finding import Level
from paradestate.core.paper.troops_list import PRIVATE, TroopsList, troops_list
from tests.core.paper.grounds import battalion, ground_of, small
from tests.forces import force_from

RULES = """\
stands: {scout: {base: 40 x 20 mm}}
formations: {top: {parts: {scout: 1}}}
formation cost: 4
asking: all declared first
grades: {training: {usual: fair, points: {fair: 0, good: 3}}}
supporting troops:
  guns: {cost: {1: 3}, group: heavy, by hand: only uphill}
limits:
  - {group: heavy, most: 2}
reserves: {method: named, most: 50%, of: top}
"""


def shown_of(text: str = "") -> TroopsList:
    ground = ground_of(force_from(text)) if text else battalion()
    shown = troops_list(ground).shown
    assert shown is not None
    return shown


def test_prices_limits_and_availability_are_in_words() -> None:
    entries = {entry.name: entry for part in shown_of().parts for entry in part.entries}
    guns = entries["Anti-tank guns"]
    assert guns.price == ("One costs 4 points, two 7, three 10",)
    assert guns.limit == "One in the force"
    assert guns.availability.startswith("Roll one 12-sided die: on 1 to 2 none")
    assert "Each puts down 1 anti-tank gun team and 1 truck" in guns.rest
    assert entries["Machine-gun platoon"].limit == "One for every two companies"
    assert entries["Machine-gun platoon"].availability == ""


def test_every_entry_stands_once_under_the_level_that_holds_it() -> None:
    parts = shown_of().parts
    names = [entry.name.casefold() for part in parts for entry in part.entries]
    assert sorted(names) == sorted(name.casefold() for name in battalion().force.supporting_troops)
    assert parts[0].title == "Held at battalion"


def test_nothing_said_of_an_entry_is_said_twice() -> None:
    for part in shown_of().parts:
        for entry in part.entries:
            said = [*entry.price, entry.limit, entry.availability, *entry.rest]
            assert len(set(said)) == len(said), entry


def test_what_holds_for_the_whole_list_stands_below_it() -> None:
    shown = shown_of(RULES)
    assert [part.title for part in shown.parts] == [""]
    assert shown.parts[0].entries[0].by_hand == "only uphill"
    assert len(shown.rules) == 5
    assert shown.rules[0] == "The formation costs 4 points."
    assert "Those who need a roll are all declared before the first roll." in shown.rules


def test_a_list_without_rules_of_its_own_says_none() -> None:
    text = """\
stands: {scout: {base: 40 x 20 mm}}
formations: {top: {parts: {scout: 1}}}
supporting troops: {guns: {cost: {1: 3}}}
"""
    assert shown_of(text).rules == ()


def test_row_81_a_private_list_says_so_and_is_warned_of() -> None:
    force = replace(battalion().force, private=True)
    draft = troops_list(replace(battalion(), force=force))
    assert draft.shown is not None
    assert draft.shown.private == PRIVATE
    (found,) = draft.findings
    assert (found.level, found.code) == (Level.WARN, "private-list")
    assert shown_of().private == ""
    assert troops_list(battalion()).findings == ()


def test_a_force_without_supporting_troops_has_no_list() -> None:
    assert troops_list(small()).shown is None
