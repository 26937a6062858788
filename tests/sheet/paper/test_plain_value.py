"""Values as a template reads them."""

import datetime
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

import pytest

from paradestate.core.mark.code import Mark, Sign
from paradestate.core.outline import millimetres
from paradestate.sheet.paper.plain_value import plain


class Colour(StrEnum):
    RED = "red"


@dataclass(frozen=True, slots=True, kw_only=True)
class Thing:
    """A record with a secret that is no field."""

    name: str
    sizes: tuple[Fraction, ...]

    @property
    def secret(self) -> str:
        return "hidden"


def test_a_record_is_its_fields_and_no_more() -> None:
    thing = Thing(name="label", sizes=(millimetres("38.1"), Fraction(1, 3)))
    assert plain(thing) == {"name": "label", "sizes": [38.1, 0.333333]}
    assert "hidden" not in str(plain(thing))


def test_plain_values_stay_what_they_are() -> None:
    assert plain({"a": [None, True, 3, "x", Colour.RED]}) == {"a": [None, True, 3, "x", "red"]}


def test_a_day_comes_with_its_words() -> None:
    assert plain(datetime.date(2026, 3, 5)) == {
        "year": 2026,
        "month": 3,
        "day": 5,
        "words": "5 March 2026",
    }


def test_a_mark_is_the_shapes_of_its_plate() -> None:
    plate = plain(Mark(colour="brown", value="6B4A2B", bars=2, sign=Sign.RING))
    assert isinstance(plate, dict)
    assert (plate["ground"], plate["ink"]) == ("6B4A2B", "#fff")
    assert isinstance(plate["shapes"], list)
    assert len(plate["shapes"]) == 3


def test_what_no_paper_shows_is_refused() -> None:
    for value in (object(), Thing):
        with pytest.raises(TypeError, match="No paper shows"):
            plain(value)
