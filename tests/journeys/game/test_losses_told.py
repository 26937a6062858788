"""Writing down what came of those who were out of action."""

import shutil
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from paradestate.core.campaign.casualty import Fate
from paradestate.core.play.event import Rolled
from paradestate.journeys.game.losses_pen import LossesTold, Teller
from paradestate.journeys.game.losses_rolled import Seen, roll_recovery
from paradestate.journeys.game.losses_told import tell_fate, tell_out, words_for
from tests.forces import EXAMPLES
from tests.journeys.played_losses import (
    AT,
    CAMPAIGN,
    DAY,
    SECTIONS,
    ids,
    out,
    play,
    with_campaign,
)

Telling = Callable[[str, str], LossesTold]


@pytest.fixture
def teller(tmp_path: Path) -> Teller:
    copy = tmp_path / "marenz"
    shutil.copytree(EXAMPLES / "marenz", copy)
    with_campaign(copy)
    new = ids(5000)
    return Teller(folder=copy, today=DAY, now=AT, new_id=lambda: next(new))


def code(done: LossesTold) -> str:
    assert not done.entries
    return done.findings[-1].code


def test_real_dice_give_the_new_parade_state(teller: Teller) -> None:
    """Story 26: six sections out, the dice show 1, 2, 3, 4, 5 and 6."""
    play(teller.folder, *map(out, SECTIONS))
    every = [
        roll_recovery(teller, name, numbers=[face], seen=Seen(witness="Bert"))
        for face, name in enumerate(SECTIONS, start=1)
    ]
    assert not any(each.findings for each in every)
    done = every[-1]
    fates = [each.fate for each in done.after.casualties]
    assert fates == [Fate.LOST, Fate.LOST, *[Fate.RECOVERED] * 4]
    assert done.after.experience == {SECTIONS[5]: 1}
    rifles = next(each for each in done.after.strengths if each.pattern == "rifle section")
    assert (rifles.lost, rifles.least_to_add, rifles.most_to_add) == (2, 2, 2)
    rolled = done.entries[0].played
    assert rolled is not None
    assert isinstance(rolled.event, Rolled)
    assert (rolled.event.faces, rolled.event.witness) == ((6,), "Bert")


def test_one_roll_decides_about_a_whole_platoon(teller: Teller) -> None:
    with_campaign(teller.folder, CAMPAIGN + "  rolled once for: platoon\n")
    play(teller.folder, *map(out, SECTIONS))
    group = "No 1 Company / 2 Platoon, rifle section"
    done = roll_recovery(teller, group, numbers=[2])
    lost = [each.stand.name for each in done.after.casualties if each.fate is Fate.LOST]
    assert lost == list(SECTIONS[2:4])
    assert len(done.entries) == 3


def test_a_second_roll_for_the_same_stand_is_refused(teller: Teller) -> None:
    play(teller.folder, *map(out, SECTIONS[:2]))
    roll_recovery(teller, SECTIONS[0], numbers=[1])
    assert code(roll_recovery(teller, SECTIONS[0], numbers=[6])) == "fate-told"
    assert code(tell_fate(teller, [SECTIONS[0]], word="recovered")) == "fate-told"
    assert code(roll_recovery(teller, SECTIONS[5], numbers=[6])) == "not-to-roll"
    assert code(roll_recovery(teller, SECTIONS[1], numbers=[7])) == "roll-impossible"


def test_a_lost_stand_is_replaced_from_the_pool_until_it_is_empty(teller: Teller) -> None:
    play(teller.folder, *(out(each, "captured") for each in SECTIONS[:2]))
    done = tell_fate(teller, [SECTIONS[0]], word="replaced")
    rifles = next(each for each in done.after.strengths if each.pattern == "rifle section")
    assert (rifles.lost, rifles.pool, rifles.least_to_add) == (1, 0, 1)
    assert code(tell_fate(teller, [SECTIONS[1]], word="replaced")) == "fate-impossible"
    assert code(tell_fate(teller, [SECTIONS[0]], word="replaced")) == "fate-impossible"


def test_a_lost_stand_of_an_earlier_game_is_replaced_as_well(teller: Teller) -> None:
    play(teller.folder, out(SECTIONS[0], "captured"))
    play(teller.folder, start=1000)
    done = tell_fate(teller, [SECTIONS[0]], word="replaced")
    assert [each.fate for each in done.after.missing] == [Fate.REPLACED]


def test_without_dice_a_stand_is_told_promoted_or_lost(teller: Teller) -> None:
    play(teller.folder, out(SECTIONS[0]))
    assert tell_fate(teller, [SECTIONS[1]], word="promoted").after.experience == {SECTIONS[1]: 1}
    done = tell_fate(teller, [SECTIONS[0]], word="lost")
    assert done.after.casualties[0].fate is Fate.LOST
    assert code(tell_fate(teller, [SECTIONS[2]], word="lost")) == "fate-impossible"
    assert code(tell_fate(teller, ["nobody"], word="promoted")) == "fate-impossible"


def test_without_a_game_nothing_is_written(teller: Teller) -> None:
    assert roll_recovery(teller, SECTIONS[0], numbers=[3]).after.record is None
    assert tell_fate(teller, [SECTIONS[0]], word="lost").after.record is None
    assert tell_out(teller, [SECTIONS[0]]).after.record is None


FORM = "10000000-0000-4000-8000-000000000001"


def test_who_nobody_told_of_at_the_table_is_told_out_afterwards(teller: Teller) -> None:
    play(teller.folder, out(SECTIONS[0]))
    done = tell_out(replace(teller, form=FORM), SECTIONS[:3], how="captured")
    assert [each.out for each in done.after.casualties] == ["captured"] * 3
    assert {each.fate for each in done.after.casualties} == {Fate.LOST}
    again = tell_out(replace(teller, form=FORM), SECTIONS[:3], how=" captured ")
    assert (again.is_done, again.entries) == (True, ())
    assert code(tell_out(teller, ["nobody", SECTIONS[3]])) == "fate-impossible"
    assert code(tell_out(teller, [SECTIONS[3]], how="x" * 61)) == "fate-impossible"
    tell_fate(teller, [SECTIONS[0]], word="recovered")


def test_who_is_told_of_already_or_lost_before_cant_be_told_out(teller: Teller) -> None:
    play(teller.folder, out(SECTIONS[0], "captured"))
    play(teller.folder, start=1000)
    assert code(tell_out(teller, [SECTIONS[0]])) == "fate-impossible"
    tell_out(teller, [SECTIONS[1]])
    tell_fate(teller, [SECTIONS[1]], word="lost")
    assert code(tell_out(teller, [SECTIONS[1]])) == "fate-told"


def test_a_fate_that_is_sent_twice_is_written_once(teller: Teller) -> None:
    play(teller.folder, *map(out, SECTIONS[:2]))
    form = replace(teller, form=FORM)
    assert tell_fate(form, SECTIONS[:2], word="lost").entries
    again = tell_fate(form, SECTIONS[:2], word="lost")
    assert (again.is_done, again.entries) == (True, ())


def test_only_what_would_change_anything_may_be_told(teller: Teller) -> None:
    play(teller.folder, out(SECTIONS[0]), out(SECTIONS[1], "captured"))
    after = tell_fate(teller, [SECTIONS[2]], word="promoted").after
    assert words_for(after, SECTIONS[0]) == ("recovered", "lost", "promoted", "captured")
    assert words_for(after, SECTIONS[1]) == ("recovered", "replaced", "promoted")
    assert words_for(after, SECTIONS[2]) == ()
    assert words_for(after, SECTIONS[3]) == ("promoted",)
    after = tell_fate(teller, [SECTIONS[0]], word="lost").after
    assert words_for(after, SECTIONS[0]) == ("replaced", "promoted")
