"""The decision chart."""

from fractions import Fraction

from paradestate.core.game import Purchase
from paradestate.core.paper.decision_chart import chart_boxes, decision_chart, likeliest
from paradestate.core.support.chances import chances
from paradestate.core.support.policy import Ask, Fallback, Granted, LevelChoice, Take

TANK = Purchase(entry="tank", number=1)
GUN = Purchase(entry="gun", number=1)
TAKE_NOTHING = Take(purchases=(), points=0, worth=Fraction(0))
TAKE_GUN = Take(purchases=(GUN,), points=6, worth=Fraction(8))


def half(allowed: int, *, takes: Purchase | None, then: Ask | Take) -> Granted:
    worth = then.worth + (10 if takes else 0)
    return Granted(allowed=allowed, chance=Fraction(1, 2), takes=takes, then=then, worth=worth)


ASK = Ask(
    purchase=TANK,
    points=6,
    worth=Fraction(9),
    outcomes=(
        half(1, takes=TANK, then=TAKE_NOTHING),
        half(0, takes=None, then=TAKE_GUN),
    ),
)
PLAY = Fallback(points=6, worth=Fraction(9), chart=ASK, first_choices=())


def test_a_request_is_heavy_and_its_outcomes_stand_below_it() -> None:
    """Example A of the best fall-back: ask for the tank; refused, take the rest (9)."""
    first, granted, refused = chart_boxes(PLAY)
    assert (first.depth, first.what, first.worth) == (0, "Ask for 1 x tank", "9 to come")
    assert (first.points, first.when, first.chance) == ("6 points left", "", "")
    assert first.is_request
    assert (granted.depth, granted.when) == (1, "Allowed: take it, worth 10")
    assert granted.chance == "1/2, 50 in 100"
    assert not granted.is_request
    assert (refused.when, refused.what, refused.worth) == ("Refused", "Buy 1 x gun", "worth 8")


def test_what_is_rare_is_left_out_until_it_fits() -> None:
    assert len(chart_boxes(PLAY, most=1)) == 3  # nothing in it is rare
    deep = Ask(
        purchase=GUN,
        points=6,
        worth=Fraction(9),
        outcomes=(
            Granted(allowed=1, chance=Fraction(99, 100), takes=GUN, then=TAKE_NOTHING),
            Granted(allowed=0, chance=Fraction(1, 100), takes=None, then=ASK),
        ),
    )
    play = Fallback(points=6, worth=Fraction(9), chart=deep, first_choices=())
    assert len(chart_boxes(play)) == 5
    assert [each.what for each in chart_boxes(play, most=3)][-1] == "More requests follow"


def test_a_sure_way_on_has_no_chance_beside_it() -> None:
    sure = Ask(
        purchase=TANK,
        points=6,
        worth=Fraction(18),
        outcomes=(
            Granted(allowed=1, chance=Fraction(1), takes=TANK, then=TAKE_GUN, worth=Fraction(18)),
        ),
    )
    boxes = chart_boxes(Fallback(points=6, worth=Fraction(18), chart=sure, first_choices=()))
    assert boxes[1].chance == ""


def test_other_points_that_may_come_are_listed_unless_they_are_known() -> None:
    levels = (
        LevelChoice(points=5, worth=Fraction(8), first=None),
        LevelChoice(points=6, worth=Fraction(9), first=TANK),
    )
    known = decision_chart(PLAY, game="night", levels=levels[1:], allowance=chances({6: 1}))
    assert (known.game, known.is_rolled, known.firsts, known.declared) == ("Night", True, (), "")
    open_ = decision_chart(PLAY, game="night", levels=levels, allowance=chances({5: 1, 6: 2}))
    assert not open_.is_rolled
    assert [(each.points, each.first, each.chance) for each in open_.firsts] == [
        (5, "Ask for nothing", "1/3, 33 in 100"),
        (6, "Ask for 1 x tank", "2/3, 67 in 100"),
    ]


def test_what_is_named_at_once_is_said() -> None:
    play = Fallback(points=6, worth=Fraction(9), chart=ASK, first_choices=(), declared=(TANK,))
    made = decision_chart(play, game="night", levels=(), allowance=chances({6: 1}))
    assert made.declared.startswith("Name at once 1 x tank")


def test_the_likeliest_points_are_those_that_come_most_often_the_middle_one_of_several() -> None:
    assert likeliest(chances({5: 1, 6: 2, 7: 1})) == 6
    assert likeliest(chances({5: 1, 6: 1, 7: 1})) == 6
