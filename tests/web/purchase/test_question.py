"""What is asked of the page of purchases."""

import ast
from fractions import Fraction
from inspect import getsource
from types import ModuleType

import pytest

from paradestate.core import months_finding, order_finding
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


def hint_on_the_page(hint: str) -> str:
    found = Finding(
        level=Level.STOP, code="no-order", message="", effect="", hint=hint, place=CHOSEN_HERE
    )
    (worded,) = for_the_page((found,))
    return worded.hint


def test_ways_out_are_those_of_the_page() -> None:
    assert hint_on_the_page("Leave out --one-parcel.") == "Untick “One parcel”."
    assert hint_on_the_page("Find another source.") == "Find another source."


@pytest.mark.parametrize("module", [order_finding, months_finding])
def test_no_way_out_on_the_page_is_an_option_of_the_command(module: ModuleType) -> None:
    texts = [
        node.value
        for node in ast.walk(ast.parse(getsource(module)))
        if isinstance(node, ast.Constant) and isinstance(node.value, str)
    ]
    named = [text for text in texts if "--" in text]
    assert named
    assert [text for text in map(hint_on_the_page, named) if "--" in text] == []
