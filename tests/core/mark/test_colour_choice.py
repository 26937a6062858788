"""The choice of colours: the best there is, always the same, and how sure."""

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.certainty import Exact, Within
from paradestate.core.mark.colour_choice import ColourQuestion, best_colours, in_place
from paradestate.core.mark.difference import Differences, differences_of
from paradestate.core.mark.paint import USUAL
from paradestate.sheet.sight import pairs_of
from tests.core.mark.marked import differences, on_a_line, pair

NINE = differences_of(pairs_of(USUAL))


def chosen(number: int, known: Differences = NINE, **more: tuple[str, ...]) -> tuple[str, ...]:
    asked = ColourQuestion(candidates=more.pop("candidates", tuple(USUAL)), number=number, **more)
    found = best_colours(asked, known)
    assert found is not None
    assert found.certainty == Exact()
    return found.colours


def test_the_best_four_of_nine() -> None:
    """Check value of the design: least 34.0, royal blue and sky blue to a blue-weak viewer."""
    found = best_colours(ColourQuestion(candidates=tuple(USUAL), number=4), NINE)
    assert found is not None
    assert found.colours == ("royal blue", "mid yellow", "sky blue", "brown")
    assert found.least == 3_400
    assert found.closest is not None
    assert (found.closest.one, found.closest.other) == ("royal blue", "sky blue")
    assert found.closest.weakest == "blue-weak"


def test_the_best_three_of_nine() -> None:
    """Check value of the design: 45.6."""
    found = best_colours(ColourQuestion(candidates=tuple(USUAL), number=3), NINE)
    assert found is not None
    assert found.colours == ("sky blue", "black", "orange")
    assert found.least == 4_563


@pytest.mark.parametrize("number", range(2, 10))
def test_every_number_is_as_good_as_trying_all_of_them(number: int) -> None:
    def least(names: tuple[str, ...]) -> int:
        return min(each.least for each in NINE.among(names))

    best = max(combinations(USUAL, number), key=least)  # the first of several
    assert chosen(number) == best


@settings(max_examples=60, deadline=None)
@given(
    apart=st.lists(st.integers(0, 6), min_size=15, max_size=15),
    enemy=st.lists(st.integers(0, 6), min_size=6, max_size=6),
    number=st.integers(1, 6),
)
def test_the_fast_choice_is_the_slow_one(apart: list[int], enemy: list[int], number: int) -> None:
    names = "abcdef"
    values = dict(zip(("".join(two) for two in combinations(names, 2)), apart, strict=True))
    values |= {f"{name}z": value for name, value in zip(names, enemy, strict=True)}
    known = differences(values)

    def least(taken: tuple[str, ...]) -> int:
        among = [values["".join(two)] for two in combinations(taken, 2)]
        return min([*among, *(values[f"{name}z"] for name in taken)])

    best = max(combinations(names, number), key=least)
    assert chosen(number, known, candidates=tuple(names), enemy=("z",)) == best


def test_a_set_that_taking_the_furthest_each_time_misses_is_found() -> None:
    apart = "2245512415524242122225443251"
    names = ["".join(two) for two in combinations("abcdefgh", 2)]
    known = differences(dict(zip(names, map(int, apart), strict=True)))
    found = best_colours(ColourQuestion(candidates=tuple("abcdefgh"), number=4), known)
    assert found is not None
    assert (found.least, found.certainty) == (3, Exact())


def test_a_colour_of_the_enemys_is_taken_where_there_is_no_other() -> None:
    line = on_a_line({"a": 0, "b": 100})
    asked = ColourQuestion(candidates=("a",), number=1, enemy=("a", "b"))
    found = best_colours(asked, line)
    assert found is not None
    assert found.colours == ("a",)


def test_what_is_kept_is_reckoned_with_and_not_taken_again() -> None:
    line = on_a_line({"a": 0, "b": 1_000, "c": 2_000, "d": 4_000})
    asked = ColourQuestion(candidates=("a", "b", "d"), number=1, kept=("c",))
    found = best_colours(asked, line)
    assert found is not None
    assert (found.colours, found.least) == (("a",), 2_000)


def test_a_colour_that_the_enemy_bears_is_no_different_from_his() -> None:
    line = on_a_line({"a": 0, "b": 100})
    asked = ColourQuestion(candidates=("a", "b"), number=1, enemy=("a",))
    found = best_colours(asked, line)
    assert found is not None
    assert (found.colours, found.least) == (("b",), 100)


def test_one_colour_alone_differs_from_nothing() -> None:
    found = best_colours(ColourQuestion(candidates=("a", "b"), number=1), differences({"ab": 5}))
    assert found is not None
    assert (found.colours, found.closest, found.least) == (("a",), None, None)


def test_none_and_too_many() -> None:
    nothing = best_colours(ColourQuestion(candidates=("a",), number=0), Differences())
    assert nothing is not None
    assert nothing.colours == ()
    assert best_colours(ColourQuestion(candidates=("a",), number=2), Differences()) is None


def many(number: int) -> Differences:
    """Colours that differ in an order without sense, always the same."""
    names = [f"c{place}" for place in range(number)]
    return differences_of(
        pair(one, other, usual=(int(one[1:]) * 7_919 + int(other[1:]) * 104_729) % 4_001)
        for one, other in combinations(names, 2)
    )


def test_where_the_steps_are_used_up_it_says_what_is_out_of_reach() -> None:
    known, names = many(24), tuple(f"c{place}" for place in range(24))
    asked = ColourQuestion(candidates=names, number=7)
    exact = best_colours(asked, known)
    hurried = best_colours(asked, known, most_steps=1)
    assert exact is not None
    assert hurried is not None
    assert exact.certainty == Exact()
    assert isinstance(hurried.certainty, Within)
    assert exact.least is not None
    assert hurried.least is not None
    assert hurried.least <= exact.least <= hurried.certainty.bound


@pytest.mark.unmeasured
def test_twelve_of_sixty_are_proved_within_the_steps() -> None:
    names = tuple(f"c{place}" for place in range(60))
    found = best_colours(ColourQuestion(candidates=names, number=12), many(60))
    assert found is not None
    assert isinstance(found.certainty, Exact | Within)
    assert len(found.colours) == 12


def test_a_colour_that_may_stay_stays_where_it_is() -> None:
    assert in_place(["red", "blue", "green"], ["blue", "black", "green"]) == (
        "black",
        "blue",
        "green",
    )
    assert in_place([], ["a", "b"]) == ("a", "b")
    assert in_place(["b", "b", "a"], ["a", "b"]) == ("b", "a")
    assert in_place(["x", "", "a"], ["a", "b", "c", "d"]) == ("b", "c", "a", "d")
