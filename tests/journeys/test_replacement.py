"""What it would cost to buy again all that is owned."""

import shutil
from pathlib import Path

import pytest

from paradestate.core.certainty import Exact
from paradestate.core.journal_entry import EntryKind
from paradestate.journeys.order import Search
from paradestate.journeys.replacement import Replacement, replacement
from tests.forces import EXAMPLES
from tests.journeys.logging_to import TODAY, logged


@pytest.fixture
def marenz(tmp_path: Path) -> Path:
    return Path(shutil.copytree(EXAMPLES / "marenz", tmp_path / "marenz"))


def asked(folder: Path) -> Replacement:
    return replacement(folder, today=TODAY, search=Search(seconds=30))


def test_it_is_the_cheapest_order_of_what_is_here_and_lent_and_on_stands(marenz: Path) -> None:
    section = "No 1 Company / 1 Platoon / 1 Section"
    logged(marenz, EntryKind.RECEIVED, figures={"rifleman": 12}, to_stage="painted")
    logged(marenz, EntryKind.MOVED, stand=section, from_stage="painted", to_stage="based")
    logged(marenz, EntryKind.LENT, figures={"rifleman": 8})
    found = asked(marenz)
    assert found.wanted == {"rifleman": 12}
    assert found.journey is not None
    answer = found.journey.answer
    assert answer is not None
    # 12 riflemen from South for 8.00 and 3.50 carriage; two of N2 would be 16.00 and 5.00.
    assert (answer.order.total, answer.certainty) == (1150, Exact())


def test_what_nobody_sells_is_listed_apart_and_in_no_total(marenz: Path) -> None:
    logged(marenz, EntryKind.RECEIVED, figures={"rifleman": 1, "cyclist": 6})
    found = asked(marenz)
    assert (found.wanted, found.unsold) == ({"rifleman": 1}, {"cyclist": 6})
    assert found.journey is not None
    assert found.journey.answer is not None


def test_a_stand_in_replaces_nothing(marenz: Path) -> None:
    logged(marenz, EntryKind.RECEIVED, figures={"officer": 2})
    found = asked(marenz)
    assert found.journey is not None
    assert found.journey.answer is not None
    # Officers come only in a platoon set: 14.00 and 3.50, or in an infantry box.
    assert found.journey.answer.order.packs == {("South", "S1"): 1}


def test_where_nothing_is_sold_there_is_no_value(guard: Path) -> None:
    found = asked(guard)
    assert (found.journey, found.wanted, found.unsold) == (None, {}, {"rifleman": 10})


def test_limits_that_leave_no_order_are_told(marenz: Path) -> None:
    prices = marenz / "prices.yaml"
    text = prices.read_text(encoding="utf-8")
    prices.write_text(text.replace("holds: {light tank: 1}", "most: 1, holds: {light tank: 1}"))
    logged(marenz, EntryKind.RECEIVED, figures={"light tank": 2})
    found = asked(marenz)
    assert found.journey is not None
    assert found.journey.answer is None
    assert [each.level for each in found.findings if each.level == "stop"]


def test_holdings_that_are_not_known_have_no_value(guard: Path) -> None:
    (guard / "force.yaml").write_text("figures: {", encoding="utf-8")
    found = asked(guard)
    assert (found.journey, found.wanted) == (None, {})
    assert found.findings
