"""The organisation in words."""

from dataclasses import replace

from paradestate.core.branch import Branch, tree
from paradestate.core.establishment import establishment
from paradestate.core.force import Force, Wishes
from paradestate.core.mark.marking import marking
from paradestate.core.number import NumberRange, exactly
from paradestate.core.sentence.branch import (
    fill_words,
    group_title,
    group_words,
    inside_words,
    lack_words,
    men_words,
    numbers_words,
)
from paradestate.core.strength import strength
from tests.forces import force_from, marenz

STOCKED = """
figures: {man: {}, crew: {}}
stands:
  rifle: {base: none, men: 9-11, figures: {man: 2}}
  gun: {base: none, figures: {crew: 3}}
  flag: {base: none, printed: yes, modelled as: {man: 1}}
formations:
  top: {parts: [{of: team, number: 1}, {of: gun, number: 1}, {of: flag, number: 1}]}
  team: {parts: [{of: rifle, number: 2}, {of: gun, number: 1, need: wished}]}
bench: {stages: [packet, done]}
stock: {crew: {packet: 3}}
stock stands: {rifle: {done: 1}}
"""


def grown(force: Force) -> Branch:
    made, _ = establishment(force)
    assert made is not None
    return tree(force, made, strength=strength(force, made), marks=marking(force, made))


def test_a_body_is_said_with_its_men_and_stands() -> None:
    root = grown(marenz())
    assert numbers_words(root) == "304 men, 37 stands"
    assert inside_words(root) == "4 companies and 5 stands"
    assert inside_words(root.branches[0]) == "3 platoons and 2 stands"
    assert numbers_words(grown(force_from(STOCKED))) == "18-22 men, 3 stands"


def test_a_body_without_stands_or_men_says_nothing() -> None:
    root = grown(force_from("formations: {top: {parts: {x: 1}}, x: {echelon: team}}"))
    assert numbers_words(root) == ""
    assert fill_words(root.fill) == ""
    assert inside_words(root) == "1 x"
    assert inside_words(root.branches[0]) == ""


def test_one_man_is_a_man() -> None:
    assert men_words(exactly(1)) == "1 man"
    assert men_words(NumberRange(least=1, most=2)) == "1-2 men"


def test_how_far_it_is() -> None:
    root = grown(force_from(STOCKED))
    assert fill_words(root.fill) == "1 of 3 finished"
    assert lack_words(root.fill) == "lacks 2 men"
    assert lack_words(root.branches[0].fill) == "lacks 2 men"


def test_stands_of_one_kind() -> None:
    root = grown(force_from(STOCKED))
    gun, flag, modelled = root.groups
    rifles, wished = root.branches[0].groups
    assert (group_title(gun), group_words(gun)) == ("Gun", ("packet",))
    assert (group_title(rifles), group_words(rifles)) == (
        "2 rifles",
        ("18-22 men", "1 of 2 finished"),
    )
    assert group_words(flag) == ("printed",)
    assert group_words(modelled) == ("modelled", "wished, not counted")
    assert group_words(wished) == ("wished, not counted",)
    assert lack_words(gun.fill) == ""


def test_wished_stands_that_are_wanted_say_so() -> None:
    force = force_from(STOCKED)
    assert force.raise_ is not None
    wanting = replace(force, raise_=replace(force.raise_, wished=Wishes.ALL))
    wished = grown(wanting).branches[0].groups[1]
    assert group_words(wished) == ("wished",)
    assert lack_words(wished.fill) == "lacks 3 crews"


def test_several_printed_stands_say_only_that() -> None:
    markers = grown(marenz()).branches[0].groups[2]
    assert group_title(markers) == "2 hidden-movement markers"
    assert group_words(markers) == ("printed",)


def test_stands_of_a_fixed_ratio_are_said_like_others() -> None:
    force = force_from(
        "figures: {man: {}}",
        "formations: {top: {men per figure: 30, figure: man, figures per stand: 2, "
        "parts: {x: 1}}, x: {men: 110}}",
    )
    assert [group_title(each) for each in grown(force).branches[0].groups] == ["2 man stands"]
