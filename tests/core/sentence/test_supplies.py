"""What the owner says of supplies, in sentences."""

from fractions import Fraction

from paradestate.core.outline import Rectangle, millimetres
from paradestate.core.sentence.supplies import sentences_of_supplies
from paradestate.core.supplies import Millilitres, SquareMillimetres, Supplies
from tests.core.sentence.saying import unsaid

FULL = Supplies(
    area={"foot": SquareMillimetres(Fraction(350))},
    paint_per_100={"rifleman": Millilitres(Fraction(12))},
    film=millimetres("0.05"),
    wasted=Fraction(1, 4),
    spare=Fraction(1, 5),
    bottle=Millilitres(Fraction(20)),
    undercoat=2,
    varnish=0,
    sheet=Rectangle(width=millimetres(100), depth=millimetres(50)),
    by_hand="odd",
)


def said(supplies: Supplies) -> str:
    return " ".join(sentences_of_supplies(supplies))


def test_nothing_is_left_unsaid() -> None:
    assert unsaid(FULL, said) == []
    assert said(Supplies()) == ""


def test_each_matter_has_its_sentence() -> None:
    assert list(sentences_of_supplies(FULL)) == [
        "Paint covers 3.5 cm2 of one foot.",
        "A hundred of rifleman took 12 ml of paint.",
        "A coat is 0.05 mm thick.",
        "Of the paint 25% is wasted.",
        "Spare: 20%.",
        "A bottle holds 20 ml.",
        "2 coats of undercoat.",
        "No coat of varnish.",
        "Sheet for the bases: 100 x 50 mm.",
        "Supplies. By hand, not checked by machine: odd.",
    ]
