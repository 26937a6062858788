"""The cross-checks in words."""

from dataclasses import replace

from paradestate.core.establishment import Establishment, cross_check, establishment
from paradestate.core.sentence.cross_check import Tick, ticks
from paradestate.core.strength import Strength, strength
from tests.forces import marenz


def counted() -> tuple[Establishment, Strength]:
    force = replace(marenz(), stock={"rifleman": {"painted": 51}, "officer": {"painted": 3}})
    made, _ = establishment(force)
    assert made is not None
    return made, strength(force, made)


def ticked(made: Establishment, owned: Strength) -> list[Tick]:
    return list(ticks(made, check=cross_check(marenz(), made), strength=owned))


def broken(found: list[Tick]) -> list[int]:
    """Which of them don't hold."""
    return [number for number, tick in enumerate(found) if not tick.holds]


def test_every_check_is_said_with_both_its_numbers() -> None:
    found = ticked(*counted())
    assert [tick.words for tick in found] == [
        "foot figures by level 123, by kind 123, by company 123",
        "45 stands by name, 45 multiplied",
        "54 used and 0 over make the 54 that are held",
        "54 there and 71 lacking make the 125 that are wanted",
    ]
    assert broken(found) == []


def test_each_check_is_broken_by_a_number_that_is_wrong() -> None:
    made, owned = counted()
    rollup = made.rollup
    fewer = replace(made, rollup=replace(rollup, figures={**rollup.figures, "officer": 1}))
    assert broken(ticked(fewer, owned)) == [0]
    more = replace(made, rollup=replace(rollup, stands={**rollup.stands, "rifle section": 25}))
    assert broken(ticked(more, owned)) == [1]
    assert broken(ticked(made, replace(owned, surplus={"boat": 1}))) == [2]
    assert broken(ticked(made, replace(owned, deficiency={"rifleman": 1}))) == [3]
