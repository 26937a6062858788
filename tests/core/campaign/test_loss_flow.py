"""Where the stands of one kind or company went."""

from collections.abc import Sequence
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.campaign.casualty import Casualty, Fate
from paradestate.core.campaign.loss_flow import LossFlow, Passage, loss_flows
from paradestate.core.campaign.next_strength import missing_now, next_strength
from paradestate.core.unfolding import Stand
from tests.core.campaign.campaigns import STANDS, stand

Games = Sequence[Sequence[Casualty]]


def casualty(place: int, fate: Fate, *, out: str = "yes", promoted: bool = False) -> Casualty:
    return Casualty(stand=STANDS[place], out=out, fate=fate, is_promoted=promoted)


def flowing(
    games: Games,
    *,
    fielded: Sequence[Stand] = STANDS,
    roster: Sequence[Stand] = STANDS,
    wanted: Sequence[Stand] | None = STANDS,
) -> LossFlow:
    """The flow of all stands through the last of these games."""
    passage = Passage(
        fielded=fielded,
        roster=roster,
        missing_before=missing_now(games[:-1]),
        casualties=games[-1],
        missing_after=missing_now(games),
        wanted=wanted,
    )
    (only,) = loss_flows(passage, by=lambda _: "all")
    return only


def test_a_game_without_losses_has_all_there_and_nothing_to_show() -> None:
    flow = flowing([[]])
    assert flow == LossFlow(name="all", before=6, must_have=6)
    assert (flow.in_action, flow.sure, flow.is_eventful) == (6, 6, False)


def test_every_fate_is_counted_once() -> None:
    flow = flowing(
        [
            [
                casualty(0, Fate.OPEN),
                casualty(1, Fate.RECOVERED, promoted=True),
                casualty(2, Fate.LOST, promoted=True),
                casualty(3, Fate.REPLACED),
                casualty(4, Fate.RECOVERED),
                casualty(5, Fate.RECOVERED, out="", promoted=True),
            ]
        ]
    )
    assert flow == LossFlow(
        name="all",
        before=6,
        open=1,
        recovered=2,
        lost=1,
        replaced=1,
        promoted_back=1,
        promoted_in_action=1,
        must_have=6,
    )
    assert (flow.out, flow.in_action, flow.promoted) == (5, 1, 2)
    assert (flow.sure, flow.may_come, flow.short, flow.most_short) == (4, 1, 1, 2)
    assert flow.is_eventful


def test_who_was_missing_before_stays_away_or_is_back_since() -> None:
    before = [casualty(0, Fate.LOST), casualty(1, Fate.OPEN), casualty(2, Fate.LOST)]
    since = [
        casualty(2, Fate.REPLACED, out=""),
        replace(casualty(3, Fate.RECOVERED, out=""), is_told=True),
    ]
    flow = flowing([before, since])
    assert (flow.before, flow.away_lost, flow.away_open, flow.joined) == (3, 1, 1, 1)
    assert (flow.in_action, flow.sure, flow.may_come) == (3, 4, 1)


def test_who_was_not_in_the_game_rested_and_a_marker_is_no_stand() -> None:
    marker = stand("Marker", printed=True)
    wished = replace(stand("Wished"), is_wanted=False)
    flow = flowing([[]], fielded=STANDS[:4], roster=(*STANDS, marker, wished))
    assert (flow.before, flow.rested, flow.sure) == (4, 2, 6)


def test_after_a_game_that_others_followed_nothing_is_said_of_the_next() -> None:
    flow = flowing([[casualty(0, Fate.LOST)]], wanted=None)
    assert (flow.must_have, flow.short, flow.most_short, flow.is_eventful) == (None, 0, 0, True)


def test_a_company_of_which_the_next_game_has_more_is_told_too() -> None:
    passage = Passage(
        fielded=STANDS[:1],
        roster=STANDS[:1],
        missing_before=(),
        casualties=(),
        missing_after=(),
        wanted=[stand("Gun", pattern="gun")],
    )
    names = [each.name for each in loss_flows(passage, by=lambda each: each.pattern)]
    assert names == ["section", "gun"]


FATES = st.sampled_from(list(Fate))
GAMES = st.lists(st.dictionaries(st.integers(0, 5), FATES), min_size=1, max_size=3)


@given(GAMES)
@settings(max_examples=60, deadline=None)
def test_what_goes_in_comes_out_and_agrees_with_the_next_strength(
    drawn: list[dict[int, Fate]],
) -> None:
    games = [[casualty(place, fate) for place, fate in each.items()] for each in drawn]
    flow = flowing(games)
    assert flow.before + flow.away_lost + flow.away_open + flow.joined == len(STANDS)
    (known,) = next_strength(STANDS, STANDS, missing=missing_now(games), pool={})
    assert (flow.sure, flow.may_come) == (known.sure, known.open)
    assert (flow.short, flow.most_short) == (known.least_to_add, known.most_to_add)
