"""Legal forces by points, and the share that can be fielded."""

from fractions import Fraction
from itertools import accumulate

import pytest

from paradestate.core.support.force_map import LevelForces
from paradestate.sheet.force_frame import PHONE, STEPS, STRIP, WIDE
from paradestate.sheet.force_map import force_map, force_rows
from paradestate.sheet.svg import Drawing
from tests.sheet.reading import root_of, texts_of, texts_on_others, texts_outside

WIDTHS = (PHONE, WIDE, 1000)


def levels(*spending_all: int, first: int = 0) -> tuple[LevelForces, ...]:
    """Levels from the forces that spend all of each."""
    return tuple(
        LevelForces(points=first + place, legal=legal, spending_all=spending)
        for place, (spending, legal) in enumerate(
            zip(spending_all, accumulate(spending_all), strict=True)
        )
    )


# A costs 2 (up to 3), B costs 3 (up to 2), C costs 5 (needs B): 10 forces at 8 points, of which
# those with at most two A, one B and no C can be fielded.
SMALL = levels(1, 0, 1, 1, 1, 1, 3, 1, 1)
FIELDABLE = dict(enumerate((1, 1, 2, 3, 4, 5, 5, 6, 6)))
MANY = levels(*(3**points for points in range(60)))


def drawn(
    given: tuple[LevelForces, ...],
    *,
    fieldable: dict[int, int] | None = None,
    marked: int | None = None,
    width: int = WIDE,
) -> Drawing:
    made = force_map(given, fieldable=fieldable, marked=marked, width=width)
    assert made is not None
    return made


def heights(path: str, *, floor: float) -> list[float]:
    """How high the steps of a path are."""
    return [floor - float(piece.split("H")[0]) for piece in path.split("V")[1:-1]]


def outlines(made: Drawing) -> list[str]:
    return [each.get("d", "") for each in root_of(made).iter("path") if "Z" in each.get("d", "")]


@pytest.mark.parametrize("width", WIDTHS)
def test_steps_are_as_high_as_the_forces_are_many(width: int) -> None:
    (steps,) = outlines(drawn(SMALL, width=width))
    floor = float(steps.split("V")[0].split(" ")[1])
    unit = STEPS / 10
    assert heights(steps, floor=floor) == pytest.approx(
        [unit * each.legal for each in SMALL], abs=0.1
    )


@pytest.mark.parametrize("width", WIDTHS)
def test_the_share_that_can_be_fielded_is_hatched_on_a_scale_of_its_own(width: int) -> None:
    _, share = outlines(drawn(SMALL, fieldable=FIELDABLE, width=width))
    floor = float(share.split("V")[0].split(" ")[1])
    assert heights(share, floor=floor)[-1] == pytest.approx(STRIP * 0.6, abs=0.1)
    assert heights(share, floor=floor)[0] == pytest.approx(STRIP, abs=0.1)


def test_of_many_forces_a_scale_by_tens_is_drawn() -> None:
    (steps,) = outlines(drawn(levels(1, 9, 90, 900)))
    floor = float(steps.split("V")[0].split(" ")[1])
    up = heights(steps, floor=floor)
    assert up == pytest.approx([STEPS * share / 4 for share in (1, 2, 3, 4)], abs=0.1)
    assert {"0", "1", "10", "100", "1,000"} <= set(texts_of(drawn(levels(1, 9, 90, 900))))


@pytest.mark.parametrize("width", WIDTHS)
def test_the_marked_level_always_has_its_number(width: int) -> None:
    made = drawn(MANY, marked=17, width=width)
    (legal,) = [level.legal for level in MANY if level.points == 17]
    marked = [each.text for each in root_of(made).iter("text") if "pen" in each.get("class", "")]
    assert sorted(filter(None, marked)) == sorted([f"{legal:,}", "17"])


def test_numbers_stand_at_the_steps_where_there_is_room() -> None:
    said = texts_of(drawn(SMALL, fieldable=FIELDABLE, marked=8, width=1000))
    assert [text for text in said if text in {"10", "9", "8"}].count("9") == 1
    assert {"100", "60", "all", "none", "legal forces", "points left"} <= set(said)
    assert "67" not in texts_of(drawn(SMALL, fieldable=FIELDABLE, marked=8, width=PHONE))
    assert "60" in texts_of(drawn(SMALL, fieldable=FIELDABLE, marked=8, width=PHONE))


def test_nearly_none_and_nearly_all_are_not_told_as_none_and_all() -> None:
    many = levels(1000, 1000)
    said = texts_of(drawn(many, fieldable={0: 1, 1: 1999}, width=WIDE))
    assert {"<1", ">99"} <= set(said)


def test_the_sentence_tells_the_ends_and_the_marked_level() -> None:
    assert drawn(SMALL, fieldable=FIELDABLE, marked=6).words == (
        "Legal forces by points: 1 at 0 points, 1 of them spend all and 100 in 100 can be fielded; "
        "8 at 6 points, 3 of them spend all and 63 in 100 can be fielded; "
        "10 at 8 points, 1 of them spend all and 60 in 100 can be fielded."
    )


def test_levels_without_a_legal_force_stand_on_the_floor() -> None:
    given = levels(0, 0, 300, first=4)
    made = drawn(given, fieldable={4: 0, 5: 0, 6: 150}, marked=4)
    assert made.words == (
        "Legal forces by points: 0 at 4 points; 300 at 6 points, 300 of them spend all and "
        "50 in 100 can be fielded."
    )
    steps, _ = outlines(made)
    floor = float(steps.split("V")[0].split(" ")[1])
    assert heights(steps, floor=floor)[:2] == [0, 0]


def test_no_force_at_all_is_drawn_too() -> None:
    assert drawn(levels(0, 0)).words == "Legal forces by points: 0 at 0 points; 0 at 1 point."


def test_without_a_level_there_is_no_drawing() -> None:
    assert force_map(()) is None


@pytest.mark.parametrize("width", WIDTHS)
def test_no_text_runs_out_of_the_drawing_or_lies_on_another(width: int) -> None:
    for given in (SMALL, MANY, levels(*([10**40] * 200)), levels(1), levels(0, 300, first=98)):
        halves = {level.points: level.legal // 2 for level in given}
        made = drawn(given, fieldable=halves, marked=given[-1].points, width=width)
        assert not texts_outside(made)
        assert not texts_on_others(made)


def test_the_table_has_the_share_only_where_it_was_counted() -> None:
    rows = force_rows(SMALL, fieldable=FIELDABLE)
    assert rows[8].share == Fraction(6, 10)
    assert {row.share for row in force_rows(SMALL)} == {None}
    gap = force_rows(SMALL, fieldable={8: 6})
    assert (gap[0].fieldable, gap[0].share, gap[8].fieldable) == (None, None, 6)
