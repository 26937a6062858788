"""What is said of the rules that a plan breaks: numbers, names, places and the ways out."""

from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.dice import NOUGHT
from paradestate.core.finding import Finding, Level
from paradestate.core.game import Purchase
from paradestate.core.place import Place
from paradestate.core.support.breach import bill_of, breaches
from paradestate.core.support.entry import GroupLimit, Limit
from paradestate.core.support.judge_finding import Known, breach_finding, change_words, hint_of
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms
from paradestate.core.support.way_out import Change, WayOut, ways_out
from tests.core.support.test_breach import GUNS, TANKS, take, terms
from tests.support_terms import EVENING, Plan

NOTHING = Known()


def said(
    known_terms: Terms, plan: Plan, *, points: int = 20, known: Known = NOTHING
) -> list[Finding]:
    bill = bill_of(known_terms, plan, points=points)
    broken = breaches(bill)
    ways = ways_out(bill, broken)
    return [breach_finding(bill, each, ways=ways, known=known) for each in broken]


def message(known_terms: Terms, *names: str, points: int = 20) -> str:
    (finding,) = said(known_terms, take(*names), points=points)
    return finding.message


def test_less_than_no_points_are_said_so() -> None:
    guns = terms(GUNS)
    bill = bill_of(guns, take("guns"), points=-2)
    broken = breaches(bill)
    ways = ways_out(bill, broken)
    short = [
        breach_finding(bill, broken[0], ways=ways, known=Known(are_most=most)).message
        for most in (False, True)
    ]
    assert short == [
        "The force itself costs 2 points too many: nothing can be taken.",
        "The force itself costs 2 points too many even after the best roll: nothing can be taken.",
    ]


def test_over_the_points() -> None:
    (finding,) = said(terms(GUNS, TANKS), take("guns", "tanks"), points=9)
    assert finding.level is Level.STOP
    assert finding.message == "Spent 10 of 9 points: over by 1."
    assert finding.effect == "The plan isn't legal."
    assert finding.hint == "Dropping 1 x guns (4) or 1 x tanks (6) would do it."
    assert finding.place == CHOSEN_HERE
    (most,) = said(terms(GUNS), take("guns"), points=1, known=Known(are_most=True))
    assert most.message == "Spent 4 of 1 point, the most that the dice can leave: over by 3."
    without_dice = replace(terms(GUNS), game=replace(EVENING, allowance=NOUGHT))
    (fixed,) = said(without_dice, take("guns"), points=1, known=Known(are_most=True))
    assert fixed.message == "Spent 4 of 1 point: over by 3."


@pytest.mark.parametrize(
    ("limit", "message_"),
    [
        (None, "guns: taken three times; the limit is 2."),
        (Limit(most=2), "guns: taken three times; the limit is two in the force."),
        (
            Limit(for_every=2, of="company"),
            (
                "guns: taken three times; the limit is one for every two companies, "
                "so 2 with 4 companies."
            ),
        ),
    ],
)
def test_over_a_limit(limit: Limit | None, message_: str) -> None:
    known = replace(terms(replace(GUNS, limit=limit)), number_of={"company": 4})
    assert message(known, "guns", "guns", "guns") == message_


def test_a_limit_that_another_number_lowered() -> None:
    limit = Limit(for_every=2, of="company")
    now = replace(terms(replace(GUNS, most=1, limit=limit)), number_of={"company": 2})
    written = replace(terms(replace(GUNS, most=2, limit=limit)), number_of={"company": 4})
    (finding,) = said(now, take("guns", "guns"), known=Known(written=written))
    assert finding.code == "limit-lowered"
    assert finding.message == (
        "Cutting to 2 companies lowers the limit of guns to 1; it is taken twice."
    )
    more = said(now, take("guns", "guns", "guns"), known=Known(written=written))
    assert [each.code for each in more] == ["over-limit"]
    for other in (replace(written, number_of={"company": 2}), terms(), terms(GUNS)):
        (as_ever,) = said(now, take("guns", "guns"), known=Known(written=other))
        assert as_ever.code == "over-limit"
    (over,) = said(now, take("guns"), points=1, known=Known(written=written))
    assert over.code == "over-points"


def test_less_than_the_least() -> None:
    known = terms(replace(GUNS, least=2))
    assert message(known) == "guns: not taken; it must be taken at least twice."


def test_needs() -> None:
    tow = Offer(name="tow", cost={1: 1}, most=3)
    need = terms(GUNS, replace(tow, needs={"guns": 2}))
    assert message(need, "tow") == "tow needs guns twice, and the plan has none."
    assert message(need, "tow", "guns") == "tow needs guns twice, and the plan has it once."
    each = terms(GUNS, replace(tow, needs_for_each={"guns": 1}))
    assert message(each, "tow", "tow", "guns") == (
        "tow, taken twice, needs guns for each, 2 in all, and the plan has it once."
    )
    any_of = terms(GUNS, TANKS, replace(tow, needs_any_of={"guns": 1, "tanks": 2}))
    assert message(any_of, "tow") == "tow needs guns or tanks twice, and has none of them."
    absent = terms(replace(tow, needs={"mules": 1}))
    assert message(absent, "tow") == "tow needs mules, which can't be had: not to be had in 1943."
    unknown = terms(replace(tow, needs={"carts": 1}))
    assert message(unknown, "tow") == (
        "tow needs carts, which can't be had: nothing of that name is on the list."
    )


def test_what_bars() -> None:
    horse = Offer(name="horse", cost={1: 1}, bars=frozenset({"guns"}))
    known = terms(replace(GUNS, bars=frozenset({"horse"})), horse)
    assert message(known, "horse", "guns") == "guns and horse can't both be taken."
    itself = terms(Offer(name="odd", cost={1: 1}, bars=frozenset({"odd"})))
    assert message(itself, "odd") == "odd bars itself: it can never be taken."


@pytest.mark.parametrize(
    ("limit", "names", "message_"),
    [
        (
            GroupLimit(group="armour", most=1),
            ("guns", "guns"),
            "Of the group armour 2 purchases; at most 1 may be taken.",
        ),
        (
            GroupLimit(group="armour", least=1),
            (),
            "Of the group armour 0 purchases; at least 1 must be taken.",
        ),
        (
            GroupLimit(group="armour", most_points=Fraction(3, 10)),
            ("guns", "guns"),
            "The group armour takes 8 points; at most 30% of 20 is allowed, so 6.",
        ),
        (
            GroupLimit(group="armour", least_points=Fraction(33, 100)),
            ("guns",),
            "The group armour takes 4 points; at least 33% of 20 is asked for, so 7.",
        ),
    ],
)
def test_groups(limit: GroupLimit, names: tuple[str, ...], message_: str) -> None:
    assert message(terms(replace(GUNS, group="armour"), groups=(limit,)), *names) == message_


def test_purchases_that_cannot_be_had() -> None:
    pioneers = Offer(name="pioneers", cost={2: 6, 4: 9}, choices={"flame": 0, "bridging": 0})
    known = terms(pioneers)
    plan = (Purchase(entry="pioneers", number=3, choice="flame"),)
    assert (
        said(known, plan)[0].message == "pioneers can be had 2 or 4 at a time; 3 isn't on the list."
    )
    two = Purchase(entry="pioneers", number=2)
    assert said(known, (two,))[0].message == "pioneers: flame or bridging? The plan doesn't say."
    smoke = replace(two, choice="smoke")
    assert said(known, (smoke,))[0].message == "pioneers: 'smoke' isn't one of its choices."
    assert message(known, "mules") == "mules: not to be had in 1943."
    (unknown,) = said(known, take("pioners"))
    assert unknown.message == "No entry of the supporting troops is called 'pioners'."
    assert unknown.hint == "Did you mean 'pioneers'? If not: dropping 1 x pioners would do it."
    (odd,) = said(known, take("xyz"))
    assert odd.hint == "Dropping 1 x xyz would do it."


def test_places_are_those_of_the_plan_in_the_files_and_of_the_rule() -> None:
    def at(line: int, *path: str) -> Place:
        return Place(file="force.yaml", line=line, column=1, path=path)

    places = {
        ("games", "evening", "plan"): at(3, "games", "evening", "plan"),
        ("games", "evening", "plan", "2"): at(4, "games", "evening", "plan", "2"),
        ("supporting troops", "guns", "limit"): at(9, "supporting troops", "guns", "limit"),
        ("limits", "1"): at(12, "limits", "1"),
    }
    known = Known(places=places, at=("games", "evening", "plan"))
    guns = terms(
        replace(GUNS, most=1, group="armour"), groups=(GroupLimit(group="armour", most=1),)
    )
    plan = take("mules", "guns", "guns")
    mules, limit, group = said(guns, plan, known=known)
    assert (limit.place.line, limit.related[0].line) == (4, 9)
    assert (group.place.line, group.related[0].line) == (3, 12)
    assert mules.place.line == 3
    (over,) = said(guns, take("guns"), points=1, known=known)
    assert (over.place.line, over.related) == (3, ())


def way(*changes: Change, points: int) -> WayOut:
    return WayOut(changes=changes, plan=(), points=points)


GUN, TWO_GUNS = Purchase(entry="guns", number=1), Purchase(entry="guns", number=2)
FLAME = Purchase(entry="pioneers", number=1, choice="flame")


def test_ways_out_in_words() -> None:
    nothing = "No way out was found: not by one change, by two, or by dropping more."
    assert hint_of(()) == nothing
    untried = "There may be other ways out: not every change was tried."
    assert hint_of((), all_tried=False) == "No way out was found, but not every change was tried."
    add, drop = Change(comes=GUN), Change(goes=GUN)
    assert hint_of((way(add, points=4),)) == "Adding 1 x guns (4) would do it."
    assert hint_of((way(add, points=4),), all_tried=False).endswith(f"would do it. {untried}")
    assert hint_of((way(drop, points=2),)) == "Dropping 1 x guns (2 more) would do it."
    assert hint_of((way(add, add, drop, points=3),)) == (
        "Adding twice 1 x guns and dropping 1 x guns (3 more) together would do it."
    )
    assert hint_of((way(drop, drop, points=-8),)) == "Dropping twice 1 x guns (8) would do it."
    many = tuple(way(drop, points=-number) for number in range(1, 7))
    assert hint_of(many) == (
        "Dropping 1 x guns (1), 1 x guns (2), 1 x guns (3), "
        "1 x guns (4) or one of 2 other changes would do it."
    )
    mixed = (way(drop, points=-1), way(add, points=2), way(drop, points=-3))
    assert hint_of(mixed) == (
        "Dropping 1 x guns (1), adding 1 x guns (2) or dropping 1 x guns (3) would do it."
    )


def test_of_very_many_changes_the_first_few_are_named() -> None:
    drops = [Change(goes=Purchase(entry=f"e{number}", number=1)) for number in range(300)]
    hint = hint_of((way(Change(comes=GUN), *drops, drops[-1], points=-9),))
    assert hint == (
        "Adding 1 x guns and dropping 1 x e0, 1 x e1, 1 x e2, 1 x e3, 1 x e4, 1 x e5, 1 x e6, "
        "1 x e7, 1 x e8 and 292 more (9) together would do it."
    )


def test_a_choice_that_is_missing_is_told_as_it_is_typed() -> None:
    odd = Offer(name="guns, old", cost={2: 6}, choices={"flame": 0, "bridging": 1})
    known = terms(odd)
    (finding,) = said(known, (Purchase(entry=odd.name, number=2),))
    assert finding.code == "choice-missing"
    assert finding.hint == (
        "Writing 'guns, old(flame)'=2 (6 more), 'guns, old(bridging)'=2 (8 more) "
        "or dropping 2 x guns, old would do it."
    )


def test_more_than_one_purchase_may_hold_is_written_again() -> None:
    three = (Purchase(entry="works", number=3),)
    again = " To take more, write the entry again: each time is a purchase."
    for most, ends in ((None, True), (4, True), (1, False)):
        (finding,) = said(terms(Offer(name="works", cost={1: 2}, most=most)), three)
        assert finding.hint.endswith(again) is ends
    (between,) = said(terms(Offer(name="works", cost={1: 2, 4: 6}, most=4)), three)
    assert not between.hint.endswith(again)


def test_numbers_that_follow_on_one_another_are_said_as_one_range() -> None:
    blocks = Offer(name="blocks", cost=dict.fromkeys((2, 3, *range(8, 25), 30), 4))
    (finding,) = said(terms(blocks), (Purchase(entry="blocks", number=26),))
    assert finding.message == (
        "blocks can be had 2, 3, 8 to 24 or 30 at a time; 26 isn't on the list."
    )


def test_changes_in_words() -> None:
    assert change_words(Change(goes=TWO_GUNS, comes=GUN)) == "taking 1 x guns instead of 2"
    bridging = replace(FLAME, choice="bridging")
    assert change_words(Change(goes=FLAME, comes=bridging)) == (
        "taking 1 x pioneers with bridging instead of flame"
    )
    unsaid = replace(FLAME, choice="")
    assert change_words(Change(goes=unsaid, comes=FLAME)) == "taking 1 x pioneers with flame"
    assert change_words(Change()) == ""
