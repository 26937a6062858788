"""Points that may be left, and where plans begin to be paid for."""

from fractions import Fraction
from itertools import product

import pytest

from paradestate.core.support.chances import Chances, chances
from paradestate.sheet.allowance_bars import (
    PHONE,
    WIDE,
    PlanLine,
    allowance_bars,
    allowance_rows,
)
from paradestate.sheet.svg import Drawing
from tests.sheet.reading import root_of, texts_of, texts_outside

WIDTHS = (PHONE, WIDE, 1000)
THE_PLAN = PlanLine(name="the plan", cost=17)


def rolled(number: int, sides: int, *, plus: int = 0) -> Chances:
    counts: dict[int, int] = {}
    for faces in product(range(1, sides + 1), repeat=number):
        counts[plus + sum(faces)] = counts.get(plus + sum(faces), 0) + 1
    return chances(counts)


# Whole-day attack of four companies: 18 + 2d6, less 7 for the formation.
MARENZ = rolled(2, 6, plus=11)


def squares(made: Drawing, *, fill: str) -> int:
    return len(
        [each for each in root_of(made).iter("rect") if each.get("fill") == f"var(--{fill})"]
    )


def lines(made: Drawing) -> list[float]:
    """Where the violet lines stand, from left to right."""
    paths = [each for each in root_of(made).iter("path") if each.get("stroke") == "var(--pencil)"]
    return sorted(float(each.get("d", "")[1:].split(" ")[0]) for each in paths)


@pytest.mark.parametrize("width", WIDTHS)
def test_of_36_squares_26_pay_for_the_plan(width: int) -> None:
    """36 equal squares, count the shaded ones."""
    made = allowance_bars(MARENZ, plans=[THE_PLAN], width=width)
    assert (squares(made, fill="ink"), squares(made, fill="sheet")) == (26, 10)
    said = texts_of(made)
    assert said[:11] == ["1", "2", "3", "4", "5", "6", "5", "4", "3", "2", "1"]
    assert said[11:22] == [str(points) for points in range(13, 24)]
    assert {"the plan costs 17", "13/18, 72 in 100"} <= set(said)
    assert "a square: 1 of 36 equal chances" in said
    assert made.words == (
        "Points left: 13 to 23, 18 on average. The plan costs 17: 13/18, 72 in 100."
    )


def test_the_line_stands_before_the_least_number_that_pays() -> None:
    made = allowance_bars(MARENZ, plans=[THE_PLAN])
    bars = [each for each in root_of(made).iter("rect") if each.get("fill") == "var(--ink)"]
    (x,) = lines(made)
    assert x < min(float(each.get("x", "")) for each in bars) < x + 10


def test_a_plan_that_always_or_never_pays_stands_at_an_end() -> None:
    plans = [PlanLine(name="cheap", cost=5), PlanLine(name="dear", cost=30)]
    made = allowance_bars(MARENZ, plans=plans)
    assert {"cheap costs 5", "always", "dear costs 30", "never"} <= set(texts_of(made))
    assert lines(made) == [1.0, 1 + 64 * 11]


def test_a_plan_may_ask_for_more_points_than_it_costs() -> None:
    """A group that keeps to a share of the points."""
    plan = PlanLine(name="armour", cost=17, paid_by=frozenset(range(20, 24)))
    made = allowance_bars(MARENZ, plans=[plan])
    assert (squares(made, fill="ink"), squares(made, fill="sheet")) == (10, 26)
    assert "5/18, 28 in 100" in texts_of(made)
    assert lines(made) == [1 + 64 * 7]
    known = allowance_bars(MARENZ, plans=[plan], known=18)
    assert "not with these points" in texts_of(known)


def test_without_a_plan_every_way_is_solid() -> None:
    made = allowance_bars(MARENZ)
    assert squares(made, fill="ink") == 36
    assert not lines(made)


@pytest.mark.parametrize(
    ("known", "words"), [(14, "3 points short"), (17, "just enough"), (23, "6 left over")]
)
def test_a_known_roll_is_marked_and_settles_the_plan(known: int, words: str) -> None:
    made = allowance_bars(MARENZ, plans=[THE_PLAN], known=known, width=PHONE)
    assert {f"rolled: {known} left", words} <= set(texts_of(made))
    assert "13/18, 72 in 100" not in texts_of(made)
    assert f"After the roll {known} are left. The plan costs 17: {words}." in made.words


def test_a_roll_that_cannot_be_has_no_mark() -> None:
    made = allowance_bars(MARENZ, known=40)
    assert not [text for text in texts_of(made) if text.startswith("rolled")]


@pytest.mark.parametrize("width", WIDTHS)
def test_many_ways_are_whole_bars_with_numbers_where_there_is_room(width: int) -> None:
    made = allowance_bars(rolled(3, 6), plans=[THE_PLAN], width=width)
    assert len(list(root_of(made).iter("rect"))) == 16
    assert "of 216 equal chances" in texts_of(made)
    assert "27" in texts_of(made)


@pytest.mark.parametrize("width", WIDTHS)
def test_of_many_numbers_the_known_and_round_ones_are_named(width: int) -> None:
    made = allowance_bars(rolled(2, 60), plans=[THE_PLAN], known=77, width=width)
    named = [int(text) for text in texts_of(made) if text.isdecimal()]
    assert 77 in named
    assert {each % 5 for each in named if each != 77} == {0}
    assert 3 <= len(named) < 30


def test_one_number_is_one_bar() -> None:
    made = allowance_bars(chances({8: 1}), plans=[PlanLine(name="the plan", cost=8)], width=PHONE)
    assert made.words == "Points left: 8. The plan costs 8: always."
    assert texts_of(made) == ["1", "8", "the plan costs 8", "always", "points left"]


@pytest.mark.parametrize("width", WIDTHS)
def test_no_text_runs_out_of_the_drawing(width: int) -> None:
    plans = [PlanLine(name=f"a plan with a very long name {n} " * n, cost=12 + n) for n in range(9)]
    for allowance, known in ((MARENZ, 23), (rolled(2, 60), 120), (rolled(1, 6, plus=10), 11)):
        made = allowance_bars(allowance, plans=plans, known=known, width=width)
        assert not texts_outside(made)


def test_lines_of_two_plans_run_clear_of_their_words() -> None:
    plans = [PlanLine(name="guns", cost=14), PlanLine(name="tanks", cost=15)]
    for given in (plans, plans[::-1]):
        made = allowance_bars(MARENZ, plans=given)
        tops = [
            float(each.get("d", "").split(" ")[1].split("V")[0])
            for each in root_of(made).iter("path")
            if each.get("stroke") == "var(--pencil)"
        ]
        assert len(set(tops)) == 2
        names = [text for text in texts_of(made) if "costs" in text]
        # The words of the guns reach over to the line of the tanks, so they stand above them.
        assert names == ["guns costs 14", "tanks costs 15"]


def test_the_table_has_every_number_with_its_chances() -> None:
    rows = allowance_rows(MARENZ)
    assert len(rows) == 11
    assert (rows[4].points, rows[4].chance, rows[4].at_least) == (
        17,
        Fraction(5, 36),
        Fraction(13, 18),
    )
    assert sum(row.chance for row in rows) == 1
