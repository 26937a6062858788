"""The raised force as a tree."""

from dataclasses import replace

from paradestate.core.branch import Branch, only_in, path_to, tree
from paradestate.core.choice import Choice, chosen
from paradestate.core.establishment import Establishment, establishment
from paradestate.core.force import Force, Wishes
from paradestate.core.formation import Arm, Echelon
from paradestate.core.mark.marking import marking
from paradestate.core.number import exactly
from paradestate.core.strength import strength
from tests.forces import HEAD, force_from, marenz


def counted(force: Force) -> Establishment:
    answer, _ = establishment(force)
    assert answer is not None
    return answer


def grown(force: Force) -> Branch:
    made = counted(force)
    return tree(force, made, strength=strength(force, made), marks=marking(force, made))


def every(branch: Branch) -> list[Branch]:
    return [branch, *(below for each in branch.branches for below in every(each))]


def test_the_root_holds_the_numbers_of_the_whole_force() -> None:
    root = grown(marenz())
    assert (root.label, root.echelon, root.arm) == (
        "Battalion",
        Echelon.BATTALION,
        Arm.INFANTRY,
    )
    assert (root.men, root.stands, root.figures) == (exactly(304), 37, 125)
    assert root.fill.number == 37
    assert root.fill.short == 37
    assert root.fill.lacking["rifleman"] == 101


def test_each_body_stands_under_the_one_that_holds_it_in_the_order_of_the_file() -> None:
    root = grown(marenz())
    assert [each.label for each in root.branches] == [f"No {n} Company" for n in (1, 2, 3, 4)]
    second = root.branches[1]
    assert [each.label for each in second.branches] == ["1 Platoon", "2 Platoon", "3 Platoon"]
    assert second.branches[2].name == "No 2 Company / 3 Platoon"
    assert (second.men, second.stands, second.figures) == (exactly(71), 8, 29)


def test_stands_are_grouped_by_pattern_and_layer() -> None:
    groups = grown(marenz()).branches[0].groups
    assert [(group.pattern, group.number, group.printed, group.wishes) for group in groups] == [
        ("company command", 1, False, ()),
        ("light mortar section", 1, False, ()),
        ("hidden-movement marker", 2, True, ()),
        ("hidden-movement marker", 2, False, ("hidden-movement marker",)),
    ]
    assert groups[1].men == exactly(5)
    assert groups[1].figures == {"mortar crew": 3}
    assert [group.is_wanted for group in groups] == [True, True, True, False]


def test_the_numbers_of_every_body_are_those_of_what_is_in_it() -> None:
    for branch in every(grown(marenz())):
        own = [group for group in branch.groups if not group.wishes and not group.printed]
        assert branch.stands == sum(group.number for group in own) + sum(
            each.stands for each in branch.branches
        )
        assert branch.fill.number == branch.stands


def colour_of(branch: Branch) -> str:
    return "" if branch.mark is None else branch.mark.colour


def test_companies_have_their_colours_as_far_as_there_are_any() -> None:
    root = grown(marenz())
    colours = [colour_of(each) for each in root.branches]
    assert colours == ["royal blue", "mid yellow", "sky blue", "brown"]
    assert colour_of(root) == ""
    two = replace(marenz().marks, by_formation={"company": ("brown", "royal blue")})
    assert [colour_of(each) for each in grown(replace(marenz(), marks=two)).branches] == [
        "brown",
        "royal blue",
        "",
        "",
    ]


STOCKED = """
figures: {man: {}}
stands: {rifle: {base: none, figures: {man: 2}}, gun: {base: none, figures: {man: 1}}}
formations:
  top: {parts: {team: 2, gun: 1}}
  team: {parts: {rifle: 2}}
bench: {stages: [packet, done]}
stock: {man: {packet: 3}}
stock stands: {rifle: {done: 2}}
"""


def test_what_is_owned_fills_the_branches_stand_by_stand() -> None:
    root = grown(force_from(STOCKED))
    first, second = root.branches
    assert (first.fill.finished, first.fill.by_stage, first.fill.short) == (2, {"done": 2}, 0)
    assert second.fill.by_stage == {"packet": 1}
    assert (second.fill.finished, second.fill.whole, second.fill.number) == (0, 1, 2)
    assert second.fill.lacking == {"man": 1}
    assert root.fill.by_stage == {"packet": 1, "done": 2}
    assert (root.fill.finished, root.fill.short, root.fill.number) == (2, 2, 5)


WISHING = """
stands: {a: {base: none, men: 10, figures: {man: 1}}}
figures: {man: {}}
formations:
  top: {parts: [{of: a, number: 1}, {of: x, number: 1, need: wished}]}
  x: {parts: {a: 3}}
"""


def test_what_is_wished_is_counted_by_itself() -> None:
    root = grown(force_from(WISHING))
    assert (root.stands, root.men) == (1, exactly(10))
    wished = root.branches[0]
    assert wished.wishes == ("x",)
    assert not wished.is_wanted
    assert (wished.stands, wished.men, wished.fill.number) == (3, exactly(30), 0)


def test_a_wanted_wish_is_filled_and_still_no_part_of_the_must() -> None:
    force = force_from(WISHING)
    assert force.raise_ is not None
    wanting = replace(force, raise_=replace(force.raise_, wished=Wishes.ALL))
    root = grown(wanting)
    assert (root.stands, root.fill.number) == (1, 1)
    assert root.branches[0].is_wanted
    assert root.branches[0].fill.short == 3


def test_own_men_count_with_the_body() -> None:
    force = force_from(
        "stands: {a: {base: none, men: 4}}",
        "formations: {top: {parts: {x: 2, a: 1}}, x: {men: 20, echelon: team}}",
    )
    root = grown(force)
    assert root.men == exactly(44)
    assert [each.men for each in root.branches] == [exactly(20)] * 2
    assert root.arm is None


def test_a_variant_has_the_arm_of_what_it_is_like() -> None:
    force = force_from(
        "stands: {a: {base: none}}",
        "formations: {top: {parts: {y: 1}}, x: {arm: engineer, parts: {a: 1}}, y: {like: x}}",
    )
    assert grown(force).branches[0].arm is Arm.ENGINEER


def test_the_path_to_a_body_goes_from_the_top_down() -> None:
    root = grown(marenz())
    path = path_to(root, "No 2 Company / 3 Platoon")
    assert [each.label for each in path] == ["Battalion", "No 2 Company", "3 Platoon"]
    assert path_to(root, "") == (root,)


def test_the_path_to_what_is_not_there_is_the_root() -> None:
    root = grown(marenz())
    assert path_to(root, "No 9 Company") == (root,)
    assert path_to(root, "No 2 Company / 9 Platoon") == (root,)


def test_a_name_with_a_stroke_in_it_leads_to_its_own_body() -> None:
    head = HEAD.replace("top}", 'top, names: {x: [A, "A / B"]}}')
    force = force_from(
        "stands: {a: {base: none}}",
        "formations: {top: {parts: {x: 2}}, x: {parts: {a: 1}}}",
        head=head,
    )
    root = grown(force)
    assert path_to(root, "A / B") == (root, root.branches[1])


def test_bodies_that_come_and_go_are_named_once() -> None:
    three, _ = chosen(marenz(), Choice(numbers={"company": 3}))
    assert only_in(counted(marenz()), counted(three)) == ("No 4 Company",)
    assert only_in(counted(three), counted(marenz())) == ()


def test_another_raised_formation_has_the_same_root() -> None:
    """The name of the raised formation is empty in both."""
    assert only_in(counted(force_from(STOCKED)), counted(force_from(WISHING))) == (
        "1 Team",
        "2 Team",
    )
