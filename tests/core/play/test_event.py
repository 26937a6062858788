"""Events of a game."""

import dataclasses

import pytest

from paradestate.core.play.event import Ended, Played, Subject, Told, is_time


def test_an_event_is_never_altered() -> None:
    told = Told(subject=Subject("out", "1 Platoon"), value="yes")
    played = Played(game="g", event=told)
    with pytest.raises(dataclasses.FrozenInstanceError):
        played.event = Ended()  # type: ignore[misc]
    assert (told.over, told.turn) == ((), None)


@pytest.mark.parametrize(
    ("text", "is_one"),
    [("22:15", True), ("9:05", True), ("24:00", False), ("22:60", False), ("late", False)],
)
def test_a_time_of_day_is_hours_and_minutes(text: str, is_one: bool) -> None:  # noqa: FBT001 - a case
    assert is_time(text) is is_one
