"""What is asked of the page of purchases."""

from fractions import Fraction

import pytest

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level
from paradestate.web.purchase.question import LONGEST_SECONDS, for_the_page, question


def test_an_empty_form_asks_the_usual() -> None:
    asked = question({"want": " ", "within": "", "unknown": "x"})
    assert asked.request.want is None
    assert (asked.seconds, asked.limit, asked.carried) == (60, None, Fraction(0))
    assert asked.query() == ""
    assert not asked.is_changed
    assert asked.findings == ()


def test_every_field_is_read_and_kept() -> None:
    asked = question(
        {
            "want": "rifleman=50",
            "within": "2.50",
            "source:North": "yes",
            "soonest": "yes",
            "limit": "30",
            "carried": "1.5",
            "chosen": "B",
        }
    )
    assert asked.request.want == {"rifleman": 50}
    assert asked.request.sources == ("North",)
    assert asked.request.soonest
    assert not asked.request.one_parcel
    assert (asked.request.within, asked.limit) == (Fraction(5, 2), Fraction(30))
    assert question(dict(pair.split("=") for pair in ["chosen=C"])).chosen == "C"
    assert "chosen=A" in asked.query(chosen="A")
    assert asked.is_changed


@pytest.mark.parametrize(
    ("typed", "seconds"), [("10", 10), ("0", 60), ("-5", 60), ("soon", 60), ("99999", 600)]
)
def test_how_long_to_look_is_bounded(typed: str, seconds: int) -> None:
    assert question({"seconds": typed}).seconds == seconds
    assert seconds <= LONGEST_SECONDS


@pytest.mark.parametrize("field", ["want", "within", "limit", "carried"])
def test_what_cannot_be_read_is_a_stop(field: str) -> None:
    (found,) = question({field: "much"}).findings
    assert found.level is Level.STOP


def test_ways_out_are_those_of_the_page() -> None:
    found = Finding(
        level=Level.STOP,
        code="one-parcel-bars-the-order",
        message="No source has all.",
        effect="",
        hint="Leave out --one-parcel.",
        place=CHOSEN_HERE,
    )
    (worded,) = for_the_page((found,))
    assert worded.hint == "Untick “One parcel”."
