"""Sentences about figures, stands, formations and what is raised."""

from fractions import Fraction

import pytest

from paradestate.core.figure import FigureKind, Match, Sort
from paradestate.core.force import Raise, Wishes
from paradestate.core.formation import Arm, Echelon, Formation, Need, Part
from paradestate.core.number import NumberRange, exactly
from paradestate.core.outline import Disc, Rectangle, millimetres
from paradestate.core.sentence.troops import (
    figure_sentence,
    formation_sentence,
    part_words,
    raise_sentence,
    stand_sentence,
)
from paradestate.core.span import Window, year
from paradestate.core.stand import Sight, StandPattern
from tests.core.sentence.saying import unsaid
from tests.forces import marenz

DISC = Disc(diameter=millimetres(30))

FIGURE = FigureKind(
    name="lorry",
    height=millimetres(16),
    footprint=Rectangle(width=millimetres(16), depth=millimetres(42)),
    sort=Sort.VEHICLE,
    may_stand_for={"truck": Match.GOOD},
    by_hand="odd",
)
STAND = StandPattern(
    name="gun",
    base=DISC,
    footprint=DISC,
    edge=millimetres(2),
    gap=millimetres(3),
    height=millimetres(22),
    men=NumberRange(least=4, most=6),
    figures={"gunner": 2},
    printed=True,
    modelled_as={"gunner": 1},
    shows=("gunner",),
    must_not_show=("rifleman",),
    carries=2,
    stays=True,
    called="Gun",
    seen_by_opponent=Sight.NO,
    by_hand="odd",
)
PART = Part(
    of="company",
    number=NumberRange(least=2, most=4),
    usual=3,
    need=Need.WISHED,
    window=Window(begins=year(1942)),
    theatre="islands",
    by_hand="odd",
)
FORMATION = Formation(
    name="battalion",
    echelon=Echelon.BATTALION,
    arm=Arm.INFANTRY,
    men=617,
    men_per_figure=Fraction(30),
    figure="fusilier",
    figures_per_stand=4,
    may_detach={"light": 2},
    weak=Fraction(4, 5),
    like="model",
    add=(Part(of="gun", number=exactly(1)),),
    drop=("truck",),
    called="Battalion",
    parts=(PART,),
    by_hand="odd",
)
RAISE = Raise(
    formation="battalion",
    date=year(1943),
    theatre="islands",
    numbers={"company": 3},
    names={"company": "No #", "gun": ("Alpha", "Beta")},
    wished=("scene",),
    by_hand="odd",
)


def test_nothing_is_left_unsaid() -> None:
    assert unsaid(FIGURE, figure_sentence) == []
    assert unsaid(STAND, stand_sentence) == []
    assert unsaid(PART, part_words) == []
    assert unsaid(FORMATION, formation_sentence) == []
    assert unsaid(RAISE, raise_sentence) == []


def test_stands_of_the_example() -> None:
    stands = marenz().stands
    assert stand_sentence(stands["rifle section"]) == (
        "Rifle section: on 40 x 20 mm; holds 4 riflemen; stands for 10 men; must not hold a "
        "machine-gun crew or mortar crew; printed as 'Section'."
    )
    assert stand_sentence(stands["truck"]) == (
        "Truck: a model without a base; covering 15 x 34 mm; holds 1 light truck; carries 2 stands."
    )


@pytest.mark.parametrize(
    ("sight", "said"),
    [(Sight.WHEN_REVEALED, "seen by the opponent when revealed"), (Sight.YES, "")],
)
def test_what_the_opponent_sees(sight: Sight, said: str) -> None:
    text = stand_sentence(
        StandPattern(name="wire", base=None, men=exactly(1), seen_by_opponent=sight)
    )
    assert said in text
    assert "1 man" in text


def test_formations_of_the_example() -> None:
    formations = marenz().formations
    assert formation_sentence(formations["platoon"]) == (
        "Platoon: a platoon of infantry; made of 3 rifle sections until 1942-05 and 2 rifle "
        "sections from 1942-06; printed as 'Platoon'."
    )
    assert formation_sentence(Formation(name="band", men=12)) == "Band: a body; 12 men."


def test_what_is_wished() -> None:
    assert "wished: everything" in raise_sentence(Raise(formation="b", wished=Wishes.ALL))
    assert raise_sentence(Raise(formation="b")) == "Raised: the b."
