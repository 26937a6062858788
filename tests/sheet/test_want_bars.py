"""Want, have and lack of each figure kind as bars."""

from itertools import pairwise

import pytest

from paradestate.core.gap import Gap, PackFill, gaps
from paradestate.core.order import priced
from paradestate.sheet.lettering import width_of
from paradestate.sheet.svg import Drawing, Element
from paradestate.sheet.want_bars import MIDDLE, PHONE, WIDE, fills_words, want_bars
from tests.orders import marenz_problem
from tests.sheet.reading import root_of, text_of, texts_of

WIDTHS = (WIDE, MIDDLE, PHONE)


def example() -> tuple[Gap, ...]:
    asked = marenz_problem()
    order = priced(asked, {("South", "S1"): 3, ("South", "S3"): 1})
    wanted = {"rifleman": 101, "mortar crew": 12, "officer": 7, "signaller": 3}
    filled = {"rifleman": 51, "mortar crew": 3, "officer": 3, "signaller": 3}
    return gaps(wanted, filled, problem=asked, order=order)


def drawn(gaps_: tuple[Gap, ...], *, width: int = WIDE) -> Drawing:
    made = want_bars(gaps_, width=width)
    assert made is not None
    return made


def many(number: int) -> tuple[Gap, ...]:
    fill = PackFill(source="North", pack="N1", number=7, each=3)
    return tuple(
        Gap(kind=f"kind {each} of a rather long name", want=each, have=each // 3, fills=(fill,))
        for each in range(1, number + 1)
    )


@pytest.mark.parametrize("width", WIDTHS)
def test_every_number_stands_at_its_bar(width: int) -> None:
    said = texts_of(drawn(example(), width=width))
    assert "want 101 · have 51 · lack 50" in said
    assert "want 3 · have 3 · complete" in said
    assert "10 over" in said
    assert [text for text in said if text in {"16", "12"}] == ["16", "16", "16", "12"]


@pytest.mark.parametrize("width", WIDTHS)
def test_one_figure_is_one_unit_of_length_in_all_rows(width: int) -> None:
    every = root_of(drawn(example(), width=width)).iter("rect")
    bars = [float(each.get("width", "")) for each in every if each.get("height") != "14"]
    unit = bars[0] / 51
    assert bars == pytest.approx([unit * each for each in (51, 50, 3, 9, 3, 4, 3)], abs=0.02)


@pytest.mark.parametrize("width", WIDTHS)
def test_no_text_runs_out_of_the_drawing(width: int) -> None:
    for gaps_ in (example(), many(60)):
        for each in root_of(drawn(gaps_, width=width)).iter("text"):
            left, right = reach_of(each)
            assert left >= -1
            assert right <= width + 1


@pytest.mark.parametrize("width", WIDTHS)
def test_no_text_lies_on_another(width: int) -> None:
    """Figures that other kinds stand for have long words, for which a phone has little room."""
    fills = (PackFill(source="A", pack="box", number=3, each=16),)
    short = Gap(kind="rifleman", want=101, have=51, fills=fills, from_others=2)
    for gaps_ in (example(), (short, *example()), many(60)):
        rows = root_of(drawn(gaps_, width=width)).findall("g")
        assert [row for row in rows if overlaps(row)] == []


def overlaps(row: Element) -> bool:
    """Whether a text of a row runs into another at its height."""
    reaches = sorted((each.get("y", ""), *reach_of(each)) for each in row.findall("text"))
    return any(
        before[0] == after[0] and before[2] > after[1] + 1 for before, after in pairwise(reaches)
    )


def reach_of(text: Element) -> tuple[float, float]:
    """From where to where a text goes."""
    long, x = width_of(text_of(text)), float(text.get("x", "0"))
    left = {"end": x - long, "middle": x - long / 2}.get(text.get("text-anchor", ""), x)
    return left, left + long


def test_packs_too_small_to_be_seen_are_told_in_words() -> None:
    fills = (
        PackFill(source="A", pack="one", number=400, each=1),
        PackFill(source="A", pack="box", number=40, each=16),
    )
    gap = Gap(kind="rifleman", want=1000, have=3, fills=fills, left_over=43)
    made = drawn((gap,), width=PHONE)
    assert "400 packs of 1 and 40 packs of 16, 43 over" in texts_of(made)
    assert len(made.svg) < 20_000


def test_few_packs_are_named_one_by_one() -> None:
    fill = PackFill(source="A", pack="box", number=3, each=4)
    assert fills_words((fill,)) == "4 + 4 + 4"


def test_figures_that_stand_in_are_told() -> None:
    fill = PackFill(source="A", pack="box", number=1, each=20)
    rows = (
        Gap(kind="rifleman", want=24, have=0, fills=(fill,), from_others=4),
        Gap(kind="officer", want=2, have=0, fills=(fill,), to_others=4, left_over=14),
    )
    said = " ".join(texts_of(drawn(rows)))
    assert "4 by other kinds" in said
    assert "14 over, 4 for other kinds" in said


def test_a_kind_that_only_comes_along_is_said_to_be_unwanted() -> None:
    fill = PackFill(source="A", pack="box", number=1, each=1)
    row = Gap(kind="mule", want=0, have=0, fills=(fill,), left_over=1)
    assert "not wanted" in texts_of(drawn((row,)))


def test_where_nothing_is_lacking_that_is_said() -> None:
    made = drawn((Gap(kind="rifleman", want=4, have=4),))
    assert made.words == "Want, have and lack by figure kind: nothing is lacking."
    assert "a pack, and how many it holds" not in texts_of(made)


def test_without_a_kind_there_is_no_drawing() -> None:
    assert want_bars(()) is None


def test_the_drawing_says_in_words_what_is_lacking() -> None:
    assert drawn(example()).words == (
        "Want, have and lack by figure kind: lacking are 50 riflemen, 9 mortar crews and "
        "4 officers; 1 kind complete."
    )


def test_no_style_is_written_into_it() -> None:
    assert "style" not in drawn(example()).svg
