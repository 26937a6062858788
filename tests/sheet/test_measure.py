"""Measures on a drawing."""

from paradestate.sheet.measure import Pen, measure_across, measure_down, scale_line
from paradestate.sheet.svg import drawing
from tests.sheet.shapes import shapes, words_in

PEN = Pen(scale=2, type_size=10, line=1)


def test_a_measure_is_as_long_as_what_it_measures() -> None:
    across = measure_across(PEN, at=(1, 5), length=40)
    assert across.get("d") == "M1.00 1.50v7.00M1.00 5.00h40.00M41.00 1.50v7.00"
    down = measure_down(PEN, at=(5, 1), length=20)
    assert down.get("d") == "M1.50 1.00h7.00M5.00 1.00v20.00M1.50 21.00h7.00"


def test_a_scale_line_has_a_tick_at_each_step_and_long_ones_at_ends_and_middle() -> None:
    made = drawing(scale_line(PEN, at=(0, 20), millimetres=50), size=(100, 40), words="")
    (line,) = shapes(made, "path")
    path = line.get("d", "")
    assert path.startswith("M0.00 20.00h100.00")
    assert path.count("v-3.50") == 4
    assert path.count("v-7.00") == 2
    assert words_in(made) == ["50 mm"]
    hundred = drawing(scale_line(PEN, at=(0, 20), millimetres=100), size=(200, 40), words="")
    assert shapes(hundred, "path")[0].get("d", "").count("v-7.00") == 3
