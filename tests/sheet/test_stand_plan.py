"""One stand from above: what is drawn is what the sums say, at the scale that is said."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.establishment import establishment
from paradestate.core.stand_account import StandAccount, stand_accounts
from paradestate.sheet.stand_plan import (
    GREATEST_SCALE,
    full_size_line,
    full_size_plan,
    letters_of,
    page_scale,
    plan_words,
    stand_plan,
)
from paradestate.sheet.svg import Drawing
from tests.forces import marenz, partial_force_from
from tests.sheet.shapes import numbers, root_of, shapes, words_in

FIGURES = (
    "figures: {rifleman: {footprint: 6 mm}, horse: {footprint: 5 x 14 mm}, x: {},"
    " giant: {footprint: 90 mm}}"
)


def account_of(stand: str) -> StandAccount:
    force = partial_force_from(
        FIGURES, f"stands: {{a: {{{stand}}}}}", "formations: {top: {parts: {a: 1}}}"
    )
    (account,) = stand_accounts(force, None, findings=())
    return account


def plan_of(stand: str, *, scale: float = 4) -> Drawing:
    made = stand_plan(account_of(stand), width=358, scale=scale)
    assert made is not None
    return made


def full(stand: str) -> Drawing:
    made = full_size_plan(account_of(stand))
    assert made is not None
    return made


def test_a_rectangle_and_its_figures_are_drawn_to_scale() -> None:
    made = plan_of("base: 40 x 20 mm, figures: {rifleman: 4}")
    base, edge = shapes(made, "rect")
    assert numbers(base, "width", "height") == [160, 80]
    assert numbers(edge, "width", "height") == [152, 72], "a millimetre on each side"
    figures = shapes(made, "circle")
    assert [numbers(figure, "r") for figure in figures] == [[12]] * 4
    left, top = numbers(base, "x", "y")
    middles = [left + 4 * (each + 3) for each in (3.2, 12.4, 21.6, 30.8)]
    assert [numbers(figure, "cx", "cy") for figure in figures] == [
        [pytest.approx(middle, abs=0.01), top + 40] for middle in middles
    ]
    assert words_in(made) == ["front", "40 mm", "20 mm", "50 mm"]


def test_a_disc_has_one_measure() -> None:
    made = plan_of("base: 30 mm disc, figures: {rifleman: 2}")
    assert numbers(shapes(made, "circle")[0], "r") == [60]
    assert words_in(made) == ["front", "30 mm disc", "50 mm"]


def test_inches_keep_their_exact_millimetres() -> None:
    made = plan_of("base: 1.25 x 1 in, figures: {rifleman: 3}")
    assert words_in(made)[1:3] == ["31.75 mm", "25.4 mm"]
    assert numbers(shapes(made, "rect")[0], "width", "height") == [127, 101.6]


def test_on_paper_a_millimetre_is_a_millimetre() -> None:
    made = full("base: 40 x 20 mm, figures: {rifleman: 4}")
    root = root_of(made)
    width, height = root.get("viewBox", "").split()[2:]
    assert (root.get("width"), root.get("height")) == (f"{width}mm", f"{height}mm")
    assert numbers(shapes(made, "rect")[0], "width", "height") == [40, 20]
    assert [numbers(figure, "r") for figure in shapes(made, "circle")] == [[3]] * 4


def test_the_line_to_be_measured_is_100_mm_long() -> None:
    made = full_size_line()
    assert "h100.00" in shapes(made, "path")[0].get("d", "")
    assert root_of(made).get("width") == "101mm"


def test_several_kinds_have_letters_and_a_telltale_a_solid_disc() -> None:
    account = account_of("base: 60 x 30 mm, figures: {rifleman: 2, horse: 1}, shows: [horse]")
    assert letters_of(account) == {"rifleman": "a", "horse": "b"}
    made = stand_plan(account, width=358, scale=4)
    assert made is not None
    assert sorted(words_in(made)[1:4]) == ["a", "a", "b"]
    assert [float(each.get("r", "0")) for each in shapes(made, "circle", fill="var(--ink)")] == [8]
    assert [each.text for each in shapes(made, "text", fill="var(--sheet)")] == ["b"]


def test_one_kind_needs_no_letter_and_small_figures_have_no_room_for_one() -> None:
    alone = plan_of("base: 40 x 20 mm, figures: {rifleman: 4}, shows: [rifleman]")
    assert [float(each.get("r", "0")) for each in shapes(alone, "circle", fill="var(--ink)")] == [
        6
    ] * 4
    small = plan_of("base: 40 x 20 mm, figures: {rifleman: 2, horse: 1}", scale=2)
    assert words_in(small) == ["front", "40 mm", "20 mm", "50 mm"]


def test_figures_without_a_place_are_drawn_beside_the_stand() -> None:
    made = plan_of("base: 40 x 20 mm, figures: {rifleman: 12, horse: 1}")
    assert len(shapes(made, "circle", stroke="var(--red)")) == 4
    assert "no place found for 4" in words_in(made)
    wide = plan_of("base: 40 x 20 mm, figures: {giant: 2}")
    assert shapes(wide, "circle", stroke="var(--red)") == [], "too wide to be drawn beside it"
    assert "no place found for 2" in words_in(wide)


def test_on_paper_there_is_room_for_the_words_beside_a_small_stand() -> None:
    width = root_of(full("base: 3 x 3 mm, figures: {rifleman: 1}")).get("width", "")
    assert float(width.removesuffix("mm")) >= 30


def test_a_model_without_a_base_is_drawn_in_its_own_outline() -> None:
    made = plan_of("base: none, footprint: 15 x 34 mm, figures: {rifleman: 1}")
    (model,) = shapes(made, "rect")
    assert numbers(model, "width", "height") == [60, 136]
    assert model.get("fill") == "var(--tint)"
    assert "model without a base" in made.words


def test_without_a_size_there_is_no_drawing() -> None:
    account = account_of("base: none, figures: {rifleman: 1}")
    assert stand_plan(account, width=358, scale=4) is None
    assert full_size_plan(account) is None


def test_no_line_is_drawn_for_an_edge_that_is_none_or_meets_itself() -> None:
    assert len(shapes(plan_of("base: 40 x 20 mm, edge: 0 mm, figures: {rifleman: 1}"), "rect")) == 1
    tiny = "base: 4 x 4 mm, edge: 2 mm, figures: {rifleman: 1}"
    assert len(shapes(plan_of(tiny), "rect")) == 1


def test_the_words_of_a_drawing() -> None:
    assert plan_words(account_of("base: 40 x 20 mm, figures: {rifleman: 12}")) == (
        "a from above, a stand of 40 x 20 mm, with 10 riflemen on their places; "
        "no place was found for 2 riflemen. Its front is at the top."
    )


def test_the_words_under_a_narrow_stand_begin_at_its_left() -> None:
    made = plan_of("base: 3 x 30 mm")
    assert [each.get("text-anchor") for each in shapes(made, "text")][1] == "start"


def test_all_stands_of_the_example_are_drawn_at_one_scale() -> None:
    made, _ = establishment(marenz())
    accounts = stand_accounts(marenz(), made, findings=())
    outlines = [each.stand.outline for each in accounts if each.stand.outline]
    scale = page_scale(outlines, width=358)
    for account in accounts:
        drawn = stand_plan(account, width=358, scale=scale)
        assert drawn is not None
        assert f"h{50 * scale:.2f}" in shapes(drawn, "path")[-1].get("d", "")


@given(
    width=st.fractions(1, 900, max_denominator=20),
    depth=st.fractions(1, 900, max_denominator=20),
    scale=st.floats(0.1, 20),
)
def test_whatever_its_size_a_stand_stays_on_its_drawing(
    *, width: Fraction, depth: Fraction, scale: float
) -> None:
    made = plan_of(f"base: {float(width):.2f} x {float(depth):.2f} mm", scale=scale)
    across, down = (float(each) for each in root_of(made).get("viewBox", "").split()[2:])
    left, top, wide, deep = numbers(shapes(made, "rect")[0], "x", "y", "width", "height")
    assert left >= 0
    assert left + wide <= across - 14
    assert top >= 0
    assert top + deep <= down
    assert down <= 2 * across
    assert wide / float(f"{float(width):.2f}") <= min(scale, GREATEST_SCALE) * 1.01 + 0.01
