"""What the next game finds of the force."""

from itertools import product

from paradestate.core.campaign.casualty import Casualty, Fate
from paradestate.core.campaign.next_strength import (
    PatternStrength,
    experience,
    missing_now,
    next_strength,
)
from tests.core.campaign.campaigns import STANDS, stand


def casualty(place: int, fate: Fate, *, promoted: bool = False) -> Casualty:
    return Casualty(stand=STANDS[place], out="yes", fate=fate, is_promoted=promoted)


def test_lost_and_open_stands_are_short_and_the_least_to_add_is_what_is_short() -> None:
    missing = [casualty(0, Fate.LOST), casualty(1, Fate.OPEN), casualty(2, Fate.RECOVERED)]
    (found,) = next_strength(STANDS, STANDS, missing=missing, pool={"section": 2})
    assert found == PatternStrength(pattern="section", roster=6, wanted=6, lost=1, open=1, pool=2)
    assert (found.sure, found.least_to_add, found.most_to_add) == (4, 1, 2)


def test_a_smaller_game_needs_nobody_sent_up() -> None:
    missing = [casualty(0, Fate.LOST)]
    (found,) = next_strength(STANDS, STANDS[:5], missing=missing, pool={})
    assert (found.least_to_add, found.most_to_add) == (0, 0)


def test_the_least_to_add_agrees_with_trying_every_number() -> None:
    for wanted, lost, still_open in product(range(7), range(3), range(3)):
        known = PatternStrength(
            pattern="section", roster=6, wanted=wanted, lost=lost, open=still_open, pool=0
        )
        for back, said in ((still_open, known.least_to_add), (0, known.most_to_add)):
            tried = next(n for n in range(9) if 6 - lost - still_open + back + n >= wanted)
            assert said == tried


def test_printed_stands_are_no_part_of_the_next_strength() -> None:
    marker = stand("Marker", pattern="marker", printed=True)
    (found,) = next_strength([STANDS[0]], [STANDS[0], marker], missing=[], pool={})
    assert found.pattern == "section"


def test_a_game_of_more_than_the_roster_takes_it_to_be_as_strong_as_that() -> None:
    (found,) = next_strength(STANDS[:2], STANDS, missing=[casualty(0, Fate.LOST)], pool={})
    assert (found.roster, found.most_to_add) == (6, 1)


def test_replacements_are_taken_from_the_pool_and_no_further_than_that() -> None:
    missing = [casualty(0, Fate.REPLACED), casualty(1, Fate.REPLACED)]
    for pool, left in ((3, 1), (1, 0)):
        (found,) = next_strength(STANDS, STANDS, missing=missing, pool={"section": pool})
        assert (found.pool, found.lost) == (left, 0)


def test_who_was_lost_stays_lost_until_replaced_and_counts_once() -> None:
    lost, again = casualty(0, Fate.LOST), casualty(0, Fate.OPEN)
    assert missing_now([[lost], [again]]) == (lost,)
    replaced = casualty(0, Fate.REPLACED)
    assert missing_now([[lost], [replaced]]) == (replaced,)
    assert missing_now([[replaced], [again]]) == (replaced, again)


def test_experience_adds_up_and_goes_with_who_is_lost() -> None:
    gained = casualty(0, Fate.RECOVERED, promoted=True)
    assert experience([[gained], [gained]]) == {STANDS[0].name: 2}
    assert experience([[gained], [casualty(0, Fate.LOST, promoted=True)]]) == {}
    assert experience([[casualty(1, Fate.RECOVERED)]]) == {}
