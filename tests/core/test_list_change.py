"""What differs between two versions of a list, in words."""

from paradestate.core.force import Force
from paradestate.core.list_change import ListChange, list_changes
from tests.forces import marenz, partial_force_from

STANDS = "stands: {a: {base: none}}\nformations: {top: {parts: {a: 1}}}"


def force(entries: str, *more: str) -> Force:
    return partial_force_from(STANDS, f"supporting troops: {{{entries}}}", *more)


def parts(old: str, new: str) -> dict[str, tuple[str, str]]:
    found = list_changes(force(f"gun: {{{old}}}"), force(f"gun: {{{new}}}"))
    assert {each.section for each in found} <= {"supporting troops"}
    return {each.part: (each.before, each.after) for each in found}


def test_a_list_has_no_change_to_itself() -> None:
    assert list_changes(marenz(), marenz()) == ()


def test_an_entry_with_another_name_is_gone_and_new() -> None:
    found = list_changes(force("gun: {cost: 3}"), force("heavy gun: {cost: 4}"))
    assert found == (
        ListChange(
            section="supporting troops",
            name="gun",
            before="Gun: one costs 3 points. One in the force.",
        ),
        ListChange(
            section="supporting troops",
            name="heavy gun",
            after="Heavy gun: one costs 4 points. One in the force.",
        ),
    )


def test_each_part_of_an_entry_is_said_by_itself() -> None:
    assert parts("cost: 3", "cost: {1: 4, 2: 7}, limit: {most: 2}, each: {a: 1}") == {
        "cost": ("one costs 3 points", "one costs 4 points, two 7"),
        "each": ("", "each puts down 1 a"),
        "limit": ("one in the force", "two in the force"),
    }


def test_words_that_stand_alone() -> None:
    assert parts("cost: 3", "cost: 3, held at: brigade, by hand: may dig in") == {
        "held at": ("", "brigade"),
        "by hand": ("", "may dig in"),
    }


def test_choices_and_their_costs_are_one_part() -> None:
    before = "cost: 3, choice: [flame, smoke]"
    after = "cost: 3, choice: [flame, smoke], choice costs: {flame: 1}"
    assert parts(before, after) == {
        "choice": ("choose flame or smoke", "choose flame (1 point more each) or smoke")
    }


def test_dates_and_refusals() -> None:
    roll = "availability: {roll: 1d6, allows: {1-3: 0, 4-6: all}}"
    found = parts(
        f"cost: 3, {roll}, when refused: points kept",
        f"cost: 3, {roll}, when refused: points lost, from: 1942, repeats cost more: [1]",
    )
    assert found == {
        "when refused": ("refused points are kept", "refused points are lost"),
        "dates": ("", "to be had from 1942"),
        "repeats cost more": ("", "a second purchase and each later one cost 1 point more"),
    }


def test_games_worths_and_limits_are_part_of_a_list() -> None:
    old = force("gun: {cost: 3}", "games: {attack: {allowance: 9, posture: attack}}")
    new = force(
        "gun: {cost: 3}",
        "games: {attack: {allowance: 8, posture: attack}}",
        "worths: {gun: {1: 4}}",
        "formation cost: 2",
    )
    assert list_changes(old, new) == (
        ListChange(
            section="games",
            name="attack",
            before="Attack: attack with 9 points.",
            after="Attack: attack with 8 points.",
        ),
        ListChange(section="formation cost", name="", after="The formation costs 2 points."),
        ListChange(section="worths", name="gun", after="Your own opinion of gun: 1 worth 4."),
    )
