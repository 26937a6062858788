"""What of the work waits for which parcel."""

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.core.on_order import OnOrder
from paradestate.core.work.awaited_work import Lack, joined, lacks, tasks
from paradestate.core.work.course import Task
from tests.core.work.batches import climbed
from tests.core.work.works import TROOP

BENCH = "bench:\n  minutes: {foot: {painted: 10}, gun: {painted: 30}}\n"
STOCK = "stock: {gun: {in packet: 1}, rifleman: {painted: 4}}\n"


def of_troop(
    *parcels: Mapping[str, int],
    preferred: Sequence[int] | None = None,
    bench: str = BENCH,
    stock: str = STOCK,
) -> tuple[Task, ...]:
    ladder, force = climbed(stock, bench=bench, organisation=TROOP)
    order = range(len(parcels)) if preferred is None else preferred
    return tasks(ladder, parcels=parcels, preferred=order, set_up=force.bench.set_up)


def minutes_of(found: Sequence[Task], *awaits: int) -> Fraction:
    """The minutes of all that waits for just these parcels."""
    own = [each.minutes for each in found if each.awaits == set(awaits)]
    return sum(own, Fraction(0))


SMALL, WHOLE = {"rifleman": 15, "officer": 3}, {"rifleman": 9, "officer": 1}
"""Of 19 riflemen for two companies 4 are there; the third company wants 9 more."""


def test_each_milestone_lacks_what_none_before_it_has() -> None:
    ladder, _ = climbed(STOCK, bench=BENCH, organisation=TROOP)
    found = lacks(ladder, most=4)
    assert [(each.milestones, dict(each.figures)) for each in found] == [
        (("smallest legal force",), SMALL),
        (("whole top",), WHOLE),
    ]
    (whole,) = lacks(ladder, most=1)
    assert whole == joined(found)
    assert whole == Lack(
        milestones=("smallest legal force", "whole top"),
        figures={"rifleman": 24, "officer": 4},
    )
    assert [each.milestone.name for each in ladder.to_reach] == [
        "smallest legal force",
        "whole top",
    ]


def test_work_waits_for_the_parcel_that_brings_its_figures() -> None:
    found = of_troop(SMALL, WHOLE)
    assert minutes_of(found, 0) == 10 * 18
    assert minutes_of(found, 1) == 10 * 10
    assert {each.of for each in found if each.awaits == {1}} == {frozenset({1})}
    assert {each.of for each in found if each.awaits == {0}} == {frozenset({0, 1})}


def test_a_stand_takes_from_as_few_parcels_as_it_can_and_first_from_the_preferred() -> None:
    """With the officers come five riflemen: enough for the commands, which then wait once."""
    mixed = [{"rifleman": 5, "officer": 4}, {"rifleman": 24}]
    sections_first = of_troop(*mixed)
    assert minutes_of(sections_first, 0) > 0
    assert minutes_of(sections_first, 0, 1) > 0
    found = of_troop(*mixed, preferred=[1, 0])
    assert minutes_of(found, 0, 1) == 0
    assert minutes_of(found, 0) + minutes_of(found, 1) == 10 * 28


def test_what_waits_for_different_parcels_is_set_up_anew() -> None:
    with_set_up = BENCH.replace("bench:\n", "bench:\n  set up: 20 min\n")
    plain, found = of_troop(SMALL, WHOLE), of_troop(SMALL, WHOLE, bench=with_set_up)
    more = sum((each.minutes for each in found), Fraction(0)) - sum(
        (each.minutes for each in plain), Fraction(0)
    )
    assert more == 20 * len(found)


def test_a_batch_without_minutes_has_no_set_up() -> None:
    bench = "bench:\n  set up: 20 min\n  minutes: {foot: {painted: 10}, gun: {painted: 0}}\n"
    ladder, force = climbed(bench=bench, organisation=TROOP.replace("rifleman: 4", "gun: 4"))
    parcels = [dict.fromkeys(("rifleman", "officer", "gun"), 99)]
    found = tasks(ladder, parcels=parcels, preferred=[0], set_up=force.bench.set_up)
    assert 0 in {each.minutes for each in found}


def test_parcels_that_dont_bring_all_are_a_mistake_of_the_program() -> None:
    with pytest.raises(ValueError, match=r"rifleman for .* come with no parcel"):
        of_troop({"officer": 99})


def test_what_is_on_order_is_not_ordered_again() -> None:
    ladder, _ = climbed(STOCK, bench=BENCH, organisation=TROOP)
    day = datetime.date(2026, 3, 5)
    coming = OnOrder(entry="1", source="North", day=day, expected=None, figures={"officer": 1})
    rungs = tuple(
        replace(
            rung,
            works=tuple(
                replace(work, to_come=(coming,)) if work.lacking.get("officer") else work
                for work in rung.works
            ),
        )
        for rung in ladder.rungs
    )
    works = {work.stand.name: work for rung in rungs for work in rung.works}
    reached = tuple(
        replace(each, works=tuple(works.get(work.stand.name, work) for work in each.works))
        for each in ladder.reached
    )
    found = lacks(replace(ladder, rungs=rungs, reached=reached), most=4)
    assert [each.figures for each in found] == [{"rifleman": 15}, {"rifleman": 9}]
