"""What the owner's file says of those out of action."""

from paradestate.core.campaign.recovery import Campaign
from tests.core.campaign.campaigns import ON_THREE


def test_without_words_nothing_is_rolled_and_nobody_is_sent_up() -> None:
    assert (Campaign().recovery, Campaign().replacements, Campaign().never_back) == ({}, {}, ())


def test_a_roll_says_who_comes_back_and_who_is_promoted() -> None:
    back = [total for total in ON_THREE.roll.totals() if ON_THREE.on.holds(total)]
    assert ON_THREE.promoted_on is not None
    promoted = [total for total in back if ON_THREE.promoted_on.holds(total)]
    assert (back, promoted) == ([3, 4, 5, 6], [6])
