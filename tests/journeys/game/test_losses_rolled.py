"""A whole form of dice, and slips of it struck out."""

import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from paradestate.core.campaign.casualty import Fate
from paradestate.core.finding import Finding
from paradestate.core.play.event import Rolled
from paradestate.journeys.game.losses_pen import LossesTold, Teller, line_id
from paradestate.journeys.game.losses_rolled import (
    PURPOSE,
    TypedRoll,
    faces_typed,
    roll_recoveries,
)
from paradestate.journeys.game.losses_struck import loss_lines, strike_loss
from paradestate.journeys.game.losses_told import tell_fate, tell_out
from paradestate.journeys.game.pen import Line, write_lines
from paradestate.journeys.memory import Memory
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

FORM = "10000000-0000-4000-8000-000000000002"


@pytest.fixture
def teller(tmp_path: Path) -> Teller:
    copy = tmp_path / "marenz"
    shutil.copytree(EXAMPLES / "marenz", copy)
    with_campaign(copy)
    new = ids(5000)
    return Teller(
        folder=copy, today=DAY, now=AT, new_id=lambda: next(new), form=FORM, memory=Memory()
    )


def typed(*faces: int) -> list[TypedRoll]:
    return [
        TypedRoll(name=name, numbers=(face,)) for name, face in zip(SECTIONS, faces, strict=False)
    ]


def fates(done: LossesTold) -> list[Fate]:
    return [each.fate for each in done.after.casualties]


def test_a_form_is_written_whole_or_not_at_all_and_once(teller: Teller) -> None:
    play(teller.folder, *map(out, SECTIONS[:3]))
    wrong = roll_recoveries(teller, [*typed(1, 9), TypedRoll(name="nobody", numbers=(3,))])
    assert [each.code for each in wrong.findings] == ["roll-impossible", "not-to-roll"]
    assert fates(wrong) == [Fate.OPEN] * 3
    done = roll_recoveries(teller, typed(1, 6))
    assert fates(done) == [Fate.LOST, Fate.RECOVERED, Fate.OPEN]
    assert len(done.entries) == 5
    again = roll_recoveries(teller, typed(1, 6))
    assert (again.is_done, again.entries, fates(again)) == (True, (), fates(done))
    other = roll_recoveries(teller, typed(5, 6))
    assert [each.code for each in other.findings] == ["fate-told"]
    assert not other.is_done


def test_a_form_that_broke_off_is_completed_when_it_is_sent_again(teller: Teller) -> None:
    """As if the power failed between the roll and what follows from it."""
    game = play(teller.folder, out(SECTIONS[0]))
    event = Rolled(purpose=f"{PURPOSE}{SECTIONS[0]}", dice="1d6", faces=(6,), total=6)
    roll = Line(event=event, game=game, id=line_id(FORM, "rolled", SECTIONS[0]), counter=4)
    write_lines(teller, [roll])
    done = roll_recoveries(teller, typed(6))
    assert len(done.entries) == 2
    assert (fates(done), done.after.experience) == ([Fate.RECOVERED], {SECTIONS[0]: 1})
    (_, line) = loss_lines(done.after)
    assert [each.id for each in line.following] == [each.id for each in done.entries]


def test_who_shares_a_roll_that_was_made_gets_no_other(teller: Teller) -> None:
    with_campaign(teller.folder, CAMPAIGN + "  rolled once for: platoon\n")
    play(teller.folder, out(SECTIONS[0]))
    platoon = "No 1 Company / 1 Platoon, rifle section"
    roll_recoveries(teller, [TypedRoll(name=platoon, numbers=(2,))])
    late = replace(teller, form=teller.new_id())
    tell_out(late, SECTIONS[1:2])
    other = roll_recoveries(late, [TypedRoll(name=platoon, numbers=(6,))])
    assert [each.code for each in other.findings] == ["fate-told"]
    same = roll_recoveries(late, [TypedRoll(name=platoon, numbers=(2,))])
    assert (fates(same), len(same.entries)) == ([Fate.LOST, Fate.LOST], 1)


def test_what_a_later_game_put_out_is_told_there_whichever_game_is_looked_at(
    teller: Teller,
) -> None:
    first = play(teller.folder, out(SECTIONS[0]))
    later = play(teller.folder, *map(out, SECTIONS[:2]), start=1000)
    looking = replace(teller, of=first)
    done = roll_recoveries(looking, typed(6, 1))
    assert {each.played.game for each in done.entries if each.played} == {later}
    assert done.after.record is not None
    assert (done.after.record.id, done.after.groups) == (first, ())
    told = tell_fate(replace(looking, form=teller.new_id()), [SECTIONS[1]], word="replaced")
    assert [each.fate for each in told.after.missing][-1] is Fate.REPLACED


def test_a_roll_is_struck_out_with_what_followed_and_may_be_rolled_anew(teller: Teller) -> None:
    play(teller.folder, *map(out, SECTIONS[:2]))
    done = roll_recoveries(teller, typed(6, 1))
    roll = done.entries[0].id
    assert strike_loss(teller, roll, because=" ").findings[-1].code == "log-incomplete"
    assert strike_loss(teller, "zz", because="x").findings[-1].code == "line-unclear"
    assert strike_loss(teller, "", because="x").findings[-1].code == "line-unclear"
    struck = strike_loss(teller, roll, because="read upside down")
    assert fates(struck) == [Fate.OPEN, Fate.LOST]
    assert len(struck.entries) == 3
    again = strike_loss(teller, roll, because="read upside down")
    assert (again.is_done, again.entries) == (True, ())
    late = roll_recoveries(teller, typed(6))
    assert [each.code for each in late.findings] == ["fate-told"]
    anew = roll_recoveries(replace(teller, form=teller.new_id()), typed(2))
    assert fates(anew) == [Fate.LOST, Fate.LOST]


def test_what_followed_from_a_roll_of_a_platoon_goes_with_it(teller: Teller) -> None:
    with_campaign(teller.folder, CAMPAIGN + "  rolled once for: platoon\n")
    play(teller.folder, *map(out, SECTIONS[:2]))
    group = TypedRoll(name="No 1 Company / 1 Platoon, rifle section", numbers=(2,))
    done = roll_recoveries(teller, [group])
    told = tell_fate(teller, [SECTIONS[2]], word="promoted")
    lines = loss_lines(told.after)
    assert [len(each.following) for each in lines] == [0, 0, 2, 0]
    struck = strike_loss(teller, done.entries[0].id, because="a slip")
    assert fates(struck) == [Fate.OPEN, Fate.OPEN, Fate.RECOVERED]


def test_without_a_game_nothing_is_written(teller: Teller) -> None:
    assert roll_recoveries(teller, typed(3)).after.record is None
    done = strike_loss(teller, "1f", because="x")
    assert loss_lines(done.after) == ()


def test_faces_are_read_one_for_each_die() -> None:
    assert faces_typed(" 6, 2 ", of="x") == (6, 2)
    assert faces_typed("4", of="x") == (4,)
    for text in ("six", "-1", "٣", "1234567"):
        wrong = faces_typed(text, of="1 Section")
        assert isinstance(wrong, Finding)
        assert wrong.message == f"1 Section: '{text}' isn't what dice show."
