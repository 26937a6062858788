"""The roll record."""

from dataclasses import replace

from paradestate.core.dice import NOUGHT
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.roll_record import OPEN_ROWS, RollRecord, RollRow, roll_record
from tests.core.paper.games import secrets
from tests.core.paper.grounds import battalion, with_plan


def shown(ground: Ground) -> RollRecord:
    made = roll_record(ground).shown
    assert made is not None
    return made


def test_without_a_game_all_rows_are_open() -> None:
    assert shown(battalion()) == RollRecord(rows=(), open=OPEN_ROWS)


def test_the_allowance_and_what_the_plan_asks_for_are_rolls_that_come() -> None:
    ground = replace(
        with_plan(("light tanks", 2), ("machine-gun platoon", 1)), game="whole-day attack"
    )
    made = shown(ground)
    assert made.rows == (
        RollRow(what="Allowance", dice="", reading="18 + 2d6 points"),
        RollRow(
            what="2 x light tanks",
            dice="one 12-sided die",
            reading="On 1 to 4 none; on 5 to 12 all",
        ),
    )
    assert made.open == OPEN_ROWS - 4


def test_a_game_without_points_has_no_allowance_and_many_rolls_leave_half_a_page() -> None:
    games = {"night": replace(secrets().force.games["zzGame"], name="night", allowance=NOUGHT)}
    ground = replace(secrets(), game="night", force=replace(secrets().force, games=games))
    assert shown(ground).rows == ()
    many = shown(with_plan(*[("light tanks", 2)] * 12))
    assert (len(many.rows), many.open) == (12, OPEN_ROWS // 2)
