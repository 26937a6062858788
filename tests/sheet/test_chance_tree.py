"""What may turn up, as bands as thick as their chance."""

from fractions import Fraction

import pytest

from paradestate.core.support.turnout import PlanOdds
from paradestate.sheet.chance_tree import PHONE, THICK, WIDE, chance_tree
from paradestate.sheet.svg import Drawing
from tests.sheet.reading import root_of, texts_of, texts_on_others, texts_outside
from tests.sheet.turnouts import TANKS, many, marenz, odds, turnout

WIDTHS = (PHONE, 358, WIDE, 1000)
GUNS = {2: Fraction(1, 3), 1: Fraction(1, 2), 0: Fraction(1, 6)}


def crowded() -> PlanOdds:
    names = ("guns of the brigade", "guns of the division", "armoured cars", "light tanks")
    return many(dict.fromkeys(names, GUNS), cost=22)


def thicknesses(made: Drawing) -> list[float]:
    """Of the bands, in the order in which they are drawn."""
    found = []
    for path in root_of(made).iter("path"):
        piece = path.get("d", "").split("V")
        found.append(float(piece[1].split("H")[0]) - float(piece[0].split("H")[0].split(" ")[-1]))
    return found


@pytest.mark.parametrize("width", WIDTHS)
def test_the_tree_of_marenz_tells_each_end_with_its_chance(width: int) -> None:
    made = chance_tree(marenz(), width=width)
    said = texts_of(made)
    for text in ("13/27, 48 in 100", "Everything asked for", "13/54, 24 in 100", "5/18, 28 in 100"):
        assert text in said
    assert made.words == (
        "What may turn up: everything asked for: 13/27, 48 in 100; too few points: fewer than 17: "
        "5/18, 28 in 100; 2 x machine-gun platoon; 12 points free again: 13/54, 24 in 100."
    )


@pytest.mark.parametrize("width", WIDTHS)
def test_every_band_is_as_thick_as_its_chance(width: int) -> None:
    chances = (Fraction(13, 27), Fraction(13, 54), Fraction(13, 18), Fraction(5, 18))
    assert thicknesses(chance_tree(marenz(), width=width)) == pytest.approx(
        [THICK * float(chance) for chance in chances], abs=0.11
    )


def test_bands_leave_a_branch_side_by_side_and_fill_it() -> None:
    made = chance_tree(marenz())
    begins = [float(p.get("d", "").split("C")[0].split(" ")[1]) for p in root_of(made).iter("path")]
    whole, part, enough, short = begins
    first, trunk = (float(bar.get("y", "")) for bar in root_of(made).iter("rect"))
    assert (whole, enough) == pytest.approx((first, trunk), abs=0.1)
    assert part - whole == pytest.approx(THICK * 13 / 27, abs=0.11)
    assert short - enough == pytest.approx(THICK * 13 / 18, abs=0.11)


def test_a_branch_that_is_thick_at_one_end_stays_inside_the_drawing() -> None:
    for likely in (Fraction(1, 100), Fraction(99, 100)):
        rolls = {"scouts": {1: likely, 0: 1 - likely}}
        made = chance_tree(many(rolls, cost=13))
        high = float(root_of(made).get("viewBox", "").split(" ")[3])
        for bar in root_of(made).iter("rect"):
            assert float(bar.get("y", "")) >= 0
            assert float(bar.get("y", "")) + float(bar.get("height", "")) <= high


def test_a_wide_drawing_tells_on_each_band_what_it_settles() -> None:
    said = texts_of(chance_tree(marenz(), width=WIDE))
    for text in ("17 or more points", "13/18", "2 x light tanks", "2/3", "no light tanks", "1/3"):
        assert text in said
    assert "2 x light tanks" not in texts_of(chance_tree(marenz(), width=PHONE))


def test_a_band_without_room_for_words_still_tells_its_share() -> None:
    said = texts_of(chance_tree(many({"guns of the division": GUNS}, cost=13), width=WIDE))
    assert "1 of 2 x guns of the division" not in said
    assert {"1/2", "1/3"} <= set(said)


def test_only_what_comes_whole_is_solid_and_too_few_points_are_dashed() -> None:
    bands = list(root_of(chance_tree(marenz())).iter("path"))
    assert [band.get("fill") for band in bands] == [
        "var(--ink)",
        "var(--sheet)",
        "var(--tint)",
        "none",
    ]
    assert [bool(band.get("stroke-dasharray")) for band in bands] == [False, False, False, True]


@pytest.mark.parametrize("width", WIDTHS)
def test_no_text_runs_out_of_the_drawing_or_lies_on_another(width: int) -> None:
    for asked in (marenz(), crowded()):
        made = chance_tree(asked, width=width)
        assert not texts_outside(made)
        assert not texts_on_others(made)


def test_a_long_chance_is_told_in_hundredths_where_it_has_no_room() -> None:
    rare = {"scouts": {1: Fraction(1, 997), 0: Fraction(996, 997)}}
    asked = many(rare | {"guns": GUNS}, cost=13)
    assert "1/2991, less than 1 in 100" in texts_of(chance_tree(asked, width=1000))
    assert "less than 1 in 100" in texts_of(chance_tree(asked, width=PHONE))


def test_of_many_ways_eight_ends_are_drawn_and_the_rest_is_told_together() -> None:
    made = chance_tree(crowded())
    assert sum(" in 100" in text for text in texts_of(made)) <= 8
    assert "otherwise: " in made.words


@pytest.mark.parametrize(("cost", "word"), [(13, "Everything asked for"), (30, "Too few points")])
def test_what_is_certain_is_one_band(cost: int, word: str) -> None:
    made = chance_tree(odds((turnout(Fraction(1), TANKS),), cost=cost, rolled=()))
    assert len(list(root_of(made).iter("path"))) == 1
    assert "always" in texts_of(made)
    assert any(text.startswith(word) for text in texts_of(made))
