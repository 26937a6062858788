"""Supporting troops that a game put out of action."""

from paradestate.core.campaign.casualty import OUT
from paradestate.core.campaign.supporting_loss import SupportingLoss, supporting_losses
from tests.core.campaign.campaigns import STANDS, told

ENTRIES = ("tanks", "tanks, light", "pioneers")
STAND = STANDS[0].name


def found(*names: str) -> list[tuple[str, str]]:
    board = told(*((OUT, name, "yes") for name in names), ("turn", "", "4"), (OUT, "tanks 9", ""))
    made = supporting_losses(board, ENTRIES, stands=[STAND])
    return [(each.name, each.entry) for each in made]


def test_what_is_named_after_an_entry_is_of_the_supporting_troops() -> None:
    names = ["pioneers(flame) 2", "tanks", "tanks / 1 light tank", "tanks, light 1"]
    entries = ["pioneers", "tanks", "tanks", "tanks, light"]
    assert found(*names) == list(zip(names, entries, strict=True))


def test_a_stand_of_the_force_and_a_name_that_only_begins_alike_are_not() -> None:
    assert found(STAND, "tankstelle", "nobody") == []


def test_how_it_was_out_is_kept() -> None:
    (only,) = supporting_losses(told((OUT, "tanks 1", "burnt")), ENTRIES, stands=())
    assert only == SupportingLoss(name="tanks 1", entry="tanks", out="burnt")
