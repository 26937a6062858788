"""Platoons on the width of the table."""

import pytest

from paradestate.core.abreast import Abreast, bodies_in_line
from paradestate.core.establishment import establishment
from paradestate.core.force import Force
from paradestate.core.frontage import body_fronts
from paradestate.sheet.ground_strip import DESK, MIDDLE, MOST_DRAWN, PHONE, ground_strip
from paradestate.sheet.svg import Drawing
from tests.forces import force_from, marenz
from tests.sheet.shapes import numbers, root_of, shapes, words_in

OPPONENT = "opponent: {front: 2 x 50 mm, gap: 20 mm}"
TABLE = "table: {size: 1182 x 900 mm}"


def lines(force: Force) -> dict[str, Abreast]:
    made, _ = establishment(force)
    assert made is not None
    found = bodies_in_line(force, made, fronts=body_fronts(force, made))
    return {each.name: each for each in found}


def force_of(platoons: int, *more: str, stands: int = 2) -> Abreast:
    force = force_from(
        "stands: {a: {base: 40 x 20 mm}}",
        f"formations: {{top: {{parts: {{p: {platoons}}}}},"
        f" p: {{echelon: platoon, parts: {{a: {stands}}}}}}}",
        *more,
    )
    return lines(force)["Test"]


def stands_in(drawing: Drawing) -> list[list[float]]:
    return [numbers(each, "x", "width") for each in shapes(drawing, "rect", height="20")]


@pytest.mark.parametrize("width", [DESK, MIDDLE, PHONE])
def test_a_company_of_the_example_is_to_scale_on_every_width(width: int) -> None:
    made = ground_strip(lines(marenz())["No 1 Company"], width=width)
    millimetre = (width - 2) / 1800
    assert stands_in(made) == [
        [
            pytest.approx(1 + 60 * place * millimetre, abs=0.01),
            pytest.approx(40 * millimetre, abs=0.01),
        ]
        for place in range(6)
    ]
    assert words_in(made) == ["yours: 3 platoons", "340 mm", "the table, 1800 mm"]
    assert made.words == ("No 1 Company: 3 platoons in line, 340 mm of a table 1800 mm wide.")


def test_the_opponent_stands_below_at_the_same_scale() -> None:
    made = ground_strip(force_of(2, TABLE, OPPONENT))
    scale = (DESK - 2) / 1182
    ours, his = stands_in(made)[:4], stands_in(made)[4:]
    assert [width for _, width in ours] == [pytest.approx(40 * scale, abs=0.01)] * 4
    assert [width for _, width in his] == [pytest.approx(50 * scale, abs=0.01)] * 4
    assert "his: 2 platoons as well" in words_in(made)
    assert made.words.endswith("as many of the opponent's, 260 mm.")


def test_without_a_table_the_longer_side_takes_the_width() -> None:
    made = ground_strip(force_of(2, OPPONENT))
    assert words_in(made) == ["yours: 2 platoons", "220 mm", "his: 2 platoons as well", "260 mm"]
    last = stands_in(made)[-1]
    assert sum(last) == pytest.approx(DESK - 1, abs=0.05)


def test_what_has_no_room_on_the_table_is_an_outline_in_red() -> None:
    made = ground_strip(force_of(2, "table: {size: 150 x 150 mm}"))
    assert len(shapes(made, "rect", stroke="var(--red)", fill="none")) == 2
    assert len(shapes(made, "rect", fill="var(--ink)")) == 2


def test_of_too_many_stands_only_platoons_are_drawn_and_of_too_many_platoons_one_block() -> None:
    many = ground_strip(force_of(10, stands=MOST_DRAWN // 10 + 1))
    assert len(stands_in(many)) == 10
    more = ground_strip(force_of(MOST_DRAWN + 1))
    assert len(stands_in(more)) == 1
    assert len(shapes(more, "path")) == 1, "the measure alone"
    assert float(root_of(more).get("viewBox", "").split()[3]) < 200
