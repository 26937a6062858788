"""What a booked game needs of a force."""

from dataclasses import replace

from paradestate.core.club.game_needs import Needs, all_needs, game_needs, stands_needs
from paradestate.core.establishment import Establishment, establishment
from paradestate.core.figure import Sort
from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.core.support.entry import Position
from tests.forces import marenz


def counted(force: Force) -> Establishment:
    made, _ = establishment(force)
    assert made is not None
    return made


def test_a_game_needs_what_must_be_there_and_its_wished_items_are_left_out() -> None:
    force = marenz()
    made = counted(force)
    found = game_needs(force, made, plan=())
    assert found.figures == made.rollup.figures
    printed = {name for name, stand in force.stands.items() if stand.printed}
    assert found.stands == {
        name: number for name, number in made.rollup.stands.items() if name not in printed
    }


def test_a_plan_brings_its_stands_and_takes_home_what_it_exchanges() -> None:
    force = marenz()
    made = counted(force)
    without = game_needs(force, made, plan=())
    for name, entry in force.supporting_troops.items():
        found = game_needs(force, made, plan=(Purchase(entry=name, number=1),))
        if entry.place is Position.OFF_TABLE:
            assert found == without
            continue
        change = entry.replaces
        for pattern, number in entry.each.items():
            gone = change.number if change is not None and change.of == pattern else 0
            is_printed = force.stands[pattern].printed
            more = entry.grants.get(pattern, 0)
            more += change.number if change is not None and change.with_ == pattern else 0
            came = found.stands.get(pattern, 0) - without.stands.get(pattern, 0)
            assert came == (0 if is_printed else number + more - gone)


def test_stands_need_the_figures_on_them_and_all_needs_add_up() -> None:
    force = marenz()
    sections = stands_needs(force, {"rifle section": 2})
    each = force.stands["rifle section"].modelled
    assert sections.figures == {kind: 2 * number for kind, number in each.items()}
    both = all_needs(sections, Needs(figures={"light truck": 3, "unknown": 1}))
    assert both.stands == {"rifle section": 2}
    assert both.by_sort(force.figures)[Sort.VEHICLE] == 3
    assert both.by_sort(force.figures)[Sort.FOOT] == sum(sections.figures.values()) + 1


def test_a_printed_stand_needs_nothing() -> None:
    force = marenz()
    made = counted(force)
    all_printed = replace(made, stands=tuple(replace(stand, printed=True) for stand in made.stands))
    assert game_needs(force, all_printed, plan=()) == Needs()
