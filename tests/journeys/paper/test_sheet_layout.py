"""How sheets are laid out, from what was typed."""

from fractions import Fraction
from typing import Any

import pytest

from paradestate.core.imposition.layout import TurnEdge
from paradestate.core.imposition.paper_size import A4, LETTER
from paradestate.core.imposition.print_scale import TRUE, measured
from paradestate.journeys.paper.paper_kind import Asked
from paradestate.journeys.paper.sheet_layout import SheetsTyped, asked_of


def typed(**options: Any) -> SheetsTyped:  # noqa: ANN401 - each of its own type
    usual: SheetsTyped = {
        "numbers": (),
        "date": "",
        "theatre": None,
        "wished": "",
        "game": "",
        "paper": "a4",
        "loaded": None,
        "scale": "",
        "bleed": "",
        "shift": "",
        "turn": "long",
        "read_from": "",
        "dummies": "",
    }
    return {**usual, **options}  # type: ignore[typeddict-item] # options are of it


def test_where_nothing_is_typed_all_is_as_usual() -> None:
    choice, asked, slips = asked_of(typed())
    assert (asked, slips) == (Asked(), ())
    assert choice.game is None


def test_everything_that_is_typed_counts() -> None:
    choice, asked, slips = asked_of(
        typed(
            numbers=("company=3",),
            paper="letter",
            loaded="a4",
            scale="96.8 mm, 97.2",
            bleed="1.5 mm",
            shift="2 mm",
            turn="short",
            read_from="40 cm",
            dummies="3",
        )
    )
    assert slips == ()
    assert choice.numbers == {"company": 3}
    layout = asked.layout
    assert (layout.size, asked.loaded) == (LETTER, A4)
    assert layout.scale == measured(Fraction("96.8"), Fraction("97.2"))
    assert layout.bleed == Fraction("1.5")
    assert layout.gutter == 3
    assert layout.shift == 2
    assert layout.turn is TurnEdge.SHORT
    assert asked.distance == 400
    assert asked.dummies == 3


def test_as_many_dummies_as_a_table_holds_are_printed() -> None:
    _, asked, slips = asked_of(typed(dummies="1000"))
    assert asked.dummies == 1000
    assert slips == ()


def test_one_length_holds_across_and_down() -> None:
    assert asked_of(typed(scale="100.4"))[1].layout.scale == measured(
        Fraction("100.4"), Fraction("100.4")
    )


@pytest.mark.parametrize(
    ("option", "code"),
    [
        ({"scale": "wide"}, "not-a-number"),
        ({"scale": "96,8"}, "line-not-100"),
        ({"scale": "96.8,0"}, "not-above-nought"),
        ({"scale": "968"}, "line-not-100"),
        ({"bleed": "1"}, "length-without-unit"),
        ({"dummies": "-1"}, "not-a-whole-number"),
        ({"dummies": "1001"}, "number-too-great"),
        ({"bleed": "11 mm"}, "number-too-great"),
        ({"shift": "1 in"}, "number-too-great"),
        ({"date": "soon"}, "not-a-date"),
    ],
)
def test_what_cant_be_read_is_a_slip(option: dict[str, str], code: str) -> None:
    _, asked, slips = asked_of(typed(**option))
    assert [slip.code for slip in slips] == [code]
    assert asked.layout.scale == TRUE


def test_a_comma_for_a_point_is_read_as_two_lines_and_refused() -> None:
    """96,8: one of the lines would be 8 mm long."""
    (slip,) = asked_of(typed(scale="96,8"))[2]
    assert slip.code == "line-not-100"
    assert slip.message == "A line of 100 mm doesn't come out 8 mm long."
    assert slip.hint.endswith("96.8,97.2.")
