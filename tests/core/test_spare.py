"""What is to spare, and what isn't though it lies about."""

import datetime
from dataclasses import replace

from paradestate.core.cover import Substitutes
from paradestate.core.establishment import establishment
from paradestate.core.figure import Match
from paradestate.core.journal import Promise
from paradestate.core.promise import Cupboard
from paradestate.core.spare import Spare, Use, spares, use_of
from paradestate.core.strength import strength
from tests.forces import force_from

DAY = datetime.date(2026, 3, 12)
TROOPS = """\
figures:
  rifleman: {}
  sergeant: {may stand for: {officer: good}}
  officer: {}
stands:
  section: {base: 40 x 20 mm, figures: {rifleman: 4}}
  command: {base: 30 mm disc, figures: {officer: 1}}
formations: {top: {parts: {section: 2, command: 1}}}
"""


def used(**stock: object) -> Use:
    force = replace(force_from(TROOPS), **stock)  # type: ignore[arg-type] # two fields of it
    made, _ = establishment(force)
    assert made is not None
    return use_of(force, strength(force, made))


def loose(held: int, needed: int, *, name: str = "rifleman") -> Use:
    return Use(loose={name: held}, loose_used={name: needed}, stands={}, stands_used={})


def numbers(*found: Spare) -> dict[str, tuple[int, int, int]]:
    return {each.name: (each.held, each.number, each.one_at_a_time) for each in found}


def test_what_serves_no_stand_is_to_spare() -> None:
    use = used(stock={"rifleman": {"painted": 7, "in packet": 4}, "officer": {"painted": 1}})
    assert (use.loose, use.loose_used) == (
        {"rifleman": 11, "officer": 1},
        {"rifleman": 8, "officer": 1},
    )
    found = spares([use], cupboard=Cupboard(held={}))
    assert found == (Spare(name="rifleman", is_stand=False, held=11, number=3, one_at_a_time=3),)


def test_a_stand_in_that_is_in_use_is_not_to_spare() -> None:
    use = used(stock={"sergeant": {"painted": 3}})
    assert numbers(*spares([use], cupboard=Cupboard(held={}))) == {"sergeant": (3, 2, 2)}


def test_a_finished_stand_goes_whole_and_its_figures_are_not_offered_loose() -> None:
    use = used(
        stock={"rifleman": {"painted": 1}},
        stock_stands={"section": {"based": 3, "painted": 1}},
    )
    # Two of three finished sections serve; the unfinished one and the loose figure serve nothing.
    assert (use.stands, use.stands_used) == ({"section": 3}, {"section": 2})
    assert (use.loose, use.loose_used) == ({"rifleman": 5}, {"rifleman": 0})
    found = spares([use], cupboard=Cupboard(held={}))
    assert numbers(*found) == {"rifleman": (5, 5, 5), "section": (3, 1, 1)}
    assert [each.is_stand for each in found] == [False, True]


def test_a_pattern_without_a_finished_stand_is_none() -> None:
    use = used(stock_stands={"section": {"painted": 1}, "command": {"based": 0}})
    assert use.stands == {}


def test_two_forces_that_parade_together_need_more_than_one_at_a_time() -> None:
    found = spares([loose(20, 8), loose(20, 10)], cupboard=Cupboard(held={}))
    assert numbers(*found) == {"rifleman": (20, 2, 10)}


def test_what_both_need_more_of_than_there_is_is_not_to_spare() -> None:
    assert spares([loose(10, 10), loose(10, 10)], cupboard=Cupboard(held={})) == ()


def test_what_another_force_does_not_know_is_still_needed_by_the_first() -> None:
    found = spares([loose(9, 4), loose(3, 0, name="boat")], cupboard=Cupboard(held={}))
    assert numbers(*found) == {"rifleman": (9, 5, 5), "boat": (3, 3, 3)}


def test_what_is_promised_is_kept_the_day_on_which_most_is() -> None:
    promises = [
        Promise(day=DAY, force="guard", figures={"rifleman": 6}),
        Promise(day=DAY, force="watch", figures={"rifleman": 8}),
        Promise(day=DAY.replace(day=20), force="guard", figures={"rifleman": 9}),
    ]
    cupboard = Cupboard(held={"rifleman": 20})
    found = spares([loose(20, 2)], promises=promises, cupboard=cupboard)
    assert numbers(*found) == {"rifleman": (20, 6, 6)}


def test_a_promise_that_can_not_be_kept_anyhow_keeps_everything_that_serves_it() -> None:
    promises = [Promise(day=DAY, force="guard", figures={"rifleman": 30})]
    found = spares([loose(20, 2)], promises=promises, cupboard=Cupboard(held={"rifleman": 20}))
    assert found == ()


def test_what_stands_in_for_something_promised_is_kept() -> None:
    cupboard = Cupboard(
        held={"sergeant": 3, "officer": 1},
        substitutes=Substitutes(may_stand_for={"sergeant": {"officer": Match.GOOD}}),
    )
    promises = [Promise(day=DAY, force="guard", figures={"officer": 2})]
    two = Use(
        loose={"sergeant": 3, "officer": 1},
        loose_used={"sergeant": 0, "officer": 0},
        stands={},
        stands_used={},
    )
    found = spares([two], promises=promises, cupboard=cupboard)
    # The officer and one sergeant keep it; the sergeants are looked at first.
    assert numbers(*found) == {"sergeant": (3, 2, 2)}


def test_a_promise_can_be_kept_by_the_figures_of_a_whole_stand() -> None:
    stands = Use(
        loose={},
        loose_used={},
        stands={"section": 3},
        stands_used={"section": 0},
        figures_on={"section": {"rifleman": 4}},
    )
    promises = [Promise(day=DAY, force="guard", figures={"rifleman": 5})]
    found = spares([stands], promises=promises, cupboard=Cupboard(held={"rifleman": 12}))
    assert numbers(*found) == {"section": (3, 1, 1)}
