"""A purchase slip that was ordered, written down on the page."""

from pathlib import Path
from shutil import copytree

import pytest

from tests.forces import EXAMPLES
from tests.web.purchasing import Caller


@pytest.fixture
def caller(tmp_path: Path) -> Caller:
    return Caller(copytree(EXAMPLES / "marenz", tmp_path / "marenz"))


def test_a_slip_that_was_ordered_is_written_down_and_not_bought_again(caller: Caller) -> None:
    before = caller.settled()
    slip = before.form("purchases/ordered")
    after = caller.sent(before, "purchases/ordered", expected="2026-12-20")
    assert after.status == 303
    seen = caller.settled(after.address)
    source = slip["packs"].split("/")[0].strip('"')
    assert "Written: ordered" in seen.text
    assert f"from {source} (" in seen.text
    assert "expected 20 December 2026; ordered on 27 November 2026." in seen.text
    assert slip["packs"] not in seen.html
    receiving = caller.get(f"holdings/receive?source={source}")
    assert "What comes is taken off it." in receiving.text
    back = caller.sent(seen, "journal/strike-out")
    assert back.address.endswith("/purchases")
    assert "Written: ordered" not in caller.settled(after.address).text
    assert caller.settled().form("purchases/ordered")["packs"] == slip["packs"]


def test_an_order_that_cannot_be_written_down_says_why(caller: Caller) -> None:
    before = caller.settled()
    for day, words in (
        ({"expected": "soon"}, "isn't a date"),
        ({"expected": "2026-11-01"}, "is before it was ordered"),
        ({"on": "2026-12-24"}, "Give the day on which it was in the field “Ordered on”."),
    ):
        after = caller.sent(before, "purchases/ordered", **day)
        assert after.status == 422
        assert words in after.text
