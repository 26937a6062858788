"""Files of former times read as they did: the format gains words, and none changes its meaning."""

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

from paradestate.core.dice import Dice, Fixed, SignedTerm, Throw
from paradestate.core.finding import stops
from paradestate.core.game import CostByNumber, Game, Grade, Purchase
from paradestate.core.span import Window, year
from paradestate.core.support.entry import (
    Asking,
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
    Worth,
)
from paradestate.text.folder import read_files, read_folder
from tests.forces import marenz

OLD = Path(__file__).parent / "old"

GUNS = Entry(
    name="guns",
    held_at="brigade",
    cost={1: 4, 2: 7},
    each={"gun": 1},
    limit=Limit(most=1, for_every=2, of="company", round=Rounding.UP),
    availability=Availability(
        roll=Dice(terms=(SignedTerm(term=Throw(number=1, sides=12)),)),
        allows=(
            Band(least=1, most=2, allows=0),
            Band(least=3, most=8, allows=1),
            Band(least=9, most=None, allows=None),
        ),
    ),
    when_refused=Refusal.LOST,
    needs={"cars": 1},
    needs_any_of={"cars": 2},
    bars=("scouts",),
    opens=("scouts",),
    grants={"car": 1},
    replaces=Replacement(of="gun", number=1, with_="car"),
    choice=("smoke", "shell"),
    group="fire",
    attach=Attachment(to="company", most_per_host=1, no_two_alike=True),
    place=Position.EITHER,
    only_in=Circumstance(posture="attack"),
    not_in=Circumstance(posture="defence"),
    window=Window(begins=year(1941), ends=year(1943)),
    theatre="islands",
    by_hand="as printed",
)


def test_an_old_copy_of_the_example_reads_as_the_example_does() -> None:
    """All but one entry, which said by hand what a word says now."""
    reading = read_folder(OLD / "marenz")
    assert stops(reading.findings) == ()
    name = "assault training for a platoon"
    entry = marenz().supporting_troops[name]
    assert entry.improves == Improvement(of="platoon", scale="training")
    was = replace(entry, improves=None, by_hand="one platoon's training goes up one step")
    troops = {**marenz().supporting_troops, name: was}
    assert reading.force == replace(marenz(), supporting_troops=troops)


def test_every_old_word_about_supporting_troops_means_what_it_did() -> None:
    reading = read_files({"words.yaml": (OLD / "words.yaml").read_bytes()})
    assert stops(reading.findings) == ()
    force = reading.force
    assert force.supporting_troops == {
        "guns": GUNS,
        "cars": Entry(name="cars", cost={1: 3}, limit=Limit(most=None)),
        "scouts": Entry(name="scouts", cost={1: 2}, limit=Limit(most=2)),
    }
    assert force.asking is Asking.ONE_AT_A_TIME
    assert force.limits == (
        GroupLimit(group="fire", most=2, most_points=Fraction(33, 100), by_hand="as printed"),
    )
    assert force.worths == {
        "guns": Worth(entry="guns", by_choice={"smoke": {1: Fraction(4)}}),
        "cars": Worth(entry="cars", by_choice={"": {1: Fraction(2)}}),
    }
    assert force.formation_cost == CostByNumber(by="company", points={4: 7})
    assert force.grades == {
        "training": Grade(name="training", usual="fair", points={"raw": -3, "fair": 0})
    }


def test_an_old_game_means_what_it_did() -> None:
    force = read_files({"words.yaml": (OLD / "words.yaml").read_bytes()}).force
    dice = (
        SignedTerm(term=Fixed(number=18)),
        SignedTerm(term=Throw(number=2, sides=6)),
    )
    assert force.games["evening"] == Game(
        name="evening",
        allowance=Dice(terms=dice, at_most=28),
        posture="attack",
        weight=Fraction(3),
        plan=(Purchase(entry="guns", number=2, choice="smoke"),),
    )
