"""After a game: the losses and the next strength."""

import shutil
from fractions import Fraction
from pathlib import Path

import pytest

from paradestate.core.campaign.casualty import Fate
from paradestate.core.play.event import Told
from paradestate.journeys.game.losses import AfterGame, losses
from tests.forces import EXAMPLES
from tests.journeys.played_losses import CAMPAIGN, DAY, SECTIONS, out, play, with_campaign


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    copy = tmp_path / "marenz"
    shutil.copytree(EXAMPLES / "marenz", copy)
    return with_campaign(copy)


def left(folder: Path, *, of: str = "", next_game: str = "") -> AfterGame:
    return losses(folder, today=DAY, of=of, next_game=next_game)


def test_story_26_six_sections_out_before_their_dice(folder: Path) -> None:
    """Design 3.22: expected 4, 496/729 for at least 4."""
    play(folder, *map(out, SECTIONS))
    after = left(folder)
    assert after.odds is not None
    assert after.odds.back.mean == 4
    assert after.odds.back.at_least(4) == Fraction(496, 729)
    assert after.odds.none_needed == Fraction(64, 729)
    assert after.odds.pool_enough == Fraction(64 + 192, 729)
    rifles = next(each for each in after.strengths if each.pattern == "rifle section")
    assert (rifles.open, rifles.least_to_add, rifles.most_to_add) == (6, 0, 6)
    assert [each.name for each in after.groups] == list(SECTIONS)


def test_captured_is_lost_and_a_kind_without_a_line_comes_back(folder: Path) -> None:
    play(folder, out(SECTIONS[0], "captured"), out("No 1 Company / Company command"))
    after = left(folder)
    assert {each.fate for each in after.casualties} <= {Fate.LOST, Fate.RECOVERED}
    rifles = next(each for each in after.strengths if each.pattern == "rifle section")
    assert (rifles.lost, rifles.least_to_add, after.groups) == (1, 1, ())


def test_a_platoon_that_shares_its_roll(folder: Path) -> None:
    with_campaign(folder, CAMPAIGN + "  rolled once for: platoon\n")
    play(folder, *map(out, SECTIONS))
    after = left(folder)
    assert [len(each.stands) for each in after.groups] == [2, 2, 2]
    assert after.odds is not None
    assert after.odds.none_needed == Fraction(8, 27)


def test_losses_of_two_games_add_up(folder: Path) -> None:
    first = play(folder, out(SECTIONS[0], "captured"))
    play(folder, out(SECTIONS[1], "captured"), start=1000)
    after = left(folder)
    assert next(each.lost for each in after.strengths if each.pattern == "rifle section") == 2
    assert [each.stand.name for each in after.casualties] == [SECTIONS[1]]
    assert [each.stand.name for each in left(folder, of=first).casualties] == [SECTIONS[0]]


def test_what_is_no_stand_of_the_force_is_told(folder: Path) -> None:
    play(folder, out("light tank 1"), out(SECTIONS[0], "captured"), promoted(SECTIONS[0]))
    codes = [found.code for found in left(folder).findings]
    assert {"loss-of-no-stand", "promoted-and-lost"} <= set(codes)


def promoted(name: str) -> Told:
    told = out(name)
    return Told(subject=told.subject._replace(aspect="promoted"), value="yes")


def test_supporting_troops_that_are_out_are_named_and_not_counted(folder: Path) -> None:
    play(folder, out("light tanks / 1 light tank", "burnt"), out("machine-gun platoon 1"))
    after = left(folder)
    assert [each.entry for each in after.supporting] == ["light tanks", "machine-gun platoon"]
    assert [found.code for found in after.findings][-1:] == ["supporting-troops-out"]
    assert (after.casualties, after.has_supporting) == ((), True)


def test_where_the_stands_went_agrees_with_what_the_next_game_finds(folder: Path) -> None:
    """Of the newest game; of the one before nothing is said of the next."""
    first = play(folder, out(SECTIONS[0], "captured"))
    play(folder, *map(out, SECTIONS[1:3]), start=1000)
    after = left(folder)
    kinds = {each.name: each for each in after.by_kind}
    for each in after.strengths:
        if each.wanted:
            flow = kinds[each.pattern]
            assert (flow.sure, flow.may_come) == (each.sure, each.open)
            assert (flow.short, flow.most_short) == (each.least_to_add, each.most_to_add)
    eventful = [each.name for each in after.by_company if each.is_eventful]
    assert eventful == ["No 1 Company"]
    before = left(folder, of=first)
    assert (after.is_newest, before.is_newest) == (True, False)
    assert {each.must_have for each in before.by_kind} == {None}


def test_without_a_game_or_with_an_unknown_next_one_nothing_is_told(folder: Path) -> None:
    assert left(folder).findings[-1].code == "no-game-played"
    play(folder, out(SECTIONS[0]))
    assert left(folder, of="ffff").record is None
    after = left(folder, next_game="tournament")
    assert (after.record, after.findings[-1].code) == (None, "unknown-choice")


def test_a_folder_with_a_stop_is_not_counted(folder: Path) -> None:
    with_campaign(folder, "campaign: {replacements: {nobody: 1}}\n")
    assert left(folder).record is None
