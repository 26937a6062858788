"""Legal forces before and after a change, as two lines of steps."""

from fractions import Fraction

import pytest

from paradestate.core.support.comparison import LevelChange
from paradestate.sheet.force_frame import AXIS, PHONE, STEPS, STRIP_HEIGHT, TOP, WIDE
from paradestate.sheet.list_change_map import (
    DASH,
    change_key,
    change_map_words,
    list_change_map,
    share_gained,
)
from paradestate.sheet.svg import Drawing
from tests.sheet.reading import root_of, texts_of, texts_on_others, texts_outside


def level(points: int, *, old: int, new: int, both: int | None) -> LevelChange:
    return LevelChange(points=points, old=old, new=new, both=both, old_best=None, new_best=None)


LEVELS = (
    level(3, old=4, new=4, both=4),
    level(4, old=10, new=6, both=6),
    level(5, old=20, new=18, both=12),
)
MANY = tuple(level(n, old=10**n, new=10**n // 2, both=10**n // 2) for n in range(1, 30))


def drawn(levels: tuple[LevelChange, ...], *, width: int = WIDE) -> Drawing:
    made = list_change_map(levels, marked=levels[1].points, width=width)
    assert made is not None
    return made


def patches(made: Drawing, kind: str) -> list[tuple[float, float]]:
    """Breadth and height of what is filled with a pattern."""
    return [
        (float(each.get("width", "")), float(each.get("height", "")))
        for each in root_of(made).iter("rect")
        if each.get("fill", "").startswith(f"url(#{kind}-")
    ]


def test_what_is_lost_is_hatched_and_what_is_gained_dotted_by_their_numbers() -> None:
    made = drawn(LEVELS)
    unit = STEPS / 20
    (first, second) = patches(made, "lost")
    (dotted,) = patches(made, "gained")
    assert first[1] == pytest.approx(4 * unit, abs=0.1)
    assert second[1] == pytest.approx(8 * unit, abs=0.1)
    assert dotted[1] == pytest.approx(6 * unit, abs=0.1)
    assert second[0] == pytest.approx(first[0] / 2, abs=0.1)
    assert dotted[0] == second[0]


def test_before_is_dashed_and_now_is_solid() -> None:
    lines = [each for each in root_of(drawn(LEVELS)).iter("path") if each.get("fill") == "none"]
    assert [(each.get("stroke"), each.get("stroke-dasharray")) for each in lines] == [
        ("var(--pencil)", None),
        ("var(--ink)", DASH),
    ]
    assert lines[0].get("d") != lines[1].get("d")


def test_a_strip_stands_below_only_for_what_there_is() -> None:
    def high(made: Drawing) -> float:
        return float(root_of(made).get("viewBox", "").split(" ")[3])

    bare = TOP + STEPS + AXIS
    assert high(drawn(LEVELS)) == bare + 2 * STRIP_HEIGHT
    assert high(drawn(LEVELS[:2])) == bare + STRIP_HEIGHT
    same = (level(3, old=4, new=4, both=4), level(4, old=5, new=5, both=5))
    assert high(drawn(same)) == bare
    unknown = (level(3, old=4, new=4, both=None), level(4, old=5, new=9, both=None))
    assert high(drawn(unknown)) == bare
    assert patches(drawn(unknown), "gained") == []


def test_the_sentence_says_the_ends_and_the_marked_level() -> None:
    assert change_map_words(LEVELS, marked=4) == (
        "Legal forces by points, before and now: 4 and now 4 at 3 points; 10 and now 6 at 4 "
        "points, 4 lost; 20 and now 18 at 5 points, 8 lost and 6 gained."
    )


def test_shares_gained_are_of_what_is_legal_now() -> None:
    assert share_gained(LEVELS[2]) == Fraction(1, 3)
    assert share_gained(level(3, old=4, new=0, both=0)) is None
    assert share_gained(level(3, old=4, new=4, both=None)) is None


@pytest.mark.parametrize("width", [PHONE, WIDE])
@pytest.mark.parametrize("levels", [LEVELS, MANY, LEVELS[:2]])
def test_no_text_lies_on_another_or_runs_out(levels: tuple[LevelChange, ...], width: int) -> None:
    made = drawn(levels, width=width)
    assert texts_outside(made) == []
    assert texts_on_others(made) == []


def test_a_scale_by_tens_is_used_only_where_levels_are_far_apart() -> None:
    near = tuple(level(n, old=1000 * n, new=900 * n, both=900 * n) for n in range(1, 15))
    assert "15,000" in texts_of(drawn(near))
    far = tuple(level(n, old=8**n, new=8**n - 1, both=8**n - 1) for n in range(1, 5))
    assert {"10", "100", "1,000", "10,000"} <= set(texts_of(drawn(far)))


def test_without_a_level_there_is_no_map() -> None:
    assert list_change_map((), marked=0) is None


def test_the_key_has_a_piece_for_each_way_of_drawing() -> None:
    assert [words for _, words in change_key()] == [
        "before",
        "now, with its numbers",
        "lost",
        "gained",
    ]
