"""What a game leaves behind, in words."""

from dataclasses import replace
from fractions import Fraction

from paradestate.core.campaign.casualty import Casualty, Fate
from paradestate.core.campaign.loss_flow import LossFlow
from paradestate.core.campaign.next_strength import PatternStrength
from paradestate.core.campaign.recovery import Campaign
from paradestate.core.campaign.supporting_loss import SupportingLoss
from paradestate.core.play.event import Subject, Told
from paradestate.core.sentence.campaign import (
    back_sentence,
    campaign_sentences,
    casualty_words,
    flow_words,
    legal_sentence,
    loss_words,
    pool_sentence,
    pool_words,
    recovery_sentence,
    supporting_words,
    taken_sentence,
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
    hurt = Casualty(stand=STANDS[0], out="yes", fate=Fate.RECOVERED, is_told=True)
    assert casualty_words(hurt) == "recovered"
    assert casualty_words(replace(hurt, is_promoted=True)) == "recovered, promoted"
    assert casualty_words(replace(hurt, out="", is_promoted=True)) == "promoted"
    assert casualty_words(replace(hurt, is_told=False)) == "taken as back"
    lost = replace(hurt, fate=Fate.LOST, is_promoted=True)
    assert casualty_words(lost) == "lost; its promotion is lost with it"


def test_who_is_taken_as_back_without_dice_is_said() -> None:
    hurt = Casualty(stand=STANDS[0], out="captured", fate=Fate.RECOVERED)
    assert taken_sentence(Campaign(), [hurt]) == (
        "No dice decided that: the files have no section `campaign`, so 1 section out of action "
        "is taken as back. Tell what is lost."
    )
    others = Campaign(recovery={"gun": ON_THREE})
    assert taken_sentence(others, [hurt, hurt]) == (
        "No dice decided that: no line under `recovery` is about section, so 2 sections out of "
        "action are taken as back. Tell what is lost."
    )
    settled = [replace(hurt, is_told=True), replace(hurt, out=""), replace(hurt, fate=Fate.LOST)]
    assert taken_sentence(Campaign(), settled) == ""
    all_there = (strength(lost=0, still_open=0),)
    said = to_add_sentence(all_there, game="raid", is_taken=True)
    assert said == "raid: complete, if those taken as back are back."


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


def test_how_many_come_back_and_whether_the_pool_is_enough() -> None:
    assert back_sentence(2, mean=Fraction(4, 3)) == "2 stands to roll for; 1.33 expected back."
    assert back_sentence(1, mean=Fraction(1, 2)) == "1 stand to roll for; 0.5 expected back."
    assert pool_sentence(Fraction(1, 2)) == "Complete with all that may be sent up: 1/2, 50 in 100."


def test_whether_the_next_force_is_legal() -> None:
    def said(each: PatternStrength, *, limited: bool = True) -> str:
        return legal_sentence((each,), complete=Fraction(1, 3), is_pool_limited=limited)

    assert said(strength(lost=0, still_open=0)) == "So the next force is legal as it is."
    assert said(strength(lost=0, still_open=1)) == (
        "So the next force is legal with nobody sent up in 1/3, 33 in 100 cases."
    )
    until = "So the next force isn't legal until they are sent up."
    assert said(strength(lost=2, still_open=1)) == until
    assert said(strength(lost=3, still_open=1)) == (
        "So the next force can't be legal: more are short than may be sent up."
    )
    assert said(strength(lost=3, still_open=1), limited=False) == until


def test_supporting_troops_are_named_and_left_out() -> None:
    assert supporting_words(()).startswith("Supporting troops are asked for anew in each game")
    lost = SupportingLoss(name="tanks / 1 tank", entry="tanks", out="yes")
    assert supporting_words([lost]).startswith(
        "Supporting troops out of action: tanks, 1 tank (out of action). They are asked for"
    )


def test_what_was_told_of_a_stand() -> None:
    def told(aspect: str, value: str) -> str:
        return loss_words(Told(subject=Subject(aspect, "x"), value=value))

    assert told("out", "yes") == "out of action"
    assert told("out", "captured") == "captured"
    assert told("out", "") == "back in action"
    assert told("promoted", "") == "promoted: as at the start"
    assert told("after the game", "lost") == "lost"
    assert told("promoted", "yes") == "promoted"


def test_a_flow_in_a_sentence() -> None:
    flow = LossFlow(name="section", before=6, open=1, lost=2, joined=1, must_have=6)
    assert flow_words(flow) == (
        "section: 6 before, 3 out, 1 to roll, 2 lost, 1 back since; 4 there afterwards, "
        "5 if all come back, 6 needed"
    )
    plain = LossFlow(name="gun", before=2, rested=1)
    assert flow_words(plain) == "gun: 2 before, 0 out, 1 not in it; 3 there afterwards"
