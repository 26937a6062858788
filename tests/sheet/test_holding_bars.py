"""What is held, as bars."""

import re
from itertools import pairwise
from xml.etree import ElementTree as ET

import pytest

from paradestate.sheet.holding_bars import DESK, PHONE, Bar, holding_bars
from paradestate.sheet.svg import Drawing

STAGES = ("in packet", "painted", "based")
BARS = (
    Bar(name="rifleman", stages={"in packet": 20, "painted": 30, "based": 4}),
    Bar(name="signaller", stages={"in packet": 1, "primed": 1}, lent=2),
    Bar(name="boat", stages={}),
)
SVG = "{http://www.w3.org/2000/svg}"


def parts(made: Drawing, tag: str) -> list[ET.Element]:
    root = ET.fromstring(made.svg)  # noqa: S314 - made by us
    return [each for each in root.iter() if each.tag.removeprefix(SVG) == tag]


def number(element: ET.Element, name: str) -> float:
    return float(element.attrib[name])


@pytest.mark.parametrize("width", [DESK, PHONE])
def test_one_figure_is_one_length_in_every_row(width: int) -> None:
    widths = [
        number(box, "width")
        for box in parts(holding_bars(BARS, stages=STAGES, width=width), "rect")
    ]
    # Finished first: 4, 30 and 20 riflemen, then a signaller at each stage, then two lent.
    lengths = [wide / figures for wide, figures in zip(widths, (4, 30, 20, 1, 1, 2), strict=True)]
    assert max(lengths) - min(lengths) < 0.02


@pytest.mark.parametrize("width", [DESK, PHONE])
def test_nothing_is_drawn_beyond_the_edge_and_no_number_over_another(width: int) -> None:
    crowded = Bar(name="officer", stages=dict.fromkeys(STAGES, 1), lent=1)
    made = holding_bars(
        (Bar(name="rifleman", stages={"based": 940}), crowded), stages=STAGES, width=width
    )
    for box in parts(made, "rect"):
        assert number(box, "x") + number(box, "width") <= width
    below = [each for each in parts(made, "text") if each.attrib.get("class") == "soft"][1:]
    places = [number(each, "x") for each in below]
    assert places == sorted(places)
    assert min(after - before for before, after in pairwise(places)) > 12


def test_the_stages_look_different_and_what_is_lent_is_open() -> None:
    fills = [box.attrib["fill"] for box in parts(holding_bars(BARS, stages=STAGES), "rect")]
    assert fills == ["var(--ink)", "url(#tx-1)", "url(#tx-0)", "url(#tx-0)", "none", "none"]


def test_it_says_in_words_what_it_shows() -> None:
    assert holding_bars(BARS, stages=STAGES).words == (
        "rifleman: 4 based, 30 painted, 20 in packet. "
        "signaller: 1 in packet, 1 primed, 2 lent. boat: none"
    )


def test_nothing_held_is_an_empty_drawing() -> None:
    made = holding_bars((), stages=STAGES)
    assert re.search(r'viewBox="0 0 1184 1"', made.svg)
    assert parts(made, "rect") == []
    assert parts(holding_bars((Bar(name="boat", stages={}),), stages=STAGES), "rect") == []
