"""What could be sold or swapped."""

import datetime
import shutil
from pathlib import Path

import pytest

from paradestate.core.journal_entry import EntryKind
from paradestate.core.spare import Spare
from paradestate.journeys.sparing import sparing
from tests.forces import EXAMPLES
from tests.journeys.logging_to import TODAY, logged

DAY = datetime.timedelta(days=1)


@pytest.fixture
def marenz(tmp_path: Path) -> Path:
    return Path(shutil.copytree(EXAMPLES / "marenz", tmp_path / "marenz"))


def numbers(folder: Path) -> dict[str, int]:
    found = sparing(folder, today=TODAY).spare
    assert found is not None
    return {each.name: each.number for each in found}


def test_what_no_force_uses_is_to_spare_and_has_its_price_where_a_pack_gives_one(
    marenz: Path,
) -> None:
    logged(marenz, EntryKind.RECEIVED, figures={"signaller": 5, "cyclist": 3, "rifleman": 20})
    found = sparing(marenz, today=TODAY)
    assert found.spare == (
        Spare(name="cyclist", is_stand=False, held=3, number=3, one_at_a_time=3),
        Spare(name="signaller", is_stand=False, held=5, number=2, one_at_a_time=2),
    )
    price = found.prices["signaller"]
    assert (price.source, price.pack, price.price, price.number) == ("North", "N4", 400, 4)
    assert "cyclist" not in found.prices


def test_what_is_promised_for_a_day_to_come_is_kept(marenz: Path) -> None:
    logged(marenz, EntryKind.RECEIVED, figures={"cyclist": 3})
    logged(marenz, EntryKind.PROMISED, figures={"cyclist": 2}, on=TODAY - DAY)
    assert numbers(marenz) == {"cyclist": 3}
    logged(marenz, EntryKind.PROMISED, figures={"cyclist": 2}, on=TODAY + DAY)
    assert numbers(marenz) == {"cyclist": 1}


def test_a_stand_in_that_is_in_use_is_not_to_spare(marenz: Path) -> None:
    logged(marenz, EntryKind.RECEIVED, figures={"officer": 9})
    # Seven officers serve as officers, two as riflemen.
    assert numbers(marenz) == {}


def test_forces_that_share_are_asked_together_and_one_at_a_time(club: Path) -> None:
    logged(club, EntryKind.RECEIVED, figures={"rifleman": 4})
    found = sparing(club / "guard", today=TODAY)
    assert set(found.forces) == {"Ferry guard", "Town watch"}
    # 15 loose; the guard needs 4 beside the finished section, the watch 4: 7 are left even then.
    assert found.spare is not None
    assert [(s.name, s.number, s.one_at_a_time) for s in found.spare] == [("rifleman", 7, 11)]


def test_a_finished_stand_to_spare_has_the_prices_of_its_figures(marenz: Path) -> None:
    (marenz / "stock.yaml").write_text("stock stands: {cycle section: {based: 1}}\n")
    found = sparing(marenz, today=TODAY)
    assert found.spare is not None
    assert [(each.name, each.is_stand, each.number) for each in found.spare] == [
        ("cycle section", True, 1)
    ]
    assert found.figures_on["cycle section"] == {"cyclist": 3}


def test_where_a_force_can_not_be_counted_nothing_is_called_spare(club: Path) -> None:
    logged(club, EntryKind.RECEIVED, figures={"rifleman": 4})
    (club / "watch" / "force.yaml").write_text("figures: {", encoding="utf-8")
    found = sparing(club / "guard", today=TODAY)
    assert found.spare is None
    assert found.findings
