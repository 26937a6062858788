"""Stands in repair."""

import datetime

import pytest

from paradestate.core.holdings import Holdings
from paradestate.core.repair import Repair, is_in_repair

REPAIR = Repair(
    entry="a",
    force="",
    stand="1 Section",
    day=datetime.date(2026, 12, 1),
    wanted=datetime.date(2026, 12, 10),
    left="based",
)


@pytest.mark.parametrize(
    ("worked", "is_in"),
    [
        (Holdings(stands={"section": {"painted": 1}}), True),
        (Holdings(figures={"rifleman": {"painted": 1, "based": 3}}), True),
        (Holdings(stands={"section": {"based": 1}}), False),
        (Holdings(), False),
    ],
)
def test_a_stand_is_in_repair_until_all_of_it_is_back(
    worked: Holdings,
    is_in: bool,  # noqa: FBT001 - a case
) -> None:
    assert is_in_repair(REPAIR, worked) is is_in
