"""Frontage, ground scale, and both sides alike."""

from dataclasses import replace
from fractions import Fraction

from paradestate.core.establishment import establishment
from paradestate.core.force import Force
from paradestate.core.frontage import (
    BodyFront,
    body_fronts,
    depth_exaggeration,
    exact_scale,
    front_of,
    ground_shown,
    line_front,
    number_abreast,
    opponents_ratio,
)
from paradestate.core.outline import Disc, Rectangle, millimetres
from paradestate.core.table import Line, Opponent
from tests.forces import force_from, marenz


def fronts_of(force: Force) -> tuple[BodyFront, ...]:
    made, _ = establishment(force)
    assert made is not None
    return body_fronts(force, made)


def test_the_front_of_a_stand() -> None:
    assert front_of(Rectangle(width=millimetres(40), depth=millimetres(20))) == 40
    assert front_of(Disc(diameter=millimetres(30))) == 30


def test_two_stands_of_40_mm_with_a_gap_of_20() -> None:
    front = line_front(millimetres(40), number=2, gap=millimetres(20))
    assert front == 100
    assert ground_shown(front, ground_scale=Fraction(1)) == 100
    assert exact_scale(Fraction(150), front=front) == Fraction(3, 2)


def test_a_stand_of_20_mm_for_a_line_two_metres_deep_is_ten_times_too_deep() -> None:
    deep = depth_exaggeration(millimetres(20), ground_scale=Fraction(1), real_metres=Fraction(2))
    assert deep == 10


def test_five_companies_of_250_mm_stand_abreast_on_1800() -> None:
    assert number_abreast(millimetres(1800), front=millimetres(250), gap=millimetres(100)) == 5


def test_the_opponents_front_over_ours() -> None:
    his = Line(number=2, width=millimetres(50))
    ours = millimetres(100)
    assert opponents_ratio(ours, Opponent(front=his)) == Fraction(6, 5)
    assert opponents_ratio(ours, Opponent(front=his, gap=millimetres(0))) == 1
    assert opponents_ratio(ours, Opponent()) is None


def test_the_platoon_of_the_example_covers_100_mm() -> None:
    (platoon,) = fronts_of(marenz())
    assert platoon == BodyFront(
        formation="platoon",
        stands=2,
        front=millimetres(100),
        ground=Fraction(100),
        abreast=15,
    )


def test_only_the_most_numerous_unprinted_stands_of_a_platoon_are_lined_up() -> None:
    force = force_from(
        """stands:
  rifle: {base: 40 x 20 mm}
  command: {base: 30 mm disc}
  wire: {base: 60 x 20 mm, printed: yes}
  ghost: {base: none}
  guest: {base: 50 x 20 mm}
""",
        """formations:
  top: {parts: {platoon: 2, empty: 1, command: 1}}
  platoon:
    echelon: platoon
    parts:
      - {of: command, number: 1}
      - {of: rifle, number: 3}
      - {of: wire, number: 9}
      - {of: ghost, number: 9}
      - {of: guest, number: 9, need: wished}
  empty: {echelon: platoon, men: 20}
""",
    )
    (platoon,) = fronts_of(force)
    assert (platoon.stands, platoon.front) == (3, millimetres(160))
    assert platoon.ground is None
    assert platoon.abreast is None


def test_a_table_without_a_scale_shows_no_ground() -> None:
    force = force_from(
        "stands: {rifle: {base: 40 x 20 mm}}",
        "formations: {top: {echelon: platoon, parts: {rifle: 2}}}",
        "table: {size: 1800 x 1200 mm, gap: 0 mm}",
    )
    (platoon,) = fronts_of(force)
    assert platoon.ground is None
    assert (platoon.front, platoon.abreast) == (millimetres(80), 22)


def test_a_force_that_can_not_be_settled_has_no_fronts() -> None:
    made, _ = establishment(marenz())
    assert made is not None
    assert body_fronts(replace(marenz(), raise_=None), made) == ()


def test_a_platoon_that_is_only_wished_has_no_front() -> None:
    force = force_from(
        "stands: {rifle: {base: 40 x 20 mm}}",
        "formations: {top: {parts: [{of: p, number: 1, need: wished}]},"
        " p: {echelon: platoon, parts: {rifle: 2}}}",
    )
    assert fronts_of(force) == ()
