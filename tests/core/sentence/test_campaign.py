"""What a game leaves behind, in words."""

from dataclasses import replace

from paradestate.core.campaign.casualty import Casualty, Fate
from paradestate.core.campaign.next_strength import PatternStrength
from paradestate.core.campaign.recovery import Campaign
from paradestate.core.sentence.campaign import (
    campaign_sentences,
    casualty_words,
    pool_words,
    recovery_sentence,
    to_add_sentence,
)
from paradestate.core.sentence.wording import by_hand_words
from tests.core.campaign.campaigns import ON_THREE, STANDS


def strength(*, lost: int, still_open: int) -> PatternStrength:
    return PatternStrength(
        pattern="section", roster=6, wanted=6, lost=lost, open=still_open, pool=2
    )


def test_the_section_is_read_back_word_by_word() -> None:
    campaign = Campaign(
        recovery={"section": ON_THREE},
        rolled_once_for="platoon",
        never_back=("captured", "dead"),
        replacements={"section": 2},
        by_hand="three games",
    )
    assert dict(campaign_sentences(campaign)) == {
        ("recovery", "section"): "section, out of action: comes back on 3 or more of 1d6, "
        "else lost, promoted on 6.",
        ("rolled once for",): "After a game all stands of one kind in a platoon share a roll.",
        ("never back",): "A stand out of action as captured or dead is lost without a roll.",
        ("replacements",): "May be sent up in all: 2 sections.",
        (): f"After a game.{by_hand_words('three games')}",
    }
    assert not list(campaign_sentences(Campaign()))


def test_a_roll_without_promotion() -> None:
    said = recovery_sentence("gun", replace(ON_THREE, promoted_on=None))
    assert said == "gun, out of action: comes back on 3 or more of 1d6, else lost."


def test_what_came_of_a_stand() -> None:
    hurt = Casualty(stand=STANDS[0], out="yes", fate=Fate.RECOVERED)
    assert casualty_words(hurt) == "recovered"
    assert casualty_words(replace(hurt, is_promoted=True)) == "recovered, promoted"
    assert casualty_words(replace(hurt, out="", is_promoted=True)) == "promoted"
    lost = replace(hurt, fate=Fate.LOST, is_promoted=True)
    assert casualty_words(lost) == "lost; its promotion is lost with it"


def test_whether_the_next_game_is_complete_and_the_least_to_send_up() -> None:
    assert to_add_sentence((strength(lost=0, still_open=0),), game="Attack") == (
        "Attack: complete, whatever else happens."
    )
    assert to_add_sentence((strength(lost=1, still_open=0),), game="Attack") == (
        "Attack: short of 1 section; that is the least to send up."
    )
    assert to_add_sentence((strength(lost=1, still_open=2),), game="Attack") == (
        "Attack: short of 1 section for sure; short of 3 sections if none comes back."
    )
    assert to_add_sentence((strength(lost=0, still_open=2),), game="Attack") == (
        "Attack: complete if all come back; short of 2 sections if none comes back."
    )


def test_what_may_still_be_sent_up() -> None:
    assert pool_words((strength(lost=0, still_open=0),)) == "2 sections"
