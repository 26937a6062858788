"""Sentences about games, grades and supporting troops."""

from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.core.dice import NOUGHT, Dice, LookUp, Row, SignedTerm, Throw, Totals
from paradestate.core.game import CostByNumber, Game, Grade, Purchase, ReserveMethod, Reserves
from paradestate.core.sentence.support import (
    allowance_words,
    availability_words,
    entry_sentence,
    formation_cost_sentence,
    game_sentence,
    grade_sentence,
    group_limit_sentence,
    limit_words,
    purchase_words,
    reserves_sentence,
    worth_sentence,
)
from paradestate.core.span import Window, year
from paradestate.core.support.entry import (
    Attachment,
    Availability,
    Band,
    Circumstance,
    Entry,
    GroupLimit,
    Improvement,
    Limit,
    Position,
    Refusal,
    Replacement,
    Rounding,
    Variation,
    Worth,
)
from paradestate.core.support.mission import Missions, RollOn
from tests.core.sentence.saying import unsaid
from tests.forces import marenz

D6 = Dice(terms=(SignedTerm(term=Throw(number=1, sides=6)),))

ENTRY = Entry(
    name="guns",
    held_at="brigade",
    cost={1: 4},
    cost_by_grade={"training": {"recruits": {1: 2}}},
    repeats_cost_more=(1,),
    each={"gun": 1},
    limit=Limit(most=2),
    availability=Availability(roll=D6, allows=(Band(least=1, most=6, allows=None),)),
    when_refused=Refusal.LOST,
    needs={"tow": 1},
    needs_any_of={"officer": 2},
    needs_for_each={"limber": 1},
    bars=("tanks",),
    opens=("spotter",),
    grants={"observer": 1},
    replaces=Replacement(of="rifle", number=3, with_="assault"),
    improves=Improvement(of="platoon", scale="training"),
    choice=("flame", "smoke"),
    choice_costs={"flame": 1},
    group="armour",
    attach=Attachment(to="platoon"),
    place=Position.OFF_TABLE,
    missions=Missions(arrives=RollOn(roll=D6, on=Totals(least=3, most=None))),
    only_in=Circumstance(posture="attack"),
    not_in=Circumstance(posture="defence"),
    in_posture={"defence": Variation(cost={1: 3})},
    window=Window(begins=year(1942)),
    theatre="islands",
    by_hand="odd",
)
GAME = Game(
    name="raid",
    allowance=D6,
    posture="attack",
    weight=Fraction(3),
    numbers={"company": 2},
    plan=(Purchase(entry="guns", number=2, choice="flame"),),
    by_hand="odd",
)


def said_of_an_improvement(better: Improvement) -> str:
    return entry_sentence(replace(ENTRY, improves=better))


def said_of_a_posture(variation: Variation) -> str:
    return entry_sentence(replace(ENTRY, in_posture={"defence": variation}))


def test_nothing_is_left_unsaid() -> None:
    assert unsaid(ENTRY, entry_sentence) == []
    assert unsaid(GAME, game_sentence, but=("strengths", "arrivals")) == []
    better = Improvement(of="platoon", scale="training", number=2, steps=3)
    assert unsaid(better, said_of_an_improvement) == []
    shared = GroupLimit(
        group="g",
        least=1,
        most=2,
        least_points=Fraction(1, 10),
        most_points=Fraction(1, 3),
        by_hand="odd",
    )
    assert unsaid(shared, group_limit_sentence) == []
    attach = Attachment(to="platoon", most_per_host=1, no_two_alike=True)
    assert (
        unsaid(attach, lambda known: entry_sentence(Entry(name="e", cost={1: 1}, attach=known)))
        == []
    )
    limit = Limit(most=2, for_every=3, of="company", round=Rounding.UP, plus=2, least=1)
    assert unsaid(limit, limit_words, but=("of",)) == []
    rolled = Availability(roll=D6, allows=(), shared_roll="air")
    assert unsaid(rolled, availability_words) == []
    other = Variation(cost={1: 1}, limit=Limit(), availability=rolled)
    assert (
        unsaid(other, lambda known: entry_sentence(replace(ENTRY, in_posture={"x": known}))) == []
    )


def test_shared_limits() -> None:
    assert group_limit_sentence(GroupLimit(group="g")) == "Of the group g any number."
    assert group_limit_sentence(GroupLimit(group="g", most=1)) == (
        "Of the group g at most 1 purchase."
    )
    half = Fraction(1, 2)
    assert group_limit_sentence(GroupLimit(group="g", least=1, most=2, least_points=half)) == (
        "Of the group g at least 1 and at most 2 purchases, and at least 50% of the points."
    )


def test_improvements() -> None:
    entry = marenz().supporting_troops["assault training for a platoon"]
    assert "The training of one platoon is one step better than that of the force" in (
        entry_sentence(entry)
    )
    better = Improvement(of="company", scale="training", number=2, steps=3)
    assert (
        "the training of 2 companies is three steps better"
        in entry_sentence(replace(entry, improves=better)).lower()
    )


def test_allowances() -> None:
    rows = (Row(least=1, most=4, gives=10), Row(least=5, most=None, gives=14))
    assert allowance_words(D6) == "with 1d6 points"
    assert allowance_words(NOUGHT) == "without points"
    assert allowance_words(LookUp(roll=D6, gives=rows)) == (
        "with points by a roll of one 6-sided die: 10 on 1 to 4 and 14 on 5 or more"
    )


def test_entries_of_the_example() -> None:
    entries = marenz().supporting_troops
    assert entry_sentence(entries["machine-gun platoon"]) == (
        "Machine-gun platoon, held at battalion: one costs 3 points, two 5, three 7. Each puts "
        "down 1 machine-gun team. One for every two companies. May be attached to a platoon, at "
        "most one to each."
    )
    assert entry_sentence(entries["anti-tank guns"]) == (
        "Anti-tank guns, held at brigade: one costs 4 points, two 7, three 10. Each puts down 1 "
        "anti-tank gun team and 1 truck. One in the force. Roll one 12-sided die: on 1 to 2 none; "
        "on 3 to 8 at most one; on 9 to 12 all. Refused points are kept."
    )
    assert "two cost 5 points, four 9" in entry_sentence(entries["medium mortars"])
    assert "On or off the table" in entry_sentence(entries["medium mortars"])


@pytest.mark.parametrize(
    ("limit", "words"),
    [
        (Limit(), "one in the force"),
        (Limit(most=None), "any number in the force"),
        (Limit(most=1, of="company"), "one for every company"),
        (Limit(most=2, for_every=3, of="company"), "two for every three companies"),
        (Limit(most=1, of="company", round=Rounding.UP), "one for every company, rounded up"),
        (Limit(most=1, of="company", plus=2), "one for every company, and two more"),
        (Limit(most=1, plus=2), "three in the force"),
        (Limit(most=2, least=1), "at least one and at most two in the force"),
        (Limit(most=1, plus=1, least=2), "exactly two in the force"),
        (Limit(most=0), "none in the force"),
        (Limit(most=None, least=2), "at least two in the force"),
        (Limit(most=1, of="company", least=1), "at least one and at most one for every company"),
    ],
)
def test_limits_in_words(limit: Limit, words: str) -> None:
    assert limit_words(limit) == words


def test_bands_in_words() -> None:
    bands = (Band(least=1, most=1, allows=0), Band(least=9, most=None, allows=2))
    assert availability_words(Availability(roll=D6, allows=bands)) == (
        "roll one 6-sided die: on 1 none; on 9 or more at most two"
    )


def test_points_in_words() -> None:
    force = marenz()
    assert formation_cost_sentence(force.formation_cost) == (
        "The formation costs points by the number of companies: 2 cost 0, 3 cost 4 and 4 cost 7."
    )
    assert formation_cost_sentence(1) == "The formation costs 1 point."
    assert isinstance(force.formation_cost, CostByNumber)
    grade = Grade(name="training", usual="regular", points={"raw": -3, "regular": 0}, by_hand="odd")
    assert unsaid(grade, grade_sentence) == []
    assert grade_sentence(grade).startswith(
        "Training: usually regular; points: raw -3 and regular 0."
    )
    reserves = Reserves(method=ReserveMethod.NAMED, most=Fraction(34, 100), of="platoon")
    assert reserves_sentence(reserves) == (
        "At most 34% of the platoons may be kept in a named reserve."
    )
    assert purchase_words(Purchase(entry="guns", number=2)) == "2 x guns"


def test_worths_in_words() -> None:
    plain = Worth(entry="guns", by_choice={"": {1: Fraction(4), 2: Fraction(8)}})
    assert worth_sentence(plain) == "Your own opinion of guns: 1 worth 4 and 2 worth 8."
    chosen = Worth(entry="pioneers", by_choice={"flame": {1: Fraction(4)}})
    assert worth_sentence(chosen) == "Your own opinion of pioneers: flame: 1 worth 4."
