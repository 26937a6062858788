"""Figures and whole stands, by stage."""

from paradestate.core.holdings import Holdings, Pile, Tally, all_stages, piles, together
from tests.entries import figures

STANDS = Holdings(stands={"truck": {"based": 2}})


def test_holdings_add_up_by_name_and_stage() -> None:
    both = together(figures(rifleman={"painted": 3}), figures(rifleman={"painted": 1, "based": 2}))
    assert both == figures(rifleman={"painted": 4, "based": 2})
    assert together(both, STANDS) == Holdings(figures=both.figures, stands=STANDS.stands)
    assert together() == Holdings()
    assert not together()
    assert STANDS


def test_every_number_is_listed_figures_first() -> None:
    held = Holdings(figures={"rifleman": {"painted": 3}}, stands=STANDS.stands)
    assert list(piles(held)) == [
        Pile(name="rifleman", stage="painted", number=3, is_stand=False),
        Pile(name="truck", stage="based", number=2, is_stand=True),
    ]


def test_what_is_taken_away_whole_is_gone() -> None:
    tally = Tally(figures(rifleman={"painted": 3}))
    tally.add(figures(rifleman={"painted": 3}), times=-1)
    assert tally.holdings() == Holdings()


def test_what_is_below_nought_is_told_of_the_names_asked_for() -> None:
    tally = Tally(together(figures(rifleman={"painted": 3}), STANDS))
    tally.add(figures(rifleman={"painted": 5}), times=-1)
    tally.add(Holdings(stands={"truck": {"based": 3}}), times=-1)
    assert list(tally.below_nought(figures(rifleman={"painted": 1}))) == [
        Pile(name="rifleman", stage="painted", number=-2, is_stand=False)
    ]
    assert list(tally.below_nought(STANDS)) == [
        Pile(name="truck", stage="based", number=-1, is_stand=True)
    ]


def test_a_number_that_is_put_takes_the_place_of_the_one_before() -> None:
    tally = Tally(figures(rifleman={"painted": 3, "based": 1}))
    tally.put(figures(rifleman={"painted": 7}))
    assert tally.holdings() == figures(rifleman={"painted": 7, "based": 1})


def test_holdings_that_are_added_up_are_left_as_they_were() -> None:
    start = figures(rifleman={"painted": 3})
    Tally(start).add(start)
    assert start == figures(rifleman={"painted": 3})


def test_what_is_there_leaves_out_what_is_below_nought() -> None:
    tally = Tally(figures(rifleman={"painted": 3, "based": 1}))
    tally.add(figures(rifleman={"painted": 5, "based": 1}), times=-1)
    tally.add(STANDS)
    assert tally.there() == STANDS


def test_stages_that_are_not_the_usual_ones_come_last() -> None:
    held = figures(rifleman={"varnished": 1, "painted": 3}, boat={"lost": 1}).figures
    assert all_stages(held, usual=("painted", "based")) == ("painted", "based", "varnished", "lost")
    assert all_stages({}, usual=("painted",)) == ("painted",)
