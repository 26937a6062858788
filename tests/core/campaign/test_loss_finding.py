"""What is said about losses."""

from paradestate.core.campaign.casualty import Casualty, Fate
from paradestate.core.campaign.loss_finding import (
    NOBODY_WAITS,
    cant_become,
    doubts,
    no_day_for_repairs,
    none_ticked,
    not_to_roll,
    nothing_played,
    nothing_to_go_back_to,
    nothing_to_repair,
    reason_missing,
    rolled_already,
    rolled_otherwise,
    supporting_out,
)
from paradestate.core.campaign.supporting_loss import SupportingLoss
from paradestate.core.finding import Level
from paradestate.core.log_finding import NOTHING_WRITTEN
from tests.core.campaign.campaigns import STANDS


def casualty(place: int, *, disputed: bool = False, promoted: bool = False) -> Casualty:
    return Casualty(
        stand=STANDS[place],
        out="yes",
        fate=Fate.LOST,
        is_disputed=disputed,
        is_promoted=promoted,
    )


def test_a_game_that_isnt_there() -> None:
    assert nothing_played("").message == "No game was played."
    assert nothing_played("1f").message == "No game's id begins with '1f', or more than one's."
    assert "kept on paper" in nothing_played("").hint
    assert "--of" in nothing_played("1f").hint


def test_a_name_that_isnt_waiting_gets_the_nearest_that_is() -> None:
    assert not_to_roll("x", waiting=()).hint == NOBODY_WAITS
    assert not_to_roll("1 Secton", waiting=["1 Section"]).hint == (
        "Did you mean '1 Section'? Waiting: '1 Section'."
    )
    assert not_to_roll("zzz", waiting=["1 Section"]).hint == "Waiting: '1 Section'."


def test_a_second_roll_and_a_fate_that_cant_be() -> None:
    assert rolled_already(casualty(0)).message == f"{STANDS[0].name} is told already: lost."
    said = cant_become("x", "lost", because="it wasn't out of action").message
    assert said == "x can't be told lost: it wasn't out of action."
    meant = cant_become("1 section", "lost", because="so", known=["1 Section", "truck"])
    assert meant.hint == "Did you mean '1 Section'?"


def test_doubts_name_a_few_and_count_the_rest() -> None:
    assert doubts([casualty(0)], unknown=()) == ()
    every = [casualty(place, disputed=True, promoted=True) for place in range(6)]
    disputed, both = doubts(every, unknown=())
    assert (disputed.code, both.code) == ("losses-disputed", "promoted-and-lost")
    assert disputed.message.endswith("2 Platoon / 2 Section and 1 more.")
    (unknown,) = doubts([], unknown=["tank 1"])
    assert unknown.message == "Out of action, but no stand of the force: tank 1."
    (whole,) = doubts([], unknown=(), whole=["1 Platoon"])
    assert whole.message == "Told out of action as a whole: 1 Platoon."
    assert "each of its stands" in whole.hint


def test_repairs_that_cant_be_written_down_say_what_is_lacking() -> None:
    found = (nothing_to_repair(), no_day_for_repairs(), nothing_to_go_back_to())
    codes = [each.code for each in found]
    assert codes == ["nothing-to-repair", "repair-undated", "no-stage-before"]
    assert all(each.hint and each.effect == NOTHING_WRITTEN for each in found)
    assert none_ticked().message == "No stand is ticked."


def test_dice_that_show_something_else_the_second_time() -> None:
    kept = rolled_otherwise("x", shown="4", is_struck=False)
    assert kept.message == "x was rolled for already: it showed 4."
    struck = rolled_otherwise("x", shown="4", is_struck=True)
    assert struck.message.endswith("it showed 4, and was struck out since then.")
    assert (kept.code, struck.code) == ("fate-told", "fate-told")


def test_a_line_is_struck_out_with_a_reason() -> None:
    assert reason_missing().code == "log-incomplete"


def test_losses_of_supporting_troops_are_named_and_cost_nothing() -> None:
    assert supporting_out(()) == ()
    (said,) = supporting_out([SupportingLoss(name="tanks 1", entry="tanks", out="yes")])
    assert (said.level, said.code) == (Level.REMARK, "supporting-troops-out")
    assert said.message == "Supporting troops out of action: tanks 1."
