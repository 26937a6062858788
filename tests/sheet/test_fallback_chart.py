"""The chart of decisions: boxes for half a page, one column on a phone."""

from fractions import Fraction

import pytest

from paradestate.core.game import Purchase
from paradestate.core.support.policy import Fallback
from paradestate.sheet.fallback_chart import HIGH, PHONE, PHONE_HIGH, WIDE, fallback_chart
from paradestate.sheet.svg import Drawing
from tests.sheet.fallbacks import GUNS, MACHINE_GUNS, ask, bought, fallback, granted, long, marenz
from tests.sheet.reading import root_of, texts_of, texts_on_others, texts_outside

WIDTHS = (PHONE, 358, WIDE, 1000)


def drawn(given: Fallback, *, width: int = WIDE) -> Drawing:
    made = fallback_chart(given, width=width)
    assert made is not None
    return made


def size_of(made: Drawing) -> tuple[float, float]:
    _, _, width, high = map(float, root_of(made).get("viewBox", "").split(" "))
    return width, high


def boxes(made: Drawing, *, stroke: str) -> int:
    every = root_of(made).iter("rect")
    return len([each for each in every if each.get("stroke") == f"var(--{stroke})"])


def test_the_example_fits_half_a_page_at_readable_type() -> None:
    """190 x 130 mm; 720 units for 190 mm make type of 14 units 3.7 mm, more than 10 points."""
    width, high = size_of(drawn(marenz()))
    assert high <= HIGH < width * 130 / 190
    assert min(float(t.get("font-size", "14")) for t in root_of(drawn(marenz())).iter("text")) >= 14


def test_the_example_has_a_heavy_box_for_each_request_and_a_light_one_for_each_end() -> None:
    made = drawn(marenz())
    assert boxes(made, stroke="ink") == 4
    assert boxes(made, stroke="rule") == 4


@pytest.mark.parametrize("width", WIDTHS)
def test_the_example_tells_what_to_ask_what_to_take_and_what_it_is_worth(width: int) -> None:
    said = " ".join(texts_of(drawn(marenz(), width=width))).lower()
    for words in (
        "ask for 2 x light tanks",
        "2 or 1 allowed: take only 1, worth 4 (5/6)",
        "whatever is allowed: take all that come, worth 4.67 on average",
        "11 to 18 points left",
        "17.11 to come",
        "8.83 to come",
        "13.67 to come",
        "worth 8",
    ):
        assert words in said


def test_the_sentence_tells_how_the_chart_begins() -> None:
    assert drawn(marenz()).words == (
        "With 18 points left: ask for 2 x light tanks, 17.11 to come on average. "
        "If allowed: take all, worth 10, then ask for 2 x anti-tank guns. "
        "If refused, then ask for 2 x anti-tank guns."
    )


def test_a_chart_that_asks_for_nothing_is_one_box() -> None:
    made = drawn(fallback(bought(MACHINE_GUNS, points=6, worth=8), points=6, worth=Fraction(8)))
    assert (boxes(made, stroke="ink"), boxes(made, stroke="rule")) == (0, 1)
    assert made.words == "With 6 points left: buy 2 x machine-gun platoon, worth 8."


@pytest.mark.parametrize("width", [PHONE, WIDE])
def test_of_a_large_chart_what_is_rare_is_left_out_and_says_so(width: int) -> None:
    for depth in (4, 10):
        made = drawn(long(depth), width=width)
        assert "More requests follow" in " ".join(texts_of(made))
        assert size_of(made)[1] <= (PHONE_HIGH if width < 480 else HIGH * width / WIDE)


def test_a_chart_whose_first_step_has_no_room_has_no_drawing() -> None:
    many = [
        granted(40 - n, Fraction(1, 40), takes=None, then=bought(points=6, worth=n))
        for n in range(40)
    ]
    asked = Purchase(entry="guns", number=40)
    wide = fallback(ask(asked, *many, points=9, worth=Fraction(9)), points=9, worth=Fraction(9))
    assert fallback_chart(wide) is None


@pytest.mark.parametrize("width", WIDTHS)
def test_no_text_runs_out_of_the_drawing_or_lies_on_another(width: int) -> None:
    for given in (marenz(), long(3), long(8), wordy()):
        made = drawn(given, width=width)
        assert not texts_outside(made)
        assert not texts_on_others(made)


def wordy() -> Fallback:
    """Names of many words, and one long word."""
    long_name = Purchase(entry="guns of the heavy troop of the division's reconnaissance", number=2)
    word = Purchase(entry="antitankgunsandtheirtractors" * 2, number=1)
    chart = ask(
        long_name,
        granted(2, Fraction(1, 2), takes=long_name, then=bought(word, GUNS, points=4, worth=3)),
        granted(1, Fraction(1, 4), takes=None, then=bought(points=9, worth=0)),
        granted(0, Fraction(1, 4), takes=None, then=bought(*[word] * 9, points=9, worth=2)),
        points=9,
        worth=Fraction(7, 3),
    )
    return fallback(chart, points=9, worth=Fraction(7, 3))


@pytest.mark.parametrize("width", WIDTHS)
def test_every_box_and_line_stays_inside(width: int) -> None:
    for given in (marenz(), long(3), wordy()):
        made = drawn(given, width=width)
        wide, high = size_of(made)
        for box in root_of(made).iter("rect"):
            assert float(box.get("x", "")) + float(box.get("width", "")) <= wide
            assert float(box.get("y", "")) + float(box.get("height", "")) <= high
