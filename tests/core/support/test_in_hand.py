"""What is owned of the stands of supporting troops."""

from collections.abc import Mapping
from dataclasses import replace

from paradestate.core.establishment import establishment
from paradestate.core.support.in_hand import InHand, in_hand
from tests.forces import force_from

TEXT = """\
figures:
  rifleman: {}
  officer: {may stand for: {rifleman: good}}
  tank: {}
stands:
  section: {base: none, figures: {rifleman: 2}}
  guard: {base: none, figures: {rifleman: 2}}
  tank: {base: none, figures: {tank: 1}}
  mission: {base: none, printed: yes}
formations: {top: {parts: [{of: section, number: 1}, {of: guard, number: 1, need: wished}]}}
"""
HEAD = "format: 1\ntitle: Test\nraise: {formation: top, wished: all}\n"
PACKET, DONE = "in packet", "done"


def hand(
    *,
    stands: Mapping[str, int],
    stock: Mapping[str, Mapping[str, int]],
    whole: Mapping[str, Mapping[str, int]] = {},
) -> tuple[InHand, ...]:
    force = force_from(TEXT, head=HEAD)
    bench = replace(force.bench, stages=(PACKET, DONE))
    force = replace(force, stock=stock, stock_stands=whole, bench=bench)
    made, _ = establishment(force)
    assert made is not None
    return in_hand(force, made, stands=stands)


def test_each_stand_counts_at_its_least_advanced_stage_the_last_stage_first() -> None:
    (tanks,) = hand(stands={"tank": 4}, stock={"tank": {PACKET: 1, DONE: 2}})
    assert (tanks.there, tanks.wanted) == (3, 4)
    assert list(tanks.stages.items()) == [(DONE, 2), (PACKET, 1)]


def test_the_must_layer_is_served_first() -> None:
    (sections,) = hand(stands={"section": 1}, stock={"rifleman": {DONE: 3}})
    assert sections.there == 0
    (sections,) = hand(stands={"section": 1}, stock={"rifleman": {DONE: 4}})
    assert sections.stages == {DONE: 1}


def test_wished_items_do_not_compete() -> None:
    """The guard wants two riflemen as well."""
    (sections,) = hand(stands={"section": 1}, stock={"rifleman": {DONE: 4}})
    assert sections.there == 1


def test_what_may_stand_in_does_so() -> None:
    (sections,) = hand(stands={"section": 1}, stock={"officer": {DONE: 4}})
    assert sections.there == 1


def test_a_finished_stand_is_there_as_a_whole() -> None:
    (tanks,) = hand(stands={"tank": 1}, stock={}, whole={"tank": {DONE: 1}})
    assert tanks.stages == {DONE: 1}


def test_what_nothing_is_held_of_is_not_there() -> None:
    tanks, missions = hand(stands={"tank": 2, "mission": 3}, stock={"rifleman": {DONE: 9}})
    assert (tanks.there, tanks.stages) == (0, {})
    assert (missions.there, missions.printed) == (3, True)


def test_a_held_pattern_that_the_files_do_not_know_serves_nobody() -> None:
    (tanks,) = hand(stands={"tank": 1}, stock={}, whole={"elephant": {DONE: 1}})
    assert tanks.there == 0
