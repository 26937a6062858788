"""The section campaign."""

from paradestate.core.campaign.recovery import Campaign, Recovery
from paradestate.core.dice import Totals
from paradestate.text.dice import read_dice
from tests.text.format.reading import codes, force
from tests.text.slips import value_of


def test_every_word_of_a_campaign() -> None:
    made = force(
        "campaign: {recovery: {gun: {roll: 1d6, on: 3 or more, promoted on: 6}}, "
        "rolled once for: top, never back: [captured], replacements: {gun: 2}, by hand: by us}"
    )
    assert made.campaign == Campaign(
        recovery={
            "gun": Recovery(
                roll=value_of(read_dice("1d6")),
                on=Totals(least=3, most=None),
                promoted_on=Totals(least=6, most=6),
            )
        },
        rolled_once_for="top",
        never_back=("captured",),
        replacements={"gun": 2},
        by_hand="by us",
    )


def test_a_stand_that_nobody_knows_and_a_roll_half_said() -> None:
    assert codes("campaign: {replacements: {tank: 1}}") == ["unknown-name"]
    assert codes("campaign: {recovery: {gun: {roll: 1d6}}}") == ["missing-word"]
