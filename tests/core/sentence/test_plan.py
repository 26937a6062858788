"""A plan as the paragraph of an order."""

from fractions import Fraction

from paradestate.core.game import Purchase, ReserveMethod, Reserves
from paradestate.core.sentence.plan import plan_paragraph
from paradestate.core.support.entry import Attachment, Entry, Position, Replacement
from paradestate.core.support.reserve import Reserve
from tests.forces import marenz


def take(entry: str, number: int = 1, *, choice: str = "") -> Purchase:
    return Purchase(entry=entry, number=number, choice=choice)


def test_the_plan_of_the_example() -> None:
    plan = (
        take("light tanks", 2),
        take("pioneers", choice="flame"),
        take("field battery", 2),
        take("medium mortars", 2),
        take("assault training for a platoon"),
        take("assault training for a platoon"),
    )
    force = marenz()
    said = plan_paragraph(
        plan,
        entries=force.supporting_troops,
        reserve=Reserve(formations={"platoon": 4}),
        reserves=force.reserves,
    )
    assert said == (
        "Under command: 1 x pioneers with flame (attached to a platoon, one to each at most).",
        "In support: 2 x light tanks and 2 x medium mortars (on or off the table).",
        "Off the table: 2 x field battery.",
        "Besides: twice 1 x assault training for a platoon.",
        "In reserve, named: 4 platoons.",
    )


def test_nothing_taken_is_said() -> None:
    assert plan_paragraph((), entries={}) == ("No supporting troops.",)


def test_what_takes_the_place_of_others_is_said() -> None:
    storm = Entry(
        name="storm",
        cost={1: 2},
        replaces=Replacement(of="rifle section", number=3, with_="storm section"),
    )
    guns = Entry(name="guns", cost={1: 2}, attach=Attachment(to="platoon"), place=Position.EITHER)
    entries = {"storm": storm, "guns": guns}
    assert plan_paragraph((take("storm"), take("guns"), take("lancers")), entries=entries) == (
        "Under command: 1 x guns (attached to a platoon).",
        "In support: 1 x storm in place of 3 rifle sections and 1 x lancers.",
    )


def test_a_reserve_without_a_rule() -> None:
    kept = Reserve(formations={"platoon": 1})
    assert plan_paragraph((), entries={}, reserve=kept) == ("In reserve: 1 platoon.",)
    rule = Reserves(method=ReserveMethod.UNCOMMITTED, most=Fraction(1, 3), of="platoon")
    said = plan_paragraph((), entries={}, reserve=kept, reserves=rule)
    assert said == ("In reserve, uncommitted: 1 platoon.",)


def test_what_is_kept_back_of_the_plan_stands_in_the_reserve_alone() -> None:
    plan = (take("tanks", 3), take("lancers"))
    back = (take("tanks", 2), take("lancers"))
    said = plan_paragraph(plan, entries={}, reserve=Reserve(purchases=back))
    assert said == ("In support: 1 x tanks.", "In reserve: 2 x tanks and 1 x lancers.")
    both = Reserve(formations={"platoon": 1}, purchases=back)
    said = plan_paragraph((take("tanks", 2),), entries={}, reserve=both)
    assert said == ("In reserve: 1 platoon.", "In reserve too: 2 x tanks.")
