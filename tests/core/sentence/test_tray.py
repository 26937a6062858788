"""Trays in words."""

from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.core.sentence.tray import (
    barred_sentence,
    case_words,
    certainty_sentence,
    plan_sentences,
    row_sentence,
    row_title,
    thing_words,
    too_low_sentence,
    tray_words,
)
from paradestate.core.tray.laid import laid
from paradestate.core.tray.moving import Bar, Barred
from paradestate.core.tray.plan import laid_out
from tests.tray_things import alike, battalion, case, lies, thing


def test_a_plan_says_how_many_trays_and_how_sure_that_is() -> None:
    whole = laid_out([case("case 1"), case("case 2")], battalion())
    assert list(plan_sentences(whole)) == [
        "45 stands in 1 tray.",
        "Exact: fewer trays don't hold them.",
    ]
    assert certainty_sentence(laid_out([case()], [])) == "Exact: there is nothing to lay."
    cases = [case(f"{at}", inside=(100, 100), gap=0) for at in range(2)]
    two = laid_out(cases, [thing("a", 60), thing("b", 60)])
    assert certainty_sentence(two) == (
        "Within: the area alone needs 1 tray, so at most 1 tray too many."
    )


def test_what_is_laid_by_hand_is_said_to_be() -> None:
    plan = replace(laid_out([case()], alike(1, 40, 20)), is_by_hand=True)
    assert list(plan_sentences(plan))[-1] == "Laid by hand."


def test_what_is_torn_or_left_is_said() -> None:
    small = [case("1", inside=(82, 20)), case("2", inside=(82, 20))]
    assert list(plan_sentences(laid_out(small, alike(4, 40, 20, company="No 1 Company"))))[2:] == [
        "No 1 Company lies in more than one tray."
    ]
    both = [*alike(2, 60, 10, company="a"), *alike(2, 60, 10, company="b", start="t")]
    cases = [case("1", inside=(60, 22)), case("2", inside=(60, 22))]
    assert len(list(plan_sentences(laid_out(cases, both)))) == 2
    left = laid_out(small, alike(5, 40, 20))
    assert certainty_sentence(left) == "1 stand has no place; the area alone needs 3 trays."
    more = laid_out(small, alike(6, 40, 20))
    assert certainty_sentence(more).startswith("2 stands have no place")


def test_several_torn_companies_lie() -> None:
    cases = [case(f"{at}", inside=(40, 20)) for at in range(4)]
    things = [*alike(2, 40, 20, company="a"), *alike(2, 40, 20, company="b", start="t")]
    assert list(plan_sentences(laid_out(cases, things)))[2] == "a and b lie in more than one tray."


def test_a_tray_and_its_rows_are_named() -> None:
    tray = laid_out([case("case 1", height=38)], battalion()).trays[0]
    assert case_words(tray.case) == "Case 1, 300 x 200 mm inside, 38 mm clear"
    assert tray_words(tray) == "200 mm of 200 taken in 6 rows"
    titles = [row_title(row, number=at) for at, row in enumerate(tray.rows, start=1)]
    assert (titles[0], titles[4], titles[5]) == (
        "Row 1: No 1",
        "Row 5",
        "Row 6, staggered by 30 mm",
    )


def test_alike_names_are_drawn_together() -> None:
    names = ["c / 1 Platoon / 1 Section", "c / 1 Platoon / 2 Section", "c / Mortar", "1 Truck"]
    things = [thing(name, 40, 20, company="c") for name in names[:3]] + [thing(names[3], 15, 34)]
    row = laid(case(), [lies(one, across=at * 42, deep=0) for at, one in enumerate(things)]).rows[0]
    assert row_sentence(row) == "c, 1 Platoon: Section 1 and 2; c: Mortar; Truck 1"
    own = laid(case(), row.lying[:3]).rows[0]
    assert row_sentence(own) == "1 Platoon: Section 1 and 2; Mortar"
    assert thing_words(things[0]) == "c, 1 Platoon, 1 Section"


@pytest.mark.parametrize(
    ("bar", "words"),
    [
        (Bar.TOO_HIGH, "flag is 44 mm; Case 2 has 38 clear."),
        (Bar.ROW_TOO_WIDE, "Row 3 of Case 2 would be 316 mm wide; it has 300."),
        (Bar.TRAY_TOO_SHALLOW, "Case 2 would be 316 mm deep in rows; it has 200."),
        (Bar.NOT_ALIKE, "flag isn't of the size of that place, and nothing there can close up."),
        (Bar.NO_ROOM, "Case 2 has no free place of a disc of 30 mm."),
    ],
)
def test_each_rule_is_said_with_its_numbers(bar: Bar, words: str) -> None:
    flag = thing("flag", 30, height="44")
    barred = Barred(
        bar=bar, thing=flag, case=case("case 2", height=38), row=3, needed=Fraction(316)
    )
    assert barred_sentence(barred) == words


def test_only_known_heights_are_named() -> None:
    flag = thing("flag", 30, height="44")
    assert too_low_sentence(flag, [case("open"), case("low", height=38)]) == (
        "flag is 44 mm; Low has 38 clear."
    )
    assert too_low_sentence(thing("a", 30), [case("low", height=38)]) == "a; Low has 38 clear."
